import { toMw } from "../../units/index.js";
import type { TransmitterPlace, VenueSystem } from "../venue-system.js";
import type { ChosenChannels, JointSystems } from "./choose-channels.js";
import type { FallbackChannel } from "./fallback-channels.js";
import { hoppingMargins } from "./hopping-margins.js";
import { jointMargins } from "./joint-margins.js";
import type { JointReceiver } from "./joint-margins.js";
import type { JointProblem } from "./joint-problem.js";
import type { JointSystem } from "./joint-system.js";

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

/** @returns one system of the plan; `chosen` is null where every system hops */
export function plannedSystem(
  systems: JointSystems,
  chosen: ChosenChannels | null,
  own: JointSystem,
): PlannedSystem {
  return chosen === null || own.isHopping
    ? hoppingSystem(systems, chosen, own)
    : fixedSystem(systems, chosen, own);
}

function fixedSystem(
  { fixed }: JointSystems,
  { joint, assignment, aloneChannels, fallbacks }: ChosenChannels,
  own: JointSystem,
): PlannedSystem {
  const index = fixed.indexOf(own);
  const on = (channels: readonly number[], receivers: readonly JointReceiver[]): SystemOnChannel => ({
    ...own.channels[channels[index]!]!,
    receivers,
    workingMarginDb: receivers[0]!.workingMarginDb,
  });
  return {
    ...base(own),
    ...on(assignment, jointMargins(joint, assignment)[index]!),
    alone: on(aloneChannels, jointMargins(silenced(joint), aloneChannels)[index]!),
    naive: on(aloneChannels, jointMargins(joint, aloneChannels)[index]!),
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

function hoppingSystem(
  { site, fixed, hopping, overlap }: JointSystems,
  chosen: ChosenChannels | null,
  own: JointSystem,
): PlannedSystem {
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
    naive: beside(chosen?.aloneChannels ?? []),
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
