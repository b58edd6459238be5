import { readPathModelRecord } from "../commissioning/index.js";
import { readPathModel } from "../propagation/index.js";
import type { PathModelImport } from "../propagation/index.js";
import { inputText } from "./input.js";
import type { Io } from "./io.js";
import { isMapping } from "./profile-file.js";
import { readYaml } from "./read-yaml.js";

/** What a model's file holds at the least. */
export const MODEL_FORM =
  'a file with "schema": "stillband/path-model@1", "kind": "log-distance", "exponent", "referenceLossDb"';

/**
 * A path model's file: typed by hand, or written by a fit, which knows how far it can be trusted (its record
 * is then the model).
 * @throws {CliError} exit 66 where it can't be had, 65 where it is neither YAML nor JSON
 */
export async function readModelFile(path: string, source: string, io: Io): Promise<PathModelImport> {
  const data = await readYaml(await inputText(path, io), source, MODEL_FORM);
  const isFitted = isMapping(data) && "covariance" in data;
  return isFitted ? readPathModelRecord(data, { source }) : readPathModel(data, source);
}
