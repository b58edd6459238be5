import type { RadioProfile } from "../radio/index.js";
import type { Caveat } from "./caveat.js";
import type { LinkBudget, LinkTerms } from "./link-budget.js";
import { linkBudget } from "./link-budget.js";
import { pathLoss, pathLossDb } from "./path-loss.js";
import type { PathModel } from "./path-model.js";
import type { Reach } from "./reach.js";
import { findReach } from "./reach.js";

/** Everything about a link but the distance. */
export interface LinkSetting extends Omit<LinkTerms, "pathLossDb"> {
  /** The channel's own centre. */
  readonly frequencyMhz: number;
  readonly pathModel: PathModel;
  /** Floors that the path model doesn't hold itself, dB, counted with the path loss; 0 if not given. */
  readonly floorLossDb?: number | undefined;
}

/** One line of a link table. */
export interface LinkRow
  extends
    Pick<LinkBudget, "pathLossDb" | "receivedDbm" | "sensitivityMarginDb" | "interferenceMarginDb">,
    Pick<LinkBudget, "fadeAllowanceDb" | "workingMarginDb" | "limit" | "verdict"> {
  readonly distanceM: number;
  readonly caveats: readonly Caveat[];
}

/** The terms of a link that a profile gives. */
export type ProfileTerms = Pick<LinkSetting, "txPowerDbm" | "sensitivityDbm" | "requiredCiDb"> & {
  readonly [Key in "txFeederLossDb" | "txGainDbi" | "enclosureLossDb" | "rxGainDbi"]: number;
};

/**
 * The terms of a link that a radio profile gives, as plain numbers.
 * @example profileTerms(findProfile("raster-13")).enclosureLossDb; // => 10
 */
export function profileTerms(profile: RadioProfile): ProfileTerms {
  return {
    txPowerDbm: profile.txPowerDbm.value,
    txFeederLossDb: profile.txFeederLossDb.value,
    txGainDbi: profile.txGainDbi.value,
    enclosureLossDb: profile.enclosureLossDb.value,
    rxGainDbi: profile.rxGainDbi.value,
    sensitivityDbm: profile.sensitivityDbm.value,
    requiredCiDb: profile.requiredCiDb.value,
  };
}

/**
 * The link budget at one distance, interference held constant.
 * @param distanceM m
 * @throws {ArgumentError} as `pathLoss` and `linkBudget`
 * @see {@link linkTable}
 */
export function linkRow(setting: LinkSetting, distanceM: number): LinkRow {
  const { frequencyMhz, pathModel, floorLossDb = 0, ...terms } = setting;
  const path = pathLoss(pathModel, { distanceM, frequencyMhz });
  const budget = linkBudget({ ...terms, pathLossDb: path.lossDb + floorLossDb });
  return {
    distanceM,
    pathLossDb: budget.pathLossDb,
    receivedDbm: budget.receivedDbm,
    sensitivityMarginDb: budget.sensitivityMarginDb,
    interferenceMarginDb: budget.interferenceMarginDb,
    fadeAllowanceDb: budget.fadeAllowanceDb,
    workingMarginDb: budget.workingMarginDb,
    limit: budget.limit,
    verdict: budget.verdict,
    caveats: path.caveats,
  };
}

/**
 * The link budget over distances, in the order given.
 * @param distancesM m
 * @throws {ArgumentError} as {@link linkRow}
 * @example const setting = { txPowerDbm: 18, txFeederLossDb: 0, txGainDbi: 2, rxGainDbi: 2, wallLossDb: 0, enclosureLossDb: 0,
 *   crowdLossDb: 0, polarisationLossDb: 0, sensitivityDbm: -90, interferenceDbm: -104, requiredCiDb: 14,
 *   fadeAllowanceDb: 30, frequencyMhz: 2450, pathModel: { kind: "free-space" } };
 * linkTable(setting, [1, 10]).map(({ receivedDbm }) => Math.round(receivedDbm)); // => [-18, -38]
 * linkRow(setting, 10).verdict; // => "ample"
 * linkReach(setting).reachM > 100; // => true
 */
export function linkTable(setting: LinkSetting, distancesM: readonly number[]): LinkRow[] {
  return distancesM.map((distanceM) => linkRow(setting, distanceM));
}

/**
 * How far a link of this setting works: {@link findReach} over its rows.
 * @throws {ArgumentError} as {@link linkRow}
 * @see {@link linkTable}
 */
export function linkReach(setting: LinkSetting): Reach {
  const { frequencyMhz, pathModel, floorLossDb = 0, ...terms } = setting;
  const beforePathDb = linkBudget({ ...terms, pathLossDb: floorLossDb }).workingMarginDb;
  // Every path model only grows with distance, so the margin only falls.
  return findReach((distanceM) => beforePathDb - pathLossDb(pathModel, { distanceM, frequencyMhz }), 1);
}
