import { requireFinite } from "../issues/index.js";
import type { Vector3 } from "../propagation/index.js";
import type { PathLossReadings } from "./path-loss-readings.js";
import type { WalkReading } from "./walk-reading.js";

/** What turns levels into losses. */
export interface WalkTerms {
  /**
   * The level that a path of 0 dB would give, dBm: transmit power − feeder + the gains of both antennas, less
   * whatever else stood in the way of every reading alike.
   */
  readonly losslessDbm: number;
  /** Where the transmitters stand, by name, for readings that give a position; m. */
  readonly transmitters?: ReadonlyMap<string, Vector3>;
}

/** Losses to be fitted, and what could not be one. */
export interface WalkLosses extends PathLossReadings {
  readonly censored: readonly boolean[];
  /** The reading behind each entry. */
  readonly readings: readonly WalkReading[];
  /** Neither a distance nor a position with a known transmitter, or not heard and no floor. */
  readonly unusable: readonly WalkReading[];
}

/**
 * Losses of a walk: loss = lossless level − received level; of what was not heard the least that it was, by the
 * floor. Wall counts are handed on where every usable reading has one.
 * @throws {ArgumentError} when the lossless level is not finite
 * @example
 * const { readings } = readReadings([{ line: 1, cells: ["distance_m", "dBm"] }, { line: 2, cells: ["4", "-52"] }], { source: "walk.csv" });
 * walkLosses(readings, { losslessDbm: 20 }).lossDb; // => [72]
 */
export function walkLosses(readings: readonly WalkReading[], terms: WalkTerms): WalkLosses {
  requireFinite("losslessDbm", terms.losslessDbm);
  const placed = readings.map((reading) => ({
    reading,
    distanceM: distanceOf(reading, terms),
    levelDbm: reading.receivedDbm ?? reading.floorDbm,
  }));
  const usable = placed.flatMap(({ reading, distanceM, levelDbm }) =>
    distanceM === null || levelDbm === null
      ? []
      : [{ reading, distanceM, lossDb: terms.losslessDbm - levelDbm }],
  );
  const used = usable.map(({ reading }) => reading);
  const walls = used.flatMap(({ wallCount }) => wallCount ?? []);
  return {
    distanceM: usable.map(({ distanceM }) => distanceM),
    lossDb: usable.map(({ lossDb }) => lossDb),
    censored: used.map(({ isHeard }) => !isHeard),
    ...(used.length > 0 && walls.length === used.length && { wallCount: walls }),
    readings: used,
    unusable: readings.filter((reading) => !used.includes(reading)),
  };
}

/** Its own distance first; else from its position to the transmitter it names, or the only one. */
function distanceOf({ distanceM, at, transmitter }: WalkReading, terms: WalkTerms): number | null {
  if (distanceM !== null) return distanceM;
  const { transmitters = new Map<string, Vector3>() } = terms;
  const from = transmitter === null && transmitters.size === 1 ? [...transmitters.values()][0] : undefined;
  const there = from ?? transmitters.get(transmitter ?? "");
  if (at === null || there === undefined) return null;
  const apartM = Math.hypot(at.x - there.x, at.y - there.y, at.z - there.z);
  return apartM > 0 ? apartM : null;
}
