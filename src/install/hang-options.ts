import type { HangFigures } from "./hang-figures.js";

/** A ceiling point and the luminaire that hangs from it. Lengths in m; a figure not given is the sheet's. */
export interface HangPoint extends Partial<HangFigures> {
  readonly name: string;
  readonly room: string;
  /** The row that it hangs in; luminaires of one room, group and trim are hung level. */
  readonly group?: string | null;
  /** Place in the order of hanging, before those that have none. */
  readonly hangIndex?: number | null;
  /** Of the ceiling point above the floor under it. */
  readonly ceilingHeightM: number | null;
  /** Of the luminaire's lowest point; null: the room's. */
  readonly trimHeightM: number | null;
  /** The floor under it above (+) or below (−) the room's datum; 0 unless given. */
  readonly floorOffsetM?: number;
  /** Where trim is measured from; the datum unless told. */
  readonly trimFrom?: "datum" | "local-floor";
  /** Of the luminaire alone; nothing weighs 0, so that 0 counts as not given. */
  readonly weightKg: number | null;
  /** Does it count as emergency or exit lighting? `unknown` unless given. */
  readonly emergency?: "yes" | "no" | "unknown";
}

/** Trim height and laser line of a room, both above its datum. */
export interface RoomTrim {
  readonly room: string;
  readonly trimHeightM: number | null;
  /** Of the laser line that trim is measured from; null: none set up yet. */
  readonly laserLineM?: number | null;
}

/** How a hang sheet is worked out. */
export interface HangOptions {
  /** Their order is the order of hanging where `hangIndex` says nothing. */
  readonly points: readonly HangPoint[];
  readonly rooms?: readonly RoomTrim[];
  /** For all points that give none of their own. */
  readonly figures?: Partial<HangFigures>;
  /** May a luminaire hang below its trim, where that is nearer? False unless told. */
  readonly mayHangBelowTrim?: boolean;
  /** Are rows brought level by a link more or less? True unless told: else each is nearest to its own trim. */
  readonly levelsRows?: boolean;
  /** Difference within a row that the eye forgives, m; 0.02 unless given (assumed). */
  readonly eyeToleranceM?: number;
  /** Share of chain and cord ordered on top; 0.1 unless given (assumed). */
  readonly wasteRatio?: number;
  /** Lengths on a spool or in a drum; null: ordered by the metre. */
  readonly chainSpoolM?: number | null;
  readonly cordSpoolM?: number | null;
  readonly safetySpoolM?: number | null;
}
