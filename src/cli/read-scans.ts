import { ArgumentError, formatIssue, printable } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { readScan } from "../scan/index.js";
import type { ReadScanOptions, ScanImport } from "../scan/index.js";
import { CliError, EXIT } from "./exit.js";
import type { CommonOptions, Context } from "./context.js";
import { STDIN_NAME, withInput } from "./input.js";
import type { Chunks } from "./input.js";
import { progressOf } from "./progress.js";
import type { Progress } from "./progress.js";
import type { ScanArgument } from "./scan-arguments.js";
import { badOption } from "./words.js";

/** What a scan file may be, in few words. */
const SCAN_WORDS = "a scan table, Wi-Fi scan text or a power sweep";

/** How every file is read, whatever its name. */
export type ReadingOptions = Omit<ReadScanOptions, "source" | "place" | "crowd" | "time">;

/**
 * Reads every scan file; one named twice is read once. A file of a folder or pattern that holds no usable row
 * is left out with a warning, as long as another file has one.
 * @throws {CliError} exit 64 without files or where a fill can't be what it should be, exit 65 where a file
 * holds no usable row, exit 66 where one can't be read
 */
export async function readScans(
  context: Context<CommonOptions>,
  reading: ReadingOptions = {},
): Promise<readonly ScanImport[]> {
  const imports = await readAll(context, reading);
  const found = new Set(context.files.flatMap(({ path, found }) => (found === true ? [path] : [])));
  const isLeftOut = (scan: ScanImport): boolean => isUseless(scan) && found.has(scan.source);
  const useless = imports.filter(isUseless);
  const isUsable = useless.length < imports.length;
  if (isUsable && useless.every(isLeftOut))
    return imports.map((scan) => (isLeftOut(scan) ? leftOut(scan) : scan));
  throw new CliError(
    EXIT.badData,
    (isUsable ? useless.filter((scan) => !isLeftOut(scan)) : useless).flatMap(uselessLines).join("\n"),
    useless.every(holdsOtherBands)
      ? "scan the 2.4 GHz band"
      : "sudo iw dev wlan0 scan > hall.txt, or see README, formats read",
    imports.flatMap(({ issues }) => [...issues]),
  );
}

/**
 * Reads the files; those that have levels without channels are read with the channels that others list.
 * Standard input, which can be read but once, is read last.
 */
async function readAll(context: Context<CommonOptions>, reading: ReadingOptions): Promise<ScanImport[]> {
  const files = uniqueFiles(context.files);
  const imports = new Map<ScanArgument, ScanImport>();
  const readOne = async (file: ScanArgument): Promise<void> => {
    const channels = listedChannels(imports.values());
    const options = { ...reading, ...(channels.size > 0 && { channels }) };
    imports.set(file, await readFile(file, context, options));
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

async function readFile(
  { path, ...fill }: ScanArgument,
  { io, options }: Context<CommonOptions>,
  reading: ReadingOptions,
): Promise<ScanImport> {
  const source = path === "-" ? STDIN_NAME : path;
  try {
    return await withInput(
      path,
      io,
      (input) => readScan(input, { source, ...fill, ...reading }),
      (chunks, totalBytes) => watched(chunks, progressOf(printable(source, 30), totalBytes, io, options)),
    );
  } catch (error) {
    throw error instanceof ArgumentError ? (badFill(error) ?? error) : error;
  }
}

/** The same chunks, counted as they pass. */
async function* watched(chunks: Chunks, progress: Progress): AsyncGenerator<Uint8Array | string> {
  try {
    for await (const chunk of chunks) {
      progress.read(chunk.length);
      yield chunk;
    }
  } finally {
    progress.end();
  }
}

/** @returns a fill that the reader refuses, as the option that the user typed */
function badFill({ argument, expected, received }: ArgumentError): CliError | null {
  if (argument === "options.crowd") return badOption("--crowd", expected, String(received), "full");
  if (argument === "options.time")
    return badOption(
      "--time",
      `${expected}, as 2026-03-07T20:00:00Z`,
      String(received),
      "2026-03-07T20:00:00Z",
    );
  return null;
}

/** A file of a folder that is no scan: said, and nothing more. */
function leftOut(scan: ScanImport): ScanImport {
  const value = scan.issues.find(({ code }) => code === "no-usable-row")?.value ?? "";
  const issue: Issue = {
    code: "no-usable-row",
    severity: "warning",
    source: scan.source,
    value,
    expected: `left out: ${printable(value, 100)}; expected ${SCAN_WORDS}`,
    action: "stated",
  };
  return { ...scan, issues: [issue] };
}

function isUseless({ issues }: ScanImport): boolean {
  return issues.some(({ code }) => code === "no-usable-row");
}

function holdsOtherBands({ rowCount, outOfBandCount }: ScanImport): boolean {
  return rowCount > 0 && outOfBandCount === rowCount;
}

/** What stood there instead, then what was wrong with each row. */
function uselessLines({ source, issues }: ScanImport): string[] {
  return [...issues]
    .sort((a, b) => Number(b.code === "no-usable-row") - Number(a.code === "no-usable-row"))
    .filter(({ severity }) => severity !== "note")
    .map((issue) =>
      issue.code === "no-usable-row"
        ? `${printable(source, 200)}: ${printable(issue.value ?? "", 100)}; expected ${SCAN_WORDS}`
        : formatIssue(issue),
    );
}

function uniqueFiles(files: readonly ScanArgument[]): ScanArgument[] {
  return [...new Map(files.map((file) => [file.path, file])).values()];
}
