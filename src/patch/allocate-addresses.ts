import type { AddressPlan, FewestUse, PatchOverflow } from "./address-plan.js";
import { addressRows } from "./address-rows.js";
import type { AllocationTerms } from "./allocation-terms.js";
import { requireSpread } from "./allocation-terms.js";
import { findPatchConflicts } from "./find-patch-conflicts.js";
import { inHangingOrder, inNameOrder } from "./hanging-order.js";
import { patchOverflows } from "./patch-overflow.js";
import { placeInUniverses } from "./place-in-universe.js";
import type { PatchOrder, PlacedPool } from "./place-pool.js";
import { placePool } from "./place-pool.js";
import type { Placement, PlacingLuminaire } from "./placement.js";
import { resolveLuminaires } from "./resolve-luminaire.js";
import type { SlotMap } from "./slot-map.js";
import { settledSlots, sortLuminaires } from "./sort-luminaires.js";
import type { UniversePool } from "./universe-pool.js";
import { universePools } from "./universe-pool.js";
import { universeUse } from "./universe-use.js";

/**
 * Start addresses for all luminaires. Settled addresses stay, whatever is wrong with them; reserved slots stay
 * free; no luminaire lies across the end of a universe. In the order of hanging (`order: "hanging"`) addresses
 * rise room by room, group by group, luminaire by luminaire, from a system's first universe to its last; with
 * `order: "fewest"` they fill the fewest universes, the same however the list is sorted. Luminaires whose
 * universe alone is settled come first in it where their system carries several. What the universes of a system
 * can't hold is an overflow: it takes a further system, and in the order of hanging everything after it too.
 * @param terms the luminaires in the order of hanging, the systems, and how addresses are to be given
 * @throws {ArgumentError} when a system, a reserved range, a mode or a figure is out of range; what is wrong with a
 *   luminaire is told in `conflicts` and in its row's `reason`
 * @throws the signal's reason when it is aborted
 * @source ANSI E1.11: 512 slots in a universe; ANSI E1.31: universes 1 … 63999
 * @example
 * const luminaires = ["A1", "A2", "A3"].map((name) => ({ name, room: "loft", footprintSlotCount: 8 }));
 * const plan = allocateAddresses({ luminaires, systems: [{ name: "loft", universe: 1 }] });
 * plan.rows.map(({ address }) => address); // => [1, 9, 17]
 */
export function allocateAddresses(terms: AllocationTerms): AddressPlan {
  const spread = requireSpread(terms);
  const { systems, reserved = [], order = "hanging" } = terms;
  const all = resolveLuminaires(terms);
  const { settled, pinned, free } = sortLuminaires(all);
  const names = systems.map(({ name }) => name);
  const inOwnUniverse = order === "hanging" ? inHangingOrder(pinned, names) : inNameOrder(pinned);
  const start = (): { map: SlotMap; placements: Placement[] } => {
    const map = settledSlots(all, reserved);
    return { map, placements: placeInUniverses(inOwnUniverse, map, spread) };
  };
  const { map, placements } = start();
  placements.push(...settled);
  const overflows: PatchOverflow[] = [];
  const fewest: FewestUse[] = [];
  for (const pool of universePools(systems)) {
    const own = free.filter(({ system }) => pool.systemNames.includes(system!.name));
    const place = (onto: SlotMap, by: PatchOrder): PlacedPool =>
      placePool(pool, own, onto, { order: by, spread, proves: provesFewest(pool, pinned) });
    const placed = place(map, order);
    placements.push(...placed.placements);
    if (placed.fewest !== null) fewest.push(placed.fewest);
    const fitsInFreeOrder = (): boolean | null =>
      order === "hanging" && !pool.shared ? fits(pool, place(start().map, "fewest").fewest!) : null;
    overflows.push(...patchOverflows(pool, own, placed.placements, fitsInFreeOrder));
  }
  const rows = addressRows(all, placements);
  const conflicts = findPatchConflicts({ ...terms, luminaires: rows });
  return { rows, universes: universeUse(map, systems), overflows, fewest, conflicts };
}

/** Could nothing that has been placed in a pool's universes already lie elsewhere? */
function provesFewest(pool: UniversePool, pinned: readonly PlacingLuminaire[]): boolean {
  const end = pool.firstUniverse + pool.universeCount;
  return !pool.shared && !pinned.some(({ universe }) => universe! >= pool.firstUniverse && universe! < end);
}

function fits(pool: UniversePool, { universeCount, lowerBoundCount }: FewestUse): boolean | null {
  if (universeCount <= pool.universeCount) return true;
  return lowerBoundCount > pool.universeCount ? false : null;
}
