import { wifiChannelAtMhz } from "./channel-placement.js";
import type { NmcliKind } from "./nmcli-kinds.js";
import { chooseName } from "./nmcli-name-column.js";
import { parseOsAddress } from "./os-text-address.js";

/** A column is what most of its filled cells are. */
const MOST_RATIO = 0.8;
/** How much better another choice must fit than the earlier output's. */
const KNOWN_SCORE = 0.2;
/** What channel and signal must score together: whole numbers of something else score less. */
const LEAST_SCORE = 1;
const INTEGER = /^\d{1,3}$/;

/** Columns that tell themselves by the shape of their cells. @source `nmcli device wifi list`, from memory */
const SHAPES: readonly (readonly [NmcliKind, (cell: string) => boolean])[] = [
  ["address", (cell) => parseOsAddress(cell) !== null],
  ["frequency", (cell) => /^\d{4,5} \p{L}+$/u.test(cell)],
  ["width", (cell) => /^\d{2,3} \p{L}+$/u.test(cell)],
  ["other", (cell) => /^\d+(?:[.,]\d+)? \S+\/\S+$/.test(cell)],
  ["bars", (cell) => /^[▁▂▃▄▅▆▇█_*]+$/.test(cell) && cell.length <= 4],
];

/**
 * What columns hold, by their cells alone.
 * @param columns the cells of each column, row by row
 * @param before what the columns of an earlier output held: where the cells leave it open, they hold it again
 */
export function kindsByContent(
  columns: readonly (readonly string[])[],
  before: readonly NmcliKind[] = [],
): readonly NmcliKind[] {
  const kinds: (NmcliKind | null)[] = columns.map(shapeOf);
  const frequencies = columns[kinds.indexOf("frequency")];
  const numberColumns = columns.flatMap((cells, index) =>
    kinds[index] === null && isMostly(cells, (cell) => INTEGER.test(cell)) ? [index] : [],
  );
  const [channelIndex, signalIndex] = channelAndSignal(columns, numberColumns, frequencies, before);
  if (channelIndex !== null) kinds[channelIndex] = "channel";
  if (signalIndex !== null) kinds[signalIndex] = "signal";
  const [nameIndex, kind] = chooseName(columns, kinds);
  if (nameIndex !== null) kinds[nameIndex] = kind;
  return kinds.map((found) => found ?? "other");
}

function shapeOf(cells: readonly string[]): NmcliKind | null {
  return SHAPES.find(([, matches]) => isMostly(cells, matches))?.[0] ?? null;
}

function isMostly(cells: readonly string[], matches: (cell: string) => boolean): boolean {
  const filled = cells.filter((cell) => cell.trim() !== "" && cell !== "--");
  return (
    filled.length > 0 && filled.filter((cell) => matches(cell.trim())).length >= MOST_RATIO * filled.length
  );
}

type Choice = readonly [channelIndex: number | null, signalIndex: number | null];

/**
 * Which of the whole numbers is the channel: the one that agrees with the frequency; without one, the pair
 * that agrees best with what channels and percentages can be; of equals the earlier, as `nmcli` itself lists
 * them.
 */
function channelAndSignal(
  columns: readonly (readonly string[])[],
  indexes: readonly number[],
  frequencies: readonly string[] | undefined,
  before: readonly NmcliKind[],
): Choice {
  const scored = indexes.flatMap((channel) =>
    indexes
      .filter((signal) => signal !== channel)
      .map((signal) => ({
        choice: [channel, signal] as const,
        score:
          channelScore(columns[channel]!, frequencies) +
          signalScore(columns[signal]!) +
          (before[channel] === "channel" && before[signal] === "signal" ? KNOWN_SCORE : 0),
      })),
  );
  if (scored.length > 0) {
    const { choice, score } = scored.reduce((best, next) => (next.score > best.score ? next : best));
    return score > LEAST_SCORE ? choice : [null, null];
  }
  const [only] = indexes;
  if (only === undefined) return [null, null];
  return channelScore(columns[only]!, frequencies) >= 1 && signalScore(columns[only]!) < 1
    ? [only, null]
    : [null, only];
}

/** Share of the cells that are Wi-Fi channels, those of 2.4 GHz before others; or that fit the frequency. */
function channelScore(cells: readonly string[], frequencies: readonly string[] | undefined): number {
  return share(cells, (cell, index) => {
    const [channel, frequencyMhz] = [Number(cell), Number.parseInt(frequencies?.[index] ?? "", 10)];
    if (frequencyMhz > 0) return channel === channelAtMhz(frequencyMhz) ? 1 : 0;
    if (channel >= 1 && channel <= 14) return 1;
    return CHANNELS_5_GHZ.has(channel) ? 0.95 : 0;
  });
}

/** Share of the cells that are percentages; those that could be a channel of 2.4 GHz count less. */
function signalScore(cells: readonly string[]): number {
  return share(cells, (cell) => (Number(cell) > 100 ? 0 : Number(cell) > 14 || cell === "0" ? 1 : 0.5));
}

function share(cells: readonly string[], worth: (cell: string, index: number) => number): number {
  const total = cells.reduce((sum, cell, index) => sum + (INTEGER.test(cell) ? worth(cell, index) : 0), 0);
  return total / Math.max(1, cells.length);
}

/** @source channel numbers of 5 and 6 GHz: IEEE 802.11-2020 Annex E and 802.11ax-2021, from memory */
function channelAtMhz(frequencyMhz: number): number | null {
  if (frequencyMhz < 3000) return wifiChannelAtMhz(frequencyMhz);
  return frequencyMhz < 5945 ? (frequencyMhz - 5000) / 5 : (frequencyMhz - 5950) / 5;
}

const CHANNELS_5_GHZ: ReadonlySet<number> = new Set([
  ...Array.from({ length: 8 }, (_, index) => 36 + 4 * index),
  ...Array.from({ length: 12 }, (_, index) => 100 + 4 * index),
  ...Array.from({ length: 8 }, (_, index) => 149 + 4 * index),
]);
