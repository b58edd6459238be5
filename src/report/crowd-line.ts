import type { CrowdFigures } from "../venue/index.js";
import { dB, exactPercent, fixed } from "./number-format.js";

const WHO = {
  empty: "the room empty but for the crew",
  part: "part of a house",
  full: "a full house",
} as const;

/** What was assumed of the people in a venue. */
export function crowdLine(figures: CrowdFigures, crowd: "empty" | "part" | "full"): string {
  const { carriedRatio, onAirRatio, handsetEirpDbm, bodyLossDb, scanHeightGainDb } = figures;
  return (
    `Crowd: ${WHO[crowd]} by the venue file's heads; ${Number(carriedRatio.toPrecision(6))} handsets a head on, each ${exactPercent(onAirRatio)} of the time on the air ` +
    `at ${fixed(handsetEirpDbm, Number.isInteger(handsetEirpDbm) ? 0 : 1)} dBm EIRP; ${dB(bodyLossDb)} through an audience; a scan from the floor ${dB(scanHeightGainDb)} short at trim height (all assumed unless you gave them).`
  );
}
