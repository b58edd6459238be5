import type { AddressRow } from "./address-plan.js";
import type { Placement } from "./placement.js";
import type { ResolvedLuminaire } from "./resolve-luminaire.js";

/** @returns a row for each luminaire, in the order of the list */
export function addressRows(
  all: readonly ResolvedLuminaire[],
  placements: readonly Placement[],
): AddressRow[] {
  const byListIndex = new Map(placements.map((placement) => [placement.listIndex, placement]));
  return all.map((one) => {
    const { luminaire, system, slotCount } = one;
    const { universe, address, reason } = byListIndex.get(one.listIndex)!;
    return {
      name: luminaire.name,
      room: luminaire.room,
      group: luminaire.group ?? null,
      system: system?.name ?? luminaire.system ?? null,
      receiver: luminaire.receiver ?? null,
      mode: luminaire.mode ?? null,
      footprintSlotCount: slotCount ?? luminaire.footprintSlotCount,
      universe: universe ?? one.universe,
      address,
      lastSlot: address === null || slotCount === null ? null : address + slotCount - 1,
      fixed: one.address !== null,
      reason,
    };
  });
}
