import { mostly } from "./column-content.js";
import type { ColumnContent } from "./column-content.js";
import type { ColumnNote, PlannedColumns, TableColumn } from "./column-plan.js";
import { levelStyle } from "./column-style.js";
import type { ColumnMeaning } from "./header-words.js";

/** Columns chosen by header or content, and what was taken for granted. */
export interface ColumnChoice {
  readonly columns: PlannedColumns;
  readonly notes: readonly ColumnNote[];
}

/**
 * Gives each meaning its column: first what the user mapped, then by header where the content doesn't
 * contradict, then by content alone.
 * @param mapped columns that the user named
 * @param hasHeader the table's first row names its columns
 */
export function chooseColumns(
  table: readonly TableColumn[],
  mapped: PlannedColumns,
  hasHeader: boolean,
): ColumnChoice {
  const chosen: Chosen = new Map(Object.entries(mapped) as [ColumnMeaning, number][]);
  chooseByHeader(table, chosen);
  if (mapped.signal_dbm === undefined) settleLevel(table, chosen);
  chosen.delete("quality");
  const notes = chooseByContent(table, chosen, hasHeader);
  joinClock(chosen, mapped);
  return { columns: Object.fromEntries(chosen), notes };
}

type Chosen = Map<ColumnMeaning, number>;

function freeColumns(table: readonly TableColumn[], chosen: Chosen): readonly TableColumn[] {
  const taken = new Set(chosen.values());
  return table.filter(({ index }) => !taken.has(index));
}

function chooseByHeader(table: readonly TableColumn[], chosen: Chosen): void {
  for (const meaning of BY_HEADER) {
    if (chosen.has(meaning)) continue;
    const fitting = freeColumns(table, chosen).filter(
      (column) => column.meaning?.meaning === meaning && fits(meaning, column),
    );
    const best = meaning === "signal_dbm" ? bestLevel(fitting) : fitting[0];
    if (best !== undefined) chosen.set(meaning, best.index);
  }
}

function chooseByContent(
  table: readonly TableColumn[],
  chosen: Chosen,
  hasHeader: boolean,
): readonly ColumnNote[] {
  const notes: ColumnNote[] = [];
  for (const [meaning, find] of BY_CONTENT) {
    if (meaning === "channel" && (chosen.has("frequency") || chosen.has("centre_mhz"))) continue;
    if (chosen.has(meaning)) continue;
    const free = freeColumns(table, chosen).filter((column) => mayBeTaken(column, meaning));
    const found = find(free, hasHeader, addressCells(table, chosen));
    if (found === undefined) continue;
    chosen.set(meaning, found.index);
    const expected = `taken as ${WORDS[meaning] ?? meaning} by what stands in it`;
    if (meaning !== "clock") notes.push({ column: found.header, expected });
  }
  return notes;
}

/** Where the level's column holds a quality, a column headed quality that holds levels is better. */
function settleLevel(table: readonly TableColumn[], chosen: Chosen): void {
  const [level, quality] = [chosen.get("signal_dbm"), chosen.get("quality")];
  if (quality === undefined) return;
  const isBetter = table[quality]!.content.levelCount > 0;
  if (level === undefined || (isOnlyQuality(table[level]!) && isBetter)) chosen.set("signal_dbm", quality);
}

/** A time of day counts with a date in another column; a date alone is a time where there is no other. */
function joinClock(chosen: Chosen, mapped: PlannedColumns): void {
  const date = chosen.get("date") ?? chosen.get("time");
  if (!chosen.has("clock") || date === undefined || mapped.time !== undefined) chosen.delete("clock");
  else {
    chosen.set("date", date);
    chosen.delete("time");
  }
  if (chosen.has("time")) chosen.delete("date");
}

const BY_HEADER: readonly ColumnMeaning[] = [
  ...[
    "bssid",
    "channel",
    "frequency",
    "centre_mhz",
    "signal_dbm",
    "quality",
    "ssid",
    "time",
    "date",
    "place",
  ],
  ...["crowd", "width_mhz", "airtime_ratio", "stations", "standard", "band", "kind", "x", "y"],
] as ColumnMeaning[];

/** What the notes call a meaning where its own name is no word. */
const WORDS: Partial<Record<ColumnMeaning, string>> = {
  bssid: "the address",
  ssid: "the name",
  signal_dbm: "the level",
  channel: "the Wi-Fi channel",
  frequency: "the frequency",
  time: "the time",
  crowd: "the crowd",
  place: "the place",
};

/** May a column hold what its header says? A column of blanks may. */
function fits(meaning: ColumnMeaning, { content, meaning: header }: TableColumn): boolean {
  if (content.filledCount === 0) return true;
  if (meaning === "bssid") return mostly(content, "addressCount", 0.5);
  if (meaning === "channel") return mostly(content, "channelCount", 0.5);
  if (meaning === "frequency") return mostly(content, "frequencyCount", 0.5);
  if (meaning === "centre_mhz") return mostly(content, "frequencyCount", 0.5) || content.highest.value === 0;
  if (meaning === "signal_dbm" || meaning === "quality")
    return levelStyle(content, header) !== null && !mostly(content, "frequencyCount", 0.5);
  if (meaning === "ssid") return !mostly(content, "addressCount", 0.5);
  if (meaning === "time") return content.timeStyle !== null;
  if (meaning === "crowd") return mostly(content, "crowdCount", 0.5);
  if (meaning === "airtime_ratio" || meaning === "stations") return mostly(content, "numberCount", 0.5);
  if (meaning === "x" || meaning === "y") return mostly(content, "numberCount", 0.5);
  return true;
}

function bestLevel(columns: readonly TableColumn[]): TableColumn | undefined {
  return columns.find((column) => !isOnlyQuality(column)) ?? columns[0];
}

function isOnlyQuality({ content, meaning }: TableColumn): boolean {
  return levelStyle(content, meaning) === "quality";
}

/** A column whose header says something else that its content bears out is not taken by content. */
function mayBeTaken(column: TableColumn, meaning: ColumnMeaning): boolean {
  if (column.content.filledCount === 0) return false;
  const said = column.meaning?.meaning;
  if (said === undefined) return true;
  if (said === "other" || said === "security" || said === meaning) return false;
  return !fits(said, column) || NAMING.has(said);
}

/** A misheaded column under such a header gives way to its content. */
const NAMING: ReadonlySet<ColumnMeaning> = new Set(["ssid"]);

type Finder = (
  free: readonly TableColumn[],
  hasHeader: boolean,
  addresses: readonly string[] | null,
) => TableColumn | undefined;

/** The cells of the column of addresses; null: there is none. */
function addressCells(table: readonly TableColumn[], chosen: Chosen): readonly string[] | null {
  const index = chosen.get("bssid");
  return index === undefined ? null : table[index]!.cells;
}

/** For how many addresses a column holds more than one text: few for what belongs to a radio. */
function changesCount({ cells }: TableColumn, addresses: readonly string[] | null): number {
  if (addresses === null) return 0;
  const first = new Map<string, string>();
  const changed = new Set<string>();
  for (const [row, address] of addresses.entries()) {
    const before = first.get(address);
    if (before === undefined) first.set(address, cells[row]!);
    else if (before !== cells[row]) changed.add(address);
  }
  return changed.size;
}

const BY_CONTENT: readonly (readonly [ColumnMeaning, Finder])[] = [
  ["bssid", (free) => free.find(({ content }) => mostly(content, "addressCount"))],
  ["time", (free) => free.find(({ content }) => content.timeStyle !== null)],
  ["clock", (free) => free.find(({ content }) => mostly(content, "clockCount", 0.9))],
  ["frequency", (free) => free.find(({ content }) => mostly(content, "frequencyCount"))],
  ["signal_dbm", (free) => mostVaried(free.filter(({ content }) => isLevels(content)))],
  ["channel", (free, hasHeader, addresses) => channelColumn(free, hasHeader, addresses)],
  ["signal_dbm", (free) => only(free.filter(({ content }) => isShares(content)))],
  ["crowd", (free) => free.find(({ content }) => mostly(content, "crowdCount", 0.9))],
  ["ssid", (free, hasHeader, addresses) => nameColumn(free, hasHeader, addresses)],
  ["place", (free, hasHeader) => (hasHeader ? undefined : only(free.filter(isText)))],
];

function isLevels(content: ColumnContent): boolean {
  return mostly(content, "levelCount") && content.negativeCount > 0;
}

function isChannels(content: ColumnContent): boolean {
  return mostly(content, "wifiChannelCount", 0.9) && !content.isIndex;
}

function isShares(content: ColumnContent): boolean {
  return mostly(content, "shareCount", 0.9) && !content.isIndex && content.highest.value > 14;
}

function mostVaried(columns: readonly TableColumn[]): TableColumn | undefined {
  return [...columns].sort((a, b) => b.content.distinctCount - a.content.distinctCount)[0];
}

function only(columns: readonly TableColumn[]): TableColumn | undefined {
  return columns.length === 1 ? columns[0] : undefined;
}

/** Under an unknown header a number is a channel only where two rows bear it out, and no address changes it often. */
function channelColumn(
  free: readonly TableColumn[],
  hasHeader: boolean,
  addresses: readonly string[] | null,
): TableColumn | undefined {
  const numbered = free.filter(({ content }) => isChannels(content));
  const steady = numbered.filter(
    (column) => changesCount(column, addresses) * 2 <= column.content.distinctCount,
  );
  if (!hasHeader) return only(numbered) ?? only(steady);
  return only(steady.filter(({ content, meaning }) => content.filledCount > 1 || meaning !== null));
}

function isText({ content, meaning }: TableColumn): boolean {
  return (
    (meaning === null || meaning.meaning === "bssid") &&
    !mostly(content, "numberCount", 0.9) &&
    !mostly(content, "addressCount", 0.5) &&
    !mostly(content, "jargonCount", 0.5) &&
    !mostly(content, "crowdCount", 0.9) &&
    content.timeStyle === null
  );
}

/** Of several texts without a header the one that stays with its address is the name. */
function nameColumn(
  free: readonly TableColumn[],
  hasHeader: boolean,
  addresses: readonly string[] | null,
): TableColumn | undefined {
  const named = free.filter(isText);
  if (hasHeader) return only(named);
  const least = Math.min(...named.map((column) => changesCount(column, addresses)));
  return mostVaried(named.filter((column) => changesCount(column, addresses) === least));
}
