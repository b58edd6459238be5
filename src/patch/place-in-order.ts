import { groupKey } from "./hanging-order.js";
import type { Placement, PlacingLuminaire, Spread } from "./placement.js";
import { unplaced } from "./placement.js";
import { firstFreeSlot, SLOT } from "./slot-map.js";
import type { PoolUniverses } from "./universe-pool.js";
import { UNIVERSE_SLOT_COUNT } from "./universe.js";

/**
 * Gives each luminaire the next free run of slots, universe after universe and never back, so that addresses
 * rise in the order given. Behind the last of each group spare slots stay free, as far as the run goes.
 * @param sequence in the order of hanging, each group together
 * @param universes their slots; what is placed is entered there
 */
export function placeInOrder(
  sequence: readonly PlacingLuminaire[],
  universes: PoolUniverses,
  { spareSlotCount, alignSlotCount }: Spread,
): Placement[] {
  const longestRun = universes.ordinary();
  let [universeIndex, nextSlot] = [0, 1];
  return sequence.map((one, index): Placement => {
    const { slotCount, listIndex } = one;
    let address: number | null = null;
    if (firstFreeSlot(longestRun, 1, slotCount, alignSlotCount) !== null)
      while (address === null) {
        address = firstFreeSlot(universes.at(universeIndex), nextSlot, slotCount, alignSlotCount);
        if (address === null) [universeIndex, nextSlot] = [universeIndex + 1, 1];
      }
    const slots = universes.at(universeIndex);
    if (address !== null) {
      nextSlot = address + slotCount;
      slots.fill(SLOT.used, address, nextSlot);
    }
    const next = sequence[index + 1];
    if (next === undefined || groupKey(next) !== groupKey(one))
      nextSlot = keepSpare(slots, nextSlot, spareSlotCount);
    return address === null
      ? unplaced(listIndex, "no-run")
      : universes.placement(listIndex, universeIndex, address);
  });
}

/** @returns the slot after the spare ones */
function keepSpare(slots: Uint8Array, fromSlot: number, spareSlotCount: number): number {
  let slot = fromSlot;
  const end = Math.min(fromSlot + spareSlotCount, UNIVERSE_SLOT_COUNT + 1);
  while (slot < end && slots[slot] === SLOT.free) slots[slot++] = SLOT.spare;
  return slot;
}
