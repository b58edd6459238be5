import { readdir, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { CliError } from "./exit.js";
import { noInput } from "./input.js";
import type { ScanArgument } from "./scan-arguments.js";

/** What one path leads to. */
type Kind = "file" | "folder" | "none";

/**
 * Folders and patterns as the files in them, in place, each with the fill of the word that led to it: of a
 * folder every regular file that is not hidden, by name, one level deep; of a pattern (`*`, `?`; a file of
 * that very name comes first) every file and folder that matches. A file that is also named stands as named.
 * @throws {CliError} exit 66 for a folder without files, or a pattern that nothing matches
 */
export async function expandFiles(files: readonly ScanArgument[]): Promise<ScanArgument[]> {
  const found: ScanArgument[] = [];
  for (const file of files) found.push(...(await expand(file)));
  const named = new Set(found.filter((file) => file.found !== true).map(({ path }) => resolve(path)));
  const taken = new Set<string>();
  return found.filter(({ path, found: isFound }) => {
    if (isFound !== true) return true;
    const whole = resolve(path);
    if (named.has(whole) || taken.has(whole)) return false;
    taken.add(whole);
    return true;
  });
}

async function expand(file: ScanArgument): Promise<ScanArgument[]> {
  const { path } = file;
  if (path === "-") return [file];
  const kind = await kindOf(path);
  if (kind === "folder") return filesIn(file);
  if (kind === "file" || !PATTERN.test(path)) return [file];
  const matches = await matching(path);
  const lists = await Promise.all(
    matches.map(async (match) =>
      (await kindOf(match)) === "folder"
        ? await filesIn({ ...file, path: match }).catch(nothingFor)
        : [{ ...file, path: match, found: true }],
    ),
  );
  const files = lists.flat();
  if (files.length === 0)
    throw noInput(path, "no file matches", "check the pattern, or name the folder to take every file in it");
  return files;
}

const PATTERN = /[*?]/;

/** A folder that only a pattern led to may be empty. */
function nothingFor(error: unknown): [] {
  if (error instanceof CliError) return [];
  throw error;
}

async function filesIn(folder: ScanArgument): Promise<ScanArgument[]> {
  const { path } = folder;
  const names = (await readdir(path)).filter((name) => !name.startsWith(".")).sort(byName);
  const paths = names.map((name) => join(path, name));
  const kinds = await Promise.all(paths.map(kindOf));
  const files = paths.filter((_, index) => kinds[index] === "file");
  if (files.length > 0) return files.map((each) => ({ ...folder, path: each, found: true }));
  const why = kinds.includes("folder") ? "a folder without files, only folders" : "a folder without files";
  throw noInput(path, why, "name a folder that holds scans; those in it are not looked into");
}

/** Every path that a pattern matches, one part of the path after the other. */
async function matching(pattern: string): Promise<string[]> {
  const [part, rest] = [basename(pattern), dirname(pattern)];
  const folders = PATTERN.test(rest) ? await matching(rest) : [rest];
  if (!PATTERN.test(part)) return folders.map((folder) => join(folder, part));
  const matches = nameTest(part);
  const lists = await Promise.all(
    folders.map(async (folder) => {
      const names = await readdir(folder).catch((): string[] => []);
      return names
        .filter((name) => matches(name))
        .sort(byName)
        .map((name) => join(folder, name));
    }),
  );
  return lists.flat();
}

/** `*` is any run of characters, `?` one; neither stands for the dot that hides a name. */
function nameTest(pattern: string): (name: string) => boolean {
  const source = pattern
    .replace(/[.+^${}()|[\]\\]/g, "\\$&")
    .replace(/\*+/g, ".*")
    .replaceAll("?", ".");
  const whole = new RegExp(`^${source}$`, "su");
  return (name) => (pattern.startsWith(".") || !name.startsWith(".")) && whole.test(name);
}

/** The same order everywhere, whatever the language. */
function byName(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

async function kindOf(path: string): Promise<Kind> {
  try {
    const stats = await stat(path);
    return stats.isDirectory() ? "folder" : stats.isFile() ? "file" : "none";
  } catch {
    return "none";
  }
}
