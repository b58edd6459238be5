import { enclosureLosses } from "../enclosure.js";
import type { Figure, RadioProfile } from "../profile.js";

/** @returns a figure of this project's own, to be replaced by the data sheet's */
export function assumed<T>(value: T, why = "put your data sheet's figure here"): Figure<T> {
  return { value, status: "assumed", source: why };
}

/** @returns a figure of a published standard */
export function standard<T>(value: T, source: string): Figure<T> {
  return { value, status: "standard", source };
}

/** Figures that every built-in profile shares, all assumed. */
export const sharedFigures = {
  noiseFigureDb: assumed(10),
  txPowerDbm: assumed(18),
  txFeederLossDb: assumed(0),
  txGainDbi: assumed(2),
  rxGainDbi: assumed(2),
  enclosure: assumed("slotted-metal", "assumed: the receiver sits in a canopy with slots"),
  enclosureLossDb: enclosureLosses["slotted-metal"],
  packetMs: assumed(4.5),
  transmissionsPerFrameCount: assumed(1, "assumed: no repeats; put your data sheet's figure here"),
  frameRateHz: assumed(44, "assumed: DMX512 at its full rate, ANSI E1.11"),
  universesPerTransmitterCount: assumed(1),
  receiversFollow: assumed("unknown", "try it: change the channel and see whether receivers come back"),
  relinkS: assumed(null, "unknown: time it once on the bench"),
} as const satisfies Partial<RadioProfile>;
