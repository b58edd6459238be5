import { SLACK } from "../units/index.js";
import { hangFlags } from "./hang-flags.js";
import { hangLoad } from "./hang-load.js";
import type { HangPlace } from "./hang-place.js";
import type { HangCord, HangRow } from "./hang-sheet-types.js";

/** Slope above which a canopy has to swivel. Common practice, no source. */
export const SWIVEL_SLOPE_DEG = 5;

/** What the other rows decide of a row. */
export interface HangRowTerms {
  readonly hangRank: number;
  readonly stepCount: number | null;
  readonly unevenM: number | null;
}

/** How long chain, rope or stem comes out; null where it can't be said. */
export function suspensionLengthM(
  { gap, dropM, figures }: HangPlace,
  stepCount: number | null,
): number | null {
  if (gap !== null || dropM === null) return null;
  if (stepCount !== null && figures.stepM !== null) return stepCount * figures.stepM;
  return Math.max(0, dropM);
}

/** How much higher than trim a luminaire comes out; a difference within rounding is none. */
export function trimErrorM(place: HangPlace, suspensionM: number | null): number | null {
  if (suspensionM === null || place.dropM === null) return null;
  const errorM = place.dropM - suspensionM;
  return Math.abs(errorM) <= SLACK ? 0 : errorM;
}

/** A luminaire's line of the hang sheet. */
export function hangRow(place: HangPlace, terms: HangRowTerms): HangRow {
  const { point, figures, hardwareM } = place;
  const { slopeDeg } = figures;
  const suspensionM = suspensionLengthM(place, terms.stepCount);
  const cord = suspensionM === null ? null : hangCord(place, suspensionM);
  const weightKg = point.weightKg === 0 ? null : point.weightKg;
  const row = {
    ...{ name: point.name, room: point.room, group: point.group ?? null, ...terms },
    ...{ suspension: figures.suspension, hangsFrom: figures.hangsFrom, bodyHeightM: figures.bodyHeightM },
    stepM: figures.stepM,
    ceilingHeightM: place.ceilingHeightM,
    trimHeightM: place.trimHeightM,
    trimAboveLineM: place.trimAboveLineM,
    ...{ dropM: place.dropM, hardwareM, suspensionM, cord },
    trimErrorM: trimErrorM(place, suspensionM),
    safetyM: suspensionM === null ? null : safetyLengthM(place, suspensionM),
    load: hangLoad({ weightKg, suspensionM, cordM: cord?.lengthM ?? null, figures }),
    swivelCanopy: slopeDeg === null ? "unknown" : slopeDeg > SWIVEL_SLOPE_DEG ? "needed" : "not-needed",
    ...{ gap: place.gap, assumed: place.assumed },
  } as const;
  return { ...row, flags: hangFlags(row, point.emergency ?? "unknown") };
}

function hangCord({ figures, hardwareM }: HangPlace, suspensionM: number): HangCord {
  const { boxMakeUpM, inletReachM, weaveRatio } = figures;
  const weaveM = suspensionM * weaveRatio;
  const lengthM = suspensionM + hardwareM + weaveM + boxMakeUpM + inletReachM;
  return { suspensionM, hardwareM, weaveM, boxMakeUpM, inletReachM, lengthM };
}

/** From an anchor of its own beside the point, straight to the eye bolt, and the slack. */
function safetyLengthM({ figures, hardwareM }: HangPlace, suspensionM: number): number {
  return Math.hypot(suspensionM + hardwareM, figures.safetyOffsetM) + figures.safetySlackM;
}
