import type { MarginSearch, SearchPlace } from "./margin-search.js";

/** What a search for two places works on. */
export interface BestPairQuery {
  readonly places: readonly SearchPlace[];
  readonly receiverCount: number;
  readonly search: MarginSearch;
  /** The two are at least so far from each other, m. */
  readonly apartM: number;
}

/** Two places; each receiver belongs to the one from which its margin is the greater. */
export interface BestPair {
  readonly oneIndex: number;
  readonly otherIndex: number;
}

/** More places than this are thinned for the first look, in which every pair is tried. */
const MOST_PLACES = 160;

/**
 * Two places that together serve all receivers best: the greatest smallest margin, each receiver on the better
 * of the two. Every pair of an even choice of at most 160 places is tried; then each of the best pair in turn
 * is moved to the best of all places until nothing gains. With no more than 160 places it is the best pair;
 * with more, one that no single move betters.
 * @returns null where no two places are far enough apart
 */
export function bestPair(query: BestPairQuery): BestPair | null {
  const { places, receiverCount, search, apartM } = query;
  const stride = Math.max(1, places.length / MOST_PLACES);
  const few = Array.from({ length: Math.min(MOST_PLACES, places.length) }, (_, index) =>
    Math.floor(index * stride),
  );
  const marginsDb = few.map((place) =>
    Float64Array.from({ length: receiverCount }, (_, receiver) => search.marginDb(receiver, places[place]!)),
  );
  let best: BestPair | null = null;
  let bestDb = -Infinity;
  for (let one = 0; one < few.length; one++)
    for (let other = one + 1; other < few.length; other++) {
      if (!isApart(places[few[one]!]!, places[few[other]!]!, apartM)) continue;
      const jointDb = jointMarginDb(marginsDb[one]!, (receiver) => marginsDb[other]![receiver]!, bestDb);
      if (best !== null && jointDb <= bestDb) continue;
      best = { oneIndex: few[one]!, otherIndex: few[other]! };
      bestDb = jointDb;
    }
  return best === null || few.length === places.length ? best : improved(query, best, bestDb);
}

function improved(query: BestPairQuery, start: BestPair, startDb: number): BestPair {
  const { places, receiverCount, search, apartM } = query;
  let pair = start;
  let pairDb = startDb;
  let unchangedCount = 0;
  while (unchangedCount < 2) {
    const kept = places[pair.oneIndex]!;
    const keptDb = Float64Array.from({ length: receiverCount }, (_, receiver) =>
      search.marginDb(receiver, kept),
    );
    let moved = pair.otherIndex;
    places.forEach((place, index) => {
      if (!isApart(kept, place, apartM)) return;
      const jointDb = jointMarginDb(keptDb, (receiver) => search.marginDb(receiver, place), pairDb);
      if (jointDb <= pairDb + GAIN_DB) return;
      moved = index;
      pairDb = jointDb;
    });
    unchangedCount = moved === pair.otherIndex ? unchangedCount + 1 : 0;
    pair = { oneIndex: moved, otherIndex: pair.oneIndex };
  }
  const { oneIndex, otherIndex } = pair;
  return oneIndex < otherIndex ? pair : { oneIndex: otherIndex, otherIndex: oneIndex };
}

/** A move that gains less is none: it might go on for ever. */
const GAIN_DB = 1e-6;

/** The smallest of the better margins, or the first one found at or below `enoughDb`. */
function jointMarginDb(oneDb: Float64Array, otherDb: (receiver: number) => number, enoughDb: number): number {
  let leastDb = Infinity;
  for (let receiver = 0; receiver < oneDb.length; receiver++) {
    if (oneDb[receiver]! >= leastDb) continue;
    leastDb = Math.min(leastDb, Math.max(oneDb[receiver]!, otherDb(receiver)));
    if (leastDb <= enoughDb) return leastDb;
  }
  return leastDb;
}

function isApart({ at: one }: SearchPlace, { at: other }: SearchPlace, leastM: number): boolean {
  return Math.hypot(one.x - other.x, one.y - other.y, one.z - other.z) >= leastM - 1e-9;
}
