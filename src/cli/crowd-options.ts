import { CROWDS } from "../scan/index.js";
import type { Crowd } from "../scan/index.js";
import type { CrowdFigures } from "../venue/index.js";
import { badOption, numberWord } from "./words.js";
import type { NumberSpec } from "./words.js";

/** The options that say who is in a venue and what they bring. */
export interface CrowdOptions {
  readonly crowd?: string;
  readonly carriedShare?: string;
  readonly onAirShare?: string;
  readonly handsetDbm?: string;
  readonly bodyLossDb?: string;
  readonly scanHeightGainDb?: string;
}

const CARRIED: NumberSpec = {
  lowest: 0,
  highest: 10,
  expected: "handsets that are switched on, a head, 0 to 10",
  example: "0.8",
};
const ON_AIR: NumberSpec = {
  lowest: 0,
  highest: 1,
  expected: "a handset's share of time on the air, 0 to 1",
  example: "0.001",
};
const HANDSET: NumberSpec = {
  lowest: -30,
  highest: 30,
  expected: "what a handset radiates in dBm EIRP, -30 to 30",
  example: "15",
};
const BODY_LOSS: NumberSpec = {
  lowest: 0,
  highest: 60,
  expected: "the loss of a path through the audience in dB, 0 to 60",
  example: "6",
};
const HEIGHT_GAIN: NumberSpec = {
  lowest: 0,
  highest: 40,
  expected: "what a scan from the floor misses at trim height in dB, 0 to 40",
  example: "6",
};

/**
 * Which crowd is planned for: the full house unless another is named.
 * @throws {CliError} exit 64 for any other word
 */
export function crowdWord(text: string | undefined): Crowd {
  if (text === undefined) return "full";
  const crowd = CROWDS.find((word) => word === text.toLowerCase());
  if (crowd === undefined) throw badOption("--crowd", "empty, part or full", text, "full");
  return crowd;
}

/**
 * The venue's crowd with the figures that the options give instead.
 * @throws {CliError} exit 64 for a figure out of range
 */
export function crowdFigures(options: CrowdOptions, asFiled: CrowdFigures): CrowdFigures {
  const figure = (flag: string, text: string | undefined, spec: NumberSpec, otherwise: number): number =>
    text === undefined ? otherwise : numberWord(flag, text, spec);
  const { carriedShare, onAirShare, handsetDbm, bodyLossDb, scanHeightGainDb } = options;
  return {
    carriedRatio: figure("--carried-share", carriedShare, CARRIED, asFiled.carriedRatio),
    onAirRatio: figure("--on-air-share", onAirShare, ON_AIR, asFiled.onAirRatio),
    handsetEirpDbm: figure("--handset-dbm", handsetDbm, HANDSET, asFiled.handsetEirpDbm),
    bodyLossDb: figure("--body-loss-db", bodyLossDb, BODY_LOSS, asFiled.bodyLossDb),
    scanHeightGainDb: figure(
      "--scan-height-gain-db",
      scanHeightGainDb,
      HEIGHT_GAIN,
      asFiled.scanHeightGainDb,
    ),
  };
}
