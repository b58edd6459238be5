import type { Issue } from "../issues/index.js";
import type { RegulationReview } from "../radio/index.js";
import type { Crowd, Evidence, Survey } from "../scan/index.js";
import type { ReceiverFrames, ReceiverLooks, Venue, VenueChannelPlan, VenueRequest } from "../venue/index.js";

/** All that the report of `rooms` tells. */
export interface RoomsReport {
  /** Its radios held to the region's rule. */
  readonly venue: Venue;
  /** The crowd planned for. */
  readonly crowd: Crowd;
  /** Every scan of the venue. */
  readonly survey: Survey;
  /** Readings that belong to no room. */
  readonly roomlessCount: number;
  readonly rooms: readonly RoomReport[];
  readonly plan: VenueChannelPlan;
  /** Null where there is no system to ask for. */
  readonly request: VenueRequest | null;
  /** By system; empty where no region was named. */
  readonly reviews: ReadonlyMap<string, RegulationReview>;
  readonly terms: {
    readonly reliability: number;
    readonly busyShareRatio: number;
    readonly burstMs: number;
    /** Null: searched without a clock, by a count of steps. */
    readonly timeLimitS: number | null;
  };
  /** Wi-Fi channels that people's handsets are taken on. */
  readonly handsetChannels: readonly number[];
  readonly words: {
    /** For rooms that name none of their own. */
    readonly path: string;
    /** In sight. */
    readonly fade: string;
  };
  readonly issues: readonly Issue[];
}

/** One room, with one system's receivers in it. */
export interface RoomReport {
  readonly room: string;
  /** Null where no system works in it, or none that can be judged: with the reason. */
  readonly system: string | null;
  readonly reason: string | null;
  readonly receiverCount: number;
  /** The system's best radio channel with the other systems silent; null for a hopping radio. */
  readonly aloneChannel: number | null;
  readonly aloneCentreMhz: number | null;
  /** The receivers here on that channel, the other systems silent: empty, full and as planned. */
  readonly alone: readonly CrowdMargin[];
  /** The weakest receiver here on the planned channel, the other systems on theirs; null where none has a signal. */
  readonly joint: JointRoom | null;
  /** What the scans of the room are worth; null where there is none. */
  readonly evidence: Evidence | null;
}

/** A room's weakest receiver in the joint plan, and what its light does. */
export interface JointRoom extends WeakestReceiver {
  readonly looks: ReceiverLooks;
}

/** A room's weakest receiver with one crowd in. */
export interface CrowdMargin {
  readonly crowd: Crowd;
  /** Null with the reason; so are the rest then. */
  readonly weakest: WeakestReceiver | null;
  readonly reason: string | null;
}

export interface WeakestReceiver {
  readonly receiver: string;
  /** −Infinity in an antenna's true null. */
  readonly workingMarginDb: number;
  readonly limit: "range" | "interference";
  readonly clearAirRatio: number;
  readonly frames: ReceiverFrames;
}
