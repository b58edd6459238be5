import type { SweepChannelLevels } from "../band/index.js";
import { toDbm } from "../units/index.js";
import type { SweepReceiver } from "./sweep.js";

/** Cells of 1 dB: cell i holds levels above LOWEST_EDGE_DBM + i − 1 and up to LOWEST_EDGE_DBM + i. */
const LOWEST_EDGE_DBM = -220;
const CELL_COUNT = 281;
/** A level this little above an edge counts as on it, dB. */
const EDGE_SLACK_DB = 1e-9;

/** Levels of some channels in 1 dB cells: any quantile in constant memory. */
export class SweepHistogram {
  private readonly counts: Uint32Array;

  constructor(channelCount: number) {
    this.counts = new Uint32Array(channelCount * CELL_COUNT);
  }

  add(channelIndex: number, powerMw: number): void {
    const cell = Math.ceil(toDbm(powerMw) - LOWEST_EDGE_DBM - EDGE_SLACK_DB);
    const at = channelIndex * CELL_COUNT + Math.max(0, Math.min(CELL_COUNT - 1, cell));
    this.counts[at] = this.counts[at]! + 1;
  }

  merge(other: SweepHistogram): void {
    for (let at = 0; at < this.counts.length; at++) this.counts[at] = this.counts[at]! + other.counts[at]!;
  }

  /** @returns each channel's cells that hold a pass */
  levels(receiver: SweepReceiver): SweepChannelLevels[] {
    return receiver.channels.map(({ channel, centreMhz }, index) => {
      const own = this.counts.subarray(index * CELL_COUNT, (index + 1) * CELL_COUNT);
      const cells = [...own.entries()].filter(([, count]) => count > 0);
      return {
        channel,
        centreMhz,
        passCount: cells.reduce((sum, [, count]) => sum + count, 0),
        levelsDbm: cells.map(([cell]) => LOWEST_EDGE_DBM + cell),
        atLevelCount: cells.map(([, count]) => count),
      };
    });
  }
}
