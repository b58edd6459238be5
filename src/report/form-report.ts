import type { Caution, FormSection } from "../install/index.js";
import type { LengthUnit } from "./pen.js";

/** A room's share of the form: what is known is printed, what is null is left blank. */
export interface FormRoom {
  readonly name: string | null;
  /** Names of its ceiling points' luminaires. */
  readonly points: readonly (string | null)[];
}

/** The blank survey form, in whatever shape. */
export interface FormReport {
  readonly venueName: string | null;
  readonly units: LengthUnit;
  readonly rooms: readonly FormRoom[];
  readonly sections: readonly FormSection[];
  /** How the band is scanned, step by step. */
  readonly drill: readonly string[];
  readonly cautions: readonly Caution[];
}

/** Blank lines for what belongs to no one room. */
export const FORM_ROW_COUNTS = { emitter: 6, "access point": 6, scan: 10 } as const;
