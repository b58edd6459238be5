import { builtInProfiles, nearestWord } from "../radio/index.js";
import { CliError, EXIT } from "./exit.js";
import { inputExists, inputText } from "./input.js";
import type { Io } from "./io.js";
import { printable } from "../issues/index.js";
import { isFigure } from "./radio-figures.js";
import { readYaml } from "./read-yaml.js";
import { badOption } from "./words.js";

/**
 * Plain data of a user's profile file: a mapping of figures, or what `profiles NAME --json` printed.
 * @throws {CliError} exit 66 where there is no such file, exit 65 where it can't be one profile
 */
export async function profileFile(name: string, io: Io): Promise<unknown> {
  if (name.trim() === "") throw badOption("--profile", "a built-in profile or a file", name, "raster-13");
  if (name !== "-" && !(await inputExists(name))) throw noProfile(name);
  const data = unwrapped(await readYaml(await inputText(name, io), name), name);
  return isMapping(data) ? withEditsMarked(data) : data;
}

/** Plain data from YAML or JSON: a mapping? */
export function isMapping(data: unknown): data is Readonly<Record<string, unknown>> {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}

function noProfile(name: string): CliError {
  const names = builtInProfiles.map((profile) => profile.name);
  const near = nearestWord(name, names);
  const expected = "a built-in profile or a file";
  return new CliError(
    EXIT.noInput,
    `--profile: expected ${expected}, got "${printable(name, 200)}"`,
    `--profile ${near ?? `one of ${names.join(", ")}, or a file`}`,
    [{ code: "unreadable", severity: "error", source: name, expected, action: "stopped" }],
  );
}

/** Takes the one profile out of what `profiles NAME --json` prints. */
function unwrapped(data: unknown, source: string): unknown {
  if (!isMapping(data) || data["schema"] !== "stillband/profiles@1") return data;
  const profiles: unknown = data["profiles"];
  if (Array.isArray(profiles) && profiles.length === 1) return profiles[0] as unknown;
  const expected = "one profile";
  const value = Array.isArray(profiles) ? `${profiles.length}` : "none";
  throw new CliError(
    EXIT.badData,
    `${printable(source, 200)}: expected ${expected}, got ${value}`,
    "stillband profiles raster-13 --json > mine.json",
    [{ code: "unreadable", severity: "error", source, value, expected, action: "stopped" }],
  );
}

/**
 * A figure whose value was changed in what `--json` printed, its status and source left standing, is the
 * user's own: they told of the old value.
 */
function withEditsMarked(data: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(data).map(([key, part]) => [key, isEdited(key, part) ? { value: part.value } : part]),
  );
}

function isEdited(key: string, part: unknown): part is { readonly value: unknown } {
  if (!isFigure(part) || part.status === "yours") return false;
  const printed = builtInProfiles
    .map((profile) => profile[key as keyof typeof profile] as unknown)
    .filter(isFigure)
    .filter(({ status, source }) => status === part.status && source === part.source);
  const value = JSON.stringify(part.value);
  return printed.length > 0 && printed.every((figure) => JSON.stringify(figure.value) !== value);
}
