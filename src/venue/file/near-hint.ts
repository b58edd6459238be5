import { nearestWord } from "../../radio/index.js";

/** Words to add to an expectation: the nearest of the known ones; empty where none is near. */
export function nearHint(word: unknown, knownWords: readonly string[]): string {
  const near = typeof word === "string" ? nearestWord(word, knownWords) : null;
  return near === null ? "" : ` (did you mean ${near}?)`;
}

/** Names one after the other, the first few of many. */
export function someOf(names: readonly string[]): string {
  const shown = names.slice(0, MOST_SHOWN).join(", ");
  return names.length > MOST_SHOWN ? `${shown}, … (${names.length} in all)` : shown;
}

const MOST_SHOWN = 8;
