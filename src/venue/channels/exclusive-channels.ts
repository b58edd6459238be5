import type { AssignmentLoads } from "./assignment-loads.js";
import type { ChannelDomains } from "./channel-domains.js";

/**
 * A sharper least load where systems can't share a channel. Of a set of systems of which no two can be on one
 * channel within the greatest load allowed, the channels all differ: so what they put into one of them is at least
 * the sum of the greatest coupling by the least overlap left, the next by the next, … (rearrangement inequality).
 * Free choice, on which {@link ChannelDomains.leastRatios} rests, would put all of them on the farthest channel.
 */
export class ExclusiveChannels {
  /** [row] the others of its system's set, strongest into the row first; empty where there is nothing to gain. */
  private readonly others: readonly (readonly number[])[];
  /** [slot] about how much more than the domains' least load can come out at most. */
  private readonly hopeRatios: Float64Array;
  private readonly taken: Uint8Array;
  private prepared = -1;

  constructor(
    private readonly loads: AssignmentLoads,
    private readonly domains: ChannelDomains,
    mostRatio: number,
  ) {
    const exclusive = exclusivePairs(loads, mostRatio);
    const { systemCount, gainRatios, rowStarts } = loads;
    this.others = Array.from({ length: systemCount }, (_, r) => {
      const set = greedySet(loads, exclusive, r);
      return Array.from({ length: rowStarts[r + 1]! - rowStarts[r]! }, (__, k) => {
        const gains = (rowStarts[r]! + k) * systemCount;
        return [...set].sort((a, b) => gainRatios[gains + b]! - gainRatios[gains + a]! || a - b);
      });
    }).flat();
    this.hopeRatios = domains.leastRatios.map((_, slot) => this.hopeAt(slot));
    this.taken = new Uint8Array(Math.max(...loads.channelCounts));
  }

  /** All couplings of the set by the least overlap that is left when as many channels as it has systems are taken. */
  private hopeAt(slot: number): number {
    const { systemCount, starts, rowStarts, gainRatios, tables } = this.loads;
    const r = this.domains.systems[slot]!;
    const others = this.others[rowStarts[r]!]!;
    if (others.length < 2) return 0;
    const { columnCount, order, shareRatios } = tables[r * systemCount + others[0]!]!;
    const start = (slot - starts[r]!) * columnCount;
    const share = shareRatios[start + order[start + Math.min(others.length, columnCount - 1)]!]!;
    let most = 0;
    for (let row = rowStarts[r]!; row < rowStarts[r + 1]!; row++)
      most = Math.max(
        most,
        others.reduce((sum, o) => sum + gainRatios[row * systemCount + o]! * share, 0),
      );
    return most;
  }

  /** To be called whenever channels may have been closed since the last question. */
  renew(): void {
    this.prepared = -1;
  }

  /** Is an open slot above a limit? */
  isAbove(slotIndex: number, limitRatio: number): boolean {
    const plain = this.domains.leastRatios[slotIndex]!;
    if (plain > limitRatio) return true;
    if (plain + this.hopeRatios[slotIndex]! <= limitRatio) return false;
    const system = this.domains.systems[slotIndex]!;
    const { rowStarts } = this.loads;
    if (this.prepared !== system) this.prepare(this.others[rowStarts[system]!]!);
    this.prepared = system;
    for (let row = rowStarts[system]!; row < rowStarts[system + 1]!; row++)
      if (this.leastRatio(slotIndex, row) > limitRatio) return true;
    return false;
  }

  /** Channels that none of the undecided others can take: a decided one has it, or it is closed for all. */
  private prepare(others: readonly number[]): void {
    const { domains, loads } = this;
    this.taken.fill(1);
    for (const o of others)
      if (domains.openCounts[o]! > 1)
        for (let c = 0; c < loads.channelCounts[o]!; c++)
          if (domains.open[loads.starts[o]! + c] === 1) this.taken[c] = 0;
    for (const o of others)
      if (domains.openCounts[o] === 1) this.taken[domains.firstOpen(o) - loads.starts[o]!] = 1;
  }

  /** @returns the least load of a row at an open slot of the system prepared for; Infinity where the others don't fit */
  private leastRatio(slot: number, row: number): number {
    const { domains, loads, taken } = this;
    const r = domains.systems[slot]!;
    const others = this.others[row]!;
    const channel = slot - loads.starts[r]!;
    const { columnCount, order, shareRatios } = loads.tables[r * loads.systemCount + others[0]!]!;
    const start = channel * columnCount;
    let least = domains.rowLeastRatios[loads.rowSlots[row]! + channel]!;
    let rank = 0;
    for (const o of others) {
      if (domains.openCounts[o] === 1) continue;
      while (rank < columnCount && (taken[order[start + rank]!] === 1 || order[start + rank] === channel))
        rank++;
      if (rank === columnCount) return Infinity;
      const share = shareRatios[start + order[start + rank++]!]!;
      least += loads.gainRatios[row * loads.systemCount + o]! * (share - domains.leastShare(slot, o));
    }
    return least;
  }
}

/** [a · systemCount + b] 1 where a and b on one channel, whichever, are more than the load allowed for one of them. */
function exclusivePairs(loads: AssignmentLoads, mostRatio: number): Uint8Array {
  const { systemCount, channelCounts } = loads;
  const result = new Uint8Array(systemCount * systemCount);
  for (let a = 0; a < systemCount; a++)
    for (let b = 0; b < a; b++) {
      let exclusive = true;
      for (let c = 0; c < Math.min(channelCounts[a]!, channelCounts[b]!) && exclusive; c++)
        exclusive = tooMuch(loads, a, b, c, mostRatio) || tooMuch(loads, b, a, c, mostRatio);
      if (exclusive) result[a * systemCount + b] = result[b * systemCount + a] = 1;
    }
  return result;
}

function tooMuch(loads: AssignmentLoads, r: number, o: number, channel: number, mostRatio: number): boolean {
  const slot = loads.starts[r]! + channel;
  if (loads.usable[slot] === 0 || loads.usable[loads.starts[o]! + channel] === 0) return true;
  const { columnCount, shareRatios } = loads.tables[r * loads.systemCount + o]!;
  const share = shareRatios[channel * columnCount + channel]!;
  for (let row = loads.rowStarts[r]!; row < loads.rowStarts[r + 1]!; row++) {
    const base = loads.baseRatios[loads.rowSlots[row]! + channel]!;
    if (base + loads.gainRatios[row * loads.systemCount + o]! * share > mostRatio) return true;
  }
  return false;
}

/** Others that exclude r and each other, taken in order of how many they exclude; all by r's one overlap table. */
function greedySet(loads: AssignmentLoads, exclusive: Uint8Array, r: number): number[] {
  const { systemCount: n, tables } = loads;
  const candidates = Array.from({ length: n }, (_, o) => o).filter((o) => exclusive[r * n + o] === 1);
  const degrees = Array.from({ length: n }, (_, o) =>
    candidates.reduce((sum, other) => sum + exclusive[o * n + other]!, 0),
  );
  candidates.sort((a, b) => degrees[b]! - degrees[a]! || a - b);
  const set: number[] = [];
  for (const o of candidates) {
    const sameTable = set.length === 0 || tables[r * n + o] === tables[r * n + set[0]!];
    if (sameTable && set.every((other) => exclusive[o * n + other] === 1)) set.push(o);
  }
  return set;
}
