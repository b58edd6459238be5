import { SLACK } from "../units/index.js";
import type { HangFigures } from "./hang-figures.js";
import { HANG_DEFAULTS } from "./hang-figures.js";
import type { HangOptions, HangPoint } from "./hang-options.js";
import type { HangGap } from "./hang-sheet-types.js";

/** A point with its figures settled and its heights above the room's datum. */
export interface HangPlace {
  readonly point: HangPoint;
  readonly figures: HangFigures;
  readonly assumed: readonly (keyof HangFigures)[];
  readonly ceilingHeightM: number | null;
  readonly trimHeightM: number | null;
  readonly trimAboveLineM: number | null;
  readonly hardwareM: number;
  /** What chain, rope or stem has to fill; null where a height is missing. */
  readonly dropM: number | null;
  readonly gap: HangGap | null;
}

/** Figures that belong to one kind of suspension and to no other. */
const OF_SUSPENSION = ["stepM", "suspensionKgPerM", "suspensionRatedKg"] as const;
/** Assumptions that change a length, and so are told. */
const TOLD = [
  "suspension",
  "canopyM",
  "topHookM",
  "bottomHookM",
  "eyeBoltM",
  "weaveRatio",
  "boxMakeUpM",
  "inletReachM",
  "safetyOffsetM",
  "safetySlackM",
  "hardwareKg",
] as const;

/** A point's heights: ceiling and local trim are above the floor under it, trim else above the datum. */
export function hangPlace(point: HangPoint, options: HangOptions): HangPlace {
  const { figures, assumed } = settledFigures(point, options.figures ?? {});
  const room = options.rooms?.find((one) => one.room === point.room);
  const { floorOffsetM = 0, trimFrom = "datum" } = point;
  const trimM = point.trimHeightM ?? room?.trimHeightM ?? null;
  const trimHeightM = trimM === null ? null : trimM + (trimFrom === "datum" ? 0 : floorOffsetM);
  const ceilingHeightM = point.ceilingHeightM === null ? null : point.ceilingHeightM + floorOffsetM;
  const { canopyM, topHookM, bottomHookM, eyeBoltM, bodyHeightM } = figures;
  const hardwareM = canopyM + topHookM + bottomHookM + eyeBoltM;
  const lineM = room?.laserLineM ?? null;
  const trimAboveLineM = lineM === null || trimHeightM === null ? null : trimHeightM - lineM;
  const dropM =
    ceilingHeightM === null || trimHeightM === null || bodyHeightM === null
      ? null
      : ceilingHeightM - trimHeightM - hardwareM - bodyHeightM;
  const place = { point, figures, assumed, ceilingHeightM, trimHeightM, trimAboveLineM, hardwareM, dropM };
  return { ...place, gap: gapOf(place) };
}

function gapOf({ ceilingHeightM, trimHeightM, figures, dropM }: Omit<HangPlace, "gap">): HangGap | null {
  if (ceilingHeightM === null) return "ceiling-height";
  if (trimHeightM === null) return "trim-height";
  if (dropM === null) return "body-height";
  if (dropM < -SLACK) return "no-room";
  return figures.suspension === "chain" && figures.stepM === null ? "step" : null;
}

/** The point's own figures, then the sheet's, then the defaults; null is not given. */
function settledFigures(
  point: HangPoint,
  sheet: Partial<HangFigures>,
): { figures: HangFigures; assumed: (keyof HangFigures)[] } {
  const suspension = point.suspension ?? sheet.suspension ?? HANG_DEFAULTS.suspension;
  const isSheets = suspension === (sheet.suspension ?? HANG_DEFAULTS.suspension);
  const others = isSheets ? sheet : without(sheet, OF_SUSPENSION);
  const keys = Object.keys(HANG_DEFAULTS) as (keyof HangFigures)[];
  const settled = keys.map((key) => [key, point[key] ?? others[key] ?? HANG_DEFAULTS[key]] as const);
  const figures = Object.fromEntries(settled) as unknown as HangFigures;
  const assumed = TOLD.filter((key) => (point[key] ?? sheet[key] ?? null) === null);
  return { figures: suspension === "wire-rope" ? { ...figures, stepM: null } : figures, assumed };
}

function without(figures: Partial<HangFigures>, keys: readonly (keyof HangFigures)[]): Partial<HangFigures> {
  return Object.fromEntries(
    Object.entries(figures).filter(([key]) => !keys.includes(key as keyof HangFigures)),
  );
}
