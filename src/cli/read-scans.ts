import { formatIssue } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { readScan } from "../scan/index.js";
import type { ReadScanOptions, ScanImport } from "../scan/index.js";
import { CliError, EXIT } from "./exit.js";
import { inputChunks, STDIN_NAME } from "./files.js";
import type { Io } from "./io.js";
import type { ScanArgument } from "./scan-arguments.js";

/** What reading a command's scan files gave. */
export interface ScansRead {
  readonly imports: readonly ScanImport[];
  /** The files that held no usable row, as an error to end with; null where every file held some. */
  readonly failure: CliError | null;
}

/** How every file is read, whatever its name. */
export type ReadingOptions = Omit<ReadScanOptions, "source" | "place" | "crowd" | "time">;

/**
 * Reads every scan file; one named twice is read once.
 * @throws {CliError} exit 64 without files, exit 66 where one can't be read
 */
export async function readScans(
  files: readonly ScanArgument[],
  io: Io,
  reading: ReadingOptions = {},
): Promise<ScansRead> {
  if (files.length === 0)
    throw new CliError(EXIT.usage, "no scan file given", "name one or more, or - for standard input");
  const imports = await readAll(uniqueFiles(files), io, reading);
  const useless = imports.filter(({ issues }) => issues.some(isUseless));
  const message = useless.flatMap(({ issues }) => issues.filter(saysWhy).map(formatIssue)).join("\n");
  const next = "a scan CSV, or the text of: sudo iw dev wlan0 scan (README, formats read)";
  return { imports, failure: useless.length === 0 ? null : new CliError(EXIT.badData, message, next) };
}

/**
 * Reads the files; those that have levels without channels are read with the channels that others list.
 * Standard input, which can be read but once, is read last.
 */
async function readAll(
  files: readonly ScanArgument[],
  io: Io,
  reading: ReadingOptions,
): Promise<ScanImport[]> {
  const imports = new Map<ScanArgument, ScanImport>();
  const readOne = async (file: ScanArgument): Promise<void> => {
    const { path, ...fill } = file;
    const channels = listedChannels(imports.values());
    const source = path === "-" ? STDIN_NAME : path;
    const options = { source, ...fill, ...reading, ...(channels.size > 0 && { channels }) };
    imports.set(file, await readScan(inputChunks(path, io), options));
  };
  for (const file of files) if (file.path !== "-") await readOne(file);
  for (const file of files) if (file.path === "-") await readOne(file);
  const waiting = files.filter((file) => imports.get(file)?.needsChannels === true);
  if (listedChannels(imports.values()).size > 0)
    for (const file of waiting) if (file.path !== "-") await readOne(file);
  const isListUsed = listedChannels(imports.values()).size > 0 && imports.size > 1;
  return files.map((file) => (isListUsed ? withoutListErrors(imports.get(file)!) : imports.get(file)!));
}

function listedChannels(imports: Iterable<ScanImport>): ReadonlyMap<string, number> {
  return new Map([...imports].flatMap(({ channels }) => [...(channels ?? [])]));
}

/** A list of channels has no readings of its own: no error beside a file that has. */
function withoutListErrors(scan: ScanImport): ScanImport {
  if (scan.channels === undefined || scan.readings.length > 0) return scan;
  return { ...scan, issues: scan.issues.filter(({ severity }) => severity !== "error") };
}

function isUseless({ code }: Issue): boolean {
  return code === "no-usable-row";
}

function saysWhy(issue: Issue): boolean {
  return isUseless(issue) || (issue.code === "missing-column" && issue.severity === "error");
}

function uniqueFiles(files: readonly ScanArgument[]): ScanArgument[] {
  return [...new Map(files.map((file) => [file.path, file])).values()];
}
