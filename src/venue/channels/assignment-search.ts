import type { AssignmentLoads } from "./assignment-loads.js";
import { AssignmentPropagation } from "./assignment-propagation.js";
import { ChannelDomains } from "./channel-domains.js";
import type { InterchangeGroups } from "./interchangeable-systems.js";

/** How a search ended: nothing within the levels (any more), told to end by `found`, or out of its allowance. */
export type SearchEnd = "exhausted" | "found" | "stopped";

/** What all searches of one problem share. */
export interface SearchAllowance {
  /** Nodes left for all of them; each search takes off what it used. */
  leftCount: number;
  readonly shouldStop: () => boolean;
}

export interface SearchTerms {
  /** [rank] how great the greatest load, the next … may be, falling; see fillLimits. */
  readonly levelRatios: Float64Array;
  /** Nodes of this tree at most. */
  readonly nodeCount: number;
  readonly allowance: SearchAllowance;
  /** Told of each assignment within the levels; answers with the levels to go on with, or undefined to end. */
  readonly found: (channels: Int32Array) => Float64Array | undefined;
  /** [slot] 1 where a channel may be used in this search; as the loads say by default. */
  readonly usable?: Uint8Array;
}

const NODES_BETWEEN_LOOKS = 32;
const WEIGHT_DECAY = 0.999;

/**
 * Depth-first search over all assignments within given levels, with propagation at every node. The system to decide
 * next is the one with few channels left and many contradictions behind it; its channel the one of least load.
 */
export class AssignmentSearch {
  private readonly weights: Float64Array;
  private weightStep = 1;
  private lastFailed = -1;
  private nodeCount = 0;
  private mostNodes = 0;
  private end: SearchEnd = "exhausted";

  constructor(
    private readonly loads: AssignmentLoads,
    private readonly groups: InterchangeGroups,
  ) {
    this.weights = new Float64Array(loads.systemCount).fill(1);
  }

  run(terms: SearchTerms): SearchEnd {
    const loads = { ...this.loads, usable: terms.usable ?? this.loads.usable };
    const domains = new ChannelDomains(loads);
    if (domains.openCounts.includes(0)) return "exhausted";
    const propagation = new AssignmentPropagation(loads, domains, this.groups);
    propagation.setLevels(terms.levelRatios);
    this.nodeCount = 0;
    this.mostNodes = Math.min(terms.nodeCount, terms.allowance.leftCount);
    this.end = "exhausted";
    this.lastFailed = -1;
    if (propagation.propagate()) this.descend(terms, domains, propagation);
    terms.allowance.leftCount -= this.nodeCount;
    return this.end;
  }

  /** @returns false where the whole search is to end */
  private descend(terms: SearchTerms, domains: ChannelDomains, propagation: AssignmentPropagation): boolean {
    for (;;) {
      if (!this.mayGoOn(terms)) return false;
      const system = this.next(domains);
      if (system < 0) return this.arrive(terms, domains, propagation);
      const slot = this.leastLoaded(system, domains);
      const mark = domains.mark();
      domains.choose(slot);
      if (propagation.propagate()) {
        if (!this.descend(terms, domains, propagation)) return false;
      } else this.blame(propagation.failedIndex, system);
      domains.undo(mark);
      domains.close(slot);
      if (!propagation.propagate()) {
        this.blame(propagation.failedIndex, system);
        return true;
      }
    }
  }

  private mayGoOn({ allowance }: SearchTerms): boolean {
    const looks = this.nodeCount % NODES_BETWEEN_LOOKS === NODES_BETWEEN_LOOKS - 1;
    if (this.nodeCount < this.mostNodes && !(looks && allowance.shouldStop())) {
      this.nodeCount++;
      return true;
    }
    this.end = "stopped";
    return false;
  }

  private arrive(terms: SearchTerms, domains: ChannelDomains, propagation: AssignmentPropagation): boolean {
    const channels = this.loads.starts.map((start, r) => domains.firstOpen(r) - start);
    const levels = terms.found(channels);
    if (levels === undefined) {
      this.end = "found";
      return false;
    }
    propagation.setLevels(levels);
    return true;
  }

  private blame(failedIndex: number, system: number): void {
    this.weights[failedIndex]! += this.weightStep;
    this.weightStep /= WEIGHT_DECAY;
    if (this.weightStep > 1e100) {
      this.weights.forEach((weight, r) => (this.weights[r] = Math.max(1e-100, weight * 1e-100)));
      this.weightStep *= 1e-100;
    }
    this.lastFailed = system;
  }

  private next(domains: ChannelDomains): number {
    if (this.lastFailed >= 0 && domains.openCounts[this.lastFailed]! > 1) return this.lastFailed;
    let best = -1;
    let bestScore = Infinity;
    for (let r = 0; r < this.weights.length; r++) {
      const count = domains.openCounts[r]!;
      const score = count / this.weights[r]!;
      if (count > 1 && score < bestScore) [best, bestScore] = [r, score];
    }
    return best;
  }

  private leastLoaded(system: number, domains: ChannelDomains): number {
    const start = this.loads.starts[system]!;
    let best = domains.firstOpen(system);
    for (let slot = best + 1; slot < start + this.loads.channelCounts[system]!; slot++)
      if (domains.open[slot] === 1 && domains.leastRatios[slot]! < domains.leastRatios[best]!) best = slot;
    return best;
  }
}
