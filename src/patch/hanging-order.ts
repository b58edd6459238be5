import type { ResolvedLuminaire } from "./resolve-luminaire.js";

/**
 * Luminaires in the order of hanging, rooms and their groups kept together: systems as `systemNames` has them;
 * within a system rooms, and within a room groups, by the first of theirs to hang.
 */
export function inHangingOrder<T extends ResolvedLuminaire>(
  luminaires: readonly T[],
  systemNames: readonly string[],
): T[] {
  const systemRank = new Map(systemNames.map((name, rank) => [name, rank]));
  const hung = [...luminaires].sort((a, b) => hangIndex(a) - hangIndex(b) || a.listIndex - b.listIndex);
  const rank = new Map<string, number>();
  const ranked = hung.map((one, hungRank) => {
    const keys = [roomKey(one), groupKey(one)];
    for (const key of keys) if (!rank.has(key)) rank.set(key, hungRank);
    const system = systemRank.get(one.system?.name ?? "") ?? systemNames.length;
    return { one, order: [system, ...keys.map((key) => rank.get(key)!), hungRank] };
  });
  return ranked.sort((a, b) => compareLists(a.order, b.order)).map(({ one }) => one);
}

/**
 * Luminaires in an order that doesn't depend on the list's: by system, room, group, place in the order of
 * hanging where it is given, and name.
 */
export function inNameOrder<T extends ResolvedLuminaire>(luminaires: readonly T[]): T[] {
  return [...luminaires].sort(
    (a, b) =>
      compareText(groupKey(a), groupKey(b)) ||
      Math.sign(hangIndex(a) - hangIndex(b)) ||
      compareText(a.luminaire.name, b.luminaire.name) ||
      (a.slotCount ?? 0) - (b.slotCount ?? 0),
  );
}

/** @returns what tells one system's group in one room from all others */
export function groupKey(one: ResolvedLuminaire): string {
  return JSON.stringify([one.system?.name ?? null, one.luminaire.room, one.luminaire.group ?? null]);
}

function roomKey(one: ResolvedLuminaire): string {
  return JSON.stringify([one.system?.name ?? null, one.luminaire.room]);
}

function hangIndex({ luminaire }: ResolvedLuminaire): number {
  const { hangIndex: index = null } = luminaire;
  return index === null || !Number.isFinite(index) ? Number.MAX_VALUE : index;
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  const differs = a.findIndex((value, index) => value !== b[index]);
  return differs < 0 ? 0 : a[differs]! - b[differs]!;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
