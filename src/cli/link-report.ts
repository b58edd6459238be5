import { antennaWords, fadeLawWords, pathModelWords } from "../propagation/index.js";
import type { VenueLinkReport } from "../report/index.js";
import type { SystemLinks } from "../venue/index.js";
import { forecastsOf } from "./predict-receivers.js";
import { unplacedEmitters } from "./unplaced-emitters.js";
import { fullTerms } from "./venue-options.js";
import type { VenueJob } from "./venue-options.js";
import type { VenueScene } from "./venue-scene.js";

/**
 * Everything that the report of `link` tells of a venue's links.
 * @param scene any of the venue's: for what doesn't hang on the radio
 */
export function linkReport(
  job: VenueJob,
  scene: VenueScene,
  systems: readonly SystemLinks[],
  asked: Pick<VenueLinkReport, "receiver" | "issues"> & { readonly burstMs: number },
): VenueLinkReport {
  const { crowd, terms } = job;
  const site = scene.siteWith(crowd);
  const { reliability, busyShareRatio, fadeLaw } = fullTerms(job);
  const { venue, survey, roomlessCount, reviews } = scene;
  return {
    ...{ venue, crowd, survey, roomlessCount, systems, reviews },
    scannedRooms: [...scene.roomsWith(crowd).keys()],
    forecasts: forecastsOf(systems, { ...terms, site }),
    receiver: asked.receiver,
    terms: { reliability, busyShareRatio, burstMs: asked.burstMs },
    handsetChannels: site.handsetChannels ?? [],
    unplacedEmitters: unplacedEmitters(venue),
    words: { antenna: antennaWords, path: pathModelWords(site.pathModel), fade: fadeLawWords(fadeLaw) },
    issues: asked.issues,
  };
}
