import type { Survey } from "../scan/index.js";
import type { BusyCell } from "./busy-cells.js";
import type { CrowdChange } from "./crowd-change-lines.js";
import type { Spectrogram } from "./spectrogram.js";

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
  /** Of power sweeps. */
  readonly passCount: number;
  readonly emitterCount: number;
  /** Mean busy share of the band's MHz cells; null where its scans hold no level in dBm. */
  readonly busyRatio: number | null;
  readonly firstSeen: string | null;
  readonly lastSeen: string | null;
}

/** All that the survey's report tells. */
export interface SurveyReport {
  readonly survey: Survey;
  readonly occupancy: readonly BusyCell[];
  /** Busy from this power in one MHz as scanned, dBm: what spoils the reference receiver. */
  readonly thresholdDbm: number;
  readonly busyShareRatio: number;
  /** Some stretch of time of a sweep holds several passes: its busy share is the most it can be. */
  readonly isSweptShareUpper: boolean;
  readonly crowds: readonly CrowdSummary[];
  /** Null: no two crowds to compare. */
  readonly change: CrowdChange | null;
  readonly changeReason: string | null;
  /** One for each power sweep. */
  readonly spectrograms: readonly Spectrogram[];
  /** For each emitter of the survey, in its order. */
  readonly hits: readonly SourceHit[];
  readonly profileName: string;
  /** What the radio's figures rest on, in words. */
  readonly radioWords: string;
  /** The span of the radio's channels. */
  readonly usedMhz: readonly [lowMhz: number, highMhz: number];
}
