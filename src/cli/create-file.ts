import { rm, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import { printable } from "../issues/index.js";
import { CliError, EXIT } from "./exit.js";

/**
 * Writes a file that isn't there yet, whole or not at all; what is there stays.
 * @throws {CliError} exit 73 where it is there already, or can't be written
 */
export async function createFile(path: string, text: string): Promise<void> {
  try {
    await writeFile(path, text, { flag: "wx" });
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : String(error);
    if (code === "EEXIST") throw alreadyThere(path);
    if (code === "ENOSPC" || code === "EIO") await rm(path, { force: true }).catch(() => undefined);
    const next = `check that ${dirname(path)} is a folder that you may write to`;
    throw new CliError(EXIT.cannotCreate, `${printable(path, 200)}: can't be written (${code})`, next);
  }
}

/** The end that writing over a file comes to. */
export function alreadyThere(path: string): CliError {
  const why = "is there already, and what you wrote is never overwritten";
  return new CliError(
    EXIT.cannotCreate,
    `${printable(path, 200)}: ${why}`,
    "stillband init -o another.yaml, or -o - to print it",
  );
}
