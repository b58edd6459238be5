import type { PatchConflict, PatchConflictKind, PatchedLuminaire, SlotRange } from "./patch-conflict.js";
import type { ModeFootprint, PatchSystem } from "./patch-luminaire.js";
import type { ResolvedLuminaire } from "./resolve-luminaire.js";
import { isAddress, isUniverse, UNIVERSE_SLOT_COUNT } from "./universe.js";

/** @returns a luminaire with the slots that it takes */
export function patched({
  luminaire,
  system,
  slotCount,
  universe,
  address,
}: ResolvedLuminaire): PatchedLuminaire {
  const slots = address === null ? null : { firstSlot: address, lastSlot: address + (slotCount ?? 1) - 1 };
  return { name: luminaire.name, system: system?.name ?? luminaire.system ?? null, universe, slots };
}

/** @returns what is wrong with a luminaire, taken alone */
export function patchFaults(one: ResolvedLuminaire, modes: readonly ModeFootprint[]): PatchConflict[] {
  const { luminaire, system, slotCount, universe, address } = one;
  const who = patched(one);
  const faults: PatchConflict[] = [];
  const add = (kind: PatchConflictKind, slots: SlotRange | null = null): void => {
    const severity = kind === "mode-footprint" ? "warning" : "error";
    faults.push({ kind, severity, luminaires: [who], universe, slots });
  };
  if (system === null) add("no-system");
  if (slotCount === null) add("no-footprint");
  const ofMode = modes.find(({ mode }) => mode === luminaire.mode);
  if (ofMode !== undefined && slotCount !== null && slotCount !== ofMode.footprintSlotCount)
    add("mode-footprint");
  if (universe === null ? address !== null : !isUniverse(universe)) add("no-such-universe");
  else if (universe !== null && system !== null && !carries(system, universe)) add("other-universe");
  if (address === null) add("unpatched");
  else if (!isAddress(address)) add("beyond-512", who.slots);
  else if (who.slots!.lastSlot > UNIVERSE_SLOT_COUNT)
    add("across-universes", { firstSlot: UNIVERSE_SLOT_COUNT + 1, lastSlot: who.slots!.lastSlot });
  return faults;
}

/** @returns does the system's transmitter carry a universe? */
export function carries(system: PatchSystem, universe: number): boolean {
  return universe >= system.universe && universe < system.universe + (system.universeCount ?? 1);
}
