import { seededRandom } from "../../numeric/index.js";
import { greatestByRow, rowLoadsOf } from "./assignment-loads.js";
import type { AssignmentLoads } from "./assignment-loads.js";
import { compareLoads, descending } from "./load-levels.js";

const SEED = 2_440;
/** Contributors to the greatest load below this share of it are not worth moving. */
const NOTABLE_SHARE_RATIO = 0.02;
const LEAST_TENURE_COUNT = 3;
const MOST_TENURE_COUNT = 10;

/**
 * Local search with a tabu list: the most loaded system or one that loads it changes to the channel that is best for
 * all, loads counting by their sixth power; what has just moved rests. Always the same walk for the same problem.
 */
export class ChannelWalk {
  private readonly channels: Int32Array;
  /** [row] */
  private rowRatios: Float64Array;
  /** [system] */
  private loadRatios: Float64Array;
  private bestChannels: Int32Array;
  private bestRatios: Float64Array;
  private readonly restingUntil: Int32Array;
  private readonly random = seededRandom(SEED);
  private stepIndex = 0;

  /** @param start channels of all systems, each usable */
  constructor(
    private readonly loads: AssignmentLoads,
    start: Int32Array,
  ) {
    this.channels = start.slice();
    this.bestChannels = start.slice();
    this.rowRatios = rowLoadsOf(loads, start);
    this.loadRatios = greatestByRow(loads, this.rowRatios);
    this.bestRatios = descending(this.loadRatios);
    this.restingUntil = new Int32Array(loads.starts.length);
  }

  /** @returns the best assignment met so far after some more steps from where the walk stands */
  walk(stepCount: number, shouldStop: () => boolean): Int32Array {
    for (let k = 0; k < stepCount && !shouldStop(); k++) if (!this.step()) break;
    return this.bestChannels;
  }

  private arrive(): void {
    this.rowRatios = rowLoadsOf(this.loads, this.channels);
    this.loadRatios = greatestByRow(this.loads, this.rowRatios);
    const ratios = descending(this.loadRatios);
    if (compareLoads(ratios, this.bestRatios) >= 0) return;
    this.bestRatios = ratios;
    this.bestChannels = this.channels.slice();
  }

  private step(): boolean {
    this.stepIndex++;
    const { starts, channelCounts, usable } = this.loads;
    let best = { system: -1, channel: -1, score: Infinity };
    for (const system of this.movable()) {
      const resting = this.restingUntil[system]! > this.stepIndex;
      for (let channel = 0; channel < channelCounts[system]!; channel++) {
        if (channel === this.channels[system] || usable[starts[system]! + channel] === 0) continue;
        const score = this.scoreOf(system, channel);
        if (score < best.score && (!resting || score < 1)) best = { system, channel, score };
      }
    }
    if (best.system < 0) return this.restingUntil.some((until) => until > this.stepIndex);
    this.channels[best.system] = best.channel;
    const span = MOST_TENURE_COUNT - LEAST_TENURE_COUNT + 1;
    this.restingUntil[best.system] =
      this.stepIndex + 1 + LEAST_TENURE_COUNT + Math.floor(span * this.random());
    this.arrive();
    return true;
  }

  /** The most loaded system and those whose move could relieve it. */
  private movable(): number[] {
    const { systemCount, peakGainRatios, tables } = this.loads;
    const worst = this.loadRatios.indexOf(Math.max(...this.loadRatios));
    const notable = NOTABLE_SHARE_RATIO * this.loadRatios[worst]!;
    const others = Array.from({ length: systemCount }, (_, o) => o).filter((o) => {
      const pair = worst * systemCount + o;
      const { columnCount, shareRatios } = tables[pair]!;
      const share = shareRatios[this.channels[worst]! * columnCount + this.channels[o]!]!;
      return o !== worst && peakGainRatios[pair]! * share > notable;
    });
    return [worst, ...others];
  }

  /** Sum of sixth powers of the loads over the least greatest one met so far, after a move. */
  private scoreOf(system: number, channel: number): number {
    const { systemCount, rowStarts, floorRatios, gainRatios, tables } = this.loads;
    const before = this.channels[system]!;
    const unit = 1 / this.bestRatios[0]!;
    let score = 0;
    for (let r = 0; r < systemCount; r++) {
      if (r === system) continue;
      const { columnCount, shareRatios } = tables[r * systemCount + system]!;
      const start = this.channels[r]! * columnCount;
      const more = shareRatios[start + channel]! - shareRatios[start + before]!;
      let most = floorRatios[r]!;
      for (let row = rowStarts[r]!; row < rowStarts[r + 1]!; row++)
        most = Math.max(most, this.rowRatios[row]! + gainRatios[row * systemCount + system]! * more);
      score += sixthPower(most * unit);
    }
    return score + sixthPower(this.ownLoad(system, channel) * unit);
  }

  /** The load of a system on a channel with the others where they are. */
  private ownLoad(system: number, channel: number): number {
    const { systemCount, rowStarts, rowSlots, baseRatios, floorRatios, gainRatios, tables } = this.loads;
    let most = floorRatios[system]!;
    for (let row = rowStarts[system]!; row < rowStarts[system + 1]!; row++) {
      let load = baseRatios[rowSlots[row]! + channel]!;
      for (let o = 0; o < systemCount; o++) {
        if (o === system) continue;
        const { columnCount, shareRatios } = tables[system * systemCount + o]!;
        load += gainRatios[row * systemCount + o]! * shareRatios[channel * columnCount + this.channels[o]!]!;
      }
      most = Math.max(most, load);
    }
    return most;
  }
}

function sixthPower(x: number): number {
  const square = x * x;
  return square * square * square;
}
