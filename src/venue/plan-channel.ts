import { ArgumentError } from "../issues/index.js";
import { fadeAllowanceDb } from "../propagation/index.js";
import type { RadioProfile } from "../radio/index.js";
import { rankChannels } from "../scorer/index.js";
import type { ChannelChoice, ChannelScore, HopSet } from "../scorer/index.js";
import { planJob } from "./plan-job.js";
import type { JobAnswer } from "./plan-job.js";
import { planLink } from "./plan-link.js";
import type { LinkPlan } from "./plan-link.js";
import { receiverFrames } from "./receiver-frames.js";
import type { ReceiverFrames } from "./receiver-frames.js";
import { receiverLooks } from "./receiver-looks.js";
import type { LookTerms, ReceiverLooks } from "./receiver-looks.js";
import { referenceSetting } from "./reference-setting.js";
import type { PlanChannelOptions, ReferenceSetting } from "./reference-setting.js";
import { siteReceivedDbm } from "./site-link.js";
import { sitePractice } from "./site-practice.js";
import type { PracticeCheck } from "./antenna-practice.js";

/** A channel of the ranking with the frames it would lose at the reference distance. */
export interface PlannedChannel extends ChannelScore {
  readonly frames: ReceiverFrames;
}

/** The main job's answer for one reference receiver, without a venue file. */
export interface ChannelPlan extends JobAnswer {
  readonly setting: ReferenceSetting;
  readonly ranking: readonly PlannedChannel[];
  readonly recommended: ChannelChoice;
  readonly backup: ChannelChoice;
  readonly hopSet: HopSet | null;
  readonly link: LinkPlan;
  /** How the antennas are placed, against good practice. */
  readonly practice: readonly PracticeCheck[];
  /** At the reference distance, on the link's channel or the hop set; null where there is neither. */
  readonly frames: ReceiverFrames | null;
  /** What those frames look like in an event; null where there are none. */
  readonly looks: ReceiverLooks | null;
}

/**
 * Ranks a radio's channels for the reference receiver and works out its link by distance: each channel's
 * wanted level at its own centre frequency, the link table at the recommended channel with that channel's
 * interference held constant.
 * @returns the plan; plain data
 * @throws {ArgumentError} when an option is out of range or the profile has no such channel
 * @throws the signal's reason when it is aborted
 * @example const emitters = [{ id: "02:00:00:00:00:01", centreMhz: 2437, shape: transmitShapes.ht20, levelDbm: -48,
 *   airtimeRatio: 0.5, airtimeAssumed: true, contentionChannel: 6 }];
 * const plan = planChannel({ emitters, profile: findProfile("raster-13") });
 * plan.recommended.channel; // => 13
 * const setting = referenceSetting({ emitters, profile: findProfile("raster-13") });
 * setting.distanceM; // => 20
 * planLink(setting, 10, plan.ranking.slice(0, 1), null).channel; // => 13
 * const terms = { profile: setting.profile, burstMs: 2, fadeAllowanceDb: 10 };
 * const frames = receiverFrames(plan.ranking.slice(0, 1), terms);
 * frames.typical.lossRatio; // => 0
 * receiverLooks(plan.ranking.slice(0, 1), frames, { ...terms, eventMinutes: 90 }).typical.holdOnceAnEventS; // => 0
 * const scene = { emitters, buildingIds: new Set(["02:00:00:00:00:01"]) };
 * planWifi(plan, scene).apPowerDbm; // => 18
 * planWifiMoves(plan, scene).survivor === undefined; // => false
 * planWifiRequest(plan, scene).fixes.length; // => 1
 * radiated(plan).eirpDbm; // => 20
 * const receiver = { ...receiverOf(setting.profile), centreMhz: 2462 };
 * onWorstWifi(emitters, scene.buildingIds, receiver)[0].contentionChannel; // => 11
 */
export function planChannel(options: PlanChannelOptions): ChannelPlan {
  const setting = referenceSetting(options);
  const { profile, fadeLaw, reliability, busyShareRatio, burstMs } = setting;
  const allowanceDb = fadeAllowanceDb({ ...fadeLaw, reliability });
  const receivedDbm = siteReceivedDbm(setting);
  const wantedDbm = profile.channels.map(({ centreMhz }) => receivedDbm(centreMhz));
  const { emitters, sweeps = [], bandMhz, overlapCache } = options;
  requireChannel(profile, options.linkChannel);
  const ranked = rankChannels({
    emitters,
    sweeps,
    profile,
    wantedDbm,
    busyShareRatio,
    signal: options.signal,
    onProgress: options.onProgress,
    ...(bandMhz && { bandMhz }),
    ...(overlapCache && { overlapCache }),
  });
  const terms = { profile, burstMs, fadeAllowanceDb: allowanceDb };
  const ranking = ranked.ranking.map((score) => ({ ...score, frames: receiverFrames([score], terms) }));
  const hops = options.linkChannel === undefined ? ranked.hopSet : null;
  const channel = options.linkChannel ?? ranked.recommended.channel;
  const used = ranking.filter((score) =>
    hops === null ? score.channel === channel : hops.channels.includes(score.channel),
  );
  const link = planLink(setting, allowanceDb, used, hops);
  return {
    setting,
    ...planJob(setting),
    ...ranked,
    ranking,
    link,
    practice: sitePractice(setting),
    ...audience(used, { ...terms, eventMinutes: setting.eventMinutes }),
  };
}

/** The frames and looks of the channels in use. */
function audience(used: readonly ChannelScore[], terms: LookTerms): Pick<ChannelPlan, "frames" | "looks"> {
  if (used.length === 0) return { frames: null, looks: null };
  const frames = receiverFrames(used, terms);
  return { frames, looks: receiverLooks(used, frames, terms) };
}

function requireChannel({ channels }: RadioProfile, linkChannel: number | undefined): void {
  if (linkChannel === undefined || channels.some(({ channel }) => channel === linkChannel)) return;
  const numbers = channels.map(({ channel }) => channel);
  throw new ArgumentError(
    "linkChannel",
    `a channel of the profile, ${numbers[0]}…${numbers[numbers.length - 1]}`,
    linkChannel,
  );
}
