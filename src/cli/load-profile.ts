import { formatIssue } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import {
  builtInProfiles,
  clampToRegion,
  judgeRegion,
  nearestWord,
  readProfile,
  regionRules,
} from "../radio/index.js";
import type { RadioProfile, RegionCode } from "../radio/index.js";
import { badOption } from "./words.js";
import { CliError, EXIT } from "./exit.js";
import { fileExists, inputText } from "./files.js";
import type { Io } from "./io.js";

/** The options that make a radio. */
export interface RadioOptions {
  readonly profile?: string;
  readonly set?: readonly string[];
  readonly enclosure?: string;
  readonly region?: string;
}

/** A radio ready to be planned with. */
export interface LoadedRadio {
  readonly profile: RadioProfile;
  readonly issues: readonly Issue[];
  /** The region's rule in words; null where no region was named. */
  readonly regionWords: string | null;
  /** Edges that the radio must stay within, MHz; null where no region was named. */
  readonly bandMhz: readonly [number, number] | null;
}

/**
 * The radio that the options describe: a built-in profile or a file of the user's, single figures set, then
 * held to the region's rule where one is named.
 */
export async function loadRadio(options: RadioOptions, io: Io): Promise<LoadedRadio> {
  const name = options.profile ?? "raster-13";
  const source =
    options.set === undefined && options.enclosure === undefined ? name : `${name} with figures set`;
  const figures = figuresSet(options);
  const builtIn = builtInProfiles.find((candidate) => candidate.name === name);
  const asItIs = builtIn !== undefined && Object.keys(figures).length === 0;
  const { profile, issues } = asItIs
    ? { profile: builtIn, issues: [] }
    : readProfile({ ...(await profileData(name, io)), ...figures }, source);
  if (profile === null)
    throw new CliError(
      EXIT.badData,
      issues.map(formatIssue).join("\n"),
      "stillband profiles raster-13 shows every figure",
    );
  if (options.region === undefined) return { profile, issues, regionWords: null, bandMhz: null };
  const region = regionWord(options.region);
  const { profile: held, issue } = clampToRegion(profile, region);
  const { lowMhz, highMhz, title, maxEirpDbm, eirpDbm, remark } = judgeRegion({ profile: held, region });
  const regionWords = `Region ${title}: ${lowMhz}–${highMhz} MHz, at most ${maxEirpDbm.toFixed(1)} dBm EIRP here, ${eirpDbm.toFixed(1)} dBm used. ${remark}`;
  return {
    profile: held,
    issues: issue === null ? issues : [...issues, issue],
    regionWords,
    bandMhz: [lowMhz, highMhz],
  };
}

async function profileData(name: string, io: Io): Promise<Record<string, unknown>> {
  const names = builtInProfiles.map((profile) => profile.name);
  if (names.includes(name)) return { basedOn: name };
  if (name !== "-" && !(await fileExists(name))) {
    const near = nearestWord(name, names);
    const hint = near === null ? `one of ${names.join(", ")}, or a file` : near;
    throw new CliError(
      EXIT.noInput,
      `--profile: expected a built-in profile or a file, got "${name}"`,
      `--profile ${hint}`,
    );
  }
  const { parse } = await import("yaml");
  const text = await inputText(name, io);
  try {
    const data: unknown = parse(text, { maxAliasCount: 20 });
    if (typeof data === "object" && data !== null && !Array.isArray(data))
      return data as Record<string, unknown>;
  } catch (error) {
    throw new CliError(
      EXIT.badData,
      `${name}: not YAML or JSON: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
  throw new CliError(
    EXIT.badData,
    `${name}: expected a mapping of a radio's figures`,
    "stillband profiles raster-13 shows the form",
  );
}

function figuresSet({ set = [], enclosure }: RadioOptions): Record<string, unknown> {
  const figures: Record<string, unknown> =
    enclosure === undefined ? {} : { enclosure, enclosureLossDb: undefined };
  for (const word of set) {
    const [, key, value] = /^([A-Za-z_]+)=(.+)$/.exec(word) ?? [];
    if (key === undefined || value === undefined)
      throw badOption("--set", "FIGURE=VALUE", word, "tx_power_dbm=10");
    figures[key] = Number.isFinite(Number(value)) ? Number(value) : value;
  }
  return figures;
}

function regionWord(text: string): RegionCode {
  const regions = Object.keys(regionRules) as RegionCode[];
  const region = regions.find((code) => code.toLowerCase() === text.toLowerCase());
  if (region === undefined)
    throw badOption(
      "--region",
      `one of ${regions.join(", ")}`,
      text,
      nearestWord(text.toUpperCase(), regions) ?? "EU",
    );
  return region;
}
