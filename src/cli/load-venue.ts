import { dirname, join } from "node:path";
import type { Antenna } from "../propagation/index.js";
import { formatIssue } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { builtInProfiles } from "../radio/index.js";
import { plainTable } from "../scan/index.js";
import { readVenue } from "../venue/index.js";
import type { LuminaireTable, Venue } from "../venue/index.js";
import { CliError, EXIT } from "./exit.js";
import { inputExists, inputText, STDIN_NAME } from "./input.js";
import type { Io } from "./io.js";
import { profileFile } from "./profile-file.js";
import type { VenueDocument } from "./venue-document.js";
import { venueDocument } from "./venue-document.js";

/** A venue ready to be planned with. */
export interface LoadedVenue {
  readonly venue: Venue;
  /** What there is to say of it; none of them stopped it. */
  readonly issues: readonly Issue[];
  /** The path of each of the venue's scans, in their order, from where the command runs. */
  readonly scanPaths: readonly string[];
  /** Antennas of the options' own that a transmitter may get: the region's rule counts them, too. */
  readonly furtherAntennas?: readonly Antenna[];
}

/**
 * Reads a venue file with what it names: tables of luminaires, profile files, scans (which must be there).
 * Names in it count from its own folder.
 * @throws {CliError} exit 66 where the file, or nothing but files that it names, can't be had; exit 65 with
 * every mistake where it is no sound venue
 */
export async function loadVenue(path: string, io: Io): Promise<LoadedVenue> {
  const source = path === "-" ? STDIN_NAME : path;
  const document = await venueDocument(await inputText(path, io), source);
  const folder = path === "-" ? "." : dirname(path);
  const beside = (file: string): string => (file.startsWith("/") ? file : join(folder, file));
  const further = await furtherFiles(document.data, beside, io);
  const { venue, issues } = readVenue(document.data, {
    source,
    lineOf: document.lineOf,
    profileOf: (file) => further.profiles.get(file),
    luminairesOf: (file) => further.tables.get(file),
  });
  const all = [...issues, ...further.issues, ...missingScans(document, source, further.lacking)];
  const errors = all.filter(({ severity }) => severity === "error");
  if (venue !== null && errors.length === 0)
    return { venue, issues: all, scanPaths: venue.scans.map(({ file }) => beside(file)) };
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
  readonly tables: ReadonlyMap<string, LuminaireTable>;
  /** Names of files that aren't there. */
  readonly lacking: ReadonlySet<string>;
  readonly issues: readonly Issue[];
}

/** Judged in place of a profile that can't be read. */
const STAND_IN = { basedOn: "raster-13" };

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
  const profiles = new Map<string, unknown>();
  for (const name of new Set(textsOf(itemsOf(data, "systems"), "profile"))) {
    if (builtInProfiles.some((profile) => profile.name === name)) continue;
    const read = await readOne<unknown>(name, STAND_IN, async (path) => (await profileFile(path, io)).data);
    if (read !== null) profiles.set(name, read);
  }
  const tables = new Map<string, LuminaireTable>();
  const luminaires = valueOf(data, "luminaires");
  if (typeof luminaires === "string") {
    const table = await readOne<LuminaireTable>(luminaires, { data: [] }, async (path) =>
      luminaireTable((await inputText(path, io)).replace(/^\ufeff/, ""), luminaires, issues),
    );
    if (table !== null) tables.set(luminaires, table);
  }
  for (const name of await scansLacking(data, beside)) lacking.add(name);
  return { profiles, tables, lacking, issues };
}

async function scansLacking(data: unknown, beside: (file: string) => string): Promise<string[]> {
  const names = textsOf(itemsOf(data, "scans"), "file");
  const there = await Promise.all(names.map((name) => inputExists(beside(name))));
  return names.filter((_, index) => !there[index]);
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
