import type { PatchConflict } from "./patch-conflict.js";
import { patched } from "./patch-faults.js";
import type { ResolvedLuminaire } from "./resolve-luminaire.js";

/** @returns names given more than once, and receivers that would have to serve several systems or universes */
export function sharingFaults(all: readonly ResolvedLuminaire[]): PatchConflict[] {
  const faults: PatchConflict[] = [];
  for (const named of grouped(all, ({ luminaire }) => luminaire.name).values())
    if (named.length > 1) faults.push(conflict("duplicate-name", "error", named));
  for (const served of grouped(all, ({ luminaire }) => luminaire.receiver ?? null).values()) {
    if (distinctCount(served.map(({ system }) => system?.name ?? null)) > 1)
      faults.push(conflict("receiver-systems", "error", served));
    else if (distinctCount(served.map(({ universe }) => universe)) > 1)
      faults.push(conflict("receiver-universes", "warning", served));
  }
  return faults;
}

function conflict(
  kind: PatchConflict["kind"],
  severity: PatchConflict["severity"],
  members: readonly ResolvedLuminaire[],
): PatchConflict {
  return { kind, severity, luminaires: members.map(patched), universe: null, slots: null };
}

function grouped(
  all: readonly ResolvedLuminaire[],
  keyOf: (one: ResolvedLuminaire) => string | null,
): Map<string, ResolvedLuminaire[]> {
  const groups = new Map<string, ResolvedLuminaire[]>();
  for (const one of all) {
    const key = keyOf(one);
    if (key === null) continue;
    const members = groups.get(key);
    if (members === undefined) groups.set(key, [one]);
    else members.push(one);
  }
  return groups;
}

function distinctCount(values: readonly (string | number | null)[]): number {
  return new Set(values.filter((value) => value !== null)).size;
}
