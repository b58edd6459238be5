import { basename, dirname, join } from "node:path";
import type { PlanInput } from "../commissioning/index.js";
import { formatIssue } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { builtInProfiles } from "../radio/index.js";
import { plainTable } from "../scan/index.js";
import { readVenue } from "../venue/index.js";
import type { LuminaireTable, Venue } from "../venue/index.js";
import { CliError, EXIT } from "./exit.js";
import type { Antenna, PathModelImport } from "../propagation/index.js";
import { readModelFile } from "./fitted-model.js";
import { inputExists, inputText, STDIN_NAME } from "./input.js";
import type { Io } from "./io.js";
import { profileFile } from "./profile-file.js";
import type { VenueDocument } from "./venue-document.js";
import { venueDocument } from "./venue-document.js";

/** A file that a venue is planned from. */
export interface VenueInput {
  /** As the venue file names it, or as the command names the venue file. */
  readonly name: string;
  readonly kind: PlanInput["kind"];
  readonly path: string;
  /** What came by standard input, which can't be read twice. */
  readonly text?: string;
}

/** A venue ready to be planned with. */
export interface LoadedVenue {
  readonly venue: Venue;
  /** Every file that went in, the venue file first, scans last. */
  readonly inputs: readonly VenueInput[];
  /** What there is to say of it; none of them stopped it. */
  readonly issues: readonly Issue[];
  /** The path of each of the venue's scans, in their order, from where the command runs. */
  readonly scanPaths: readonly string[];
  /** Antennas of the options' own that a transmitter may get: the region's rule counts them, too. */
  readonly furtherAntennas?: readonly Antenna[];
}

/**
 * Reads a venue file with what it names: tables of luminaires, profile files, path models, scans (which must be there).
 * Names in it count from its own folder.
 * @throws {CliError} exit 66 where the file, or nothing but files that it names, can't be had; exit 65 with
 * every mistake where it is no sound venue
 */
export async function loadVenue(path: string, io: Io): Promise<LoadedVenue> {
  const source = path === "-" ? STDIN_NAME : path;
  const text = await inputText(path, io);
  const document = await venueDocument(text, source);
  const folder = path === "-" ? "." : dirname(path);
  const beside = (file: string): string => (file.startsWith("/") ? file : join(folder, file));
  const further = await furtherFiles(document.data, beside, io);
  const { venue, issues } = readVenue(document.data, {
    source,
    lineOf: document.lineOf,
    profileOf: (file) => further.profiles.get(file),
    pathModelOf: (file) => further.models.get(file),
    luminairesOf: (file) => further.tables.get(file),
  });
  const all = [...issues, ...further.issues, ...missingScans(document, source, further.lacking)];
  const errors = all.filter(({ severity }) => severity === "error");
  if (venue !== null && errors.length === 0)
    return {
      venue,
      inputs: [
        { name: basename(source), kind: "venue", path, ...(path === "-" && { text }) },
        ...inputsOf(further, venue, beside),
      ],
      issues: all,
      scanPaths: venue.scans.map(({ file }) => beside(file)),
    };
  const onlyLacking = errors.every(
    ({ code, value }) => code === "unreadable" && further.lacking.has(value ?? ""),
  );
  throw new CliError(
    onlyLacking ? EXIT.noInput : EXIT.badData,
    told(errors),
    onlyLacking
      ? "check the names: they count from the venue file's own folder"
      : "mend these lines and run it again; stillband init shows the form",
    all,
  );
}

/** The files that a venue file names, each once. */
function inputsOf(
  { tables, profiles, models }: FurtherFiles,
  { scans }: Venue,
  beside: (file: string) => string,
): VenueInput[] {
  const files: readonly (readonly [VenueInput["kind"], readonly string[]])[] = [
    ["luminaires", [...tables.keys()]],
    ["profile", [...profiles.keys()]],
    ["path-model", [...models.keys()]],
    ["scan", scans.map(({ file }) => file)],
  ];
  return files.flatMap(([kind, names]) =>
    [...new Set(names)].map((name) => ({ name, kind, path: beside(name) })),
  );
}

/** At most so many mistakes are printed; --json has all. */
const MOST_TOLD = 100;

function told(errors: readonly Issue[]): string {
  const lines = errors.slice(0, MOST_TOLD).map(formatIssue);
  const more = errors.length - lines.length;
  return [...lines, ...(more > 0 ? [`and ${more} more; --json lists all`] : [])].join("\n");
}

/** What a venue file names, read before it is judged. */
interface FurtherFiles {
  readonly profiles: ReadonlyMap<string, unknown>;
  readonly models: ReadonlyMap<string, PathModelImport>;
  readonly tables: ReadonlyMap<string, LuminaireTable>;
  /** Names of files that aren't there. */
  readonly lacking: ReadonlySet<string>;
  readonly issues: readonly Issue[];
}

async function furtherFiles(data: unknown, beside: (file: string) => string, io: Io): Promise<FurtherFiles> {
  const issues: Issue[] = [];
  const lacking = new Set<string>();
  /** Reads a file that is there; what is wrong within it is told, and an empty stand-in judged instead. */
  const readOne = async <T>(
    name: string,
    standIn: T,
    read: (path: string) => Promise<T>,
  ): Promise<T | null> => {
    if (!(await inputExists(beside(name)))) {
      lacking.add(name);
      return null;
    }
    try {
      return await read(beside(name));
    } catch (error) {
      if (!(error instanceof CliError) || error.issues.length === 0) throw error;
      issues.push(...error.issues);
      return standIn;
    }
  };
  const ownProfiles = textsOf(itemsOf(data, "systems"), "profile").filter(
    (name) => !builtInProfiles.some((profile) => profile.name === name),
  );
  const profiles = await readEach(ownProfiles, (name) =>
    readOne<unknown>(name, STAND_IN_PROFILE, async (path) => (await profileFile(path, io)).data),
  );
  const models = await readEach(textsOf(itemsOf(data, "rooms"), "path_model"), (name) =>
    readOne<PathModelImport>(name, STAND_IN_MODEL, (path) => readModelFile(path, name, io)),
  );
  const tables = await readEach(textsOf([data], "luminaires"), (name) =>
    readOne<LuminaireTable>(name, { data: [] }, async (path) =>
      luminaireTable((await inputText(path, io)).replace(/^\ufeff/, ""), name, issues),
    ),
  );
  for (const name of textsOf(itemsOf(data, "scans"), "file"))
    if (!(await inputExists(beside(name)))) lacking.add(name);
  return { profiles, models, tables, lacking, issues };
}

/** What is judged instead of a file that can't be read at all: nothing more is wrong with it. */
const STAND_IN_PROFILE = { basedOn: "raster-13" };
const STAND_IN_MODEL: PathModelImport = { model: null, issues: [] };

/** Each name once with what was read under it; what isn't there is left out. */
async function readEach<T>(
  names: readonly string[],
  read: (name: string) => Promise<T | null>,
): Promise<Map<string, T>> {
  const found = new Map<string, T>();
  for (const name of new Set(names)) {
    const value = await read(name);
    if (value !== null) found.set(name, value);
  }
  return found;
}

async function luminaireTable(text: string, source: string, issues: Issue[]): Promise<LuminaireTable> {
  if (/\.(?:json|ya?ml)$/i.test(source)) return await venueDocument(text, source);
  const { rows, delimiter, faults } = plainTable(text);
  for (const { line } of faults)
    issues.push({
      code: "bad-cell",
      severity: "error",
      source,
      line,
      expected: "cells whose quotes are closed",
      action: "row skipped",
    });
  return { rows, decimalComma: delimiter !== "," };
}

function missingScans(
  { data, lineOf }: VenueDocument,
  source: string,
  lacking: ReadonlySet<string>,
): Issue[] {
  return itemsOf(data, "scans").flatMap((scan, index) => {
    const value = valueOf(scan, "file");
    if (typeof value !== "string" || !lacking.has(value)) return [];
    const column = `scans[${index}].file`;
    const line = lineOf(column);
    const place = { source, ...(line !== undefined && { line }), column, value };
    return {
      code: "unreadable",
      severity: "error",
      ...place,
      expected: "a scan file that is there",
      action: "stopped",
    };
  });
}

function valueOf(data: unknown, key: string): unknown {
  if (typeof data !== "object" || data === null || !Object.hasOwn(data, key)) return undefined;
  return (data as Readonly<Record<string, unknown>>)[key];
}

function itemsOf(data: unknown, key: string): readonly unknown[] {
  const items = valueOf(data, key);
  return Array.isArray(items) ? items : [];
}

function textsOf(items: readonly unknown[], key: string): string[] {
  return items.map((item) => valueOf(item, key)).filter((value) => typeof value === "string");
}
