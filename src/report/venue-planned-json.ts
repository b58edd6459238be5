import { surveyBlock } from "./survey-json.js";
import type { VenueLinkReport } from "./venue-link-report.js";

interface Planned extends Pick<
  VenueLinkReport,
  "venue" | "survey" | "crowd" | "roomlessCount" | "terms" | "handsetChannels"
> {
  readonly words: Pick<VenueLinkReport["words"], "path" | "fade">;
}

/** What a venue was planned for, and from what. */
export function plannedForBlock({ venue, survey, crowd, roomlessCount }: Planned): object {
  return {
    venue: { name: venue.name, crowd, eventMinutes: venue.eventMinutes, region: venue.region },
    survey: venue.scans.length === 0 ? null : surveyBlock(survey),
    roomlessCount,
  };
}

/** What its figures rest on. */
export function plannedWithBlock({ venue, terms, words, handsetChannels }: Planned): object {
  return {
    ...terms,
    pathModel: words.path,
    fadeLaw: words.fade,
    handsetChannels,
    crowd: venue.crowd,
  };
}
