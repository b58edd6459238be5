import { ascending, descending, group } from "d3-array";
import { crowdRank } from "./survey-crowd.js";
import type { Reading } from "./reading.js";

/** What one source put into one instant: one file × time stamp × place. */
export interface Heard {
  readonly place: string;
  readonly crowdRank: number;
  /** The highest of the rows that fall into the instant, dBm. */
  readonly signalDbm: number;
  /** The greatest reported, 0..1; null when none was. */
  readonly airtimeRatio: number | null;
}

/** One announced address on one channel, or one name on one channel where a format has no addresses. */
export interface AnnouncedSource {
  /** Lower-case address; null where the format has none. */
  readonly bssid: string | null;
  /** Address, or name. */
  readonly key: string;
  readonly channel: number;
  readonly readings: readonly Reading[];
  /** By instant. */
  readonly heard: ReadonlyMap<string, Heard>;
}

/** A reading with the file that it came from: two files of one name stay two. */
export interface FiledReading {
  readonly fileIndex: number;
  readonly reading: Reading;
}

/**
 * Readings gathered by address (or name) and channel, each with the instants at which it was heard. Where the
 * time is blank, the k-th highest reading of an address in a file and place belongs to that place's k-th instant.
 */
export function announcedSources(filed: readonly FiledReading[]): AnnouncedSource[] {
  const sources: AnnouncedSource[] = [];
  const byKey = group(filed, ({ reading }) =>
    reading.bssid === null ? `name ${reading.ssid}` : reading.bssid,
  );
  for (const rows of byKey.values()) {
    const instantOf = instants(rows);
    for (const [channel, own] of group(rows, ({ reading }) => reading.channel)) {
      const { bssid, ssid } = own[0]!.reading;
      sources.push({
        bssid,
        key: bssid ?? ssid,
        channel,
        readings: own.map(({ reading }) => reading),
        heard: heardAt(own, instantOf),
      });
    }
  }
  return sources;
}

/** The instant of each row of one address. */
function instants(rows: readonly FiledReading[]): Map<FiledReading, string> {
  const instantOf = new Map<FiledReading, string>();
  const untimed: FiledReading[] = [];
  for (const row of rows) {
    const { timeMs, place } = row.reading;
    if (timeMs === null) untimed.push(row);
    else instantOf.set(row, JSON.stringify([row.fileIndex, place, timeMs]));
  }
  const byPlace = group(untimed, ({ fileIndex, reading }) => JSON.stringify([fileIndex, reading.place]));
  for (const [place, placed] of byPlace) {
    const strongestFirst = [...placed].sort((a, b) => byStrength(a.reading, b.reading));
    for (const [index, row] of strongestFirst.entries()) instantOf.set(row, `${place} ${index}`);
  }
  return instantOf;
}

/** Strongest first; of equals the busier, the fuller room, the lower channel: never the order of rows. */
function byStrength(a: Reading, b: Reading): number {
  return (
    descending(a.signalDbm, b.signalDbm) ||
    descending(a.airtimeRatio ?? -1, b.airtimeRatio ?? -1) ||
    descending(crowdRank(a.crowd), crowdRank(b.crowd)) ||
    ascending(a.channel, b.channel)
  );
}

function heardAt(
  rows: readonly FiledReading[],
  instantOf: ReadonlyMap<FiledReading, string>,
): Map<string, Heard> {
  const heard = new Map<string, Heard>();
  for (const row of rows) {
    const instant = instantOf.get(row)!;
    const { place, crowd, signalDbm, airtimeRatio } = row.reading;
    const next = { place, crowdRank: crowdRank(crowd), signalDbm, airtimeRatio };
    const before = heard.get(instant);
    heard.set(instant, before === undefined ? next : louder(before, next));
  }
  return heard;
}

/** Two readings of one instant as one: the highest level, the greatest airtime, the fullest crowd. */
export function louder(a: Heard, b: Heard): Heard {
  const reported = [a.airtimeRatio, b.airtimeRatio].filter((ratio) => ratio !== null);
  return {
    place: a.place,
    crowdRank: Math.max(a.crowdRank, b.crowdRank),
    signalDbm: Math.max(a.signalDbm, b.signalDbm),
    airtimeRatio: reported.length === 0 ? null : Math.max(...reported),
  };
}
