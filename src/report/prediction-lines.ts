import type { SiteRow } from "../venue/index.js";
import type { ChannelReport } from "./channel-report.js";
import { distanceCell, fixed } from "./number-format.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { wrapped } from "./text-layout.js";

type PredictAt = ChannelReport["predictAt"];

/** How far readings will lie about each row's level, where a model fitted on site says it. */
export function predictionLines(predictAt: PredictAt, rows: readonly SiteRow[], style: TextStyle): string[] {
  if (predictAt === null) return [];
  const words = rows.map(({ distanceM, floorDistanceM }) => {
    const half = `±${fixed(halfDb(predictAt, distanceM), 1)} dB`;
    return `${half} at ${distanceCell(floorDistanceM ?? distanceM, style.units)}`;
  });
  const told = `Fitted on site: 95 % of readings lie about rx dBm within ${words.join(", ")}.`;
  return wrapped(told, style.columnCount);
}

/** The same at one distance, for what was assumed. */
export function predictionWords(predictAt: PredictAt, distanceM: number, unit: LengthUnit): string | null {
  if (predictAt === null) return null;
  const at = distanceCell(distanceM, unit);
  return `95 % of readings lie within ±${fixed(halfDb(predictAt, distanceM), 1)} dB at ${at}`;
}

function halfDb(predictAt: NonNullable<PredictAt>, distanceM: number): number {
  const [low, high] = predictAt(distanceM).intervalDb;
  return (high - low) / 2;
}
