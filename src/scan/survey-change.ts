import type { Survey, SurveyEmitter } from "./survey.js";

/** One radio in two surveys. Null: not heard in that one. */
export interface EmitterChange {
  readonly emitter: string;
  readonly names: readonly string[];
  readonly channel: number;
  readonly before: HeardState | null;
  readonly after: HeardState | null;
  /** After − before, dB; null where one of the two is missing. */
  readonly levelChangeDb: number | null;
  /** After − before, share of time; a radio that is missing counts as silent. */
  readonly airtimeChangeRatio: number;
}

export interface HeardState {
  readonly channel: number;
  readonly levelDbm: number;
  readonly airtimeRatio: number;
  readonly airtimeAssumed: boolean;
}

/**
 * What changed between two surveys of one venue, such as the room empty and full: a radio is the same when
 * the two share an address or, without addresses, a name and channel.
 * @returns every radio of either, greatest change of airtime first, then of level, then by name
 */
export function surveyChange(before: Survey, after: Survey): EmitterChange[] {
  const left = new Set(before.emitters);
  const changes = after.emitters.map((now) => {
    const known = before.emitters.filter((candidate) => left.has(candidate) && sameRadio(candidate, now));
    const then = known.find(({ channel }) => channel === now.channel) ?? known[0];
    if (then !== undefined) left.delete(then);
    return changeOf(then ?? null, now);
  });
  for (const then of left) changes.push(changeOf(then, null));
  return changes.sort(
    (a, b) =>
      Math.abs(b.airtimeChangeRatio) - Math.abs(a.airtimeChangeRatio) ||
      Math.abs(b.levelChangeDb ?? 0) - Math.abs(a.levelChangeDb ?? 0) ||
      (a.emitter < b.emitter ? -1 : 1),
  );
}

/** A radio that moved is the same one on another channel. */
function sameRadio(a: SurveyEmitter, b: SurveyEmitter): boolean {
  if (a.bssids.length === 0 || b.bssids.length === 0) return a.emitter === b.emitter;
  return a.bssids.some((bssid) => b.bssids.includes(bssid));
}

function changeOf(then: SurveyEmitter | null, now: SurveyEmitter | null): EmitterChange {
  const { emitter, names, channel } = (now ?? then)!;
  return {
    emitter,
    names,
    channel,
    before: stateOf(then),
    after: stateOf(now),
    levelChangeDb: then === null || now === null ? null : now.levelDbm - then.levelDbm,
    airtimeChangeRatio: (now?.airtimeRatio ?? 0) - (then?.airtimeRatio ?? 0),
  };
}

function stateOf(source: SurveyEmitter | null): HeardState | null {
  if (source === null) return null;
  const { channel, levelDbm, airtimeRatio, airtimeAssumed } = source;
  return { channel, levelDbm, airtimeRatio, airtimeAssumed };
}
