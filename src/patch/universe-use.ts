import type { UniverseUse } from "./address-plan.js";
import { carries } from "./patch-faults.js";
import type { PatchSystem } from "./patch-luminaire.js";
import type { SlotMap } from "./slot-map.js";
import { SLOT } from "./slot-map.js";

/** @returns how full each universe is that holds a luminaire or is a system's first, lowest first */
export function universeUse(map: SlotMap, systems: readonly PatchSystem[]): UniverseUse[] {
  const firsts = new Set(systems.map(({ universe }) => universe));
  for (const universe of firsts) map.of(universe);
  return map
    .universes()
    .filter((universe) => firsts.has(universe) || map.of(universe).includes(SLOT.used))
    .map((universe) => {
      const slots = map.of(universe).subarray(1);
      const count = (kind: number): number => slots.filter((slot) => slot === kind).length;
      return {
        universe,
        systems: systems.filter((system) => carries(system, universe)).map(({ name }) => name),
        usedSlotCount: count(SLOT.used),
        spareSlotCount: count(SLOT.spare),
        reservedSlotCount: count(SLOT.reserved),
        freeSlotCount: count(SLOT.free),
        lastUsedSlot: slots.lastIndexOf(SLOT.used) + 1,
      };
    });
}
