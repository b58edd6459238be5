import { freeSpacePathLossDb } from "../propagation/index.js";
import type { RadioProfile } from "../radio/index.js";
import { peakGainDbi } from "./peak-gain.js";
import type { ReceiverChannel } from "./receiver-channel.js";
import type { FadeAllowances } from "./sight.js";
import type { TransmitterPlace, VenueReceiver } from "./venue-system.js";

/** A line of the budget that may take more than it need. */
export type HurtLine =
  | "feeder"
  | "tx-antenna"
  | "distance"
  | "path"
  | "floors"
  | "walls"
  | "canopy"
  | "audience"
  | "polarisation"
  | "rx-antenna"
  | "interference"
  | "no-sight";

/** What a line takes beyond the ideal. */
export interface BudgetHurt {
  readonly line: HurtLine;
  /** dB, > 0; null where the antenna's true null takes everything. */
  readonly lossDb: number | null;
}

/** A receiver nearer than this loses nothing by its distance, m (assumed). */
const IDEAL_DISTANCE_M = 10;

/**
 * What each line takes beyond the ideal, the most first: 10 m in the open and in sight, antennas at their
 * peaks and of one polarisation, no feeder, no canopy, the receiver's sensitivity as the only limit.
 * @param allowances of both cases, for what hiding costs
 * @returns lines that take anything; equal ones in the order of {@link HurtLine}
 * @see {@link venueSite}
 */
export function budgetHurts(
  { link, budget, centreMhz }: Pick<ReceiverChannel, "link" | "budget" | "centreMhz">,
  ends: {
    readonly profile: RadioProfile;
    readonly transmitter: TransmitterPlace;
    readonly receiver: VenueReceiver;
  },
  allowances: FadeAllowances,
): BudgetHurt[] {
  const { profile, transmitter, receiver } = ends;
  const { lines, obstacles, distanceM } = link;
  const openDb = freeSpacePathLossDb(distanceM, centreMhz);
  const losses: Readonly<Record<HurtLine, number>> = {
    feeder: lines.txFeederLossDb,
    "tx-antenna": peakGainDbi(transmitter.antenna, profile.txGainDbi.value) - lines.txGainDbi,
    distance: openDb - freeSpacePathLossDb(IDEAL_DISTANCE_M, centreMhz),
    path: lines.pathLossDb - obstacles.floorLossDb - openDb,
    floors: obstacles.floorLossDb,
    walls: obstacles.wallLossDb,
    canopy: lines.enclosureLossDb,
    audience: lines.crowdLossDb,
    polarisation: lines.polarisationLossDb,
    "rx-antenna": peakGainDbi(receiver.antenna, profile.rxGainDbi.value) - lines.rxGainDbi,
    interference: budget.interferenceDbm + budget.requiredCiDb - budget.sensitivityDbm,
    "no-sight": link.inSight ? 0 : allowances.hiddenDb - allowances.inSightDb,
  };
  return (Object.entries(losses) as [HurtLine, number][])
    .filter(([, lossDb]) => lossDb > LEAST_DB)
    .sort(([, oneDb], [, otherDb]) => (oneDb === otherDb ? 0 : otherDb - oneDb))
    .map(([line, lossDb]) => ({ line, lossDb: lossDb === Infinity ? null : lossDb }));
}

/** Less than this is the rounding of doubles. */
const LEAST_DB = 1e-9;
