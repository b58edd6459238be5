import type { PatchOverflow } from "./address-plan.js";
import type { Placement, PlacingLuminaire } from "./placement.js";
import type { UniversePool } from "./universe-pool.js";

/** @returns for each system of a pool the luminaires that found no room; none where all did */
export function patchOverflows(
  pool: UniversePool,
  luminaires: readonly PlacingLuminaire[],
  placements: readonly Placement[],
  fitsInFreeOrder: () => boolean | null,
): PatchOverflow[] {
  const byListIndex = new Map(luminaires.map((one) => [one.listIndex, one]));
  const over = placements.filter(({ reason }) => reason === "overflow");
  if (over.length === 0) return [];
  const fits = fitsInFreeOrder();
  return pool.systemNames.flatMap((system) => {
    const own = over.filter(({ listIndex }) => byListIndex.get(listIndex)!.system?.name === system);
    const members = own.map(({ listIndex }) => byListIndex.get(listIndex)!);
    const furtherUniverseCount = new Set(own.map(({ furtherIndex }) => furtherIndex)).size;
    const overflow = {
      system,
      luminaires: members.map(({ luminaire }) => luminaire.name),
      slotCount: members.reduce((sum, { slotCount }) => sum + slotCount, 0),
      furtherUniverseCount,
      furtherSystemCount: Math.ceil(furtherUniverseCount / pool.universeCount),
      fitsInFreeOrder: fits,
    };
    return own.length > 0 ? [overflow] : [];
  });
}
