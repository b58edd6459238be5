import { channelAtMhz } from "./channel-list-table.js";
import type { ColumnMap } from "./column-map.js";
import { cellNumber, isBlankSign, sizedMhz } from "./column-number.js";
import { headerMeaning } from "./header-meaning.js";
import { headedAddress, headerName } from "./header-row.js";

/** One column of a fingerprint table: an address and the Wi-Fi channel, where something tells it. */
export interface HeardColumn {
  readonly index: number;
  readonly bssid: string;
  readonly channel: number | null;
}

/** How many rows below the header may be the row of channels. */
const SEARCHED_ROWS_COUNT = 3;
const HIGHEST_CHANNEL = 196;

/** @returns the index of the row that gives each address its channel or frequency; −1: there is none */
export function channelRowIndex(
  header: readonly string[],
  rows: readonly (readonly string[])[],
  map: ColumnMap,
): number {
  const heard = header.flatMap((name, index) => (headedAddress(name) === null ? [] : [index]));
  return rows.slice(0, SEARCHED_ROWS_COUNT).findIndex((row) => {
    const filled = heard.map((index) => row[index] ?? "").filter((cell) => !isBlankSign(cell));
    const channels = filled.map((cell) => cellChannel(cell));
    if (channels.length === 0 || channels.some((channel) => channel === null)) return false;
    const labels = row.filter((_, index) => !heard.includes(index));
    return (
      labels.some((label) => isLabel(label, map)) ||
      channels.every((channel) => channel! <= 14 || channel! > HIGHEST_CHANNEL)
    );
  });
}

/** @returns the address columns, each with its channel from its header, the row of channels or a list */
export function heardColumns(
  header: readonly string[],
  channelRow: readonly string[] | null,
  channels: ReadonlyMap<string, number>,
): readonly HeardColumn[] {
  return header.flatMap((name, index) => {
    const headed = headedAddress(name);
    if (headed === null) return [];
    const channel =
      cellChannel(headed.behind) ?? cellChannel(channelRow?.[index] ?? "") ?? channels.get(headed.bssid);
    return [{ index, bssid: headed.bssid, channel: channel ?? null }];
  });
}

/** A channel number or a frequency as a channel; out of band above 14. */
function cellChannel(cell: string): number | null {
  const number = cellNumber(cell, true);
  if (number === null || number.value <= 0) return null;
  const { value } = number;
  if (Number.isInteger(value) && value <= HIGHEST_CHANNEL) return value;
  return value < 2 ? null : channelAtMhz(sizedMhz(value));
}

function isLabel(cell: string, map: ColumnMap): boolean {
  const named = [map.channel, map.centre_mhz].some(
    (header) => header !== undefined && headerName(header) === headerName(cell),
  );
  const meaning = headerMeaning(cell)?.meaning;
  return named || meaning === "channel" || meaning === "frequency" || meaning === "centre_mhz";
}
