import { formatIssue } from "../issues/index.js";
import { readScan } from "../scan/index.js";
import type { ScanImport } from "../scan/index.js";
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

/**
 * Reads every scan file; one named twice is read once.
 * @throws {CliError} exit 64 without files, exit 66 where one can't be read
 */
export async function readScans(files: readonly ScanArgument[], io: Io): Promise<ScansRead> {
  if (files.length === 0)
    throw new CliError(EXIT.usage, "no scan file given", "name one or more, or - for standard input");
  const imports: ScanImport[] = [];
  for (const { path, ...fill } of uniqueFiles(files)) {
    const source = path === "-" ? STDIN_NAME : path;
    imports.push(await readScan(inputChunks(path, io), { source, ...fill }));
  }
  const useless = imports.flatMap(({ issues }) => issues).filter(({ code }) => code === "no-usable-row");
  const message = useless.map(formatIssue).join("\n");
  const next = "a scan CSV, or the text of: sudo iw dev wlan0 scan (README, formats read)";
  return { imports, failure: useless.length === 0 ? null : new CliError(EXIT.badData, message, next) };
}

function uniqueFiles(files: readonly ScanArgument[]): ScanArgument[] {
  return [...new Map(files.map((file) => [file.path, file])).values()];
}
