import { findReach, pathLossDb } from "../propagation/index.js";
import type { Reach } from "../propagation/index.js";
import type { ReceiverChannel } from "./receiver-channel.js";
import type { VenueReceiver } from "./venue-system.js";
import { pathModelIn } from "./venue-site.js";
import type { VenueSite } from "./venue-site.js";

/** A receiver's working margin were it nearer or further, all else as it is. */
export interface MarginByDistance {
  /** dB at a 3-D distance, m. */
  readonly workingMarginDbAt: (distanceM: number) => number;
  readonly reach: Reach;
}

/**
 * How a receiver's working margin falls with distance, gains, walls, interference and fade allowance held as they
 * are where it hangs:
 * workingMarginDb(d) = workingMarginDb(d₀) + L(d₀) − L(d), L the path loss of its room's model.
 * Both margins rise and fall with the wanted level, so that what limits stays the same.
 * @throws {ArgumentError} as `pathLossDb`, and the function returned, too
 * @validity the model's own; a receiver elsewhere has other gains, walls and interference: a guide, no budget
 * @see {@link venueSite}
 */
export function marginByDistance(
  site: VenueSite,
  receiver: VenueReceiver,
  { link, budget, centreMhz }: Pick<ReceiverChannel, "link" | "budget" | "centreMhz">,
): MarginByDistance {
  const model = pathModelIn(site, receiver.room);
  const lossDbAt = (distanceM: number): number => pathLossDb(model, { distanceM, frequencyMhz: centreMhz });
  const atOneDb = budget.workingMarginDb + lossDbAt(link.distanceM);
  const workingMarginDbAt = (distanceM: number): number => atOneDb - lossDbAt(distanceM);
  return { workingMarginDbAt, reach: findReach(workingMarginDbAt, 1) };
}
