import type { Enclosure, Figure, RadioProfile } from "./profile.js";
import { enclosureLosses } from "./enclosure.js";
import type { ValueReader } from "./profile-values.js";
import { numberFrom, orNull, readShape, wholeFrom, wordOf } from "./profile-values.js";

/** The keys of a profile that hold a figure. */
export type FigureKey = {
  [Key in keyof RadioProfile]: RadioProfile[Key] extends { readonly value: unknown; readonly status: unknown }
    ? Key
    : never;
}[keyof RadioProfile];

/** How the value of each figure is read, and what range is believable. */
export const figureReaders: {
  readonly [Key in FigureKey]: ValueReader<RadioProfile[Key] extends Figure<infer Value> ? Value : never>;
} = {
  requiredCiDb: numberFrom([-30, 60], "a ratio in dB"),
  bandwidthMhz: numberFrom([0.01, 100], "a noise bandwidth in MHz"),
  noiseFigureDb: numberFrom([0, 40], "a noise figure in dB"),
  sensitivityDbm: numberFrom([-140, -20], "a level in dBm"),
  selectivity: readShape,
  emission: readShape,
  txPowerDbm: numberFrom([-60, 40], "a power in dBm"),
  txFeederLossDb: numberFrom([0, 60], "a loss in dB"),
  txGainDbi: numberFrom([-30, 30], "a gain in dBi"),
  rxGainDbi: numberFrom([-30, 30], "a gain in dBi"),
  enclosure: wordOf(Object.keys(enclosureLosses) as Enclosure[]),
  enclosureLossDb: numberFrom([0, 100], "a loss in dB"),
  packetMs: numberFrom([0.01, 1000], "a packet's length in ms"),
  transmissionsPerFrameCount: wholeFrom([1, 100], "transmissions of a frame"),
  frameRateHz: numberFrom([0.1, 1000], "frames a second"),
  universesPerTransmitterCount: wholeFrom([1, 1000], "universes"),
  receiversFollow: wordOf(["yes", "no", "unknown"]),
  relinkS: orNull(numberFrom([0, 86_400], "null, or a time in s")),
};

/** In the order in which a profile prints them. */
export const figureKeys = Object.keys(figureReaders) as FigureKey[];
