import { requireWhole } from "../issues/index.js";
import type { StopSignal } from "../issues/index.js";
import { MOST_PACK_STEPS } from "./fewest-universes.js";
import type { PatchTerms } from "./patch-terms.js";
import { requirePatchTerms } from "./patch-terms.js";
import type { Spread } from "./placement.js";
import type { PatchOrder } from "./place-pool.js";
import { UNIVERSE_SLOT_COUNT } from "./universe.js";

/** Luminaires and systems, and how addresses are to be given. */
export interface AllocationTerms extends PatchTerms {
  /** `hanging` unless given. */
  readonly order?: PatchOrder;
  /** Slots kept free behind each group, 0 … 512; 0 unless given. */
  readonly spareSlotCount?: number;
  /** Start addresses are 1, 1 + this, 1 + 2 · this …: 1 … 512; 1 unless given. */
  readonly alignSlotCount?: number;
  /** Steps after which a proof of the fewest universes is given up; 100,000 unless given. */
  readonly mostStepCount?: number;
  /** Ends a search for the fewest universes: its reason is thrown. */
  readonly signal?: StopSignal | undefined;
}

/**
 * @returns the spread, with what is not given filled in
 * @throws {ArgumentError} when a figure is out of range
 */
export function requireSpread(terms: AllocationTerms): Spread {
  requirePatchTerms(terms);
  const { spareSlotCount = 0, alignSlotCount = 1, mostStepCount = MOST_PACK_STEPS, signal } = terms;
  requireWhole("spareSlotCount", spareSlotCount, 0, UNIVERSE_SLOT_COUNT);
  requireWhole("alignSlotCount", alignSlotCount, 1, UNIVERSE_SLOT_COUNT);
  requireWhole("mostStepCount", mostStepCount, 0, Number.MAX_SAFE_INTEGER);
  return { spareSlotCount, alignSlotCount, mostStepCount, signal };
}
