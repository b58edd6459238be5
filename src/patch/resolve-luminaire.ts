import type { PatchLuminaire, PatchSystem } from "./patch-luminaire.js";
import type { PatchTerms } from "./patch-terms.js";
import { isAddress } from "./universe.js";

/** A luminaire with what it leaves unsaid filled in. */
export interface ResolvedLuminaire {
  readonly luminaire: PatchLuminaire;
  /** Its place in the list. */
  readonly listIndex: number;
  /** Null: none, or one that isn't there. */
  readonly system: PatchSystem | null;
  /** 1 … 512; null: not known, or no such footprint. */
  readonly slotCount: number | null;
  /** As given; of one with an address, else the system's first. */
  readonly universe: number | null;
  readonly address: number | null;
}

/** @returns each luminaire with its system and footprint found */
export function resolveLuminaires({ luminaires, systems, modes = [] }: PatchTerms): ResolvedLuminaire[] {
  const systemOf = new Map(systems.map((system) => [system.name, system]));
  const slotCountOf = new Map(modes.map(({ mode, footprintSlotCount }) => [mode, footprintSlotCount]));
  const only = systems.length === 1 ? systems[0]! : null;
  return luminaires.map((luminaire, listIndex) => {
    const named = luminaire.system ?? null;
    const system = named === null ? only : (systemOf.get(named) ?? null);
    const slotCount = luminaire.footprintSlotCount ?? slotCountOf.get(luminaire.mode ?? "") ?? null;
    const address = luminaire.address ?? null;
    const first = address === null ? null : (system?.universe ?? null);
    return {
      luminaire,
      listIndex,
      system,
      slotCount: slotCount !== null && isAddress(slotCount) ? slotCount : null,
      universe: luminaire.universe ?? first,
      address,
    };
  });
}
