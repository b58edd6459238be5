import { SLACK } from "../../units/index.js";
import type { JointSystem } from "./joint-system.js";

/**
 * A system's own best channel, as if the others were silent: the greatest smallest working margin over its
 * receivers; of equal ones the lowest. A channel that the venue file settles stands.
 * @returns index of the channel
 */
export function bestAlone({ system, channels, receivers }: JointSystem): number {
  const settled = channels.findIndex(({ channel }) => channel === system.channel);
  if (settled >= 0) return settled;
  const leastDb = channels.map((_, c) =>
    receivers.reduce((least, one) => Math.min(least, one.channels[c]!.budget.workingMarginDb), Infinity),
  );
  return channels
    .map((_, c) => c)
    .reduce((best, c) => {
      if (leastDb[c]! > leastDb[best]! + SLACK) return c;
      return leastDb[c]! > leastDb[best]! - SLACK && channels[c]!.channel < channels[best]!.channel
        ? c
        : best;
    });
}
