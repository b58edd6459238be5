/**
 * The length that most of the lists have; of equals the greatest.
 * @example usualLength([["a"], ["b", "c"], ["d", "e"]]); // => 2
 */
export function usualLength(lists: readonly (readonly unknown[])[]): number {
  const counts = new Map<number, number>();
  for (const { length } of lists) counts.set(length, (counts.get(length) ?? 0) + 1);
  const [usual] = [...counts].sort(
    ([leftLength, leftCount], [rightLength, rightCount]) =>
      rightCount - leftCount || rightLength - leftLength,
  );
  return usual?.[0] ?? 0;
}

/** Rows of cells turned into columns; every row has `columnCount` cells. */
export function columnsOf(
  rows: readonly (readonly string[])[],
  columnCount: number,
): readonly (readonly string[])[] {
  return Array.from({ length: columnCount }, (_, index) => rows.map((cells) => cells[index]!));
}
