import { addressCell } from "./column-address.js";
import { cellNumber } from "./column-number.js";
import { headerMeaning } from "./header-meaning.js";
import { isBlankText } from "./scan-csv-cell.js";

/** Least addresses in a row that make it the header of a fingerprint table. */
const LEAST_ADDRESSES_COUNT = 2;

/**
 * Does a row name columns? It holds no number and no address, and words of two meanings or more; or it
 * holds several addresses, each the header of a column of levels.
 * @param mapped headers that the user named, as `headerName` gives them
 * @example isHeaderRow(["SSID", "Kanal", "Pegel"], new Set()); // => true
 */
export function isHeaderRow(cells: readonly string[], mapped: ReadonlySet<string>): boolean {
  if (isFingerprintHeader(cells)) return true;
  const meanings = new Set<string>();
  let mappedCount = 0;
  for (const cell of cells) {
    if (isBlankText(cell)) continue;
    if (holdsData(cell)) return false;
    if (mapped.has(headerName(cell))) mappedCount++;
    const meaning = headerMeaning(cell)?.meaning;
    if (meaning !== undefined) meanings.add(meaning);
  }
  return meanings.size >= 2 || (mappedCount > 0 && cells.length > 1);
}

/** Is it the header of a table with one column for each of several addresses? */
export function isFingerprintHeader(cells: readonly string[]): boolean {
  let addressCount = 0;
  for (const cell of cells) if (headedAddress(cell) !== null) addressCount++;
  return addressCount >= LEAST_ADDRESSES_COUNT && !cells.some((cell) => isNegative(cell));
}

/** An address that heads a column of levels, and the channel or frequency behind it. */
export interface HeadedAddress {
  readonly bssid: string;
  readonly behind: string;
}

/** @returns the address with which a header begins; null: none */
export function headedAddress(header: string): HeadedAddress | null {
  const trimmed = header.trim();
  const match = HEADED.exec(trimmed);
  const cell = addressCell(match === null ? trimmed : match[1]!);
  return cell.kind === "address" ? { bssid: cell.bssid, behind: match?.[2] ?? "" } : null;
}

/** A header as it is compared: blanks around it and capitals don't count. */
export function headerName(header: string): string {
  return header.trim().toLowerCase();
}

const HEADED =
  /^([0-9a-f]{2}(?:[:-][0-9a-f]{2}){5})[^0-9a-z]+(?:ch(?:annel)?\.? ?)?([0-9.]+(?: ?[kmg]?hz)?)\)?$/i;

/** @returns whether a cell is an address or a number, which no header is */
export function holdsData(cell: string): boolean {
  return cellNumber(cell, true) !== null || addressCell(cell).kind !== "none";
}

function isNegative(cell: string): boolean {
  return (cellNumber(cell, true)?.value ?? 0) < 0;
}
