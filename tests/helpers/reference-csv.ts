import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";

/** Rows of a table in fixtures/reference, keyed by its header. */
export function referenceCsv(name: string): Record<string, string>[] {
  const url = new URL(`../../fixtures/reference/${name}`, import.meta.url);
  return parse<Record<string, string>>(readFileSync(url, "utf8"), { columns: true });
}
