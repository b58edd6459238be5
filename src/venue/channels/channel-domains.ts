import type { AssignmentLoads } from "./assignment-loads.js";

/**
 * The channels that each system may still take ("open"), and the least load that each of those still means: the
 * load from outside plus, of every other system, the least that its open channels put there. Changes can be undone
 * back to a mark. A slot is a channel of a system, all of them counted through.
 */
export class ChannelDomains {
  /** [slot] 1 while it is open. */
  readonly open: Uint8Array;
  /** [system] how many are open. */
  readonly openCounts: Int32Array;
  /** [slot] the least load still possible there, the greatest of its system's rows; true of open slots only. */
  readonly leastRatios: Float64Array;
  /** [row's channel] the least load still possible there. */
  readonly rowLeastRatios: Float64Array;
  /** [slot] its system. */
  readonly systems: Int32Array;
  /** Systems that lost a channel which the others' loads don't reflect yet. */
  private readonly changed = new Set<number>();
  /** [pair · most channels + receiving channel] rank, in the table's order, of the other's least harmful open channel. */
  private readonly ranks: Uint16Array;
  private readonly mostChannels: number;
  /** What was done, for undoing: a closed slot (rank −1), or the rank and, row by row, the loads that stood there. */
  private readonly trail: { place: number[]; rank: number[]; ratio: number[] } = {
    place: [],
    rank: [],
    ratio: [],
  };

  constructor(private readonly loads: AssignmentLoads) {
    const { systemCount, channelCounts, usable } = loads;
    this.open = new Uint8Array(usable.length).fill(1);
    this.openCounts = channelCounts.slice();
    this.systems = Int32Array.from(
      Array.from(channelCounts).flatMap((count, r) => Array<number>(count).fill(r)),
    );
    this.mostChannels = Math.max(...channelCounts);
    this.ranks = new Uint16Array(systemCount * systemCount * this.mostChannels);
    this.rowLeastRatios = this.loadsOfFreeChoice();
    this.leastRatios = Float64Array.from(this.systems, (r, slot) =>
      this.greatestLeast(r, slot - loads.starts[r]!),
    );
    for (let slot = 0; slot < usable.length; slot++) if (usable[slot] === 0) this.close(slot);
  }

  private loadsOfFreeChoice(): Float64Array {
    const { systemCount, rowStarts, rowSlots, baseRatios, gainRatios, tables } = this.loads;
    const least = baseRatios.slice();
    for (let r = 0; r < systemCount; r++)
      for (let row = rowStarts[r]!; row < rowStarts[r + 1]!; row++)
        for (let o = 0; o < systemCount; o++) {
          const gain = gainRatios[row * systemCount + o]!;
          if (gain === 0) continue;
          const { columnCount, shareRatios, order } = tables[r * systemCount + o]!;
          for (let c = 0; c < this.loads.channelCounts[r]!; c++)
            least[rowSlots[row]! + c]! += gain * shareRatios[c * columnCount + order[c * columnCount]!]!;
        }
    return least;
  }

  private greatestLeast(system: number, channel: number): number {
    const { rowStarts, rowSlots } = this.loads;
    let most = 0;
    for (let row = rowStarts[system]!; row < rowStarts[system + 1]!; row++)
      most = Math.max(most, this.rowLeastRatios[rowSlots[row]! + channel]!);
    return most;
  }

  mark(): number {
    return this.trail.place.length;
  }

  /** Back to a mark at which the loads were up to date. */
  undo(markCount: number): void {
    const { place: places, rank: ranks, ratio: ratios } = this.trail;
    const { systemCount, starts, rowStarts, rowSlots } = this.loads;
    this.changed.clear();
    while (places.length > markCount) {
      const place = places.pop()!;
      const rank = ranks.pop()!;
      if (rank < 0) {
        this.open[place] = 1;
        this.openCounts[this.systems[place]!]!++;
      } else {
        const pair = Math.floor(place / this.mostChannels);
        this.ranks[place] = rank;
        const r = Math.floor(pair / systemCount);
        const channel = place % this.mostChannels;
        for (let row = rowStarts[r + 1]! - 1; row >= rowStarts[r]!; row--)
          this.rowLeastRatios[rowSlots[row]! + channel] = ratios.pop()!;
        this.leastRatios[starts[r]! + channel] = this.greatestLeast(r, channel);
      }
    }
  }

  /** Takes a channel away from a system. */
  close(slotIndex: number): void {
    const system = this.systems[slotIndex]!;
    this.open[slotIndex] = 0;
    this.openCounts[system]!--;
    this.changed.add(system);
    this.note(slotIndex, -1);
  }

  /** Takes every other channel away from a system. */
  choose(slotIndex: number): void {
    const { starts, channelCounts } = this.loads;
    const system = this.systems[slotIndex]!;
    const start = starts[system]!;
    for (let other = start; other < start + channelCounts[system]!; other++)
      if (other !== slotIndex && this.open[other] === 1) this.close(other);
  }

  /** The first open slot of a system. */
  firstOpen(systemIndex: number): number {
    return this.open.indexOf(1, this.loads.starts[systemIndex]);
  }

  /** The least load of a system over its open channels, never below its floor; Infinity where none is open. */
  leastOf(systemIndex: number): number {
    const { starts, channelCounts, floorRatios } = this.loads;
    const start = starts[systemIndex]!;
    let least = Infinity;
    for (let slot = start; slot < start + channelCounts[systemIndex]!; slot++)
      if (this.open[slot] === 1 && this.leastRatios[slot]! < least) least = this.leastRatios[slot]!;
    return Math.max(least, floorRatios[systemIndex]!);
  }

  /** The other's share at a receiving slot by its least harmful open channel. */
  leastShare(slotIndex: number, otherIndex: number): number {
    const { systemCount, starts, tables } = this.loads;
    const r = this.systems[slotIndex]!;
    const pair = r * systemCount + otherIndex;
    const { columnCount, shareRatios, order } = tables[pair]!;
    const channel = slotIndex - starts[r]!;
    const row = channel * columnCount;
    return shareRatios[row + order[row + this.ranks[pair * this.mostChannels + channel]!]!]!;
  }

  /** Does every row of a receiving slot stay within a limit with so much more of the other's coupling than the least? */
  bearsMore(slotIndex: number, otherIndex: number, moreRatio: number, limitRatio: number): boolean {
    if (moreRatio <= 0) return true;
    const { systemCount, starts, rowStarts, rowSlots, gainRatios } = this.loads;
    const r = this.systems[slotIndex]!;
    const channel = slotIndex - starts[r]!;
    for (let row = rowStarts[r]!; row < rowStarts[r + 1]!; row++) {
      const gain = gainRatios[row * systemCount + otherIndex]!;
      if (this.rowLeastRatios[rowSlots[row]! + channel]! + gain * moreRatio > limitRatio) return false;
    }
    return true;
  }

  /** The greatest share of the other's coupling at which every row of a receiving slot stays within a limit. */
  mostShare(slotIndex: number, otherIndex: number, limitRatio: number): number {
    const { systemCount, starts, rowStarts, rowSlots, gainRatios } = this.loads;
    const r = this.systems[slotIndex]!;
    const channel = slotIndex - starts[r]!;
    let more = Infinity;
    for (let row = rowStarts[r]!; row < rowStarts[r + 1]!; row++) {
      const gain = gainRatios[row * systemCount + otherIndex]!;
      if (gain > 0)
        more = Math.min(more, (limitRatio - this.rowLeastRatios[rowSlots[row]! + channel]!) / gain);
    }
    return more === Infinity ? Infinity : this.leastShare(slotIndex, otherIndex) + more;
  }

  /** Brings the loads up to date with the channels that were closed. No system may be without an open channel. */
  refresh(): void {
    const { systemCount, peakGainRatios } = this.loads;
    for (const other of this.changed)
      for (let r = 0; r < systemCount; r++)
        if (peakGainRatios[r * systemCount + other]! > 0) this.refreshPair(r, other);
    this.changed.clear();
  }

  private refreshPair(r: number, other: number): void {
    const { systemCount, starts, channelCounts, rowStarts, rowSlots, gainRatios, tables } = this.loads;
    const pair = r * systemCount + other;
    const { columnCount, shareRatios, order } = tables[pair]!;
    const start = starts[r]!;
    const otherStart = starts[other]!;
    for (let channel = 0; channel < channelCounts[r]!; channel++) {
      if (this.open[start + channel] === 0) continue;
      const row = channel * columnCount;
      const place = pair * this.mostChannels + channel;
      const before = this.ranks[place]!;
      let rank = before;
      while (this.open[otherStart + order[row + rank]!] === 0) rank++;
      if (rank === before) continue;
      this.note(place, before);
      this.ranks[place] = rank;
      const more = shareRatios[row + order[row + rank]!]! - shareRatios[row + order[row + before]!]!;
      for (let one = rowStarts[r]!; one < rowStarts[r + 1]!; one++) {
        const index = rowSlots[one]! + channel;
        this.trail.ratio.push(this.rowLeastRatios[index]!);
        this.rowLeastRatios[index]! += gainRatios[one * systemCount + other]! * more;
      }
      this.leastRatios[start + channel] = this.greatestLeast(r, channel);
    }
  }

  private note(place: number, rank: number): void {
    this.trail.place.push(place);
    this.trail.rank.push(rank);
  }
}
