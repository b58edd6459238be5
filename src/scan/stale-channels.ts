import type { Fault } from "./fault.js";
import type { Reading } from "./reading.js";
import type { ScanTally } from "./scan-tally.js";

/** Rejects the readings of a file that {@link staleReadings} names. */
export function dropStaleChannels(tally: ScanTally): void {
  tally.drop(staleReadings(tally.readings), stalenessOf);
}

/**
 * Readings that a fresher one of the same address outdates: a radio is on one channel at a time, and what
 * a scan remembers from before it moved is no second radio. Within a time and a place, the k-th highest
 * reading of an address on each of its channels belong together; of those the one heard last is kept.
 * A reading without an age counts as the oldest; where none has one all are kept; of equal ages the
 * stronger is kept, then the lower channel.
 */
export function staleReadings(readings: readonly Reading[]): ReadonlySet<Reading> {
  const byAddress = new Map<string, Reading[]>();
  for (const reading of readings) {
    if (reading.bssid === null) continue;
    const key = JSON.stringify([reading.timeMs, reading.place, reading.bssid]);
    const group = byAddress.get(key);
    if (group === undefined) byAddress.set(key, [reading]);
    else group.push(reading);
  }
  return new Set([...byAddress.values()].flatMap(outdatedIn));
}

function outdatedIn(readings: readonly Reading[]): readonly Reading[] {
  const channels = new Map<number, Reading[]>();
  for (const reading of [...readings].sort(byLevelThenAge)) {
    const ranked = channels.get(reading.channel);
    if (ranked === undefined) channels.set(reading.channel, [reading]);
    else ranked.push(reading);
  }
  if (channels.size < 2) return [];
  const longestCount = Math.max(...[...channels.values()].map(({ length }) => length));
  return Array.from({ length: longestCount }, (_, rank) =>
    [...channels.values()].flatMap((ranked) => ranked[rank] ?? []),
  ).flatMap(outdatedOf);
}

/** @param together readings of one address at one instant, each on a channel of its own */
function outdatedOf(together: readonly Reading[]): readonly Reading[] {
  if (together.every(({ ageMs }) => ageMs === null)) return [];
  const [freshest] = [...together].sort(byFreshness);
  return together.filter((reading) => reading !== freshest);
}

function byLevelThenAge(a: Reading, b: Reading): number {
  return b.signalDbm - a.signalDbm || compareAges(a, b) || a.line - b.line;
}

function byFreshness(a: Reading, b: Reading): number {
  return compareAges(a, b) || b.signalDbm - a.signalDbm || a.channel - b.channel;
}

function compareAges(a: Reading, b: Reading): number {
  if (a.ageMs === b.ageMs) return 0;
  return (a.ageMs ?? Infinity) < (b.ageMs ?? Infinity) ? -1 : 1;
}

function stalenessOf({ bssid, channel, ageMs }: Reading): Fault {
  return {
    code: "stale-channel",
    column: "last seen",
    value: `${bssid} on channel ${channel}, ${ageMs === null ? "no age" : `${ageMs} ms ago`}`,
    expected: "one channel of an address at a time, the one heard last",
  };
}
