import type { Survey } from "../scan/index.js";
import type { OccupancyCell } from "../scorer/index.js";

/** What one source does to the radio: the channel that it hits hardest. */
export interface SourceHit {
  readonly emitter: string;
  /** Radio channel; null where the source stays below the receiver's noise − 10 dB everywhere. */
  readonly channel: number | null;
  readonly inChannelDbm: number | null;
  readonly aboveNoiseDb: number | null;
}

/** One state of the room. */
export interface CrowdSummary {
  readonly crowd: "empty" | "part" | "full" | null;
  readonly observationCount: number;
  readonly emitterCount: number;
  /** Mean busy share of the band's MHz cells. */
  readonly busyRatio: number;
  readonly firstSeen: string | null;
  readonly lastSeen: string | null;
}

/** All that the survey's report tells. */
export interface SurveyReport {
  readonly survey: Survey;
  readonly occupancy: readonly OccupancyCell[];
  /** Busy from this power in one MHz as scanned, dBm: what spoils the reference receiver. */
  readonly thresholdDbm: number;
  readonly busyShareRatio: number;
  readonly crowds: readonly CrowdSummary[];
  /** For each emitter of the survey, in its order. */
  readonly hits: readonly SourceHit[];
  readonly profileName: string;
  /** What the radio's figures rest on, in words. */
  readonly radioWords: string;
  /** The span of the radio's channels. */
  readonly usedMhz: readonly [lowMhz: number, highMhz: number];
}
