import type { AssignmentLoads } from "./assignment-loads.js";
import type { ChannelDomains } from "./channel-domains.js";
import { ExclusiveChannels } from "./exclusive-channels.js";
import type { InterchangeGroups } from "./interchangeable-systems.js";
import { fillLimits } from "./load-levels.js";

/** Room for the rounding of sums that come about in another order. */
const ROUNDING = 1 + 1e-12;
/** A pair is looked at channel by channel where its coupling at most is this share of the first level, or more. */
const NOTABLE_RATIO = 0.02;
/** Who excludes whom is worked out anew where the first level has fallen below this share of what it was then. */
const WORTHWHILE_RATIO = 0.97;

/**
 * Closes every channel that can't be part of an assignment within the levels of {@link fillLimits}:
 * one whose least load is above its system's limit, and one that leaves another system no channel at which both
 * stay within their limits.
 */
export class AssignmentPropagation {
  private readonly leastRatios: Float64Array;
  private readonly limitRatios: Float64Array;
  private pairs: [number, number][] = [];
  private levelRatios: Float64Array = new Float64Array(0);
  private exclusive: ExclusiveChannels;
  private exclusiveLevelRatio = Infinity;
  /** The system on which the last contradiction was found. */
  failedIndex = 0;

  constructor(
    private readonly loads: AssignmentLoads,
    private readonly domains: ChannelDomains,
    private readonly groups: InterchangeGroups,
  ) {
    this.leastRatios = new Float64Array(loads.systemCount);
    this.limitRatios = new Float64Array(loads.systemCount);
    this.exclusive = new ExclusiveChannels(loads, domains, Infinity);
  }

  setLevels(levelRatios: Float64Array): void {
    const { systemCount, peakGainRatios, tables } = this.loads;
    this.levelRatios = levelRatios;
    if (levelRatios[0]! < WORTHWHILE_RATIO * this.exclusiveLevelRatio) {
      this.exclusiveLevelRatio = levelRatios[0]!;
      this.exclusive = new ExclusiveChannels(this.loads, this.domains, levelRatios[0]! * ROUNDING);
    }
    const notable = (pair: number): boolean =>
      peakGainRatios[pair]! * tables[pair]!.greatestRatio > NOTABLE_RATIO * levelRatios[0]!;
    this.pairs = [];
    for (let r = 0; r < systemCount; r++)
      for (let o = 0; o < systemCount; o++)
        if (r !== o && (notable(r * systemCount + o) || notable(o * systemCount + r)))
          this.pairs.push([r, o]);
  }

  /** @returns false where no assignment is left */
  propagate(): boolean {
    const { domains } = this;
    for (;;) {
      domains.refresh();
      if (!this.measure()) return false;
      const mark = domains.mark();
      if (!this.closeOverloaded()) return false;
      if (domains.mark() === mark && !this.closeUnsupported()) return false;
      if (domains.mark() === mark) return true;
    }
  }

  /** What each system may still bear. */
  private measure(): boolean {
    for (let r = 0; r < this.leastRatios.length; r++)
      this.leastRatios[r] = this.domains.leastOf(r) / ROUNDING;
    const possible = fillLimits(this.leastRatios, this.levelRatios, this.limitRatios);
    if (!possible) this.failedIndex = this.leastRatios.indexOf(Math.max(...this.leastRatios));
    return possible;
  }

  private limitOf(system: number): number {
    return this.limitRatios[system]! * ROUNDING;
  }

  private closeOverloaded(): boolean {
    const { domains, loads } = this;
    this.exclusive.renew();
    for (let r = 0; r < loads.systemCount; r++) {
      const limit = this.limitOf(r);
      const start = loads.starts[r]!;
      for (let slot = start; slot < start + loads.channelCounts[r]!; slot++) {
        const over = domains.open[slot] === 1 && this.exclusive.isAbove(slot, limit);
        if (over && !this.close(slot)) return false;
      }
      if (!this.closeForFull(r)) return false;
    }
    return this.closeUnordered();
  }

  private close(slot: number): boolean {
    this.domains.close(slot);
    this.failedIndex = this.domains.systems[slot]!;
    return this.domains.openCounts[this.failedIndex]! > 0;
  }

  /** Others' channels that a system with one channel left can't bear, however weak the coupling. */
  private closeForFull(r: number): boolean {
    const { domains, loads } = this;
    if (domains.openCounts[r] !== 1) return true;
    const slot = domains.firstOpen(r);
    const channel = slot - loads.starts[r]!;
    const limit = this.limitOf(r);
    for (let o = 0; o < loads.systemCount; o++) {
      const pair = r * loads.systemCount + o;
      if (loads.peakGainRatios[pair] === 0 || domains.openCounts[o] === 1) continue;
      const { mostRatios, shareRatios, columnCount } = loads.tables[pair]!;
      const most = domains.mostShare(slot, o, limit);
      if (mostRatios[channel]! <= most) continue;
      const start = loads.starts[o]!;
      for (let d = 0; d < loads.channelCounts[o]!; d++)
        if (domains.open[start + d] === 1 && shareRatios[channel * columnCount + d]! > most)
          if (!this.close(start + d)) return false;
    }
    return true;
  }

  /** Of interchangeable systems the earlier takes no higher channel: every other order is the same plan. */
  private closeUnordered(): boolean {
    const { domains, loads } = this;
    for (const [earlier, later] of this.groups.orderedPairs) {
      const first = domains.firstOpen(earlier) - loads.starts[earlier]!;
      for (let c = 0; c < first; c++) {
        const slot = loads.starts[later]! + c;
        if (domains.open[slot] === 1 && !this.close(slot)) return false;
      }
    }
    return true;
  }

  private closeUnsupported(): boolean {
    for (const [r, o] of this.pairs) {
      const start = this.loads.starts[r]!;
      for (let slot = start; slot < start + this.loads.channelCounts[r]!; slot++)
        if (this.domains.open[slot] === 1 && !this.hasSupport(slot, r, o) && !this.close(slot)) return false;
    }
    return true;
  }

  /** Is there a channel of o at which it and r, on this slot, stay within their limits? */
  private hasSupport(slot: number, r: number, o: number): boolean {
    const { domains, loads } = this;
    const channel = slot - loads.starts[r]!;
    const here = r * loads.systemCount + o;
    const there = o * loads.systemCount + r;
    const mine = loads.tables[here]!;
    const theirs = loads.tables[there]!;
    const limit = this.limitOf(r);
    const least = domains.leastShare(slot, o);
    const theirLimit = this.limitOf(o);
    const start = loads.starts[o]!;
    for (let k = 0; k < mine.columnCount; k++) {
      const d = mine.order[channel * mine.columnCount + k]!;
      if (domains.open[start + d] === 0) continue;
      const more = mine.shareRatios[channel * mine.columnCount + d]! - least;
      if (!domains.bearsMore(slot, o, more, limit)) return false;
      const theirMore =
        theirs.shareRatios[d * theirs.columnCount + channel]! - domains.leastShare(start + d, r);
      if (domains.bearsMore(start + d, r, theirMore, theirLimit)) return true;
    }
    return false;
  }
}
