import { referenceFadeLaw } from "../propagation/index.js";
import type { FadeLaw } from "../propagation/index.js";
import type { PracticeCheck } from "./antenna-practice.js";
import { heldRatio } from "./held-ratio.js";
import { planJob } from "./plan-job.js";
import type { JobPlan } from "./plan-job.js";
import { receiverBudgets } from "./receiver-budgets.js";
import type { ReceiverBudget, ReceiverBudgetOptions } from "./receiver-budgets.js";
import { receiverFrames } from "./receiver-frames.js";
import type { ReceiverFrames } from "./receiver-frames.js";
import { receiverLooks } from "./receiver-looks.js";
import type { ReceiverLooks } from "./receiver-looks.js";
import { venuePractice } from "./venue-practice.js";
import type { VenueSite } from "./venue-site.js";
import type { TransmitterPlace, VenueSystem } from "./venue-system.js";

/** What a venue's links are planned with. */
export interface VenueLinkOptions extends Omit<ReceiverBudgetOptions, "channel"> {
  /** A channel for a system, by its name; each its own, else its best, where none is named. */
  readonly channelOf?: ReadonlyMap<string, number> | undefined;
  /** Names of the systems to judge; all unless given. */
  readonly systems?: readonly string[] | undefined;
  /** Length of one Wi-Fi burst, ms; 2 unless given. */
  readonly burstMs?: number | undefined;
}

/** One receiver with what its light does. */
export interface ReceiverLink extends ReceiverBudget {
  readonly frames: ReceiverFrames;
  readonly looks: ReceiverLooks;
  /** Share of positions whose fading the margins cover. */
  readonly heldRatio: number;
}

/** One system's links. */
export interface SystemLinks {
  readonly system: VenueSystem;
  /** As placed, or the first candidate; null with the reason where there is neither. */
  readonly transmitter: TransmitterPlace | null;
  /** The transmitter is a candidate: the system is not placed yet. */
  readonly isCandidate: boolean;
  readonly reason: string | null;
  /** Radio channel judged; null for a hopping radio, or where there is nothing to judge. */
  readonly channel: number | null;
  readonly centreMhz: number | null;
  /** Was the channel settled, by the file or by the caller, and not chosen here? */
  readonly isSettled: boolean;
  /** Weakest first. */
  readonly receivers: readonly ReceiverLink[];
  /** What the share of positions, which is per receiver, means for all; null without receivers. */
  readonly job: JobPlan | null;
  readonly practice: readonly PracticeCheck[];
}

/**
 * Every system's links: its receivers' budgets, what the audience sees of them, and how its antennas are placed.
 * @returns in the venue's order
 * @throws {ArgumentError} as `receiverBudgets`
 * @see {@link venueSite}
 */
export function planVenueLinks(site: VenueSite, options: VenueLinkOptions): SystemLinks[] {
  return site.venue.systems
    .filter(({ name }) => options.systems?.includes(name) ?? true)
    .map((system) => systemLinks(site, system, options));
}

function systemLinks(site: VenueSite, system: VenueSystem, options: VenueLinkOptions): SystemLinks {
  const transmitter = system.transmitter ?? system.candidates[0] ?? null;
  const isHopping = system.profile.hopping !== null;
  const asked = isHopping ? undefined : options.channelOf?.get(system.name);
  const base = {
    system,
    transmitter,
    isCandidate: system.transmitter === null && transmitter !== null,
    isSettled: !isHopping && (asked ?? system.channel) !== null,
  };
  const nothing = { channel: null, centreMhz: null, receivers: [], job: null, practice: [] };
  if (transmitter === null)
    return { ...base, ...nothing, reason: "its transmitter is not placed, and no candidate is named" };
  const { channel, receivers } = receiverBudgets(site, system, transmitter, { ...options, channel: asked });
  const practice = venuePractice(site, system, transmitter, receivers);
  if (receivers.length === 0) return { ...base, ...nothing, practice, reason: "no receiver belongs to it" };
  const { reliability = DEFAULTS.reliability } = options;
  return {
    ...base,
    reason: null,
    channel,
    centreMhz: channel === null ? null : receivers[0]!.judged.centreMhz,
    receivers: receivers.map((one) => withAudience(one, system, site.venue.eventMinutes, options)),
    job: planJob({ receiverCount: receivers.length, reliability, setForAll: false }).job,
    practice,
  };
}

function withAudience(
  one: ReceiverBudget,
  { profile }: VenueSystem,
  eventMinutes: number,
  options: VenueLinkOptions,
): ReceiverLink {
  const { burstMs = DEFAULTS.burstMs, fadeLaw = referenceFadeLaw, hiddenFadeLaw = HIDDEN } = options;
  const { judged, channels } = one;
  const used = profile.hopping === null ? [judged.merit] : channels.map(({ merit }) => merit);
  const terms = { profile, burstMs, fadeAllowanceDb: judged.budget.fadeAllowanceDb, eventMinutes };
  const frames = receiverFrames(used, terms);
  return {
    ...one,
    frames,
    looks: receiverLooks(used, frames, terms),
    heldRatio: heldRatio(judged.link.inSight ? fadeLaw : hiddenFadeLaw, judged.budget),
  };
}

/** Where the caller says nothing: as the main job has it. */
const DEFAULTS = { reliability: 0.99, burstMs: 2 } as const;
const HIDDEN: FadeLaw = { law: "rayleigh" };
