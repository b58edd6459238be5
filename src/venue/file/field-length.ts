import { feetToM, mToFeet } from "../../units/index.js";
import type { PlanPoint } from "../venue-room.js";
import type { Field } from "./field.js";
import type { Bounds } from "./field-values.js";
import type { FileSpot } from "./file-spot.js";

/** A length in the file's own unit, read as metres. `atLeast` bounds may be reached unless they are 0 exclusive. */
export function length(description: string, [lowM, highM]: Bounds, isPositive = false): Field<number> {
  const words = `${description}, in the file's unit`;
  const highest = Math.ceil(mToFeet(highM));
  const least = isPositive ? { exclusiveMinimum: 0 } : { minimum: Math.floor(mToFeet(lowM)) };
  return {
    schema: { description: words, type: "number", ...least, maximum: highest },
    read: (raw, spot) => {
      const valueM = inM(raw, spot);
      if (valueM >= lowM && valueM <= highM && (valueM > 0 || !isPositive)) return valueM;
      const least = isPositive ? "above 0" : `from ${inUnit(lowM, spot)}`;
      const most = `${isPositive ? ", at most" : " to"} ${inUnit(highM, spot)} ${spot.units}`;
      return spot.error(raw, `${description}: a number ${least}${most}`);
    },
  };
}

/** A place on the plan, `[x, y]` in the file's unit. */
export function point(description: string): Field<PlanPoint> {
  const far = Math.ceil(mToFeet(FARTHEST_M));
  const coordinate = { type: "number", minimum: -far, maximum: far };
  return {
    schema: {
      description: `${description}: [x, y] on the plan, in the file's unit`,
      type: "array",
      prefixItems: [coordinate, coordinate],
      minItems: 2,
      maxItems: 2,
      items: false,
    },
    read: (raw, spot) => {
      const pair: readonly unknown[] = Array.isArray(raw) && raw.length === 2 ? raw : [];
      const [x = NaN, y = NaN] = pair.map((cell) => inM(cell, spot));
      if (Math.abs(x) <= FARTHEST_M && Math.abs(y) <= FARTHEST_M) return { x, y };
      return spot.error(raw, `${description}: [x, y] on the plan, two numbers in ${spot.units}`);
    },
  };
}

/** Farthest from the plan's origin that anything may be, m. */
export const FARTHEST_M = 2000;

/** A length in a file's unit, to be told: whole centimetres or tenths of a foot. */
export function inUnit(lengthM: number, { units }: Pick<FileSpot, "units">): string {
  return units === "m"
    ? String(Math.round(lengthM * 100) / 100)
    : String(Math.round(mToFeet(lengthM) * 10) / 10);
}

/** A length with its unit, to be told. */
export function lengthWords(lengthM: number, spot: Pick<FileSpot, "units">): string {
  return `${inUnit(lengthM, spot)} ${spot.units}`;
}

function inM(raw: unknown, { units }: FileSpot): number {
  if (typeof raw !== "number" || !Number.isFinite(raw)) return NaN;
  return units === "m" ? raw : feetToM(raw);
}
