import { printable } from "../issues/index.js";
import type { EmitterChange } from "../scan/index.js";
import type { SpokenBy } from "../scorer/index.js";
import { fixed, wholePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines, wrapped } from "./text-layout.js";

/** How one radio channel fared before and after. Null: no scan of that crowd covers it. */
export interface ChannelChange {
  readonly channel: number;
  readonly centreMhz: number;
  readonly beforeDb: number | null;
  readonly afterDb: number | null;
  /** After − before. */
  readonly changeDb: number | null;
  readonly beforeSpokenBy: SpokenBy;
  readonly afterSpokenBy: SpokenBy;
}

/** What the crowd changed: the emptiest room scanned against the fullest. */
export interface CrowdChange {
  readonly from: "empty" | "part" | "full";
  readonly to: "empty" | "part" | "full";
  /** Greatest change of airtime first; none where one of the two has no beacon list. */
  readonly sources: readonly EmitterChange[];
  /** Margin of each radio channel for the reference receiver, by channel. */
  readonly channels: readonly ChannelChange[];
  /** First in rank in each; null where no scan covers any. */
  readonly bestBeforeChannel: number | null;
  readonly bestAfterChannel: number | null;
  /** Median margin of the hop set in each (null: no scan covers it); null for a fixed-channel radio. */
  readonly hopSet: { readonly beforeDb: number | null; readonly afterDb: number | null } | null;
  /** Mean busy share of the band. */
  readonly beforeBusyRatio: number | null;
  readonly afterBusyRatio: number | null;
  /** Why the two may differ by more than the crowd. */
  readonly caveats: readonly string[];
}

/** Rows shown; the rest is counted. */
const MOST_SOURCES = 10;
const MOST_CHANNELS = 16;

/** The room empty against full: what it does to the ranking, then who changed and by how much. */
export function crowdChangeLines(change: CrowdChange, style: TextStyle): string[] {
  const words = [...rankingWords(change), ...sourceWords(change), ...change.caveats];
  return [
    ...words.flatMap((line) => wrapped(line, style.columnCount)),
    ...channelTable(change, style),
    ...(change.sources.length === 0 ? [] : sourceTable(change, style)),
  ];
}

/** The change in the few words of the opening block. */
export function crowdChangeWords(change: CrowdChange): string {
  const { from, to, beforeBusyRatio, afterBusyRatio, bestBeforeChannel, bestAfterChannel, hopSet } = change;
  const busy =
    beforeBusyRatio === null || afterBusyRatio === null
      ? ""
      : `: band busy ${wholePercent(beforeBusyRatio)} to ${wholePercent(afterBusyRatio)}`;
  if (hopSet !== null)
    return `${from} to ${to}${busy}; median margin ${fixed(hopSet.beforeDb, 0)} to ${fixed(hopSet.afterDb, 0)} dB`;
  const best =
    bestBeforeChannel === bestAfterChannel
      ? `best stays radio ch ${bestAfterChannel}`
      : `best moves from radio ch ${bestBeforeChannel ?? "?"} to ${bestAfterChannel ?? "?"}`;
  return `${from} to ${to}${busy}; ${best}`;
}

function rankingWords({
  from,
  to,
  channels,
  bestBeforeChannel,
  bestAfterChannel,
  hopSet,
}: CrowdChange): string[] {
  if (hopSet !== null)
    return [
      `Hop set, median margin: ${fixed(hopSet.beforeDb, 1)} dB when ${from}, ${fixed(hopSet.afterDb, 1)} dB when ${to}.`,
    ];
  const before = channels.find(({ channel }) => channel === bestBeforeChannel);
  const after = channels.find(({ channel }) => channel === bestAfterChannel);
  const name = ({ channel, centreMhz }: ChannelChange): string => `radio ch ${channel} (${centreMhz} MHz)`;
  const margin = (valueDb: number | null): string =>
    valueDb === null ? "not covered" : `margin ${fixed(valueDb, 1)} dB`;
  return [
    before === undefined
      ? `Best when ${from}: no scan covers a channel.`
      : `Best when ${from}: ${name(before)}, ${margin(before.beforeDb)}; when ${to}: ${margin(before.afterDb)}.`,
    after === undefined
      ? `Best when ${to}: no scan covers a channel.`
      : `Best when ${to}: ${name(after)}, ${margin(after.afterDb)}; when ${from}: ${margin(after.beforeDb)}.`,
  ];
}

function sourceWords({ sources }: CrowdChange): string[] {
  if (sources.length === 0) return [];
  const came = sources.filter(({ before }) => before === null).length;
  const went = sources.filter(({ after }) => after === null).length;
  const moved = sources.filter(
    ({ before, after }) => before !== null && after !== null && before.channel !== after.channel,
  ).length;
  return [`Sources: ${came} came, ${went} went, ${moved} moved to another Wi-Fi channel.`];
}

/** Margins by channel; of many channels those that lost the most. */
function channelTable({ from, to, channels }: CrowdChange, style: TextStyle): string[] {
  const isAll = channels.length <= MOST_CHANNELS;
  const worst = [...channels].sort((a, b) => (a.changeDb ?? Infinity) - (b.changeDb ?? Infinity));
  const shown = isAll ? channels : worst.slice(0, MOST_CHANNELS);
  const heads = ["radio ch", "MHz", `margin ${from}`, to, "change"];
  const rows = shown.map(({ channel, centreMhz, beforeDb, afterDb, changeDb, ...spoken }) => [
    String(channel),
    String(centreMhz),
    marginCell(beforeDb, spoken.beforeSpokenBy),
    marginCell(afterDb, spoken.afterSpokenBy),
    changeDb === null ? "" : `${signed(changeDb, 1)} dB`,
  ]);
  const isSwept = shown.some(
    ({ beforeSpokenBy, afterSpokenBy }) => beforeSpokenBy === "sweep" || afterSpokenBy === "sweep",
  );
  return [
    ...tableLines(
      heads.map((head) => ({ head, align: "right" as const })),
      rows,
      style.columnCount,
    ),
    ...(isSwept ? ["s: by the power sweep"] : []),
    ...(isAll
      ? []
      : [`(the ${MOST_CHANNELS} that lost the most of ${channels.length}; --json has them all)`]),
  ];
}

function marginCell(valueDb: number | null, spokenBy: SpokenBy): string {
  if (valueDb === null) return "none";
  return `${fixed(valueDb, 1)} dB${spokenBy === "sweep" ? " s" : ""}`;
}

function sourceTable({ from, to, sources }: CrowdChange, style: TextStyle): string[] {
  const heads = ["Wi-Fi ch", `dBm ${from}`, to, "change", `airtime ${from}`, to, "change", "name"];
  const shown = sources.slice(0, MOST_SOURCES);
  const isAssumed = shown.some(({ before, after }) => before?.airtimeAssumed ?? after?.airtimeAssumed);
  return [
    ...tableLines(
      heads.map((head, index) => ({ head, align: index === 7 ? "left" : "right" })),
      shown.map(sourceRow),
      style.columnCount,
    ),
    ...(sources.length > MOST_SOURCES ? [`(and ${sources.length - MOST_SOURCES} that changed less)`] : []),
    ...(isAssumed ? ["a: assumed for the crowd, so the change is assumed too; pt: points of airtime"] : []),
  ];
}

function sourceRow(source: EmitterChange): string[] {
  const { names, emitter, before, after, levelChangeDb, airtimeChangeRatio } = source;
  const channels = [before?.channel, after?.channel].filter((channel) => channel !== undefined);
  const level = (state: EmitterChange["before"]): string => (state === null ? "-" : fixed(state.levelDbm, 0));
  const airtime = (state: EmitterChange["before"]): string =>
    state === null ? "-" : `${wholePercent(state.airtimeRatio)}${state.airtimeAssumed ? " a" : ""}`;
  return [
    [...new Set(channels)].join(">"),
    level(before),
    level(after),
    levelChangeDb === null ? "" : `${signed(levelChangeDb, 0)} dB`,
    airtime(before),
    airtime(after),
    `${signed(airtimeChangeRatio * 100, 0)} pt`,
    names[0] === undefined ? `hidden, ${emitter}` : `"${printable(names[0], 32)}"`,
  ];
}

function signed(value: number, placeCount: number): string {
  const text = fixed(value, placeCount);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}
