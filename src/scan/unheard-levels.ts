/** At or below this a level that repeats may stand for "not heard", dBm. */
const HIGHEST_FILL_DBM = -99;
/** A receiver's levels come close together; a fill value stands apart from them by as much, dB. */
const APART_DB = 5;
const LEAST_REPEATS_COUNT = 3;

/** Numbers that are no level and that lists put where nothing was heard or known. */
const SIGNS: ReadonlySet<number> = new Set([-999, -255, -200, -1, 0, 1, 100, 110, 127, 255, 500, 999, 1000]);

/** Is it no level, but one of the numbers that commonly stand for "not heard" or "unknown"? */
export function isUnheardSign(value: number): boolean {
  return SIGNS.has(value);
}

/**
 * Levels that stand for "not heard": the lowest of all, a whole number of −99 or less, met three times or
 * more and from several sources, with hardly another level within 5 dB above. What is left when it is
 * taken away is judged again.
 * @param levels each level with the source that it belongs to
 * @returns dBm
 */
export function unheardLevels(
  levels: Iterable<{ readonly signalDbm: number; readonly source: string }>,
): ReadonlySet<number> {
  const kinds = new Map<number, { count: number; sources: Set<string> }>();
  for (const { signalDbm, source } of levels) {
    let kind = kinds.get(signalDbm);
    if (kind === undefined) kinds.set(signalDbm, (kind = { count: 0, sources: new Set() }));
    kind.count++;
    if (kind.sources.size < 2) kind.sources.add(source);
  }
  const rising = [...kinds].sort(([a], [b]) => a - b);
  const unheard = new Set<number>();
  for (const [index, [levelDbm, { count, sources }]] of rising.entries()) {
    if (levelDbm > HIGHEST_FILL_DBM || !Number.isInteger(levelDbm)) break;
    if (count < LEAST_REPEATS_COUNT || sources.size < 2) break;
    let nearCount = 0;
    for (const [otherDbm, other] of rising.slice(index + 1)) {
      if (otherDbm > levelDbm + APART_DB) break;
      if (!isLikeFill(otherDbm, other.count)) nearCount += other.count;
    }
    if (nearCount * 3 > count) break;
    unheard.add(levelDbm);
  }
  return unheard;
}

/** Two fills may stand side by side, as −105 and −100. */
function isLikeFill(levelDbm: number, count: number): boolean {
  return levelDbm <= HIGHEST_FILL_DBM && levelDbm % 5 === 0 && count >= LEAST_REPEATS_COUNT;
}
