import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { PROJECT } from "./stillband.js";

const FOLDER = join(PROJECT, "fixtures/schemas");
const ajv = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true });
for (const file of readdirSync(FOLDER).filter((name) => name.endsWith(".json")))
  ajv.addSchema(JSON.parse(readFileSync(join(FOLDER, file), "utf8")) as object);

/** @returns what a value breaks of a schema, one line a fault; empty where it holds. */
export function schemaFaults(name: string, value: unknown): string[] {
  const validate = ajv.getSchema(`https://stillband.invalid/schemas/${name}.schema.json`);
  if (validate === undefined) throw new Error(`no schema ${name}`);
  if (validate(value) === true) return [];
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath}: ${message}`);
}
