import { SLACK } from "../units/index.js";
import type { HangFigures } from "./hang-figures.js";

/**
 * The weight above which a luminaire doesn't hang from an outlet box that isn't listed for more: 50 lb, called 23 kg.
 * @source NEC 314.27, from memory; local code decides
 */
export const BOX_LIMIT_KG = 50 * 0.45359237; // exact: international pound

/** Printed where a rating that the weight hangs on was not given. */
export const RATING_NOT_GIVEN = "RATING NOT GIVEN: DO NOT HANG";

/** What carries the weight. `support` stands for the box where it hangs from the structure. */
export type RatedPart = "suspension" | "hook" | "box" | "support" | "safety";

/** A weight against a figure that someone typed in: never "safe". */
export interface RatingCheck {
  readonly part: RatedPart;
  readonly ratedKg: number | null;
  readonly verdict: "within" | "beyond" | "rating-not-given" | "weight-not-given";
}

/** What hangs at a point. */
export interface HangLoad {
  readonly luminaireKg: number | null;
  readonly suspensionKg: number | null;
  readonly cordKg: number | null;
  readonly receiverKg: number | null;
  readonly hardwareKg: number;
  /** Null where a part is missing. */
  readonly totalKg: number | null;
  /** The sum of what is known. */
  readonly knownKg: number;
  /** Which parts are missing. */
  readonly missing: readonly ("luminaire" | "suspension" | "cord" | "receiver")[];
  readonly checks: readonly RatingCheck[];
  /** Against {@link BOX_LIMIT_KG}. */
  readonly boxLimit: "within" | "beyond" | "listed" | "weight-not-given" | "not-from-box";
}

/** What a load is summed from. */
export interface HangLoadTerms {
  readonly weightKg: number | null;
  readonly suspensionM: number | null;
  readonly cordM: number | null;
  readonly figures: HangFigures;
}

/** Luminaire + chain + cord + receiver + hardware against the stated ratings; each part is held to all of it. */
export function hangLoad({ weightKg, suspensionM, cordM, figures }: HangLoadTerms): HangLoad {
  const parts = {
    luminaire: weightKg,
    suspension: times(suspensionM, figures.suspensionKgPerM),
    cord: times(cordM, figures.cordKgPerM),
    receiver: figures.receiverKg,
  };
  const names = Object.keys(parts) as (keyof typeof parts)[];
  const missing = names.filter((name) => parts[name] === null);
  const hardwareKg = figures.hardwareKg ?? 0;
  const knownKg = names.reduce((sumKg, name) => sumKg + (parts[name] ?? 0), hardwareKg);
  const totalKg = missing.length === 0 ? knownKg : null;
  const weight = { knownKg, totalKg };
  const support = figures.hangsFrom === "box" ? "box" : "support";
  const rated: readonly (readonly [RatedPart, number | null])[] = [
    ["suspension", figures.suspensionRatedKg],
    ["hook", figures.hookRatedKg],
    [support, figures.boxRatedKg],
    ["safety", figures.safetyRatedKg],
  ];
  return {
    luminaireKg: parts.luminaire,
    suspensionKg: parts.suspension,
    cordKg: parts.cord,
    receiverKg: parts.receiver,
    ...{ hardwareKg, ...weight, missing },
    checks: rated.map(([part, ratedKg]) => ({ part, ratedKg, verdict: verdictOf(weight, ratedKg) })),
    boxLimit: boxLimitOf(weight, figures),
  };
}

interface KnownWeight {
  readonly knownKg: number;
  readonly totalKg: number | null;
}

function times(lengthM: number | null, kgPerM: number | null): number | null {
  return lengthM === null || kgPerM === null ? null : lengthM * kgPerM;
}

function verdictOf({ knownKg, totalKg }: KnownWeight, ratedKg: number | null): RatingCheck["verdict"] {
  if (ratedKg === null) return "rating-not-given";
  if (knownKg > ratedKg + SLACK) return "beyond";
  return totalKg === null ? "weight-not-given" : "within";
}

function boxLimitOf({ knownKg, totalKg }: KnownWeight, figures: HangFigures): HangLoad["boxLimit"] {
  if (figures.hangsFrom === "structure") return "not-from-box";
  if (figures.boxListed === "yes") return "listed";
  if (knownKg > BOX_LIMIT_KG + SLACK) return "beyond";
  return totalKg === null ? "weight-not-given" : "within";
}
