import { inHangingOrder } from "./hanging-order.js";
import type { PatchTerms } from "./patch-terms.js";
import { requirePatchTerms } from "./patch-terms.js";
import { resolveLuminaires } from "./resolve-luminaire.js";

/**
 * The order in which luminaires are hung and patched: systems as they are listed, within a system its rooms and
 * within a room its groups, each by the first of theirs to hang.
 * @returns places in the list, first to hang first; those that no system serves come last
 * @throws {ArgumentError} as `allocateAddresses`
 * @example
 * const at = (name, room) => ({ name, room, footprintSlotCount: 1 });
 * const luminaires = [at("A1", "loft"), at("B1", "yard"), at("A2", "loft")];
 * orderOfHanging({ luminaires, systems: [{ name: "house", universe: 1 }] }); // => [0, 2, 1]
 */
export function orderOfHanging(terms: PatchTerms): number[] {
  requirePatchTerms(terms);
  const names = terms.systems.map(({ name }) => name);
  return inHangingOrder(resolveLuminaires(terms), names).map(({ listIndex }) => listIndex);
}
