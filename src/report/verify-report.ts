import type {
  BandComparison,
  MarginWatch,
  PlanComparison,
  PlanRecord,
  ReadingsComparison,
  ReadingsImport,
} from "../commissioning/index.js";
import type { Issue } from "../issues/index.js";
import type { Crowd, Survey } from "../scan/index.js";
import type { Venue } from "../venue/index.js";
import type { ReceiverForecast } from "./receiver-forecast.js";

/** All that `verify` tells: what was looked at, and null for what wasn't. */
export interface VerifyReport {
  readonly venue: Venue;
  /** The crowd planned for. */
  readonly crowd: Crowd;
  readonly channels: readonly VerifiedChannel[];
  readonly plan: VerifiedPlan | null;
  readonly readings: VerifiedReadings | null;
  readonly band: VerifiedBand | null;
  readonly watch: VerifiedWatch | null;
  readonly findings: readonly VerifyFinding[];
  readonly terms: { readonly reliability: number; readonly busyShareRatio: number };
  readonly words: { readonly path: string; readonly fade: string };
  readonly issues: readonly Issue[];
}

/** A system's channel that was planned, and who says so. */
export interface VerifiedChannel {
  readonly system: string;
  /** Null: it hops, or can't be planned: with the reason. */
  readonly channel: number | null;
  readonly centreMhz: number | null;
  readonly fallbackChannel: number | null;
  readonly from: "plan" | "venue-file" | "surveyed-scans";
  readonly reason: string | null;
  /** Does a change of channel need a visit to each receiver? */
  readonly receiversFollow: "yes" | "no" | "unknown";
}

/** An earlier plan against what the same files give now. */
export interface VerifiedPlan {
  readonly source: string;
  readonly record: PlanRecord;
  readonly comparison: PlanComparison;
}

/** Readings at the receivers against what was predicted of them. */
export interface VerifiedReadings {
  readonly read: ReadingsImport;
  readonly comparison: ReadingsComparison;
  readonly forecasts: readonly Expected[];
  /** Where they come from: worked out now, or the plan file's, as its inputs are not the same any more. */
  readonly predictedBy: "now" | "plan";
  /** Receivers for which nothing can be predicted: in an antenna's true null, or not in the plan. */
  readonly unpredicted: readonly string[];
  /** Rows read on the ground, which say nothing of a receiver at trim. */
  readonly groundCount: number;
  /** Level of what was not heard where the row names none, dBm. */
  readonly floorDbm: number;
  readonly isFloorAssumed: boolean;
  readonly confidenceRatio: number;
}

/** What a receiver was expected to read; of a plan file's the basis is not known. */
export type Expected = Pick<
  ReceiverForecast,
  "receiver" | "system" | "room" | "predictedDbm" | "intervalDbm"
> & {
  readonly basis: ReceiverForecast["basis"] | null;
  readonly sigmaDb: number | null;
  readonly isExtrapolated: boolean;
};

/** The fresh scans against those that the plan was made from. */
export interface VerifiedBand {
  readonly comparison: BandComparison;
  readonly systems: readonly JudgedSystem[];
  /** The latest of each room and crowd. */
  readonly fresh: Survey;
  readonly rooms: readonly string[];
  /** Fresh crowds; null: not said. */
  readonly crowds: readonly (Crowd | null)[];
  /** Of the surveyed scans, those of the same rooms and, where there are any, places and crowd. */
  readonly surveyed: Survey | null;
  /** What keeps like from being compared with like, a sentence each. */
  readonly caveats: readonly string[];
  readonly roomlessCount: number;
}

/** At which receiver a system's ranking was made. */
export interface JudgedSystem {
  readonly system: string;
  readonly receiver: string | null;
  readonly room: string | null;
  readonly fadeAllowanceDb: number | null;
  /** Why it was not judged; else null. */
  readonly reason: string | null;
}

/** How the planned channels' margins went from date to date. */
export interface VerifiedWatch {
  readonly systems: readonly WatchedSystem[];
  readonly caveats: readonly string[];
}

export interface WatchedSystem {
  readonly system: string;
  readonly channel: number;
  readonly watch: MarginWatch;
  /** The weakest receiver at each date of the series. */
  readonly receivers: readonly string[];
  /** Weeks from the last date until the margin would be gone at this drift; null: it isn't falling. */
  readonly weeksLeftCount: number | null;
}

/** Something that fails the check, or a warning. */
export interface VerifyFinding {
  readonly code:
    | "receiver-low"
    | "not-heard"
    | "antenna-suspect"
    | "margin-fails"
    | "room-low"
    | "not-read"
    | "channel-fails"
    | "channel-beaten"
    | "channel-not-ranked"
    | "channel-failed-once"
    | "input-changed"
    | "assumption-changed";
  readonly severity: "failure" | "warning";
  readonly system: string | null;
  readonly room: string | null;
  readonly receiver: string | null;
  /** What changed, where that is it. */
  readonly name: string | null;
}
