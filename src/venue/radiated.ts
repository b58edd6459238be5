import { transmitAirtimeRatio } from "../radio/index.js";
import type { RadioProfile } from "../radio/index.js";
import type { ChannelPlan } from "./plan-channel.js";

/** What our system radiates, for people who share the band. */
export interface Radiated {
  /** Centre frequencies in use, rising: one, or those of the hop set. */
  readonly centresMhz: readonly number[];
  readonly bandwidthMhz: number;
  readonly eirpDbm: number;
  /** Share of the time that the transmitter is on the air, at most 1. */
  readonly airtimeRatio: number;
  /** True where packet time × packets a second is more than there is time: some figure of the profile is wrong. */
  readonly airtimeCapped: boolean;
}

/**
 * What a radio radiates on its centre frequencies.
 * EIRP = power − feeder + antenna, in the antenna's best direction.
 * @param txGainDbi of the antenna in its best direction
 */
export function radiates(
  profile: RadioProfile,
  centresMhz: readonly number[],
  txGainDbi = profile.txGainDbi.value,
): Radiated {
  const airtimeRatio = transmitAirtimeRatio(profile);
  return {
    centresMhz: [...centresMhz].sort((a, b) => a - b),
    bandwidthMhz: profile.bandwidthMhz.value,
    eirpDbm: profile.txPowerDbm.value - profile.txFeederLossDb.value + txGainDbi,
    airtimeRatio: Math.min(1, airtimeRatio),
    airtimeCapped: airtimeRatio > 1,
  };
}

/**
 * What a plan's radio radiates.
 * @returns null where the plan has no channel
 * @see {@link planChannel}
 */
export function radiated({ setting, ranking, recommended, hopSet }: ChannelPlan): Radiated | null {
  const used = new Set(hopSet?.channels ?? (recommended.channel === null ? [] : [recommended.channel]));
  if (used.size === 0) return null;
  const centresMhz = ranking.filter(({ channel }) => used.has(channel)).map(({ centreMhz }) => centreMhz);
  return radiates(setting.profile, centresMhz);
}
