import { mkdir, readdir, rename, rm, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { printable } from "../issues/index.js";
import { CliError, EXIT } from "./exit.js";
import { wasRead } from "./input.js";
import type { Io } from "./io.js";

/** What a folder is to hold, and what may stand in its place. */
export interface FolderContent {
  /** By name. */
  readonly files: ReadonlyMap<string, string>;
  /** May a folder that holds nothing else than an earlier run's files be replaced? */
  readonly force: boolean;
  /** Is a name one that some run may have written? */
  readonly isOwn: (name: string) => boolean;
}

/**
 * Is there room for a folder to be written? Asked before the work as well as after it.
 * @throws {CliError} exit 73 where something is there that may not be replaced
 */
export async function requireFolderFree(path: string, content: FolderContent, io: Io): Promise<void> {
  const shown = printable(path, 200);
  const refuse = (why: string, next: string): never => {
    throw new CliError(EXIT.cannotCreate, `${shown}: ${why}`, next);
  };
  const stats = await stat(path).catch(() => null);
  if (stats === null) return;
  if (!stats.isDirectory()) refuse("is there already, and no folder", "name another: -o plan-2");
  const names = await readdir(path);
  if (names.length === 0) return;
  if (!content.force) refuse("is there already", "name another with -o, or --force to replace it");
  const foreign = names.find((name) => !content.isOwn(name));
  if (foreign !== undefined)
    refuse(`holds ${printable(foreign, 60)}, which no plan wrote`, "name another folder: -o plan-2");
  for (const name of names)
    if (wasRead(await stat(join(path, name)), io))
      refuse(`${printable(name, 60)} in it was read for this`, "name another folder: -o plan-2");
}

/**
 * Writes a folder, whole or not at all: beside its place first, then moved there.
 * @throws {CliError} exit 73 where it can't be written, or something is there that may not be replaced
 */
export async function writeFolder(path: string, content: FolderContent, io: Io): Promise<void> {
  await requireFolderFree(path, content, io);
  const place = path.replace(/(?<=.)\/+$/, "");
  const draft = `${place}.${process.pid}.part`;
  const before = `${place}.${process.pid}.old`;
  try {
    await mkdir(draft);
    for (const [name, text] of content.files) await writeFile(join(draft, name), text, { flag: "wx" });
    const isThere = (await stat(place).catch(() => null)) !== null;
    if (isThere) await rename(place, before);
    await rename(draft, place);
    if (isThere) await rm(before, { recursive: true });
  } catch (error) {
    await rm(draft, { recursive: true, force: true }).catch(() => undefined);
    const isMoved = (await stat(before).catch(() => null)) !== null;
    if (isMoved && (await stat(place).catch(() => null)) === null) await rename(before, place);
    const code = error instanceof Error && "code" in error ? String(error.code) : String(error);
    throw new CliError(
      EXIT.cannotCreate,
      `${printable(path, 200)}: can't be written (${code})`,
      "check that the folder above it is there and that you may write to it",
    );
  }
}
