import { interferenceDistribution } from "../../src/scorer/index.js";
import type { ChannelScore, Contributor } from "../../src/scorer/index.js";

/** A source as a channel hears it. */
export function contributor(emitter: string, inChannelDbm = -60): Contributor {
  return { emitter, inChannelDbm, airtimeRatio: 0.1, airtimeAssumed: true, onRatio: 0.1 };
}

/** A scored channel with everything that a test doesn't name at a plain value; `dominant` null: no contributor. */
export function score(
  channel: number,
  marginDb: number,
  dominant: string | null,
  given: Partial<ChannelScore> = {},
): ChannelScore {
  return {
    rank: 1,
    channel,
    centreMhz: 2407 + 5 * channel,
    marginDb,
    interferenceDbm: -80,
    wantedDbm: -56,
    clearAirRatio: 1,
    contributors: dominant === null ? [] : [contributor(dominant)],
    spokenBy: "beacons",
    clearAirSpokenBy: "beacons",
    swept: [],
    distribution: interferenceDistribution(-104, []),
    allowed: true,
    reason: null,
    ...given,
  };
}
