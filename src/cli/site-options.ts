import { buildingLosses } from "../propagation/index.js";
import type { Building } from "../propagation/index.js";
import { nearestWord } from "../radio/index.js";
import type { LengthUnit } from "../report/index.js";
import type { LinkHeights, LinkSite, PlanChannelOptions, SiteFloors } from "../venue/index.js";
import { antennaWord } from "./antenna-word.js";
import { CliError, EXIT } from "./exit.js";
import type { Io } from "./io.js";
import { pathOption } from "./path-option.js";
import { wallWord } from "./wall-word.js";
import { badOption, lengthWord, numberWord } from "./words.js";

/** The options that say where a link stands and what it passes. */
export interface SiteOptions {
  readonly txAntenna?: string;
  readonly rxAntenna?: string;
  readonly txHeight?: string;
  readonly rxHeight?: string;
  readonly wall?: readonly string[];
  readonly floors?: string;
  readonly building?: string;
  readonly pathModel?: string;
}

const FLOORS = { lowest: 0, highest: 50, expected: "floors between the ends, 0 to 50", example: "1" };
/** P.1238's floor loss for a hall's kind of building, where none is named. */
const DEFAULT_BUILDING: Building = "commercial";

function siteWords(options: SiteOptions, unit: LengthUnit): LinkSite {
  const { txAntenna, rxAntenna, wall = [] } = options;
  return {
    txAntenna: txAntenna === undefined ? null : antennaWord("--tx-antenna", txAntenna),
    rxAntenna: rxAntenna === undefined ? null : antennaWord("--rx-antenna", rxAntenna),
    heights: heightsOf(options, unit),
    walls: wall.map((word) => wallWord("--wall", word)),
    floors: floorsOf(options),
  };
}

/**
 * What the options say of the site and of how loss grows with distance; what they don't say is left to the
 * planner.
 * @throws {CliError} exit 64 for a word that can't be read, 65 or 66 for a path model's file
 */
export async function siteSetting(
  options: SiteOptions,
  unit: LengthUnit,
  io: Io,
): Promise<Pick<PlanChannelOptions, "site" | "pathModel">> {
  const site = siteWords(options, unit);
  const pathModel = await pathOption(options.pathModel, buildingWord(options), io);
  return { site, ...(pathModel !== undefined && { pathModel }) };
}

function buildingWord({ building: text, pathModel, floors }: SiteOptions): Building | undefined {
  if (text === undefined) return undefined;
  const buildings = Object.keys(buildingLosses) as Building[];
  const building = buildings.find((name) => name === text.toLowerCase());
  if (building === undefined) {
    const near = nearestWord(text, buildings) ?? DEFAULT_BUILDING;
    throw badOption("--building", `one of ${buildings.join(", ")}`, text, near);
  }
  if (pathModel !== undefined && floors === undefined)
    throw badOption("--building", "--floors beside it, or no --path-model", text, `${building} --floors 1`);
  return building;
}

function floorsOf(options: SiteOptions): SiteFloors | null {
  if (options.floors === undefined) return null;
  const building = buildingWord(options) ?? DEFAULT_BUILDING;
  const floorCount = numberWord("--floors", options.floors, FLOORS);
  if (!Number.isInteger(floorCount)) throw badOption("--floors", FLOORS.expected, options.floors, "1");
  return floorCount === 0 ? null : { building, floorCount };
}

function heightsOf({ txHeight, rxHeight }: SiteOptions, unit: LengthUnit): LinkHeights | null {
  if (txHeight === undefined && rxHeight === undefined) return null;
  if (txHeight === undefined || rxHeight === undefined) {
    const [given, missing] = txHeight === undefined ? ["rx", "tx"] : ["tx", "rx"];
    throw new CliError(
      EXIT.usage,
      `--${given}-height: expected --${missing}-height too; the path runs between both heights`,
      `--tx-height ${txHeight ?? "3m"} --rx-height ${rxHeight ?? "6m"}`,
    );
  }
  return {
    txHeightM: heightWord("--tx-height", txHeight, unit),
    rxHeightM: heightWord("--rx-height", rxHeight, unit),
  };
}

const HIGHEST_M = 200;

function heightWord(flag: string, text: string, unit: LengthUnit): number {
  const heightM = /^0+(\.0*)?\s*(m|ft|')?$/i.test(text.trim()) ? 0 : lengthWord(flag, text, unit);
  if (heightM <= HIGHEST_M) return heightM;
  throw badOption(flag, `a height above the floor up to ${HIGHEST_M} m`, text, "3m");
}
