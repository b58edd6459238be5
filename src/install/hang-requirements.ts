import { ArgumentError, requireFinite, requireNonNegative, requirePositive } from "../issues/index.js";
import type { HangFigures } from "./hang-figures.js";
import type { HangOptions } from "./hang-options.js";

const POSITIVE = ["stepM", "suspensionRatedKg", "hookRatedKg", "boxRatedKg", "safetyRatedKg"] as const;
const NON_NEGATIVE = [
  "canopyM",
  "topHookM",
  "bottomHookM",
  "eyeBoltM",
  "bodyHeightM",
  "weaveRatio",
  "boxMakeUpM",
  "inletReachM",
  "safetyOffsetM",
  "safetySlackM",
  "slopeDeg",
  "suspensionKgPerM",
  "cordKgPerM",
  "hardwareKg",
  "receiverKg",
] as const;

/** @throws {ArgumentError} when a length, weight, rating or name can't be one */
export function requireHangOptions(options: HangOptions): void {
  const { points, rooms = [], figures = {} } = options;
  requireDistinct("points", points);
  requireFigures("figures", figures);
  points.forEach((point, index) => {
    const at = `points[${index}]`;
    requireFigures(at, point);
    given(`${at}.ceilingHeightM`, point.ceilingHeightM, requireNonNegative);
    given(`${at}.trimHeightM`, point.trimHeightM, requireFinite);
    given(`${at}.weightKg`, point.weightKg, requireNonNegative);
    given(`${at}.floorOffsetM`, point.floorOffsetM, requireFinite);
    given(`${at}.hangIndex`, point.hangIndex, requireFinite);
  });
  rooms.forEach(({ trimHeightM, laserLineM }, index) => {
    given(`rooms[${index}].trimHeightM`, trimHeightM, requireFinite);
    given(`rooms[${index}].laserLineM`, laserLineM, requireFinite);
  });
  given("eyeToleranceM", options.eyeToleranceM, requireNonNegative);
  given("wasteRatio", options.wasteRatio, requireNonNegative);
}

/** @throws {ArgumentError} when two of a list have one name: rows are told by it */
export function requireDistinct(argument: string, named: readonly { readonly name: string }[]): void {
  const seen = new Set<string>();
  for (const { name } of named) {
    if (seen.has(name)) throw new ArgumentError(argument, "names that differ", `${name} twice`);
    seen.add(name);
  }
}

/** Checks a figure that is there. */
export function given<T>(
  argument: string,
  value: T | null | undefined,
  require: (argument: string, value: T) => void,
): void {
  if (value !== null && value !== undefined) require(argument, value);
}

function requireFigures(at: string, figures: Partial<HangFigures>): void {
  for (const key of POSITIVE) given(`${at}.${key}`, figures[key], requirePositive);
  for (const key of NON_NEGATIVE) given(`${at}.${key}`, figures[key], requireNonNegative);
}
