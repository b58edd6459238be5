import { groupKey } from "./hanging-order.js";
import type { UniversePacking } from "./pack-universes.js";
import { packUniverses } from "./pack-universes.js";
import type { Placement, PlacingLuminaire, Spread } from "./placement.js";
import { unplaced } from "./placement.js";
import { firstFreeSlot, SLOT } from "./slot-map.js";
import type { PoolUniverses } from "./universe-pool.js";

/** Luminaires in the fewest universes. */
export interface FewestPlacement {
  readonly placements: readonly Placement[];
  readonly packing: UniversePacking;
}

/**
 * Puts luminaires, whose order is free, into the fewest universes. Behind the last of each group its spare slots
 * stay free; none where no run is long enough for both.
 * @param sequence each group together; within a universe they lie in this order
 * @param universes their slots; what is placed is entered there
 */
export function placeFewest(
  sequence: readonly PlacingLuminaire[],
  universes: PoolUniverses,
  spread: Spread,
): FewestPlacement {
  const { alignSlotCount, mostStepCount, signal } = spread;
  const items = packItems(sequence, universes, spread);
  const packing = packUniverses({
    slotCounts: items.map(({ one, spareSlotCount }) => one.slotCount + spareSlotCount),
    alignSlotCount,
    mostStepCount,
    signal,
    universeAt: (index) => universes.at(index),
  });
  const placed = new Map<PlacingLuminaire, Placement>();
  for (const [index, { one, spareSlotCount }] of items.entries()) {
    const { universeIndex, address } = packing.places[index]!;
    const end = address + one.slotCount;
    const slots = universes.at(universeIndex);
    slots.fill(SLOT.used, address, end).fill(SLOT.spare, end, end + spareSlotCount);
    placed.set(one, universes.placement(one.listIndex, universeIndex, address));
  }
  return {
    placements: sequence.map((one) => placed.get(one) ?? unplaced(one.listIndex, "no-run")),
    packing,
  };
}

interface Item {
  readonly one: PlacingLuminaire;
  readonly spareSlotCount: number;
}

/** The luminaires that some run can hold, the last of each group with its spare slots. */
function packItems(
  sequence: readonly PlacingLuminaire[],
  universes: PoolUniverses,
  { spareSlotCount, alignSlotCount }: Spread,
): Item[] {
  const ordinary = universes.ordinary();
  const fits = (count: number): boolean => firstFreeSlot(ordinary, 1, count, alignSlotCount) !== null;
  return sequence.flatMap((one, index) => {
    const next = sequence[index + 1];
    const ends = next === undefined || groupKey(next) !== groupKey(one);
    const spare = ends && fits(one.slotCount + spareSlotCount) ? spareSlotCount : 0;
    return fits(one.slotCount) ? [{ one, spareSlotCount: spare }] : [];
  });
}
