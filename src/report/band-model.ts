import type { BandProfile } from "../scorer/index.js";
import type { ChannelPlan } from "../venue/index.js";
import type { RoomBand } from "./plan-report.js";

/** What a picture of the band shows, whatever it is drawn with. */
export interface BandModel {
  readonly profile: BandProfile;
  /** Above this level the wanted signal is spoilt, dB above the receiver's noise; null: none to state. */
  readonly spoiltAboveNoiseDb: number | null;
  /** Top of the scale, a whole number of rows. */
  readonly topDb: number;
  readonly rowDb: number;
  /** Rising in frequency. */
  readonly channels: readonly BandChannel[];
  readonly isHopping: boolean;
}

export interface BandChannel {
  readonly channel: number;
  readonly centreMhz: number;
  /** `hop`: in the hop set; `none`: neither used nor the fallback, or kept out of the hop set. */
  readonly use: "use" | "fallback" | "hop" | "none";
}

const LEAST_ROW_DB = 5;
const MOST_ROWS = 12;

/** The band of one reference receiver. @param profile one step a column */
export function bandModel(profile: BandProfile, plan: ChannelPlan): BandModel {
  const { recommended, backup, hopSet } = plan;
  const hops = hopSet === null ? null : new Set(hopSet.channels);
  const used = { channel: recommended.channel, fallbackChannel: backup.channel };
  const channels = plan.ranking.map(({ channel, centreMhz }) => {
    const use = hops === null ? useOf(channel, used) : hops.has(channel) ? "hop" : "none";
    return { channel, centreMhz, use } as const;
  });
  return modelOf(profile, ceilingAboveNoiseDb(plan), channels, hops !== null);
}

/** The band at a room's weakest receiver. */
export function roomBandModel(one: RoomBand): BandModel {
  const isHopping = one.channel === null;
  const channels = one.channels.map(({ channel, centreMhz }) => {
    const use = isHopping ? "hop" : useOf(channel, one);
    return { channel, centreMhz, use } as const;
  });
  return modelOf(one.band, one.spoiltAboveNoiseDb, channels, isHopping);
}

function modelOf(
  profile: BandProfile,
  spoiltAboveNoiseDb: number | null,
  channels: readonly BandChannel[],
  isHopping: boolean,
): BandModel {
  const highestDb = Math.max(spoiltAboveNoiseDb ?? 0, ...profile.aboveNoiseDb);
  const rowDb = Math.max(LEAST_ROW_DB, Math.ceil(highestDb / MOST_ROWS / 5) * 5);
  const topDb = Math.max(2, Math.floor(highestDb / rowDb) + 1) * rowDb;
  const rising = [...channels].sort((a, b) => a.centreMhz - b.centreMhz);
  return { profile, spoiltAboveNoiseDb, topDb, rowDb, channels: rising, isHopping };
}

/** The recommended one goes first, so that nothing hides it. */
function useOf(
  channel: number,
  used: { readonly channel: number | null; readonly fallbackChannel: number | null },
): "use" | "fallback" | "none" {
  if (channel === used.channel) return "use";
  return channel === used.fallbackChannel ? "fallback" : "none";
}

/** Wanted − required C/I at the reference distance, above the noise; null where the radio hops or has no channel. */
function ceilingAboveNoiseDb({ ranking, link, setting }: ChannelPlan): number | null {
  const score = ranking.find(({ channel }) => channel === link.channel);
  if (score === undefined) return null;
  return score.wantedDbm - setting.profile.requiredCiDb.value - score.distribution.restDbm;
}
