import { ArgumentError, tellProgress, throwIfAborted } from "../issues/index.js";
import type { LongWork } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { budgetHurts } from "./budget-hurts.js";
import type { BudgetHurt } from "./budget-hurts.js";
import { budgetMends } from "./budget-mends.js";
import type { BudgetMend } from "./budget-mends.js";
import { channelsInBand } from "./channels-in-band.js";
import { receiverOnChannels } from "./receiver-channel.js";
import type { BudgetSetting, ReceiverChannel } from "./receiver-channel.js";
import { receiverScene } from "./receiver-scene.js";
import type { SceneTerms } from "./receiver-scene.js";
import { secondPlaces } from "./second-places.js";
import { fadeAllowances } from "./sight.js";
import type { FadeTerms } from "./sight.js";
import type { TransmitterPlace, VenueReceiver, VenueSystem } from "./venue-system.js";
import { usableChannels } from "./usable-channels.js";
import type { VenueSite } from "./venue-site.js";

/** What receivers' budgets are worked out with. */
export interface ReceiverBudgetOptions extends SceneTerms, FadeTerms, LongWork {
  /**
   * The radio channel to judge. Null or not given: the system's own, else the one with the greatest smallest
   * working margin; a hopping radio is judged at each receiver's middle hop frequency.
   */
  readonly channel?: number | null | undefined;
  /** Judge that channel alone, where the channel is settled: no other is looked at, nor offered as a mend. */
  readonly isChannelFinal?: boolean | undefined;
}

/** One receiver, judged. */
export interface ReceiverBudget {
  readonly receiver: VenueReceiver;
  /** On the channel judged. */
  readonly judged: ReceiverChannel;
  /** On every channel of the profile that the system may use, or the final one, in the profile's order. */
  readonly channels: readonly ReceiverChannel[];
  /** What takes most, first; empty where nothing takes more than the ideal. */
  readonly hurts: readonly BudgetHurt[];
  /** What would better it, the most first. */
  readonly mends: readonly BudgetMend[];
}

/** A system's receivers. */
export interface SystemBudgets {
  /** The channel judged; null for a hopping radio, or where the system has no receiver. */
  readonly channel: number | null;
  /** Weakest first; equal ones by name. */
  readonly receivers: readonly ReceiverBudget[];
}

/**
 * Every receiver's link budget in a venue, weakest first: levels through the venue, interference from the
 * scans of its room, the crowd's handsets and the file's other emitters, what takes most and what would mend
 * it. A level that the region's rules forbid isn't looked at here.
 * @param transmitter where it stands or might stand
 * @throws {ArgumentError} for a channel that the profile hasn't or the system may not use, and as
 *   `receiverScene`, `fadeAllowanceDb` and `venueLink`
 * @throws the signal's reason when it is aborted
 * @see {@link venueSite}
 */
export function receiverBudgets(
  site: VenueSite,
  system: VenueSystem,
  transmitter: TransmitterPlace,
  options: ReceiverBudgetOptions,
): SystemBudgets {
  const { profile } = system;
  const setting: BudgetSetting = {
    site,
    profile,
    score: receiverScene(site, profile, options),
    allowances: fadeAllowances(options),
  };
  const fixed = options.channel ?? system.channel;
  const all = usableChannels(system);
  const isFinal = options.isChannelFinal === true && profile.hopping === null;
  const usable = isFinal && fixed !== null ? all.filter(({ channel }) => channel === fixed) : all;
  const inBand = new Set(channelsInBand(site, system).map(({ channel }) => channel));
  const rows = site.venue.receivers
    .filter((receiver) => receiver.system === system.name)
    .map((receiver, index, { length }) => {
      tellProgress(options, "receivers", index, length);
      return { receiver, channels: usable.map(receiverOnChannels(setting, transmitter, receiver)) };
    });
  const isHopping = profile.hopping !== null;
  const channel =
    isHopping || rows.length === 0 ? null : (requiredChannel(fixed, all) ?? bestChannel(rows, inBand));
  const receivers = rows.map(({ receiver, channels }): ReceiverBudget => {
    throwIfAborted(options.signal);
    const judged = channel === null ? middleOf(channels) : channels.find((one) => one.channel === channel)!;
    const places = secondPlaces(site, system, receiver, transmitter);
    const others = isHopping ? [] : channels.filter((one) => one !== judged && inBand.has(one.channel));
    const hurts = budgetHurts(judged, { profile, transmitter, receiver }, setting.allowances);
    const mends = budgetMends(setting, { transmitter, receiver, now: judged, others, places });
    return { receiver, judged, channels, hurts, mends };
  });
  return { channel, receivers: receivers.sort(byWeakness) };
}

type Row = Pick<ReceiverBudget, "receiver" | "channels">;

function requiredChannel(
  fixed: number | null,
  usable: readonly { readonly channel: number }[],
): number | null {
  if (fixed === null || usable.some(({ channel }) => channel === fixed)) return fixed;
  throw new ArgumentError("channel", usable.map(({ channel }) => channel).join(", "), fixed);
}

/**
 * The channel with the greatest smallest working margin; of equal ones the lowest.
 * @param inBand channels inside the region's band: where there is any, the others are not chosen
 */
function bestChannel(rows: readonly Row[], inBand: ReadonlySet<number>): number {
  const all = rows[0]!.channels.map(({ channel }, index) => ({
    channel,
    leastDb: rows.reduce(
      (least, { channels }) => Math.min(least, channels[index]!.budget.workingMarginDb),
      Infinity,
    ),
  }));
  const inside = all.filter(({ channel }) => inBand.has(channel));
  const merits = inside.length > 0 ? inside : all;
  return merits.reduce((best, one) => {
    if (one.leastDb > best.leastDb + SLACK) return one;
    return one.leastDb > best.leastDb - SLACK && one.channel < best.channel ? one : best;
  }).channel;
}

/** The hop frequency of (lower) median working margin. */
function middleOf(channels: readonly ReceiverChannel[]): ReceiverChannel {
  const rising = [...channels].sort(
    (a, b) => marginOrder(a.budget.workingMarginDb, b.budget.workingMarginDb) || a.channel - b.channel,
  );
  return rising[Math.floor((rising.length - 1) / 2)]!;
}

function byWeakness(a: ReceiverBudget, b: ReceiverBudget): number {
  return (
    marginOrder(a.judged.budget.workingMarginDb, b.judged.budget.workingMarginDb) ||
    (a.receiver.name < b.receiver.name ? -1 : 1)
  );
}

function marginOrder(oneDb: number, otherDb: number): number {
  return oneDb === otherDb ? 0 : oneDb - otherDb;
}
