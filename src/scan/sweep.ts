import type { Shape, SweepChannelLevels } from "../band/index.js";
import type { Crowd } from "./reading.js";

/** The receiver whose channels a sweep is summed for. */
export interface SweepReceiver {
  readonly channels: readonly { readonly channel: number; readonly centreMhz: number }[];
  /** 0 dB in the passband, beyond it minus the rejection. */
  readonly selectivity: Shape;
  /** Passband: a pass counts for a channel when it covers centre ± bandwidth/2. */
  readonly bandwidthMhz: number;
}

/**
 * One power sweep, read. Rows in = used + rejected + out of band; level cells in = used + invalid + out of
 * band + dropped + of rejected rows.
 */
export interface Sweep {
  readonly layout: "wide" | "long";
  /** Empty: not named. */
  readonly place: string;
  readonly crowd: Crowd | null;
  readonly usedRowCount: number;
  readonly cellCount: number;
  readonly usedCellCount: number;
  /** Cells that hold no level: not a number, infinite, above 0 or below −200 dBm. */
  readonly invalidCellCount: number;
  readonly outOfBandCellCount: number;
  /** One more than a row's span holds, or a frequency read twice in a pass. */
  readonly droppedCellCount: number;
  readonly rejectedCellCount: number;
  /** Levels are relative, not dBm: nothing is ranked by them. */
  readonly relative: boolean;
  readonly passCount: number;
  /** Distinct bins inside 2400–2500 MHz. */
  readonly binCount: number;
  /** Outer edges of those bins. */
  readonly startMhz: number;
  readonly stopMhz: number;
  readonly binWidthMhz: number;
  readonly resolutionBandwidthMhz: number;
  /** It is the bin's width, for want of a better figure. */
  readonly resolutionBandwidthAssumed: boolean;
  /** First and last time stamp of a pass, ms since 1970 UTC; null where no pass has one. */
  readonly firstMs: number | null;
  readonly lastMs: number | null;
  /** Over all passes, in the receiver's order of channels. */
  readonly channels: readonly SweepChannelLevels[];
  /** By time, rising; passes without a time come first. */
  readonly buckets: readonly SweepBucket[];
}

/** A stretch of time: what each channel heard in it, and a coarse picture of the band. */
export interface SweepBucket {
  /** Null: passes without a time stamp. */
  readonly startMs: number | null;
  readonly lengthMs: number;
  readonly channels: readonly SweepChannelLevels[];
  /** `meanDbm[i]` is the mean power in 2400 + i … 2401 + i MHz; null where nothing was read. For pictures only. */
  readonly meanDbm: readonly (number | null)[];
  /** The same, the highest of any pass. */
  readonly maxDbm: readonly (number | null)[];
}
