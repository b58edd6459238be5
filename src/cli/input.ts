import type { Stats } from "node:fs";
import { open, stat } from "node:fs/promises";
import { printable } from "../issues/index.js";
import { CliError, EXIT } from "./exit.js";
import type { Io } from "./io.js";

/** The name by which standard input is told in messages. */
export const STDIN_NAME = "<stdin>";
/** A file up to this size is read at once; the rest as it arrives. */
const AT_ONCE_BYTES = 1 << 20;

/** Bytes of an input: whole, or in chunks as they arrive. */
export type Input = Uint8Array | Chunks;
export type Chunks = AsyncIterable<Uint8Array | string>;
/** Looks on as chunks arrive; the size is null where it can't be known. */
export type Watch = (chunks: Chunks, totalBytes: number | null) => Chunks;

/**
 * Gives the bytes of a file, or of standard input for `-`, to whatever uses them.
 * @throws {CliError} exit 66 where they can't be read
 */
export async function withInput<T>(
  path: string,
  io: Io,
  use: (input: Input) => Promise<T>,
  watch: Watch = (chunks) => chunks,
): Promise<T> {
  try {
    if (path === "-") return await use(watch(io.stdin as Chunks, null));
    return await use(await opened(path, io, watch));
  } catch (error) {
    throw error instanceof Error && "syscall" in error ? unreadable(path, error) : error;
  }
}

/** @returns the text of a small file of the user's, such as a profile */
export function inputText(path: string, io: Io): Promise<string> {
  return withInput(path, io, async (input) => {
    if (input instanceof Uint8Array) return Buffer.from(input).toString("utf8");
    const chunks: Uint8Array[] = [];
    for await (const chunk of input) chunks.push(Buffer.from(chunk as Uint8Array));
    return Buffer.concat(chunks).toString("utf8");
  });
}

/** The plain files that a run has read, by device and number: other names of one file are that file, too. */
const FILES_READ = new WeakMap<Io, Set<string>>();

/** Has this run read the file? What was read is never written over. */
export function wasRead(stats: Stats, io: Io): boolean {
  return FILES_READ.get(io)?.has(`${stats.dev}:${stats.ino}`) === true;
}

function noteRead(stats: Stats, io: Io): void {
  const known = FILES_READ.get(io) ?? new Set();
  FILES_READ.set(io, known.add(`${stats.dev}:${stats.ino}`));
}

/** Not by `node:fs`: importing that loads all of Node's streams. */
async function opened(path: string, io: Io, watch: Watch): Promise<Input> {
  const file = await open(path);
  const stats = await file.stat();
  if (stats.isFile()) noteRead(stats, io);
  const isSmall = stats.isFile() && stats.size <= AT_ONCE_BYTES;
  if (!isSmall && !stats.isDirectory())
    return watch(
      // A file that grows is read as far as it went when it was opened, so that reading ends.
      file.createReadStream({
        highWaterMark: 1 << 18,
        ...(stats.isFile() && { end: stats.size - 1 }),
      }) as Chunks,
      stats.isFile() ? stats.size : null,
    );
  try {
    if (stats.isDirectory())
      throw noInput(path, "expected a file, got a directory", "name the files in it; survey takes folders");
    return await file.readFile();
  } finally {
    await file.close();
  }
}

function unreadable(path: string, error: Error): CliError {
  const code = "code" in error ? String(error.code) : error.message;
  if (code === "ENOENT" || code === "ENOTDIR")
    return noInput(path, "no such file", "check the name, or use - for standard input");
  if (code === "EACCES") return noInput(path, "no permission to read it", "ask its owner, or copy it");
  return noInput(path, `can't be read (${code})`, "copy it to this machine's disk and name the copy");
}

/** The end that input which can't be had comes to. */
export function noInput(path: string, why: string, next: string): CliError {
  const source = path === "-" ? STDIN_NAME : path;
  return new CliError(EXIT.noInput, `${printable(source, 200)}: ${why}`, next, [
    {
      code: "unreadable",
      severity: "error",
      source,
      value: why,
      expected: "a file that can be read",
      action: "stopped",
    },
  ]);
}

/** Does a file of this name exist? */
export async function inputExists(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch {
    return false;
  }
}
