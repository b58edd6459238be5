import { createReadStream } from "node:fs";
import { rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import { CliError, EXIT } from "./exit.js";
import { write } from "./io.js";
import type { Io } from "./io.js";

/** The name by which standard input is told in messages. */
export const STDIN_NAME = "<stdin>";

/** Bytes of a file, or of standard input for `-`, as they arrive. */
export async function* inputChunks(path: string, io: Io): AsyncGenerator<Uint8Array> {
  if (path === "-") {
    for await (const chunk of io.stdin)
      yield typeof chunk === "string" ? Buffer.from(chunk) : (chunk as Uint8Array);
    return;
  }
  await requireFile(path);
  try {
    for await (const chunk of createReadStream(path, { highWaterMark: 1 << 18 })) yield chunk as Uint8Array;
  } catch (error) {
    throw unreadable(path, error);
  }
}

/** @returns the text of a small file of the user's, such as a profile */
export async function inputText(path: string, io: Io): Promise<string> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of inputChunks(path, io)) chunks.push(chunk);
  return Buffer.concat(chunks).toString("utf8");
}

async function requireFile(path: string): Promise<void> {
  try {
    if ((await stat(path)).isDirectory())
      throw new CliError(
        EXIT.noInput,
        `${path}: expected a file, got a directory`,
        `name the files in it: ${path}/*`,
      );
  } catch (error) {
    throw error instanceof CliError ? error : unreadable(path, error);
  }
}

function unreadable(path: string, error: unknown): CliError {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (code === "ENOENT")
    return new CliError(EXIT.noInput, `${path}: no such file`, "check the name, or use - for standard input");
  if (code === "EACCES") return new CliError(EXIT.noInput, `${path}: no permission to read it`);
  return new CliError(EXIT.noInput, `${path}: can't be read (${code || String(error)})`);
}

/** Output to a file, whole or not at all, or to standard output where no file is named. */
export async function deliver(text: string, path: string | undefined, io: Io): Promise<void> {
  if (path === undefined || path === "-") return write(io.out, text);
  const draft = `${path}.${process.pid}.part`;
  try {
    await writeFile(draft, text, { flag: "wx" });
    await rename(draft, path);
  } catch (error) {
    await rm(draft, { force: true });
    const code = error instanceof Error && "code" in error ? String(error.code) : String(error);
    throw new CliError(
      EXIT.cannotCreate,
      `${path}: can't be written (${code})`,
      `check that ${dirname(path)} exists and is writable`,
    );
  }
}

/** Does a file of this name exist? */
export async function fileExists(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch {
    return false;
  }
}
