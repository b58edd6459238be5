import { ascending, descending, extent, group, least, max, min, quantile } from "d3-array";
import { airtimeOf, reportedAirtime } from "./survey-airtime.js";
import type { AssumedAirtime } from "./survey-airtime.js";
import { sourceOwner } from "./source-owner.js";
import type { OwnerMarks } from "./source-owner.js";
import { louder } from "./survey-source.js";
import type { AnnouncedSource, Heard } from "./survey-source.js";
import type { PlaceLevel, SurveyEmitter } from "./survey.js";
import { STANDARDS } from "./reading.js";
import type { Reading } from "./reading.js";

/** What a survey knows beyond one source. */
export interface SurveyContext {
  readonly levelQuantile: number;
  readonly fullestRank: number;
  readonly assumedAirtime: AssumedAirtime;
  /** Whose sources are, as far as the user said. */
  readonly marks: OwnerMarks;
  /** Addresses heard on more than one channel. */
  readonly moved: ReadonlySet<string>;
}

/**
 * One radio as the survey tells it. Its level at an instant is the highest of its names, at a place the level
 * quantile over the instants there, and over the places the highest; rows that disagree on width, centre or
 * standard: the latest time wins, then the widest, then the newest standard.
 */
export function surveyEmitter(radio: readonly AnnouncedSource[], context: SurveyContext): SurveyEmitter {
  const readings = radio.flatMap((source) => source.readings);
  const heard = heardTogether(radio);
  const places = placeLevels(heard, context.levelQuantile);
  const loudest = places.reduce((best, place) => (place.levelDbm > best.levelDbm ? place : best));
  const { centreMhz, centreAssumed, widthMhz, standard } = least(readings, byAuthority)!;
  const bssids = radio
    .map(({ bssid }) => bssid)
    .filter((bssid) => bssid !== null)
    .sort(ascending);
  const key = bssids[0] ?? radio[0]!.key;
  const { channel } = radio[0]!;
  const moved = bssids.some((bssid) => context.moved.has(bssid));
  const [firstMs, lastMs] = extent(readings, ({ timeMs }) => timeMs);
  const at = (timeMs: number | undefined): string | null =>
    timeMs === undefined ? null : new Date(timeMs).toISOString();
  const names = namesIn(readings);
  const { levelDbm } = loudest;
  const owner = sourceOwner({ names, bssids, levelDbm }, context.marks, context.assumedAirtime.ownFromDbm);
  return {
    emitter: bssids.length === 0 || context.moved.has(key) ? `${key}@${channel}` : key,
    bssids,
    names,
    channel,
    centreMhz,
    centreAssumed,
    widthMhz,
    standard,
    levelDbm,
    levelPlace: loudest.place,
    levelAssumed: readings.some(({ signalAssumed }) => signalAssumed),
    places,
    ...airtimeOf(heard, levelDbm, context.fullestRank, context.assumedAirtime, owner.owner === "building"),
    ...owner,
    reportedAirtime: reportedAirtime(heard),
    moved,
    firstSeen: at(firstMs),
    lastSeen: at(lastMs),
  };
}

/** Names announced, sorted; hidden ones left out. */
function namesIn(readings: readonly Reading[]): string[] {
  return [...new Set(readings.map(({ ssid }) => ssid))].filter((ssid) => ssid !== "").sort(ascending);
}

function heardTogether(radio: readonly AnnouncedSource[]): Heard[] {
  const together = new Map<string, Heard>();
  for (const source of radio)
    for (const [instant, heard] of source.heard) {
      const before = together.get(instant);
      together.set(instant, before === undefined ? heard : louder(before, heard));
    }
  return [...together.values()];
}

function placeLevels(heard: readonly Heard[], levelQuantile: number): PlaceLevel[] {
  return [...group(heard, ({ place }) => place)]
    .map(([place, there]) => ({
      place,
      levelDbm: quantile(there, levelQuantile, ({ signalDbm }) => signalDbm)!,
      readingCount: there.length,
      lowestDbm: min(there, ({ signalDbm }) => signalDbm)!,
      highestDbm: max(there, ({ signalDbm }) => signalDbm)!,
    }))
    .sort((a, b) => ascending(a.place, b.place));
}

/** The row to believe first. */
function byAuthority(a: Reading, b: Reading): number {
  return (
    descending(a.timeMs ?? -Infinity, b.timeMs ?? -Infinity) ||
    descending(a.widthMhz, b.widthMhz) ||
    descending(STANDARDS.indexOf(a.standard), STANDARDS.indexOf(b.standard)) ||
    ascending(a.centreAssumed, b.centreAssumed) ||
    ascending(a.centreMhz, b.centreMhz)
  );
}
