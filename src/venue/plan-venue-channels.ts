import { tellProgress } from "../issues/index.js";
import { chooseChannels } from "./joint/choose-channels.js";
import type { JointProof, SearchTerms } from "./joint/choose-channels.js";
import { jointSystem } from "./joint/joint-system.js";
import type { ExcludedSystem, JointSystem } from "./joint/joint-system.js";
import { plannedSystem } from "./joint/planned-system.js";
import type { PlannedSystem } from "./joint/planned-system.js";
import type { SystemCoupling } from "./joint/system-couplings.js";
import { systemOverlap } from "./joint/system-overlap.js";
import type { SceneTerms } from "./receiver-scene.js";
import type { FadeTerms } from "./sight.js";
import type { VenueSite } from "./venue-site.js";
import type { VenueSystem } from "./venue-system.js";

/** What a venue's channels are planned with, and when to end. */
export interface VenueChannelOptions extends SceneTerms, FadeTerms, SearchTerms {
  /** The survey for a system's own radio, where sweeps were summed for several; `survey` for all unless given. */
  readonly surveyOf?: ((system: VenueSystem) => SceneTerms["survey"]) | undefined;
  /**
   * What earlier plans found of systems by themselves, for plans of the same house with the same terms in which one
   * and the same system has the same receivers; looked up and filled.
   */
  readonly known?: Map<VenueSystem, JointSystem | ExcludedSystem> | undefined;
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
 * @throws the signal's reason when it is aborted
 * @see {@link venueSite}
 */
export function planVenueChannels(site: VenueSite, options: VenueChannelOptions): VenueChannelPlan {
  const { known = new Map<VenueSystem, JointSystem | ExcludedSystem>() } = options;
  const parts = site.venue.systems.map((system, index, { length }) => {
    tellProgress(options, "systems", index, length);
    const survey = options.surveyOf?.(system) ?? options.survey;
    const part = known.get(system) ?? jointSystem(site, system, { ...options, survey });
    known.set(system, part);
    return part;
  });
  const systems = parts.filter((part): part is JointSystem => "receivers" in part);
  const fixed = systems.filter(({ isHopping }) => !isHopping);
  const hopping = systems.filter(({ isHopping }) => isHopping);
  const joint = { site, fixed, hopping, overlap: systemOverlap() };
  const chosen = fixed.length === 0 ? null : chooseChannels(joint, options);
  return {
    systems: systems.map((own) => plannedSystem(joint, chosen, own)),
    excluded: parts.filter((part): part is ExcludedSystem => "reason" in part),
    proof: chosen?.proof ?? null,
    couplings: chosen?.couplings ?? [],
  };
}
