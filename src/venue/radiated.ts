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

/** EIRP = power − feeder + antenna, in the antenna's best direction. @returns null where the plan has no channel */
export function radiated({ setting, ranking, recommended, hopSet }: ChannelPlan): Radiated | null {
  const { profile } = setting;
  const used = new Set(hopSet?.channels ?? (recommended.channel === null ? [] : [recommended.channel]));
  if (used.size === 0) return null;
  const centresMhz = ranking.filter(({ channel }) => used.has(channel)).map(({ centreMhz }) => centreMhz);
  const airtimeRatio = transmitAirtimeRatio(profile);
  return {
    centresMhz: centresMhz.sort((a, b) => a - b),
    bandwidthMhz: profile.bandwidthMhz.value,
    eirpDbm: eirpDbm(profile),
    airtimeRatio: Math.min(1, airtimeRatio),
    airtimeCapped: airtimeRatio > 1,
  };
}

function eirpDbm({ txPowerDbm, txFeederLossDb, txGainDbi }: RadioProfile): number {
  return txPowerDbm.value - txFeederLossDb.value + txGainDbi.value;
}
