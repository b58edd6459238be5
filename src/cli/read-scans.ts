import { ArgumentError, formatIssue, printable } from "../issues/index.js";
import { readScan } from "../scan/index.js";
import type { ScanImport } from "../scan/index.js";
import { CliError, EXIT } from "./exit.js";
import type { CommonOptions, Context } from "./context.js";
import { STDIN_NAME, withInput } from "./input.js";
import type { Chunks } from "./input.js";
import type { Io } from "./io.js";
import { progressOf } from "./progress.js";
import type { Progress } from "./progress.js";
import type { ScanArgument } from "./scan-arguments.js";
import { badOption } from "./words.js";

/** What a scan file may be, in few words. */
const SCAN_WORDS = "a scan CSV or the text of iw scan";

/**
 * Reads every scan file; one named twice is read once.
 * @throws {CliError} exit 64 without files or where a fill can't be what it should be, exit 65 where a file
 * holds no usable row, exit 66 where one can't be read
 */
export async function readScans({
  files,
  io,
  options,
}: Context<CommonOptions>): Promise<readonly ScanImport[]> {
  const imports: ScanImport[] = [];
  for (const file of uniqueFiles(files)) imports.push(await readFile(file, io, options));
  const useless = imports.filter(isUseless);
  if (useless.length === 0) return imports;
  throw new CliError(
    EXIT.badData,
    useless.flatMap(uselessLines).join("\n"),
    useless.every(holdsOtherBands)
      ? "scan the 2.4 GHz band"
      : "sudo iw dev wlan0 scan > hall.txt, or see README, formats read",
    imports.flatMap(({ issues }) => [...issues]),
  );
}

async function readFile(
  { path, ...fill }: ScanArgument,
  io: Io,
  options: CommonOptions,
): Promise<ScanImport> {
  const source = path === "-" ? STDIN_NAME : path;
  try {
    return await withInput(
      path,
      io,
      (input) => readScan(input, { source, ...fill }),
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
