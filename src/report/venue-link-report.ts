import type { Issue } from "../issues/index.js";
import type { Antenna } from "../propagation/index.js";
import type { RegulationReview } from "../radio/index.js";
import type { Crowd, Survey } from "../scan/index.js";
import type { SystemLinks, Venue } from "../venue/index.js";
import type { ReceiverForecast } from "./receiver-forecast.js";

/** All that the report of `link` tells of a venue. */
export interface VenueLinkReport {
  /** Its radios held to the region's rule. */
  readonly venue: Venue;
  /** The crowd planned for. */
  readonly crowd: Crowd;
  /** Every scan of the venue. */
  readonly survey: Survey;
  /** Rooms that were scanned with that crowd or a smaller one. */
  readonly scannedRooms: readonly string[];
  /** Readings that belong to no room. */
  readonly roomlessCount: number;
  readonly systems: readonly SystemLinks[];
  /** By system; empty where no region was named. */
  readonly reviews: ReadonlyMap<string, RegulationReview>;
  /** The one receiver that was asked for; null: all. */
  readonly receiver: string | null;
  readonly terms: {
    readonly reliability: number;
    readonly busyShareRatio: number;
    readonly burstMs: number;
  };
  /** Wi-Fi channels that people's handsets are taken on. */
  readonly handsetChannels: readonly number[];
  /** Emitters of the venue file that are taken as on every frequency. */
  readonly unplacedEmitters: readonly string[];
  /** What each receiver will read, by name; one without any signal isn't in it. */
  readonly forecasts: ReadonlyMap<string, ReceiverForecast>;
  readonly words: {
    readonly antenna: (antenna: Antenna) => string;
    /** For rooms that name none of their own. */
    readonly path: string;
    /** In sight. */
    readonly fade: string;
  };
  readonly issues: readonly Issue[];
}
