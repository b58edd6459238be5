/** Bin packing by trying everything, for small cases. */

/** @returns the fewest bins of one size, over every way to spread the items */
export function fewestBins(items: readonly number[], size: number): number {
  let best = items.length;
  const rooms: number[] = [];
  const put = (index: number): void => {
    if (index === items.length) best = Math.min(best, rooms.length);
    if (index === items.length || rooms.length >= best) return;
    for (let bin = 0; bin < rooms.length; bin++)
      if (rooms[bin]! >= items[index]!) {
        rooms[bin]! -= items[index]!;
        put(index + 1);
        rooms[bin]! += items[index]!;
      }
    rooms.push(size - items[index]!);
    put(index + 1);
    rooms.pop();
  };
  put(0);
  return best;
}

/** @returns a universe with some slots taken, `[slot]`, from [first, count] pairs */
export function taken(ranges: readonly (readonly [number, number])[]): Uint8Array {
  const slots = new Uint8Array(513);
  for (const [first, count] of ranges) slots.fill(3, first, Math.min(513, first + count));
  return slots;
}

/**
 * @param universes the first ones; those behind them are empty
 * @returns the fewest universes, from the first, over every start address of every item
 */
export function fewestByStarts(
  items: readonly number[],
  universes: readonly Uint8Array[],
  raster: number,
): number {
  for (let count = 0; ; count++) {
    const slots = Array.from({ length: count }, (_, index) => Array.from(universes[index] ?? taken([])));
    const put = (index: number): boolean => {
      if (index === items.length) return true;
      const length = items[index]!;
      for (const universe of slots)
        for (let start = 1; start + length <= 513; start += raster) {
          if (universe.slice(start, start + length).some((slot) => slot !== 0)) continue;
          universe.fill(1, start, start + length);
          if (put(index + 1)) return true;
          universe.fill(0, start, start + length);
        }
      return false;
    };
    if (put(0)) return count;
  }
}
