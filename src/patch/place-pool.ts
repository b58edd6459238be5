import { inHangingOrder, inNameOrder } from "./hanging-order.js";
import type { FewestUse } from "./address-plan.js";
import { placeFewest } from "./place-fewest.js";
import { placeInOrder } from "./place-in-order.js";
import type { Placement, PlacingLuminaire, Spread } from "./placement.js";
import type { SlotMap } from "./slot-map.js";
import { SLOT } from "./slot-map.js";
import type { UniversePool } from "./universe-pool.js";
import { PoolUniverses } from "./universe-pool.js";

/** Whether addresses rise in the order of hanging, or fill the fewest universes. */
export type PatchOrder = "hanging" | "fewest";

/** The luminaires of systems that share their universes, placed. */
export interface PlacedPool {
  readonly placements: readonly Placement[];
  /** Null where the order is not free. */
  readonly fewest: FewestUse | null;
}

/**
 * Places the luminaires of a pool that have no address and may lie in any of its universes.
 * @param map their slots; what is placed is entered there
 * @param terms proves: is nothing else placed in these universes that could lie elsewhere?
 */
export function placePool(
  pool: UniversePool,
  luminaires: readonly PlacingLuminaire[],
  map: SlotMap,
  { order, spread, proves }: { order: PatchOrder; spread: Spread; proves: boolean },
): PlacedPool {
  const universes = new PoolUniverses(pool, map);
  if (order === "hanging") {
    const sequence = inHangingOrder(luminaires, pool.systemNames);
    return { placements: placeInOrder(sequence, universes, spread), fewest: null };
  }
  const settledCount = usedUniverseCount(pool, map);
  const { placements, packing } = placeFewest(inNameOrder(luminaires), universes, spread);
  const universeCount = Math.max(settledCount, packing.universeCount);
  const lowerBoundCount = pool.shared ? 0 : Math.max(settledCount, proves ? packing.lowerBoundCount : 0);
  const proved = universeCount === lowerBoundCount;
  return { placements, fewest: { systems: pool.systemNames, universeCount, lowerBoundCount, proved } };
}

/** @returns how many of a pool's universes, from its first, hold settled addresses */
function usedUniverseCount(pool: UniversePool, map: SlotMap): number {
  const used = map
    .universes()
    .filter((universe) => map.of(universe).includes(SLOT.used))
    .map((universe) => universe - pool.firstUniverse + 1)
    .filter((count) => count >= 1 && count <= pool.universeCount);
  return Math.max(0, ...used);
}
