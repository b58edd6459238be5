import { unguardCell } from "./spreadsheet-guard.js";

const HIDDEN_WORDS =
  "hidden|hidden network|hidden ssid|hidden name|versteckt|verborgen|cache|cachee|masque|oculta|oculto|nascosta|nascosto|ukryta|非公開";
const HIDDEN = new RegExp(`^(?:-{1,3}|[<(\\[*]+(?:${HIDDEN_WORDS})[>)\\]*]+|${HIDDEN_WORDS})$`, "i");
const ZEROS = /^(?:\0|\\x00|\\0)+$/;

/**
 * A network's name in a foreign table: empty where the cell says by `--`, zero bytes or a word as
 * `<hidden>` that the network doesn't name itself.
 * @example networkName("<hidden>"); // => ""
 */
export function networkName(cell: string): string {
  const trimmed = cell.trim();
  if (trimmed === "" || ZEROS.test(trimmed)) return "";
  const plain = trimmed.normalize("NFD").replace(/\p{M}+/gu, "");
  return HIDDEN.test(plain) ? "" : unguardCell(cell);
}
