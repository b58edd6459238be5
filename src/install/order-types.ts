import type { CircuitSheet } from "./circuit-types.js";
import type { HangSheet } from "./hang-sheet-types.js";
import type { SpoolOrder } from "./spool-order.js";

/** What is ordered by the piece. */
export type PieceItem =
  | "transmitter"
  | "receiver"
  | "transmitter-antenna"
  | "receiver-antenna"
  | "isolated-splitter"
  | "dmx-cable"
  | "terminator"
  | "power-connector"
  | "hook"
  | "swivel-canopy";

/** What is ordered by the length. */
export type LengthItem = "chain" | "wire-rope" | "stem" | "safety-cable" | "cord";

/** A system's radio parts. */
export interface OrderSystem {
  readonly name: string;
}

/** A receiver and the luminaires that it serves over a short cable. */
export interface OrderReceiver {
  readonly name: string;
  readonly system: string;
  readonly luminaires: readonly string[];
}

/** What an order list is worked out from. */
export interface OrderOptions {
  readonly systems: readonly OrderSystem[];
  readonly receivers: readonly OrderReceiver[];
  readonly hang: HangSheet;
  readonly circuits: CircuitSheet;
  /** Share of pieces on top, in whole units; 0.1 unless given (assumed). */
  readonly spareRatio?: number;
  /** Null: cord is ordered by the metre. */
  readonly cordSpoolM?: number | null;
  /** Do antennas come apart from the boxes? True unless told. */
  readonly antennasApart?: boolean;
}

/** How much of a line one row needs. */
export interface PieceNeed {
  /** Of the luminaire, receiver or system. */
  readonly name: string;
  readonly pieceCount: number;
}

/** A line of the order by the piece. */
export interface PieceLine {
  readonly kind: "pieces";
  readonly item: PieceItem;
  readonly neededCount: number;
  readonly spareCount: number;
  readonly orderCount: number;
  /** Sums up to `neededCount`. */
  readonly needs: readonly PieceNeed[];
}

/** What one row needs of a length. */
export interface LengthNeed {
  readonly name: string;
  readonly lengthM: number;
}

/** A line of the order by the length; pieces are cut whole. */
export interface LengthLine {
  readonly kind: "lengths";
  readonly item: LengthItem;
  /** Cord: the conductor, as "14 AWG"; null: not decided, or no cord. */
  readonly conductor: string | null;
  /** Chain: inside length of a link; stem: its step; null: any length. */
  readonly stepM: number | null;
  readonly order: SpoolOrder;
  /** Sums up to `order.lengthM`. */
  readonly needs: readonly LengthNeed[];
}

/** What the order lacks, because a figure of the row isn't known. */
export interface OrderGap {
  readonly item: "suspension" | "cord" | "safety-cable" | "conductor" | "receiver";
  readonly name: string;
}

/** The order list. */
export interface OrderList {
  readonly lines: readonly (PieceLine | LengthLine)[];
  /** Not in the order yet, or (conductor) in it without a gauge. */
  readonly gaps: readonly OrderGap[];
  readonly spareRatio: number;
  readonly wasteRatio: number;
}
