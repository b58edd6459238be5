import type { EmergencyNotice } from "./emergency-notice.js";
import type { HangFigures, HangsFrom, Suspension } from "./hang-figures.js";
import type { HangLoad } from "./hang-load.js";
import type { SpoolOrder } from "./spool-order.js";

/** Why a row has no suspension length. */
export type HangGap = "ceiling-height" | "trim-height" | "body-height" | "step" | "no-room";

/** What a crew must see before it lifts. */
export type HangFlag =
  | "rating-not-given"
  | "beyond-rating"
  | "weight-not-given"
  | "beyond-box-limit"
  | "swivel-canopy"
  | "slope-unknown"
  | "uneven"
  | "below-trim"
  | "emergency"
  | "emergency-unknown";

/** A cord from box to inlet, m. */
export interface HangCord {
  /** Along the chain, rope or stem. */
  readonly suspensionM: number;
  /** Past canopy, hooks and eye bolt. */
  readonly hardwareM: number;
  readonly weaveM: number;
  readonly boxMakeUpM: number;
  readonly inletReachM: number;
  /** The sum: the length to cut. */
  readonly lengthM: number;
}

/** A luminaire on the hang sheet. */
export interface HangRow {
  readonly name: string;
  readonly room: string;
  readonly group: string | null;
  /** 1 for the first to be hung. */
  readonly hangRank: number;
  readonly suspension: Suspension;
  readonly hangsFrom: HangsFrom;
  /** Both above the datum. */
  readonly ceilingHeightM: number | null;
  readonly trimHeightM: number | null;
  /** Trim above (+) or below (−) the laser line; null: no line. */
  readonly trimAboveLineM: number | null;
  /** Ceiling − trim − canopy, hooks and eye bolt − body: what the suspension has to fill. */
  readonly dropM: number | null;
  readonly hardwareM: number;
  readonly bodyHeightM: number | null;
  /** Inside length of a link, or a stem's step; null: cut to any length. */
  readonly stepM: number | null;
  /** Whole links or steps; null: cut to any length. */
  readonly stepCount: number | null;
  /** Length between its ends' bearings. */
  readonly suspensionM: number | null;
  /** How much higher than trim it comes out; negative: lower. */
  readonly trimErrorM: number | null;
  /** How far from the level of its row; 0 where the eye forgives it. */
  readonly unevenM: number | null;
  readonly safetyM: number | null;
  readonly cord: HangCord | null;
  readonly load: HangLoad;
  readonly swivelCanopy: "needed" | "not-needed" | "unknown";
  readonly gap: HangGap | null;
  readonly flags: readonly HangFlag[];
  /** Figures that nobody gave. */
  readonly assumed: readonly (keyof HangFigures)[];
}

/** Luminaires hung to one trim. */
export interface HangLevel {
  readonly room: string;
  readonly group: string | null;
  readonly trimHeightM: number;
  readonly names: readonly string[];
  /** Highest less lowest. */
  readonly spreadM: number;
  readonly uneven: readonly string[];
}

/** One kind of suspension, all its pieces. */
export interface SuspensionTotal {
  readonly suspension: Suspension;
  readonly stepM: number | null;
  /** Whole links; null: cut to any length. */
  readonly stepCount: number | null;
  readonly order: SpoolOrder;
}

/** Where the datum's laser line stands in a room. */
export interface HangDatum {
  readonly room: string;
  /** Null: not set up; its height is a blank on the sheet. */
  readonly laserLineM: number | null;
}

/** The hang sheet: all lengths m, weights kg; it certifies nothing. */
export interface HangSheet {
  /** In the order of hanging. */
  readonly rows: readonly HangRow[];
  readonly levels: readonly HangLevel[];
  readonly suspensions: readonly SuspensionTotal[];
  readonly cord: SpoolOrder;
  readonly safety: SpoolOrder;
  readonly datums: readonly HangDatum[];
  /** Luminaires of which a needed rating was not given, or that go beyond one. */
  readonly doNotHang: readonly string[];
  readonly emergency: EmergencyNotice;
  readonly eyeToleranceM: number;
  readonly wasteRatio: number;
}
