import { nearestWord } from "./nearest-word.js";
import type { Report } from "./profile-report.js";

/**
 * The entries of a mapping under their known keys. `snake_case` and `camelCase` are the same key; an
 * unknown key and one given twice are reported.
 */
export function knownEntries(
  mapping: Readonly<Record<string, unknown>>,
  knownKeys: readonly string[],
  path: string,
  report: Report,
): ReadonlyMap<string, unknown> {
  const entries = new Map<string, unknown>();
  for (const [key, raw] of Object.entries(mapping)) {
    const known = knownKeys.find((candidate) => candidate === camelCase(key));
    if (known === undefined) report(joined(path, key), key, `a known key${hint(key, knownKeys)}`);
    else if (entries.has(known)) report(joined(path, key), key, `${known} only once`, "contradiction");
    else entries.set(known, raw);
  }
  return entries;
}

/** @returns `parent.key`, or `key` at the top */
export function joined(path: string, key: string): string {
  return path === "" ? key : `${path}.${key}`;
}

/** @returns words to add to an expectation; empty when nothing known is near */
export function hint(word: string, knownWords: readonly string[]): string {
  const near = nearestWord(word, knownWords);
  return near === null ? "" : ` (did you mean ${near}?)`;
}

function camelCase(key: string): string {
  return key.replaceAll(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}
