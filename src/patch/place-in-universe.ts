import type { Placement, PlacingLuminaire, Spread } from "./placement.js";
import { unplaced } from "./placement.js";
import type { SlotMap } from "./slot-map.js";
import { firstFreeSlot, SLOT } from "./slot-map.js";
import { isUniverse } from "./universe.js";

/**
 * Gives luminaires whose universe is settled the first free run of slots there, so that addresses rise in the
 * order given.
 * @param map their slots; what is placed is entered there
 */
export function placeInUniverses(
  sequence: readonly PlacingLuminaire[],
  map: SlotMap,
  { alignSlotCount }: Spread,
): Placement[] {
  const nextSlot = new Map<number, number>();
  return sequence.map(({ listIndex, slotCount, universe }) => {
    if (universe === null || !isUniverse(universe)) return unplaced(listIndex, "no-such-universe");
    const slots = map.of(universe);
    const address = firstFreeSlot(slots, nextSlot.get(universe) ?? 1, slotCount, alignSlotCount);
    if (address === null) return unplaced(listIndex, "universe-full");
    slots.fill(SLOT.used, address, address + slotCount);
    nextSlot.set(universe, address + slotCount);
    return { listIndex, universe, address, reason: null, furtherIndex: null };
  });
}
