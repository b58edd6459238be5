import { ArgumentError, requireWhole } from "../issues/index.js";
import type { StopSignal } from "../issues/index.js";
import type { UniversePacking } from "./pack-universes.js";
import { packUniverses } from "./pack-universes.js";
import { isAddress, UNIVERSE_SLOT_COUNT } from "./universe.js";

/** Steps after which a proof is given up: about half a second for 2,000 luminaires of as many footprints as can be. */
export const MOST_PACK_STEPS = 100_000;

/**
 * The fewest empty universes that luminaires fit into when their order is free: a bin packing. Lower bounds L1
 * and L2, first fit decreasing, and where the two differ a branch and bound; proved when `universeCount` equals
 * `lowerBoundCount`.
 * @param terms footprintSlotCount, DMX slots of each luminaire, 1 … 512; alignSlotCount, start addresses are 1,
 *   1 + this … (1 unless given); mostStepCount, steps after which a proof is given up (100,000 unless given); signal ends the
 *   search
 * @returns how many universes, and for each luminaire its universe, counted from 0, and start address
 * @throws {ArgumentError} when a footprint, the alignment or the steps are out of range
 * @throws the signal's reason when it is aborted
 * @source S. Martello, P. Toth, Knapsack Problems (1990), chapter 8, from memory; 512 slots: ANSI E1.11
 * @validity exact where proved; no luminaire lies across the end of a universe
 * @example fewestUniverses({ footprintSlotCount: [300, 300, 212] });
 * // => { universeCount: 2, lowerBoundCount: 2, places: [
 * //   { universeIndex: 0, address: 1 }, { universeIndex: 1, address: 1 }, { universeIndex: 0, address: 301 }] }
 */
export function fewestUniverses(terms: {
  readonly footprintSlotCount: readonly number[];
  readonly alignSlotCount?: number;
  readonly mostStepCount?: number;
  readonly signal?: StopSignal | undefined;
}): UniversePacking {
  const { footprintSlotCount, alignSlotCount = 1, mostStepCount = MOST_PACK_STEPS, signal } = terms;
  const wrong = footprintSlotCount.find((count) => !isAddress(count));
  if (wrong !== undefined)
    throw new ArgumentError("footprintSlotCount", "whole numbers from 1 to 512", wrong);
  requireWhole("alignSlotCount", alignSlotCount, 1, UNIVERSE_SLOT_COUNT);
  requireWhole("mostStepCount", mostStepCount, 0, Number.MAX_SAFE_INTEGER);
  const empty = new Uint8Array(UNIVERSE_SLOT_COUNT + 1);
  const universeAt = (): Uint8Array => empty;
  return packUniverses({ slotCounts: footprintSlotCount, alignSlotCount, mostStepCount, signal, universeAt });
}
