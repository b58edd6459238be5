import { median } from "d3-array";
import { fadeAllowanceDb, linkReach, linkRow, linkTable, profileTerms } from "../propagation/index.js";
import type { FadeLaw, LinkRow, LinkSetting } from "../propagation/index.js";
import type { ChannelScore, HopSet } from "../scorer/index.js";
import type { ReferenceSetting } from "./reference-setting.js";

/** A link by distance on one channel, its interference held constant. */
export interface LinkPlan {
  /** Radio channel; null for a hop set or where there is no channel. */
  readonly channel: number | null;
  readonly frequencyMhz: number | null;
  /** Interference plus noise at the busy share, dBm. */
  readonly interferenceDbm: number | null;
  readonly fadeAllowanceDb: number;
  readonly noSightFadeAllowanceDb: number;
  /** The reference distance's own row. */
  readonly reference: LinkRow | null;
  readonly rows: readonly LinkRow[];
  readonly reachM: number | null;
  readonly reachReason: string | null;
  /** Reach with Rayleigh fading: an antenna that the canopy or a beam hides. */
  readonly reachNoSightM: number | null;
  readonly reachNoSightReason: string | null;
}

const NO_SIGHT: FadeLaw = { law: "rayleigh" };

/**
 * The link table and the reaches.
 * @param inSightDb fade allowance of the setting's own law
 * @param used the recommended channel, or each frequency of the hop set; empty where there is neither
 * @param hops the hop set, whose median margin the table uses
 */
export function planLink(
  setting: ReferenceSetting,
  inSightDb: number,
  used: readonly ChannelScore[],
  hops: HopSet | null,
): LinkPlan {
  const noSightDb = fadeAllowanceDb({ ...NO_SIGHT, reliability: setting.reliability });
  const frequencyMhz = median(used, ({ centreMhz }) => centreMhz) ?? null;
  const base = { channel: hops === null ? (used[0]?.channel ?? null) : null, frequencyMhz };
  const allowances = { fadeAllowanceDb: inSightDb, noSightFadeAllowanceDb: noSightDb };
  if (frequencyMhz === null) return { ...base, ...NO_LINK, ...allowances };
  const interferenceDbm =
    hops === null ? used[0]!.interferenceDbm : medianInterferenceDbm(setting, frequencyMhz, hops);
  const link: LinkSetting = {
    ...profileTerms(setting.profile),
    pathModel: setting.pathModel,
    frequencyMhz,
    interferenceDbm,
    fadeAllowanceDb: inSightDb,
  };
  const reach = linkReach(link);
  const noSight = linkReach({ ...link, fadeAllowanceDb: noSightDb });
  return {
    ...base,
    ...allowances,
    interferenceDbm,
    reference: linkRow(link, setting.distanceM),
    rows: linkTable(link, setting.distancesM),
    reachM: reach.reachM,
    reachReason: reach.reason,
    reachNoSightM: noSight.reachM,
    reachNoSightReason: noSight.reason,
  };
}

const NO_CHANNEL = "no channel of this profile lies inside the band";

const NO_LINK = {
  interferenceDbm: null,
  reference: null,
  rows: [],
  reachM: null,
  reachReason: NO_CHANNEL,
  reachNoSightM: null,
  reachNoSightReason: NO_CHANNEL,
} as const;

/** The interference that gives the hop set's median margin at the reference distance. */
function medianInterferenceDbm(setting: ReferenceSetting, frequencyMhz: number, hops: HopSet): number {
  const terms = profileTerms(setting.profile);
  const open = {
    ...terms,
    pathModel: setting.pathModel,
    frequencyMhz,
    interferenceDbm: 0,
    fadeAllowanceDb: 0,
  };
  return linkRow(open, setting.distanceM).receivedDbm - terms.requiredCiDb - (hops.marginDb ?? 0);
}
