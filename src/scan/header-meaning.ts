import { HEADER_WORDS } from "./header-words.js";
import type { ColumnMeaning } from "./header-words.js";
import { memo } from "./memo.js";
import { SCAN_CSV_COLUMNS } from "./scan-csv-columns.js";

/** What a header says of its column. */
export interface HeaderMeaning {
  readonly meaning: ColumnMeaning;
  /** The unit that it names, lower case; null: none. */
  readonly unit: "dbm" | "%" | "hz" | "khz" | "mhz" | "ghz" | null;
}

const UNITS = ["dbm", "%", "hz", "khz", "mhz", "ghz"] as const;

/**
 * The meaning of a header by plain words of several languages, accents and capitals or not. A signal in
 * percent is a quality.
 * @returns null where no word is known
 * @example headerMeaning("Signalstärke (dBm)"); // => { meaning: "signal_dbm", unit: "dbm" }
 */
export const headerMeaning: (header: string) => HeaderMeaning | null = memo((header) => {
  const name = header.trim().toLowerCase();
  const words = wordsOf(header);
  const unit = UNITS.find((candidate) => words.includes(candidate)) ?? null;
  const column = SCAN_CSV_COLUMNS.find((candidate) => candidate === name);
  const meaning = column ?? meaningOf(words);
  if (meaning === null) return unit === "%" && words.length === 1 ? { meaning: "quality", unit } : null;
  return { meaning: meaning === "signal_dbm" && unit === "%" ? "quality" : meaning, unit };
});

/**
 * Words of a header: lower case, without accents, cut at capitals within.
 * @example wordsOf("rxLevel [dBm]"); // => ["rx", "level", "dbm"]
 */
export function wordsOf(header: string): readonly string[] {
  return header
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .replace(/\bd bm\b/gi, "dbm")
    .replace(/([MGk])\s(Hz)/g, "$1$2")
    .normalize("NFKC")
    .replace(/[À-ɏ]/gu, unaccented)
    .toLowerCase()
    .split(/[^\p{L}\p{N}%ー]+/u)
    .filter((word) => word !== "");
}

function unaccented(letter: string): string {
  return letter.normalize("NFD").replace(/\p{M}+/gu, "");
}

function meaningOf(words: readonly string[]): ColumnMeaning | null {
  const text = words.join(" ");
  if (text === "access point") return "bssid";
  for (const { meaning, words: whole, stems } of HEADER_WORDS)
    if (words.some((word) => whole.includes(word)) || stems.some((stem) => text.includes(stem)))
      return meaning;
  return null;
}
