import type { Stats } from "node:fs";
import { realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import { printable } from "../issues/index.js";
import { CliError, EXIT } from "./exit.js";
import { wasRead } from "./input.js";
import { write } from "./io.js";
import type { Io } from "./io.js";
import { filledWord } from "./words.js";

/**
 * Output to a file, whole or not at all, or to standard output where no file is named. What is there and is
 * no plain file (a pipe with a name, a device) is written to and never replaced; what the run has read stays.
 * @throws {CliError} exit 73 where it can't be written, or is one of the run's own inputs
 */
export async function deliver(text: string, path: string | undefined, io: Io): Promise<void> {
  if (path === undefined || path === "-") return write(io.out, text);
  filledWord("--output", path, "a file's name", "report.txt");
  const there = await statsOf(path);
  if (there !== null) refuse(path, there, io);
  try {
    if (there === null) await replace(path, text);
    else if (there.isFile() && !OPEN_ALREADY.test(path))
      await replace(await realpath(path), text, there.mode);
    else await writeFile(path, text, { flag: "a" });
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : String(error);
    if (code !== "EPIPE")
      throw cannotCreate(
        path,
        `can't be written (${code})`,
        `check that ${dirname(path)} is a folder that you may write to`,
      );
  }
}

/** A folder is no file, and what the run has read stays. */
function refuse(path: string, there: Stats, io: Io): void {
  if (there.isDirectory())
    throw cannotCreate(
      path,
      "is a directory",
      `name a file in it: -o ${path.replace(/\/*$/, "")}/report.txt`,
    );
  if (there.isFile() && wasRead(there, io))
    throw cannotCreate(
      path,
      "was read for this, and is never overwritten",
      "name another file: -o report.txt",
    );
}

/** Names of what a process has open, such as /dev/stdout: a plain file may stand behind, and stays. */
const OPEN_ALREADY = /^\/(?:dev|proc)\//;

async function replace(path: string, text: string, mode = 0o666): Promise<void> {
  const draft = `${path}.${process.pid}.part`;
  try {
    await writeFile(draft, text, { flag: "wx", mode });
    await rename(draft, path);
  } catch (error) {
    await rm(draft, { force: true }).catch(() => undefined);
    throw error;
  }
}

async function statsOf(path: string): Promise<Stats | null> {
  try {
    return await stat(path);
  } catch {
    return null;
  }
}

function cannotCreate(path: string, why: string, next: string): CliError {
  return new CliError(EXIT.cannotCreate, `${printable(path, 200)}: ${why}`, next);
}
