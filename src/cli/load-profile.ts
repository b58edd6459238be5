import { formatIssue } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import {
  builtInProfiles,
  clampToRegion,
  nearestWord,
  readProfile,
  regionRules,
  regulationIssues,
  regulationReview,
  withLeastHops,
} from "../radio/index.js";
import type { RadioProfile, RegionCode, RegulationReview } from "../radio/index.js";
import { antennaFigures } from "./antenna-figures.js";
import { CliError, EXIT } from "./exit.js";
import { figureWords } from "./figure-words.js";
import type { Figures } from "./figure-words.js";
import type { Io } from "./io.js";
import { isMapping, profileFile } from "./profile-file.js";
import type { YamlText } from "./read-yaml.js";
import { camelCase, figureNames, figuresOf } from "./radio-figures.js";
import { badOption } from "./words.js";

/** The options that make a radio. */
export interface RadioOptions {
  readonly profile?: string;
  readonly set?: readonly string[];
  readonly enclosure?: string;
  readonly txAntenna?: string;
  readonly rxAntenna?: string;
  readonly region?: string;
}

/** A radio ready to be planned with. */
export interface LoadedRadio {
  /** `generic` until more than half of its figures are the user's, or a profile file says `generic: false`. */
  readonly profile: RadioProfile;
  /** Names of the figures that are the user's own. */
  readonly userFigures: readonly string[];
  readonly issues: readonly Issue[];
  /** The region's rule in words; null where no region was named. */
  readonly regionWords: string | null;
  /** Edges that the radio must stay within, MHz; null where no region was named. */
  readonly bandMhz: readonly [number, number] | null;
  /** How far a power that the user typed breaks the rule, dB; 0 where it doesn't or no region was named. */
  readonly breachDb: number;
  /** The radio as it will be used against each point of the region's rule; null where none was named. */
  readonly regulation: RegulationReview | null;
}

/** A profile with what there is to say of it. */
type Judged = Pick<LoadedRadio, "profile" | "issues">;

/**
 * The radio that the options describe: a built-in profile or a file of the user's, single figures set, then
 * held to the region's rule where one is named.
 */
export async function loadRadio(options: RadioOptions, io: Io): Promise<LoadedRadio> {
  const { profile: name = "raster-13", set = [], enclosure, region } = options;
  const code = region === undefined ? null : regionWord(region);
  const figures = { ...figureWords(set, enclosure), ...antennaFigures(options) };
  const { profile, issues } = await readRadio(name, figures, io);
  const userFigures = userFiguresOf(profile);
  const told = [...issues, ...housingAdvice(profile)];
  if (code === null)
    return {
      profile,
      userFigures,
      issues: told,
      regionWords: null,
      bandMhz: null,
      breachDb: 0,
      regulation: null,
    };
  const { profile: held, issue } = clampToRegion(withLeastHops(profile, code), code);
  const regulation = regulationReview(held, code);
  const { lowMhz, highMhz, title, maxEirpDbm, eirpDbm, turnDownDb, remark } = regulation.judgement;
  const regionWords = `Region ${title}: ${lowMhz}–${highMhz} MHz, at most ${maxEirpDbm.toFixed(1)} dBm EIRP here, ${eirpDbm.toFixed(1)} dBm used. ${remark}`;
  return {
    profile: held,
    userFigures,
    issues: [...told, ...(issue === null ? [] : [issue]), ...regulationIssues(regulation, held.name)],
    regionWords,
    bandMhz: [lowMhz, highMhz],
    breachDb: turnDownDb,
    regulation,
  };
}

async function readRadio(name: string, figures: Figures, io: Io): Promise<Judged> {
  const builtIn = builtInProfiles.find((candidate) => candidate.name === name);
  const keys = Object.keys(figures);
  if (builtIn !== undefined && keys.length === 0) return { profile: builtIn, issues: [] };
  const { data, lineOf } =
    builtIn === undefined ? await profileFile(name, io) : { data: { basedOn: name }, lineOf: nowhere };
  const given = isMapping(data) && keys.length > 0 ? { ...without(data, figures), ...figures } : data;
  const { profile, issues: unplaced } = readProfile(given, named(name, keys));
  const issues = unplaced.map((issue) => withLine(issue, figures, lineOf)).sort(byLine);
  if (profile === null)
    throw new CliError(
      EXIT.badData,
      issues.map(formatIssue).join("\n"),
      "stillband profiles raster-13 --template shows every figure",
      issues,
    );
  const saysOwn = isMapping(data) && data["generic"] === false;
  const generic = !saysOwn && userFiguresOf(profile).length <= figureNames.length / 2;
  return { profile: { ...profile, name: named(builtIn?.name ?? profile.name, keys), generic }, issues };
}

const nowhere = (): undefined => undefined;

const byLine = (a: Issue, b: Issue): number => (a.line ?? 1e9) - (b.line ?? 1e9);

/** An issue with the line of the file that it is about; none for a figure set by an option, or a key not there. */
function withLine(issue: Issue, figures: Figures, lineOf: YamlText["lineOf"]): Issue {
  const [key = ""] = issue.column?.split(/[.[]/) ?? [];
  const line = key === "" || key in figures ? undefined : lineOf(issue.column!);
  return line === undefined ? issue : { ...issue, line };
}

/** The data without what the figures replace, however spelt; an enclosure replaces its loss too. */
function without(data: Readonly<Record<string, unknown>>, figures: Figures): Record<string, unknown> {
  const replaced = new Set([...Object.keys(figures), ...("enclosure" in figures ? ["enclosureLossDb"] : [])]);
  return Object.fromEntries(Object.entries(data).filter(([key]) => !replaced.has(camelCase(key))));
}

/** A profile's name, saying which figures are not its own. */
function named(name: string, keys: readonly string[]): string {
  if (keys.length === 0) return name;
  return `${name} with ${keys.length > 2 ? `${keys.length} figures` : keys.join(" and ")} set`;
}

function userFiguresOf(profile: RadioProfile): string[] {
  return figuresOf(profile).flatMap(([name, { status }]) => (status === "yours" ? [name] : []));
}

/** Advice for a receiver whose antenna the housing shuts in. */
function housingAdvice({ name, enclosure, enclosureLossDb }: RadioProfile): Issue[] {
  if (enclosure.value !== "closed-metal") return [];
  const expected = `an antenna in closed metal loses ${enclosureLossDb.value} dB: bring the antenna out`;
  return [{ code: "assumed", severity: "warning", source: name, expected, action: "stated" }];
}

/** A region by its code, in capitals or not. */
export function regionWord(text: string): RegionCode {
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
