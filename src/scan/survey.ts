import type { SweepLevels } from "../band/index.js";
import type { Issue } from "../issues/index.js";
import type { WifiStandard } from "./reading.js";
import type { SweepSummary } from "./survey-sweeps.js";

/** Whose a radio source is. */
export type Owner = "building" | "neighbour";

/** One radio source of a survey: one physical transmitter, whatever number of names it announces. */
export interface SurveyEmitter {
  /** Lowest address, `address@channel` where it was heard on several, or `name@channel`. */
  readonly emitter: string;
  readonly bssids: readonly string[];
  /** Names announced, sorted; hidden ones left out. */
  readonly names: readonly string[];
  /** Primary Wi-Fi channel. */
  readonly channel: number;
  readonly centreMhz: number;
  readonly centreAssumed: boolean;
  readonly widthMhz: 20 | 40;
  readonly standard: WifiStandard;
  /** At the place where it is loudest, dBm, as scanned. */
  readonly levelDbm: number;
  /** That place. */
  readonly levelPlace: string;
  /** Some of its levels came as a percentage. */
  readonly levelAssumed: boolean;
  readonly places: readonly PlaceLevel[];
  readonly airtimeRatio: number;
  readonly airtimeAssumed: boolean;
  /** As marked by the user; else presumed from the level. */
  readonly owner: Owner;
  readonly ownerMarked: boolean;
  /** What it reported itself, by crowd (a blank crowd counts as part): the 0.9 quantile; null where it reported none. */
  readonly reportedAirtime: ReportedAirtime;
  /** Its address was heard on other channels too: it moved, or it has several radios. */
  readonly moved: boolean;
  /** ISO 8601, UTC; null where no reading has a time. */
  readonly firstSeen: string | null;
  readonly lastSeen: string | null;
}

/** Airtime that a source reported itself, 0..1, by crowd. */
export interface ReportedAirtime {
  readonly emptyRatio: number | null;
  readonly partRatio: number | null;
  readonly fullRatio: number | null;
}

/** A source's level at one place: the level quantile over its instants there. */
export interface PlaceLevel {
  readonly place: string;
  readonly levelDbm: number;
  /** Instants at which it was heard there. */
  readonly readingCount: number;
  /** The spread of its levels there. */
  readonly lowestDbm: number;
  readonly highestDbm: number;
}

/** How far the scans can be trusted, why, and the one next look that would help most. */
export interface Evidence {
  readonly grade: "solid" | "partial" | "one-look";
  readonly reasons: readonly string[];
  readonly next: string;
}

/** All scans of a venue, merged. Rows in = observations + rejected + out of band + left out on request. */
export interface Survey {
  readonly emitters: readonly SurveyEmitter[];
  readonly emitterCount: number;
  /** Distinct addresses in the band; where a format has none, distinct name × channel. */
  readonly bssCount: number;
  /** Those of them nameless in every reading. */
  readonly hiddenCount: number;
  readonly observationCount: number;
  readonly rejectedCount: number;
  readonly outOfBandCount: number;
  /** Rows left out because the caller named their source. */
  readonly ignoredCount: number;
  /** Named places, sorted; "" stands for rows that name none. */
  readonly places: readonly string[];
  /** The fullest crowd that a reading names; null where none does. */
  readonly fullestCrowd: "empty" | "part" | "full" | null;
  /** The power sweeps in brief; null: none was read. */
  readonly sweep: SweepSummary | null;
  /** The sweeps that rank, one for each place and crowd. */
  readonly sweepLevels: readonly SweepLevels[];
  readonly evidence: Evidence;
  readonly issues: readonly Issue[];
}
