import { formatIssue, printable } from "../issues/index.js";
import { indoorModelOf } from "../propagation/index.js";
import type { Building, PathModel } from "../propagation/index.js";
import { CliError, EXIT } from "./exit.js";
import { MODEL_FORM, readModelFile } from "./fitted-model.js";
import { inputExists } from "./input.js";
import type { Io } from "./io.js";
import { pathModelWord } from "./path-model-word.js";

const FILE = /\.(json|ya?ml)$/i;

/**
 * The path model that is asked for: a word, a file with a fitted model, or that of a kind of building.
 * @returns undefined where neither was named
 * @throws {CliError} exit 64 for a word that is none, 66 where there is no such file, 65 where it holds none
 */
export async function pathOption(
  text: string | undefined,
  building: Building | undefined,
  io: Io,
): Promise<PathModel | undefined> {
  if (text === undefined) return building === undefined ? undefined : indoorModelOf(building, 0);
  return FILE.test(text) ? fittedModel(text, io) : pathModelWord("--path-model", text);
}

async function fittedModel(path: string, io: Io): Promise<PathModel> {
  if (!(await inputExists(path))) {
    const expected = "a file with a fitted path model";
    throw new CliError(
      EXIT.noInput,
      `--path-model: expected ${expected}, got "${printable(path, 200)}"`,
      "--path-model indoor:22",
      [{ code: "unreadable", severity: "error", source: path, expected, action: "stopped" }],
    );
  }
  const { model, issues } = await readModelFile(path, path, io);
  if (model !== null) return model;
  throw new CliError(EXIT.badData, issues.map(formatIssue).join("\n"), MODEL_FORM, issues);
}
