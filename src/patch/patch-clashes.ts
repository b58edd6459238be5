import type { PatchConflict, PatchedLuminaire } from "./patch-conflict.js";
import { patched } from "./patch-faults.js";
import type { ReservedSlots } from "./patch-luminaire.js";
import type { ResolvedLuminaire } from "./resolve-luminaire.js";
import { isAddress, isUniverse, UNIVERSE_SLOT_COUNT } from "./universe.js";

/** Luminaires with equal slots in one universe, cut at its end. */
interface Claim {
  readonly universe: number;
  readonly firstSlot: number;
  readonly lastSlot: number;
  readonly luminaires: PatchedLuminaire[];
}

/** @returns who take the same slots, by universe and slot: equal ranges once for all, others by two ranges */
export function slotClashes(all: readonly ResolvedLuminaire[]): PatchConflict[] {
  const claims = slotClaims(all);
  return claims.flatMap((claim, index) => {
    const { universe, firstSlot, lastSlot, luminaires } = claim;
    const own: PatchConflict[] =
      luminaires.length < 2
        ? []
        : [{ kind: "duplicate", severity: "warning", luminaires, universe, slots: { firstSlot, lastSlot } }];
    return [...own, ...overlaps(claims, index)];
  });
}

/** @returns who take slots that are reserved */
export function reservedClashes(
  all: readonly ResolvedLuminaire[],
  reserved: readonly ReservedSlots[],
): PatchConflict[] {
  return slotClaims(all).flatMap(({ universe, firstSlot, lastSlot, luminaires }) =>
    reserved
      .filter((range) => range.universe === null || range.universe === universe)
      .filter((range) => range.firstSlot <= lastSlot && firstSlot <= range.lastSlot)
      .map((range) => {
        const slots = {
          firstSlot: Math.max(firstSlot, range.firstSlot),
          lastSlot: Math.min(lastSlot, range.lastSlot),
        };
        return { kind: "reserved", severity: "error", luminaires, universe, slots };
      }),
  );
}

/** Claims are sorted by their first slot: those that reach into this one follow it at once. */
function overlaps(claims: readonly Claim[], index: number): PatchConflict[] {
  const { universe, lastSlot, luminaires } = claims[index]!;
  const found: PatchConflict[] = [];
  for (let next = index + 1; next < claims.length; next++) {
    const other = claims[next]!;
    if (other.universe !== universe || other.firstSlot > lastSlot) break;
    const slots = { firstSlot: other.firstSlot, lastSlot: Math.min(lastSlot, other.lastSlot) };
    const both = [...luminaires, ...other.luminaires];
    found.push({ kind: "overlap", severity: "error", luminaires: both, universe, slots });
  }
  return found;
}

function slotClaims(all: readonly ResolvedLuminaire[]): Claim[] {
  const claims = new Map<string, Claim>();
  for (const one of all) {
    const { universe, address } = one;
    if (universe === null || !isUniverse(universe) || address === null || !isAddress(address)) continue;
    const lastSlot = Math.min(UNIVERSE_SLOT_COUNT, address + (one.slotCount ?? 1) - 1);
    const key = `${universe} ${address} ${lastSlot}`;
    const claim = claims.get(key) ?? { universe, firstSlot: address, lastSlot, luminaires: [] };
    claim.luminaires.push(patched(one));
    claims.set(key, claim);
  }
  return [...claims.values()].sort(
    (a, b) => a.universe - b.universe || a.firstSlot - b.firstSlot || a.lastSlot - b.lastSlot,
  );
}
