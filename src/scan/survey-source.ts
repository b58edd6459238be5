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
  const instants = new Instants();
  const byKey = group(filed, ({ reading }) =>
    reading.bssid === null ? `name ${reading.ssid}` : reading.bssid,
  );
  for (const rows of byKey.values()) {
    const untimed = untimedInstants(rows, instants);
    for (const [channel, own] of group(rows, ({ reading }) => reading.channel)) {
      const { bssid, ssid } = own[0]!.reading;
      const heard = new Map<string, Heard>();
      for (const row of own) addHeard(heard, untimed.get(row) ?? instants.of(row), row.reading);
      sources.push({
        bssid,
        key: bssid ?? ssid,
        channel,
        readings: own.map(({ reading }) => reading),
        heard,
      });
    }
  }
  return sources;
}

/** Names of instants: one string each, however many rows fall into it. */
class Instants {
  private readonly byFile = new Map<number, Map<string, Map<number | string, string>>>();

  /** @param stamp the row's time, unless it has none: then what stands in for it, as text */
  of({ fileIndex, reading }: FiledReading, stamp: number | string = reading.timeMs!): string {
    const byPlace = known(this.byFile, fileIndex, () => new Map<string, Map<number | string, string>>());
    const byStamp = known(byPlace, reading.place, () => new Map<number | string, string>());
    return known(byStamp, stamp, () => `${fileIndex} ${stamp} ${reading.place}`);
  }
}

function known<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const before = map.get(key);
  if (before !== undefined) return before;
  const made = make();
  map.set(key, made);
  return made;
}

/** The instant of each row of one address that has no time. */
function untimedInstants(rows: readonly FiledReading[], instants: Instants): Map<FiledReading, string> {
  const instantOf = new Map<FiledReading, string>();
  const untimed = rows.filter(({ reading }) => reading.timeMs === null);
  for (const placed of group(untimed, ({ fileIndex, reading }) => `${fileIndex} ${reading.place}`).values()) {
    const strongestFirst = [...placed].sort((a, b) => byStrength(a.reading, b.reading));
    for (const [index, row] of strongestFirst.entries()) instantOf.set(row, instants.of(row, `#${index}`));
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

function addHeard(heard: Map<string, Heard>, instant: string, reading: Reading): void {
  const { place, crowd, signalDbm, airtimeRatio } = reading;
  const next = { place, crowdRank: crowdRank(crowd), signalDbm, airtimeRatio };
  const before = heard.get(instant);
  heard.set(instant, before === undefined ? next : louder(before, next));
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
