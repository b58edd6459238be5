import type { HangPoint } from "./hang-options.js";

/**
 * Points in the order of hanging: by `hangIndex`, then as listed, with rooms and the groups within them kept
 * together, each by the first of theirs to hang.
 */
export function inOrderOfHanging<T extends Pick<HangPoint, "room" | "group" | "hangIndex">>(
  points: readonly T[],
): T[] {
  const hung = points
    .map((point, listIndex) => ({ point, listIndex }))
    .sort((a, b) => ownIndex(a.point) - ownIndex(b.point) || a.listIndex - b.listIndex);
  const firstOf = new Map<string, number>();
  hung.forEach(({ point }, rank) => {
    for (const key of keysOf(point)) if (!firstOf.has(key)) firstOf.set(key, rank);
  });
  const ranked = hung.map(({ point }, rank) => {
    const [room, group] = keysOf(point);
    return { point, roomRank: firstOf.get(room)!, groupRank: firstOf.get(group)!, rank };
  });
  ranked.sort((a, b) => a.roomRank - b.roomRank || a.groupRank - b.groupRank || a.rank - b.rank);
  return ranked.map(({ point }) => point);
}

function keysOf({ room, group = null }: Pick<HangPoint, "room" | "group">): [room: string, group: string] {
  return [JSON.stringify([room]), JSON.stringify([room, group])];
}

function ownIndex({ hangIndex = null }: Pick<HangPoint, "hangIndex">): number {
  return hangIndex ?? Number.MAX_VALUE;
}
