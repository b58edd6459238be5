import { builtInProfiles, nearestWord } from "../radio/index.js";
import { CliError, EXIT } from "./exit.js";
import { inputExists, inputText } from "./input.js";
import type { Io } from "./io.js";
import { printable } from "../issues/index.js";
import { withEditsMarked } from "./edited-figures.js";
import { readYamlText } from "./read-yaml.js";
import type { YamlText } from "./read-yaml.js";
import { badOption } from "./words.js";

/**
 * Plain data of a user's profile file: a mapping of figures, or what `profiles NAME --json` printed; and the
 * line of each key, for messages.
 * @throws {CliError} exit 66 where there is no such file, exit 65 where it can't be one profile
 */
export async function profileFile(name: string, io: Io): Promise<YamlText> {
  if (name.trim() === "") throw badOption("--profile", "a built-in profile or a file", name, "raster-13");
  if (name !== "-" && !(await inputExists(name))) throw noProfile(name);
  const text = await readYamlText(await inputText(name, io), name);
  const data = unwrapped(text.data, name);
  const wrapping = data === text.data ? "" : "profiles[0].";
  return {
    data: isMapping(data) ? withEditsMarked(data) : data,
    lineOf: (path) => text.lineOf(wrapping + path),
  };
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
