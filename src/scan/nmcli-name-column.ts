import { newDecoder } from "./text-decoder.js";
import type { NmcliKind } from "./nmcli-kinds.js";

/** Words of columns that are no names. @source `nmcli device wifi list`, from memory */
const NO_NAMES: readonly RegExp[] = [
  /^AP\[\d+\]$/,
  /^\/org\/freedesktop\//,
  /^(?:Infra|Ad-Hoc|Mesh|AP|N\/A)$/,
  /^(?:(?:WPA[123]?|WEP|OWE(?:-TM)?|SAE|802\.1X)(?: |$))+$/,
  /^\(.*\)$|\b(?:pair|group)_(?:ccmp|tkip|wep)/,
  /^(?:yes|no|ja|nein|nee|oui|non|sí|si|sim|não)$/i,
  /^(?:wl|wlan|wifi|wlp|wlx)\d[0-9a-z]*$/,
  /^\*?$/,
];
const HEX = /^(?:[0-9A-F]{2}){2,}$/;

/**
 * The column of network names: of the text columns that aren't known for something else, the one with the
 * most different cells, the first of equals. Names written as hex digits count where there are no others.
 * @param kinds what is known of each column; null: it is text
 */
export function chooseName(
  columns: readonly (readonly string[])[],
  kinds: readonly (NmcliKind | null)[],
): readonly [index: number | null, kind: "name" | "nameHex"] {
  const texts = columns.flatMap((cells, index) => (kinds[index] === null ? [{ cells, index }] : []));
  const free = texts.filter(({ cells }) => !isKnown(cells));
  const plain = free.filter(({ cells }) => !isHex(cells));
  const mostVaried = (from: typeof texts): number | null =>
    from.reduce<(typeof texts)[number] | null>(
      (best, next) => (best === null || variety(next.cells) > variety(best.cells) ? next : best),
      null,
    )?.index ?? null;
  if (plain.length > 0) return [mostVaried(plain), "name"];
  if (free.length > 0) return [mostVaried(free), "nameHex"];
  return [kinds.includes("address") ? null : mostVaried(texts), "name"];
}

/** Names as hex digits, made of characters that print. */
function isHex(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== "");
  return (
    filled.length > 0 && filled.every((cell) => HEX.test(cell) && !/[\p{Cc}\ufffd]/u.test(nameOfHex(cell)))
  );
}

/**
 * @param digits bytes of a name in UTF-8, two hex digits each
 * @example nameOfHex("436166C3A9"); // => "Café"
 */
export function nameOfHex(digits: string): string {
  const bytes = (digits.match(/[0-9a-f]{2}/gi) ?? []).map((pair) => Number.parseInt(pair, 16));
  return newDecoder("utf-8").decode(Uint8Array.from(bytes));
}

function isKnown(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== "" && cell !== "--");
  return NO_NAMES.some((pattern) => filled.every((cell) => pattern.test(cell.trim())));
}

function variety(cells: readonly string[]): number {
  return new Set(cells).size;
}
