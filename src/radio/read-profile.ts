import type { Issue } from "../issues/index.js";
import { builtInProfiles } from "./built-in-profiles.js";
import { profileContradictions } from "./profile-contradictions.js";
import { enclosureLosses } from "./enclosure.js";
import type { Figure, RadioProfile } from "./profile.js";
import type { FigureKey } from "./profile-figures.js";
import { figureKeys, figureReaders } from "./profile-figures.js";
import { hint, knownEntries } from "./profile-keys.js";
import type { Report } from "./profile-report.js";
import { isMapping, profileReport } from "./profile-report.js";
import type { ValueReader } from "./profile-values.js";
import { readText } from "./profile-values.js";
import { readChannels, readHopping } from "./read-channels.js";
import { readFigure, readOrigin, YOUR_FIGURE } from "./read-figure.js";

/** A user's profile, or all that is wrong with it. */
export interface ProfileImport {
  /** Null when an issue of severity error stopped it. */
  readonly profile: RadioProfile | null;
  readonly issues: readonly Issue[];
}

/**
 * A radio's figures from plain data (what parsing YAML or JSON gives), in the form of {@link RadioProfile}:
 * every key, or `basedOn` (`based_on`) with the name of a built-in profile and only the keys that differ.
 * A figure is `{ value, status?, source? }` or a bare value, which counts as the user's own; keys may be
 * written `snake_case` too. An enclosure without a loss takes the loss of its kind.
 * @param data plain data @param source file name for messages
 * @returns the profile, or null with every mistake at once; an issue's `column` is the path of the key
 * @example readProfile({ based_on: "raster-13", sensitivity_dbm: -85 }, "mine.yaml").profile.sensitivityDbm.status; // => "yours"
 */
export function readProfile(data: unknown, source: string): ProfileImport {
  const issues: Issue[] = [];
  const report = profileReport(issues, source);
  if (!isMapping(data)) {
    report("", data, "a mapping of a radio's figures, e.g. based_on: raster-13", "unreadable");
    return { profile: null, issues };
  }
  const entries = knownEntries(data, [...PLAIN_KEYS, ...figureKeys], "", report);
  const base = readBase(entries, report);
  const figures = readFigures(entries, base, report);
  const plan = readPlan(entries, base, report);
  const name = readName(entries, base, report);
  if (issues.length > 0 || plan === undefined || name === undefined) return { profile: null, issues };
  const profile = withGeneric({ ...name, ...plan, ...(figures as Pick<RadioProfile, FigureKey>) });
  return { profile, issues: profileContradictions(profile, new Set(entries.keys()), source) };
}

const PLAIN_KEYS = ["basedOn", "name", "title", "generic", "channels", "channelsOrigin", "hopping"];

function readBase(entries: ReadonlyMap<string, unknown>, report: Report): RadioProfile | undefined {
  if (!entries.has("basedOn")) return undefined;
  const raw = entries.get("basedOn");
  const base = builtInProfiles.find((profile) => profile.name === raw);
  const names = builtInProfiles.map((profile) => profile.name);
  const near = typeof raw === "string" ? hint(raw, names) : "";
  if (base === undefined) report("basedOn", raw, `one of ${names.join(", ")}${near}`);
  return base;
}

function readFigures(
  entries: ReadonlyMap<string, unknown>,
  base: RadioProfile | undefined,
  report: Report,
): Partial<Record<FigureKey, Figure<unknown>>> {
  const figures: Partial<Record<FigureKey, Figure<unknown>>> = {};
  for (const key of figureKeys) {
    const read = figureReaders[key] as ValueReader<unknown>;
    const figure = entries.has(key) ? readFigure(entries.get(key), key, read, report) : base?.[key];
    if (figure !== undefined) figures[key] = figure;
    else if (!entries.has(key) && !loneEnclosure(key, entries)) reportMissing(key, entries, report);
  }
  if (loneEnclosure("enclosureLossDb", entries) && figures.enclosure !== undefined)
    figures.enclosureLossDb = enclosureLosses[figures.enclosure.value as keyof typeof enclosureLosses];
  return figures;
}

function loneEnclosure(key: FigureKey, entries: ReadonlyMap<string, unknown>): boolean {
  return key === "enclosureLossDb" && entries.has("enclosure") && !entries.has(key);
}

/** Nothing is missing from a profile whose base was named, even wrongly: that mistake is reported itself. */
function reportMissing(key: string, entries: ReadonlyMap<string, unknown>, report: Report): void {
  if (!entries.has("basedOn"))
    report(key, undefined, "this key, or based_on: a built-in profile", "missing-cell");
}

function readPlan(
  entries: ReadonlyMap<string, unknown>,
  base: RadioProfile | undefined,
  report: Report,
): Pick<RadioProfile, "channels" | "channelsOrigin" | "hopping"> | undefined {
  const raw = entries.get("channels");
  const channels = entries.has("channels") ? readChannels(raw, "channels", report) : base?.channels;
  if (!entries.has("channels") && base === undefined) reportMissing("channels", entries, report);
  const channelsOrigin = readChannelsOrigin(entries, base, report);
  const hop = entries.get("hopping") ?? null;
  const given = hop === null ? null : readHopping(hop, "hopping", report);
  const hopping = entries.has("hopping") ? given : (base?.hopping ?? null);
  if (channels === undefined || channelsOrigin === undefined || hopping === undefined) return undefined;
  return { channels, channelsOrigin, hopping };
}

function readChannelsOrigin(
  entries: ReadonlyMap<string, unknown>,
  base: RadioProfile | undefined,
  report: Report,
): RadioProfile["channelsOrigin"] | undefined {
  const raw = entries.get("channelsOrigin");
  if (raw === undefined)
    return entries.has("channels") || base === undefined
      ? { status: "yours", source: YOUR_FIGURE }
      : base.channelsOrigin;
  if (isMapping(raw)) {
    const path = "channelsOrigin";
    return readOrigin(knownEntries(raw, ["status", "source"], path, report), path, report);
  }
  report("channelsOrigin", raw, "{ status, source }");
  return undefined;
}

function readName(
  entries: ReadonlyMap<string, unknown>,
  base: RadioProfile | undefined,
  report: Report,
): Pick<RadioProfile, "name" | "title"> | undefined {
  const text = (key: string, otherwise: string | undefined): string | undefined =>
    entries.has(key) ? readText(entries.get(key), key, report) : otherwise;
  const name = text("name", base === undefined ? undefined : `${base.name}, yours`);
  if (name === undefined && !entries.has("name")) reportMissing("name", entries, report);
  const title = text("title", base === undefined ? name : `${base.title}, with your figures`);
  return name === undefined || title === undefined ? undefined : { name, title };
}

/** A profile is generic while no figure is the user's. */
function withGeneric(profile: Omit<RadioProfile, "generic">): RadioProfile {
  const statuses = [
    profile.channelsOrigin.status,
    profile.hopping?.leastHopCount.status,
    ...figureKeys.map((key) => profile[key].status),
  ];
  const { name, title, ...rest } = profile;
  return { name, title, generic: !statuses.includes("yours"), ...rest };
}
