import { median } from "d3-array";
import { fadeAllowanceDb, fadeReference, meanOverMedianDb, pathModelSigmaDb } from "../propagation/index.js";
import type { FadeLaw, FadeReference, LinkBudget } from "../propagation/index.js";
import type { ChannelScore, HopSet } from "../scorer/index.js";
import { linkWarnings } from "./link-warnings.js";
import type { LinkWarning } from "./link-warnings.js";
import type { ReferenceSetting } from "./reference-setting.js";
import { siteLink, siteReceivedDbm } from "./site-link.js";
import type { SiteLink, SiteRow } from "./site-link.js";

/** A link by distance on one channel, its interference held constant. */
export interface LinkPlan {
  /** Radio channel; null for a hop set or where there is no channel. */
  readonly channel: number | null;
  readonly frequencyMhz: number | null;
  /** Interference plus noise at the busy share, dBm. */
  readonly interferenceDbm: number | null;
  readonly fadeAllowanceDb: number;
  readonly noSightFadeAllowanceDb: number;
  /** Shadowing of the path model, dB, not in the allowances; null where it has none of its own. */
  readonly shadowingSigmaDb: number | null;
  /** The law's mean power over its median. */
  readonly meanOverMedianDb: number;
  /** What the fade allowances count from. */
  readonly fadeReference: FadeReference;
  /** The reference distance's own row. */
  readonly reference: SiteRow | null;
  /** The same line by line. */
  readonly budget: LinkBudget | null;
  readonly rows: readonly SiteRow[];
  readonly reachM: number | null;
  readonly reachReason: string | null;
  /** The reach along the floor; null with no heights or no reach. */
  readonly reachFloorM: number | null;
  /** Reach with Rayleigh fading: an antenna that the canopy or a beam hides. */
  readonly reachNoSightM: number | null;
  readonly reachNoSightReason: string | null;
  readonly reachNoSightFloorM: number | null;
  /** Each wall in the path. */
  readonly walls: readonly PathWall[];
  readonly warnings: readonly LinkWarning[];
}

/** A wall in the path. */
export interface PathWall {
  /** As it was named. */
  readonly wall: string;
  readonly lossDb: number;
  /** Where the material's figures come from. */
  readonly edition: string;
}

const NO_SIGHT: FadeLaw = { law: "rayleigh" };

/**
 * The link table and the reaches.
 * @param inSightDb fade allowance of the setting's own law
 * @param used the recommended channel, or each frequency of the hop set; empty where there is neither
 * @param hops the hop set, whose median margin the table uses
 * @see {@link planChannel}
 */
export function planLink(
  setting: ReferenceSetting,
  inSightDb: number,
  used: readonly ChannelScore[],
  hops: HopSet | null,
): LinkPlan {
  const fading = fadingOf(setting, inSightDb);
  const frequencyMhz = median(used, ({ centreMhz }) => centreMhz) ?? null;
  const base = { channel: hops === null ? (used[0]?.channel ?? null) : null, frequencyMhz };
  if (frequencyMhz === null) return { ...base, ...NO_LINK, ...fading };
  const interferenceDbm =
    hops === null ? used[0]!.interferenceDbm : medianInterferenceDbm(setting, frequencyMhz, used, hops);
  const link = siteLink(setting, { frequencyMhz, interferenceDbm, fadeAllowanceDb: inSightDb });
  const reference = link.rowAt(setting.distanceM);
  const rows = setting.distancesM.map((distanceM) => link.rowAt(distanceM));
  return {
    ...base,
    ...fading,
    interferenceDbm,
    reference,
    budget: link.budgetAt(setting.distanceM),
    rows,
    ...reachesOf(link, fading),
    walls: setting.site.walls.map(({ words }, index) => {
      const { lossDb, edition } = link.walls.crossings[index]!;
      return { wall: words, lossDb, edition };
    }),
    warnings: linkWarnings(setting, link, [reference, ...rows]),
  };
}

type Fading = Pick<
  LinkPlan,
  "fadeAllowanceDb" | "noSightFadeAllowanceDb" | "shadowingSigmaDb" | "meanOverMedianDb" | "fadeReference"
>;

function fadingOf({ reliability, pathModel, fadeLaw }: ReferenceSetting, inSightDb: number): Fading {
  return {
    fadeAllowanceDb: inSightDb,
    noSightFadeAllowanceDb: fadeAllowanceDb({ ...NO_SIGHT, reliability }),
    shadowingSigmaDb: pathModelSigmaDb(pathModel),
    meanOverMedianDb: meanOverMedianDb(fadeLaw),
    fadeReference: fadeReference(fadeLaw),
  };
}

type Reaches = Pick<
  LinkPlan,
  "reachM" | "reachReason" | "reachFloorM" | "reachNoSightM" | "reachNoSightReason" | "reachNoSightFloorM"
>;

function reachesOf(link: SiteLink, { fadeAllowanceDb: inSightDb, noSightFadeAllowanceDb }: Fading): Reaches {
  const inSight = link.reach(inSightDb);
  const noSight = link.reach(noSightFadeAllowanceDb);
  return {
    reachM: inSight.reachM,
    reachReason: inSight.reason,
    reachFloorM: inSight.reachFloorM,
    reachNoSightM: noSight.reachM,
    reachNoSightReason: noSight.reason,
    reachNoSightFloorM: noSight.reachFloorM,
  };
}

const NO_CHANNEL = "no channel of this profile lies inside the band";

const NO_LINK = {
  interferenceDbm: null,
  reference: null,
  budget: null,
  rows: [],
  reachM: null,
  reachReason: NO_CHANNEL,
  reachFloorM: null,
  reachNoSightM: null,
  reachNoSightReason: NO_CHANNEL,
  reachNoSightFloorM: null,
  walls: [],
  warnings: [],
} as const;

/** The interference that gives the hop set's median margin at the reference distance. */
function medianInterferenceDbm(
  setting: ReferenceSetting,
  frequencyMhz: number,
  used: readonly ChannelScore[],
  { marginDb }: HopSet,
): number {
  const receivedDbm = siteReceivedDbm(setting)(frequencyMhz);
  // No margin in a null: there the frequencies' own median stands.
  if (receivedDbm === -Infinity) return median(used, (score) => score.interferenceDbm)!;
  return receivedDbm - setting.profile.requiredCiDb.value - (marginDb ?? 0);
}
