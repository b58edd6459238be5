import { toMw } from "../units/index.js";
import { assignChannels } from "./assign-channels.js";
import type { AssignChannelsOptions } from "./assign-channels.js";
import { assignmentLoads } from "./channels/assignment-loads.js";
import type { AssignmentLoads } from "./channels/assignment-loads.js";
import { bestAlone } from "./joint/best-alone.js";
import { fallbackChannels } from "./joint/fallback-channels.js";
import type { FallbackChannel } from "./joint/fallback-channels.js";
import { hoppingMargins } from "./joint/hopping-margins.js";
import { jointMargins } from "./joint/joint-margins.js";
import type { JointReceiver } from "./joint/joint-margins.js";
import { jointProblem } from "./joint/joint-problem.js";
import type { JointProblem } from "./joint/joint-problem.js";
import { jointSystem } from "./joint/joint-system.js";
import type { ExcludedSystem, JointSystem } from "./joint/joint-system.js";
import { systemCouplings } from "./joint/system-couplings.js";
import type { SystemCoupling } from "./joint/system-couplings.js";
import { systemOverlap } from "./joint/system-overlap.js";
import type { SystemOverlap } from "./joint/system-overlap.js";
import { widenSpare } from "./joint/widen-spare.js";
import type { SceneTerms } from "./receiver-scene.js";
import type { FadeTerms } from "./sight.js";
import type { VenueSite } from "./venue-site.js";
import type { TransmitterPlace, VenueSystem } from "./venue-system.js";

/** What a venue's channels are planned with, and when to end. */
export interface VenueChannelOptions
  extends
    SceneTerms,
    FadeTerms,
    Pick<AssignChannelsOptions, "timeLimitS" | "nowMs" | "shouldStop" | "signal"> {
  /** The survey for a system's own radio, where sweeps were summed for several; `survey` for all unless given. */
  readonly surveyOf?: ((system: VenueSystem) => SceneTerms["survey"]) | undefined;
  /**
   * What earlier plans found of systems by themselves, for plans of the same house with the same terms in which one
   * and the same system has the same receivers; looked up and filled.
   */
  readonly known?: Map<VenueSystem, JointSystem | ExcludedSystem> | undefined;
}

/** One system on one channel, or hopping. */
export interface SystemOnChannel {
  /** Null for a hopping radio. */
  readonly channel: number | null;
  readonly centreMhz: number | null;
  /** The weakest first; those without any signal are left out. */
  readonly receivers: readonly JointReceiver[];
  /** Of the weakest. */
  readonly workingMarginDb: number;
}

/** One system in the joint plan. */
export interface PlannedSystem extends SystemOnChannel {
  readonly system: VenueSystem;
  readonly transmitter: TransmitterPlace;
  /** The transmitter is a candidate: the system is not placed yet. */
  readonly isCandidate: boolean;
  readonly isHopping: boolean;
  /** The venue file settles its channel. */
  readonly isSettled: boolean;
  /** On its own best channel, the other systems silent. */
  readonly alone: SystemOnChannel;
  /** On the same channel, the others on their own best ones. */
  readonly naive: SystemOnChannel;
  readonly fallback: FallbackChannel;
  /** Receivers in a true null of the transmitter's antenna: nothing arrives, whatever the plan. */
  readonly lostReceivers: readonly string[];
}

/** How good a plan is, and how sure that is. */
export interface JointProof {
  /** Smallest working margin over all systems with a channel, dB. */
  readonly minMarginDb: number;
  /** No plan has a greater one than this, dB. */
  readonly boundDb: number;
  readonly optimal: boolean;
  /** So many systems' margins, from the smallest up, are proved the greatest possible, each given those below it. */
  readonly provedCount: number;
  /** Smallest working margin with each system on its own best channel, dB. */
  readonly naiveMinMarginDb: number;
}

/** One channel for every system of a venue. */
export interface VenueChannelPlan {
  /** In the venue's order, hopping ones included. */
  readonly systems: readonly PlannedSystem[];
  readonly excluded: readonly ExcludedSystem[];
  /** Null where no system has a channel to choose. */
  readonly proof: JointProof | null;
  /** Who hears whom in the plan, the dearest first. */
  readonly couplings: readonly SystemCoupling[];
}

/**
 * The jointly best channels of a venue's systems: the smallest working margin over all receivers of all systems is
 * the greatest possible; then the next smallest, … (see `assignChannels`). Interference is the scans', the crowd's
 * and the other emitters' at the busy share of time, plus what every other system puts into the receiver through
 * walls, antennas and its selectivity, counted whole, as if it were always on the air; sensitivity caps a margin and
 * the fade allowance comes off it. Hopping systems have no channel to choose: they count as their power spread
 * evenly over their hop frequencies. Of plans that are equal but for sensitivity, one with more to spare over
 * interference is taken (a system may give up 0.25 dB for it, the smallest margin nothing).
 * @param options what there is to hear; without a time limit the search ends by its count of nodes
 * @returns a plan of the systems that have a transmitter (or a candidate, the first) and a receiver with a signal
 * @throws {ArgumentError} as `receiverScene`, `venueLink` and `assignChannels`
 */
export function planVenueChannels(site: VenueSite, options: VenueChannelOptions): VenueChannelPlan {
  const { known = new Map<VenueSystem, JointSystem | ExcludedSystem>() } = options;
  const parts = site.venue.systems.map((system) => {
    const survey = options.surveyOf?.(system) ?? options.survey;
    const part = known.get(system) ?? jointSystem(site, system, { ...options, survey });
    known.set(system, part);
    return part;
  });
  const systems = parts.filter((part): part is JointSystem => "receivers" in part);
  const fixed = systems.filter(({ isHopping }) => !isHopping);
  const hopping = systems.filter(({ isHopping }) => isHopping);
  const overlap = systemOverlap();
  const chosen = fixed.length === 0 ? null : chooseChannels(site, fixed, hopping, overlap, options);
  const plan = { site, fixed, hopping, overlap, chosen };
  return {
    systems: systems.map((own) => (own.isHopping ? hoppingSystem(plan, own) : fixedSystem(plan, own))),
    excluded: parts.filter((part): part is ExcludedSystem => "reason" in part),
    proof: chosen?.proof ?? null,
    couplings: chosen?.couplings ?? [],
  };
}

/** The channels of the systems that have one to choose. */
interface Chosen {
  readonly joint: JointProblem;
  readonly assignment: readonly number[];
  readonly alone: readonly number[];
  readonly fallbacks: readonly FallbackChannel[];
  readonly couplings: readonly SystemCoupling[];
  readonly proof: JointProof;
}

interface Plan {
  readonly site: VenueSite;
  readonly fixed: readonly JointSystem[];
  readonly hopping: readonly JointSystem[];
  readonly overlap: SystemOverlap;
  readonly chosen: Chosen | null;
}

function chooseChannels(
  site: VenueSite,
  fixed: readonly JointSystem[],
  hopping: readonly JointSystem[],
  overlap: SystemOverlap,
  options: VenueChannelOptions,
): Chosen {
  const joint = jointProblem(site, fixed, hopping, overlap);
  const loads = assignmentLoads(joint.problem);
  const found = assignChannels(joint.problem, searchOptions(options));
  const assignment = widenSpare(loads, assignmentLoads(joint.interferenceOnly), found.assignment);
  const alone = fixed.map(bestAlone);
  const withoutHops = (hopIndex: number): AssignmentLoads =>
    assignmentLoads(
      jointProblem(
        site,
        fixed,
        hopping.filter((_, h) => h !== hopIndex),
        overlap,
      ).problem,
    );
  const minMarginDb = leastDb(joint, assignment);
  return {
    joint,
    assignment,
    alone,
    fallbacks: fallbackChannels(fixed, loads, assignment),
    couplings: systemCouplings({ fixed, hopping, joint, loads, overlap }, assignment, withoutHops),
    proof: {
      minMarginDb,
      boundDb: found.optimal ? minMarginDb : Math.max(minMarginDb, found.boundDb),
      optimal: found.optimal,
      provedCount: found.provedCount,
      naiveMinMarginDb: leastDb(joint, alone),
    },
  };
}

function searchOptions({
  timeLimitS,
  nowMs,
  shouldStop,
  signal,
}: VenueChannelOptions): AssignChannelsOptions {
  return {
    ...(timeLimitS !== undefined && { timeLimitS, nodeLimitCount: Infinity }),
    nowMs,
    shouldStop,
    signal,
  };
}

function leastDb(joint: JointProblem, assignment: readonly number[]): number {
  return Math.min(...jointMargins(joint, assignment).map(([weakest]) => weakest!.workingMarginDb));
}

function fixedSystem({ fixed, chosen }: Plan, own: JointSystem): PlannedSystem {
  const { joint, assignment, alone, fallbacks } = chosen!;
  const index = fixed.indexOf(own);
  const on = (channels: readonly number[], receivers: readonly JointReceiver[]): SystemOnChannel => ({
    ...own.channels[channels[index]!]!,
    receivers,
    workingMarginDb: receivers[0]!.workingMarginDb,
  });
  return {
    ...base(own),
    ...on(assignment, jointMargins(joint, assignment)[index]!),
    alone: on(alone, jointMargins(silenced(joint), alone)[index]!),
    naive: on(alone, jointMargins(joint, alone)[index]!),
    fallback: fallbacks[index]!,
  };
}

/** Every receiver as its own scans have it, the other systems silent. */
function silenced(joint: JointProblem): JointProblem {
  return {
    ...joint,
    rows: joint.rows.map((row) => ({
      ...row,
      outsideMw: row.alone.channels.map(({ budget }) => toMw(budget.interferenceDbm)),
      couplingMw: row.couplingMw.map(() => 0),
    })),
  };
}

function hoppingSystem({ site, fixed, hopping, overlap, chosen }: Plan, own: JointSystem): PlannedSystem {
  const beside = (channels: readonly number[]): SystemOnChannel =>
    hops(
      hoppingMargins(
        site,
        own,
        {
          fixed: fixed.map((system, index) => ({
            system,
            centreMhz: system.channels[channels[index]!]!.centreMhz,
          })),
          hopping,
        },
        overlap,
      ),
    );
  return {
    ...base(own),
    ...beside(chosen?.assignment ?? []),
    alone: hops(hoppingMargins(site, own, { fixed: [], hopping: [] }, overlap)),
    naive: beside(chosen?.alone ?? []),
    fallback: {
      channel: null,
      reason: "the radio hops over its frequencies: there is no one channel to choose",
      workingMarginDb: null,
    },
  };
}

function hops(receivers: readonly JointReceiver[]): SystemOnChannel {
  return { channel: null, centreMhz: null, receivers, workingMarginDb: receivers[0]!.workingMarginDb };
}

function base({ system, transmitter, isCandidate, isHopping, lostReceivers }: JointSystem) {
  const isSettled = !isHopping && system.channel !== null;
  return { system, transmitter, isCandidate, isHopping, isSettled, lostReceivers };
}
