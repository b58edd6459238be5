import type { StopSignal } from "../issues/index.js";
import type { ResolvedLuminaire } from "./resolve-luminaire.js";

/** Why a luminaire has no address. */
export type UnpatchedReason =
  /** The universes that its system carries are full. */
  | "overflow"
  /** The universe that it asks for is full. */
  | "universe-full"
  | "no-footprint"
  | "no-system"
  | "no-such-universe"
  /** Reserved slots leave no universe a run as long as its footprint. */
  | "no-run";

/** A luminaire that is to be placed: its footprint is known. */
export interface PlacingLuminaire extends ResolvedLuminaire {
  readonly slotCount: number;
}

/** Where a luminaire has been put. */
export interface Placement {
  readonly listIndex: number;
  readonly universe: number | null;
  readonly address: number | null;
  readonly reason: UnpatchedReason | null;
  /** Of an overflow: which further universe would hold it, counted from 0. */
  readonly furtherIndex: number | null;
}

/** How luminaires are to be spread. */
export interface Spread {
  /** Slots kept free behind each group. */
  readonly spareSlotCount: number;
  /** Start addresses are 1, 1 + this, 1 + 2 · this … */
  readonly alignSlotCount: number;
  /** After how many steps a proof is given up. */
  readonly mostStepCount: number;
  /** Ends the search for the fewest universes. */
  readonly signal: StopSignal | undefined;
}

/** @returns the placement of a luminaire that has none */
export function unplaced(listIndex: number, reason: UnpatchedReason): Placement {
  return { listIndex, universe: null, address: null, reason, furtherIndex: null };
}
