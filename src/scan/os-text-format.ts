import { netshLine, opensNetwork, opensRadio } from "./netsh-line.js";
import { kindsByHeading } from "./nmcli-kinds.js";
import { looksLikeRow, segmentsOf } from "./nmcli-table-row.js";
import { terseCells } from "./nmcli-terse.js";
import type { OsTextFormat } from "./os-text-command.js";
import { parseOsAddress } from "./os-text-address.js";
import { isWpaCliLine } from "./wpa-cli-text.js";
import { withoutColours } from "./terminal-colours.js";

/** How the lines of a text vote. */
export interface OsTextVotes {
  /** The format of most lines; null where no line is any format's. */
  readonly format: OsTextFormat | null;
  /** Others that have too many lines to be chance: the text can't be told. */
  readonly rivals: readonly OsTextFormat[];
  /** Others of a few lines: names that look so, or a little output of another command. */
  readonly strays: readonly OsTextFormat[];
}

/** A line like another format's may be a network's name: that many of ours to one of theirs are believed. */
const BELIEVED_RATIO = 5;
/** Longer lines are none of these formats'. */
const LONGEST_COUNT = 4_096;

/**
 * Tells which operating system's command a text comes from, by lines that only that command prints.
 * @param head the start of the text
 * @example osTextVotes("02:1a:00:00:00:01\t2437\t-60\t[ESS]\tFoyer\n").format; // => "linux-wpa-cli"
 */
export function osTextVotes(head: string): OsTextVotes {
  const counts = new Map<OsTextFormat, number>();
  const lines = head.split(/\r\n|\n|\r/).filter((text) => text.trim() !== "" && text.length <= LONGEST_COUNT);
  let isWithinIw = false;
  for (const text of lines) {
    const isIw = IW_START.test(text);
    isWithinIw = isIw || (isWithinIw && IW_WITHIN.test(text));
    const format = isIw ? "linux-iw-scan" : isWithinIw ? null : formatOfLine(text);
    if (format !== null) counts.set(format, (counts.get(format) ?? 0) + 1);
  }
  const [most, ...others] = [...counts].sort(([, left], [, right]) => right - left);
  if (most === undefined)
    return { format: looksTerse(lines) ? "linux-nmcli-terse" : null, rivals: [], strays: [] };
  const isRival = (count: number): boolean => count * BELIEVED_RATIO >= most[1];
  return {
    format: most[0],
    rivals: others.filter(([, count]) => isRival(count)).map(([format]) => format),
    strays: others.filter(([, count]) => !isRival(count)).map(([format]) => format),
  };
}

const IW_START = /^\s*BSS\s+[0-9a-fx*?#:-]{11,18}\s*(?:\(on \S+\)\s*(?:--.*)?)?$/i;
const IW_WITHIN = /^(?:\s|\*|(?:TSF|freq|SSID|signal|last seen|beacon interval|capability|Country)\b.*:)/;
const WPA_CLI_HEADING = "bssid / frequency / signal level / flags / ssid";
const TERSE_ADDRESS = /(?:^|:)[0-9a-fx]{2}(?:\\:[0-9a-fx]{2}){5}(?::|$)/i;
const MULTILINE =
  /^(?:AP\[\d+\]\.)?(?:(?:BSSID|CHAN|FREQ|SIGNAL|IN-USE|SSID-HEX):|[^:\s][^:]{0,39}:\s{2,}(?:[0-9a-f]{2}:){5}[0-9a-f]{2}\s*$)/;

function formatOfLine(written: string): OsTextFormat | null {
  const text = withoutColours(written);
  if (text.trim() === WPA_CLI_HEADING || isWpaCliLine(text)) return "linux-wpa-cli";
  if (TERSE_ADDRESS.test(text)) return "linux-nmcli-terse";
  if (MULTILINE.test(text)) return "linux-nmcli-multiline";
  const parts = netshLine(text);
  if (parts !== null && (opensRadio(parts) || (opensNetwork(parts) && /^SSID\s/i.test(parts.key))))
    return "windows-netsh";
  return isTableLine(text) ? "linux-nmcli-table" : null;
}

/** A tab, a delimiter that stands by itself, or a key before a colon: something else. */
const NO_TABLE = /\t| [,;|] |^[^:\s][^:]{0,39}:\s{2}/;

function isTableLine(text: string): boolean {
  const segments = segmentsOf(text);
  if (segments.length < 3 || NO_TABLE.test(text)) return false;
  const headings = kindsByHeading(segments.map((segment) => segment.text));
  if (headings !== null) return true;
  const hasNumber = segments.some((segment) => /^\d{1,3}$/.test(segment.text));
  const addressCount = segments.filter((segment) => parseOsAddress(segment.text) !== null).length;
  return hasNumber && (addressCount === 1 || looksLikeRow(segments));
}

/**
 * Terse rows without addresses: lines of one number of fields, most of them with a frequency or a rate, or
 * with two whole numbers. Times of day and addresses in a table with another delimiter have colons too.
 */
function looksTerse(lines: readonly string[]): boolean {
  if (lines.filter((text) => /[,;\t]/.test(text)).length * 2 > lines.length) return false;
  const rows = lines.map((text) => terseCells(withoutColours(text))).filter((cells) => cells.length >= 3);
  if (rows.length === 0 || rows.length * 2 < lines.length) return false;
  const alike = rows.filter((cells) => cells.length === rows.at(-1)!.length && isTerseRow(cells));
  return alike.length * 5 >= rows.length * 4;
}

function isTerseRow(cells: readonly string[]): boolean {
  const numberCount = cells.filter((cell) => /^\d{1,3}$/.test(cell)).length;
  const isSpelt = cells.some((cell) => /^(?:\d{4,5} \p{L}{3}|\d+ \p{L}+\/\p{L}+)$/u.test(cell));
  return numberCount >= 2 || (numberCount === 1 && isSpelt);
}
