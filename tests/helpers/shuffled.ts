import { seededRandom } from "../../src/numeric/index.js";

/** The same items in another order, the same order for the same seed (Fisher–Yates). */
export function shuffled<T>(items: readonly T[], seed: number): T[] {
  const random = seededRandom(seed >>> 0);
  const mixed = [...items];
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other]!, mixed[last]!];
  }
  return mixed;
}
