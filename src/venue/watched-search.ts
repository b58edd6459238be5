import { tellProgress } from "../issues/index.js";
import type { LongWork } from "../issues/index.js";
import type { MarginSearch } from "./margin-search.js";

/** Margins between two looks at the signal: well below a tenth of a second. */
const MARGINS_BETWEEN_LOOKS = 1024;

/** The same search, which looks at a signal now and then. */
export function watchedSearch(search: MarginSearch, work: LongWork): MarginSearch {
  if (work.signal === undefined && work.onProgress === undefined) return search;
  let doneCount = 0;
  return {
    ...search,
    marginDb: (receiverIndex, from) => {
      if (doneCount++ % MARGINS_BETWEEN_LOOKS === 0) tellProgress(work, "places", doneCount - 1, null);
      return search.marginDb(receiverIndex, from);
    },
  };
}
