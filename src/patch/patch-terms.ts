import { ArgumentError, requireWhole } from "../issues/index.js";
import type { ModeFootprint, PatchLuminaire, PatchSystem, ReservedSlots } from "./patch-luminaire.js";
import { LAST_UNIVERSE, UNIVERSE_SLOT_COUNT } from "./universe.js";

/** A venue's luminaires and the systems that feed them. */
export interface PatchTerms {
  readonly luminaires: readonly PatchLuminaire[];
  /** Two that carry the same universe share its slots. */
  readonly systems: readonly PatchSystem[];
  readonly reserved?: readonly ReservedSlots[];
  /** Footprints of modes, for luminaires that give only their mode. */
  readonly modes?: readonly ModeFootprint[];
}

/** @throws {ArgumentError} when a system, a reserved range or a mode can't be one; luminaires are data */
export function requirePatchTerms({ systems, reserved = [], modes = [] }: PatchTerms): void {
  requireDistinct(
    "systems",
    systems.map(({ name }) => name),
  );
  requireDistinct(
    "modes",
    modes.map(({ mode }) => mode),
  );
  systems.forEach(({ universe, universeCount = 1 }, index) => {
    requireWhole(`systems[${index}].universe`, universe, 1, LAST_UNIVERSE);
    requireWhole(`systems[${index}].universeCount`, universeCount, 1, LAST_UNIVERSE + 1 - universe);
  });
  reserved.forEach(({ universe, firstSlot, lastSlot }, index) => {
    if (universe !== null) requireWhole(`reserved[${index}].universe`, universe, 1, LAST_UNIVERSE);
    requireWhole(`reserved[${index}].firstSlot`, firstSlot, 1, UNIVERSE_SLOT_COUNT);
    requireWhole(`reserved[${index}].lastSlot`, lastSlot, firstSlot, UNIVERSE_SLOT_COUNT);
  });
  modes.forEach(({ footprintSlotCount }, index) => {
    requireWhole(`modes[${index}].footprintSlotCount`, footprintSlotCount, 1, UNIVERSE_SLOT_COUNT);
  });
}

function requireDistinct(argument: string, names: readonly string[]): void {
  const twice = names.find((name, index) => names.indexOf(name) < index);
  if (twice !== undefined) throw new ArgumentError(argument, "names that differ", `${twice} twice`);
}
