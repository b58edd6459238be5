import {
  findReach,
  floorLossDb,
  linkBudget,
  linkReach,
  linkRow,
  pathLossDb,
  placedLinkFrom,
  profileTerms,
  receivedDbm,
} from "../propagation/index.js";
import type { LinkBudget, LinkRow, LinkSetting, PlacedLink, Reach, WallLoss } from "../propagation/index.js";
import { SLACK } from "../units/index.js";
import { heldRatio } from "./held-ratio.js";
import { pathLengthM, placedAt, placesAt } from "./link-site.js";
import type { ReferenceSetting } from "./reference-setting.js";

/**
 * A line of a link table. In a true null a gain, and with it levels and margins, is −Infinity; reports write
 * null there, and why.
 */
export interface SiteRow extends LinkRow {
  /** Along the floor; null where the ends are level. `distanceM` is three-dimensional. */
  readonly floorDistanceM: number | null;
  /** Towards the receiver. */
  readonly txGainDbi: number;
  /** Towards the transmitter. */
  readonly rxGainDbi: number;
  readonly polarisationLossDb: number;
  readonly wallLossDb: number;
  /** The part of `pathLossDb` that floors make. */
  readonly floorLossDb: number;
  /** Share of positions whose margin, fading alone, is ≥ 0: 0..1. */
  readonly heldRatio: number;
  /** The receiver lies within a null of the transmitter's antenna. */
  readonly txNull: boolean;
  /** The transmitter lies within a null of the receiver's antenna. */
  readonly rxNull: boolean;
}

/** How far a link of a site works. */
export interface SiteReach extends Reach {
  /** The same along the floor, m; null with no heights or no reach. */
  readonly reachFloorM: number | null;
}

/** A link whose length alone is open. */
export interface SiteLink {
  /** @param distanceM along the floor where the site has heights */
  readonly rowAt: (distanceM: number) => SiteRow;
  readonly budgetAt: (distanceM: number) => LinkBudget;
  readonly reach: (fadeAllowanceDb: number) => SiteReach;
  /** Each wall's part, in the site's order. */
  readonly walls: WallLoss;
}

/** What a link is measured against. */
export type SiteTerms = Pick<LinkSetting, "frequencyMhz" | "interferenceDbm" | "fadeAllowanceDb">;

/**
 * The link of a setting, antennas and walls worked out once.
 * @throws {ArgumentError} as `placedLink` and `pathLoss`
 */
export function siteLink(setting: ReferenceSetting, terms: SiteTerms): SiteLink {
  const { site, profile, pathModel } = setting;
  const placed = placedLinkFrom(placedAt(site, profile, setting.distanceM));
  const at = (distanceM: number): PlacedLink => placed(placesAt(site, distanceM).transmitterAtM);
  const open = { ...profileTerms(profile), pathModel, ...terms, floorLossDb: extraFloorLossDb(setting) };
  const linkAt = (distanceM: number): LinkSetting => ({ ...open, ...linesOf(at(distanceM)) });
  const floorDb = floorPartDb(setting);
  return {
    walls: at(setting.distanceM).walls,
    rowAt: (distanceM) => {
      const lines = at(distanceM);
      const row = linkRow({ ...open, ...linesOf(lines) }, lines.distanceM);
      const { txNull, rxNull } = lines;
      return {
        ...row,
        ...linesOf(lines),
        floorDistanceM: site.heights === null ? null : distanceM,
        floorLossDb: floorDb,
        heldRatio: heldRatio(setting.fadeLaw, row),
        txNull,
        rxNull,
      };
    },
    budgetAt: (distanceM) => budgetOf(linkAt(distanceM), pathLengthM(site, distanceM)),
    reach: (fadeAllowanceDb) => reachOf(setting, (m) => ({ ...linkAt(m), fadeAllowanceDb })),
  };
}

/**
 * The received level at the setting's distance by frequency, antennas and walls worked out once.
 * @throws {ArgumentError} as {@link siteLink}
 */
export function siteReceivedDbm(setting: ReferenceSetting): (frequencyMhz: number) => number {
  const { site, profile, pathModel, distanceM } = setting;
  const query = placedAt(site, profile, distanceM);
  const placed = placedLinkFrom(query)(query.transmitterAtM);
  const open = { ...profileTerms(profile), ...linesOf(placed) };
  const floorDb = extraFloorLossDb(setting);
  return (frequencyMhz) =>
    receivedDbm({
      ...open,
      pathLossDb: pathLossDb(pathModel, { distanceM: placed.distanceM, frequencyMhz }) + floorDb,
    });
}

type Lines = Pick<PlacedLink, "txGainDbi" | "rxGainDbi" | "polarisationLossDb" | "wallLossDb">;

function linesOf({ txGainDbi, rxGainDbi, polarisationLossDb, wallLossDb }: PlacedLink): Lines {
  return { txGainDbi, rxGainDbi, polarisationLossDb, wallLossDb };
}

/** P.1238 holds its floors itself; to any other model they are added. */
function extraFloorLossDb({ pathModel, site: { floors } }: ReferenceSetting): number {
  if (floors === null || pathModel.kind === "indoor") return 0;
  return floorLossDb(floors.building, floors.floorCount);
}

function floorPartDb(setting: ReferenceSetting): number {
  const { pathModel } = setting;
  return extraFloorLossDb(setting) + (pathModel.kind === "indoor" ? (pathModel.floorLossDb ?? 0) : 0);
}

function budgetOf({ pathModel, frequencyMhz, ...link }: LinkSetting, distanceM: number): LinkBudget {
  const pathDb = pathLossDb(pathModel, { distanceM, frequencyMhz }) + (link.floorLossDb ?? 0);
  return linkBudget({ ...link, pathLossDb: pathDb });
}

/** Level ends see each other alike at every distance: only the path grows. Else the pattern is looked at all along. */
function reachOf({ site }: ReferenceSetting, linkAt: (distanceM: number) => LinkSetting): SiteReach {
  if (site.heights === null) return { ...linkReach(linkAt(1)), reachFloorM: null };
  const climbM = site.heights.rxHeightM - site.heights.txHeightM;
  const marginDbAt = (floorM: number): number =>
    budgetOf(linkAt(floorM), pathLengthM(site, floorM)).workingMarginDb;
  const found = findReach(marginDbAt);
  if (found.reachM === null || found.reachM === 0) return { ...found, reachFloorM: found.reachM };
  // The 3-D centimetre that the last floor centimetre leaves open.
  const wholeCm = Math.floor(Math.hypot(found.reachM, climbM) * 100 + 1e-9);
  const nextM = (wholeCm + 1) / 100;
  const holds = marginDbAt(Math.sqrt(nextM ** 2 - climbM ** 2)) >= -SLACK;
  return { ...found, reachM: holds ? nextM : wholeCm / 100, reachFloorM: found.reachM };
}
