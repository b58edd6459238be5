import { reservedClashes, slotClashes } from "./patch-clashes.js";
import type { PatchConflict } from "./patch-conflict.js";
import { patchFaults } from "./patch-faults.js";
import { sharingFaults } from "./patch-sharing.js";
import type { PatchTerms } from "./patch-terms.js";
import { requirePatchTerms } from "./patch-terms.js";
import { resolveLuminaires } from "./resolve-luminaire.js";

/**
 * What is wrong with a patch, made by hand or by machine: who clash, the slots that each takes and those that are
 * taken twice; who run past slot 512 or have no address at all. A luminaire without a footprint counts with its
 * start address alone.
 * @returns first the faults of each luminaire in the order of the list, then names and receivers, then clashes
 *   by universe and slot
 * @throws {ArgumentError} when a system, a reserved range or a mode can't be one
 * @source ANSI E1.11: 512 slots in a universe; ANSI E1.31: universes 1 … 63999
 * @example
 * const systems = [{ name: "loft", universe: 1 }];
 * const at = (name, address) => ({ name, room: "loft", footprintSlotCount: 8, universe: 1, address });
 * findPatchConflicts({ luminaires: [at("A1", 1), at("A2", 7)], systems }).map(({ kind, slots }) => ({ kind, slots }));
 * // => [{ kind: "overlap", slots: { firstSlot: 7, lastSlot: 8 } }]
 */
export function findPatchConflicts(terms: PatchTerms): PatchConflict[] {
  requirePatchTerms(terms);
  const all = resolveLuminaires(terms);
  return [
    ...all.flatMap((one) => patchFaults(one, terms.modes ?? [])),
    ...sharingFaults(all),
    ...reservedClashes(all, terms.reserved ?? []),
    ...slotClashes(all),
  ];
}
