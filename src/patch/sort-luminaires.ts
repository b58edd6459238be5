import type { Placement, PlacingLuminaire } from "./placement.js";
import { unplaced } from "./placement.js";
import type { ResolvedLuminaire } from "./resolve-luminaire.js";
import type { ReservedSlots } from "./patch-luminaire.js";
import { SLOT, SlotMap } from "./slot-map.js";
import { isAddress, isUniverse, UNIVERSE_SLOT_COUNT } from "./universe.js";

/** Luminaires by how much of their place is settled. */
export interface SortedLuminaires {
  /** An address of their own, or nothing that could give them one. */
  readonly settled: readonly Placement[];
  /** A universe of their own. */
  readonly pinned: readonly PlacingLuminaire[];
  /** Any universe that their system carries. */
  readonly free: readonly PlacingLuminaire[];
}

/** @returns the luminaires by how much of their place is settled */
export function sortLuminaires(all: readonly ResolvedLuminaire[]): SortedLuminaires {
  const settled: Placement[] = [];
  const pinned: PlacingLuminaire[] = [];
  const free: PlacingLuminaire[] = [];
  for (const one of all) {
    const { listIndex, universe, address, slotCount, system } = one;
    if (address !== null) settled.push({ listIndex, universe, address, reason: null, furtherIndex: null });
    else if (slotCount === null) settled.push(unplaced(listIndex, "no-footprint"));
    else if (universe !== null && !isOnlyUniverse(one)) pinned.push({ ...one, slotCount });
    else if (system === null) settled.push(unplaced(listIndex, "no-system"));
    else free.push({ ...one, slotCount });
  }
  return { settled, pinned, free };
}

function isOnlyUniverse({ system, universe }: ResolvedLuminaire): boolean {
  return system !== null && system.universe === universe && (system.universeCount ?? 1) === 1;
}

/** @returns the slots with those taken that luminaires have settled, of one without a footprint the first alone */
export function settledSlots(all: readonly ResolvedLuminaire[], reserved: readonly ReservedSlots[]): SlotMap {
  const map = new SlotMap(reserved);
  for (const { universe, address, slotCount } of all) {
    if (universe === null || !isUniverse(universe) || address === null || !isAddress(address)) continue;
    const end = Math.min(address + (slotCount ?? 1), UNIVERSE_SLOT_COUNT + 1);
    map.of(universe).fill(SLOT.used, address, end);
  }
  return map;
}
