import type { MarginSearch, SearchPlace } from "./margin-search.js";

/** What a search for the best places works on. */
export interface BestPlacesQuery {
  readonly places: readonly SearchPlace[];
  readonly receiverCount: number;
  readonly search: MarginSearch;
  /** The smallest working margin at a place, exactly. */
  readonly exactDb: (placeIndex: number) => number;
  readonly topCount: number;
  /** The best places are at least so far from each other, m. */
  readonly apartM: number;
}

/** Exact margins nearer than this are equal: the first place of the list then wins. */
const SAME_DB = 1e-9;

/**
 * The places with the greatest smallest margin: the best of all, then the best that is far enough from it,
 * and so on. A place is left as soon as one receiver falls below the best found; each pass starts with the
 * receivers at which places failed before. Those within the quick margins' error of the best are worked out
 * exactly.
 * @returns indices of places, best first; fewer where not so many are far enough apart
 */
export function bestPlaces(query: BestPlacesQuery): number[] {
  const { places, search, exactDb, topCount, apartM } = query;
  const known = places.map(() => Infinity); // never below the quick smallest margin
  const whole = places.map(() => false);
  const least = leastMargins(query);
  const exact = new Map<number, number>();
  const exactly = (index: number): number => {
    const found = exact.get(index) ?? exactDb(index);
    exact.set(index, found);
    return found;
  };
  const chosen: number[] = [];
  const order = scattered(places.length);
  while (chosen.length < Math.min(topCount, places.length)) {
    const isFree = (index: number): boolean =>
      chosen.every((other) => other !== index && distanceM(places[other]!, places[index]!) >= apartM - 1e-9);
    let bestDb = -Infinity;
    for (const index of order) {
      if (known[index]! < bestDb - 2 * search.errorDb || !isFree(index)) continue;
      if (!whole[index]) {
        const floorDb = bestDb - 2 * search.errorDb;
        known[index] = least(places[index]!, floorDb);
        whole[index] = known[index] >= floorDb;
      }
      if (whole[index]) bestDb = Math.max(bestDb, known[index]!);
    }
    const near = order.filter(
      (index) => whole[index] && known[index]! >= bestDb - 2 * search.errorDb && isFree(index),
    );
    if (near.length === 0) break;
    const mostDb = Math.max(...near.map(exactly));
    chosen.push(Math.min(...near.filter((index) => exactly(index) >= mostDb - SAME_DB)));
  }
  return chosen;
}

/** @returns the smallest quick margin at a place, or the first one found below `floorDb` */
function leastMargins({
  receiverCount,
  search,
}: BestPlacesQuery): (from: SearchPlace, floorDb: number) => number {
  const order = Array.from({ length: receiverCount }, (_, index) => index);
  return (from, floorDb) => {
    for (let index = 0; index < receiverCount; index++) {
      const boundDb = search.boundDb(order[index]!, from);
      if (boundDb < floorDb) return boundDb;
    }
    let leastDb = Infinity;
    for (let index = 0; index < receiverCount; index++) {
      const receiver = order[index]!;
      leastDb = Math.min(leastDb, search.marginDb(receiver, from));
      if (leastDb >= floorDb) continue;
      order.copyWithin(1, 0, index);
      order[0] = receiver;
      return leastDb;
    }
    return leastDb;
  };
}

/** All indices in an order that soon comes everywhere: steps of about the golden section, no index twice. */
function scattered(count: number): number[] {
  let step = Math.max(1, Math.round(count * 0.618));
  while (count > 1 && greatestCommonDivisor(step, count) !== 1) step++;
  return Array.from({ length: count }, (_, index) => (index * step) % count);
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function distanceM({ at: one }: SearchPlace, { at: other }: SearchPlace): number {
  return Math.hypot(one.x - other.x, one.y - other.y, one.z - other.z);
}
