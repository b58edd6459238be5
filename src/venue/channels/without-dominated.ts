/** One row of a system: its loads from outside and at full overlap. */
export interface LoadRow {
  /** [channel] */
  readonly baseRatios: readonly number[];
  /** [other system] */
  readonly gainRatios: readonly number[];
}

/**
 * Leaves out rows that are never a system's greatest load: another of its rows has as much from outside on every
 * channel and from every other system. Exact: no assignment's greatest load changes.
 * @returns the others in their order, at least one; of equal ones the first
 */
export function withoutDominated(rows: readonly LoadRow[]): LoadRow[] {
  const kept: LoadRow[] = [];
  for (const row of rows) {
    if (kept.some((other) => isCovered(row, other))) continue;
    for (let k = kept.length - 1; k >= 0; k--) if (isCovered(kept[k]!, row)) kept.splice(k, 1);
    kept.push(row);
  }
  return kept;
}

function isCovered(row: LoadRow, by: LoadRow): boolean {
  return (
    row.baseRatios.every((ratio, c) => ratio <= by.baseRatios[c]!) &&
    row.gainRatios.every((ratio, o) => ratio <= by.gainRatios[o]!)
  );
}
