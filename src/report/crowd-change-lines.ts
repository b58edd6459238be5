import { printable } from "../issues/index.js";
import type { EmitterChange } from "../scan/index.js";
import { fixed, wholePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines } from "./text-layout.js";

/** How one radio channel fared before and after. */
export interface ChannelChange {
  readonly channel: number;
  readonly centreMhz: number;
  readonly beforeDb: number;
  readonly afterDb: number;
}

/** What the crowd changed: the emptiest room scanned against the fullest. */
export interface CrowdChange {
  readonly from: "empty" | "part" | "full";
  readonly to: "empty" | "part" | "full";
  readonly sources: readonly EmitterChange[];
  /** Margin of each radio channel for the reference receiver, by channel. */
  readonly channels: readonly ChannelChange[];
}

/** Sources shown; the rest is counted. */
const MOST_SOURCES = 10;

/** The room empty against full: what it does to the ranking, then who changed and by how much. */
export function crowdChangeLines({ from, to, sources, channels }: CrowdChange, style: TextStyle): string[] {
  const best = (margin: (change: ChannelChange) => number): ChannelChange =>
    channels.reduce((top, change) => (margin(change) > margin(top) ? change : top));
  const before = best(({ beforeDb }) => beforeDb);
  const after = best(({ afterDb }) => afterDb);
  const came = sources.filter((source) => source.before === null).length;
  const went = sources.filter((source) => source.after === null).length;
  const moved = sources.filter(
    (source) =>
      source.before !== null && source.after !== null && source.before.channel !== source.after.channel,
  ).length;
  return [
    `Best when ${from}: radio ch ${before.channel} (${before.centreMhz} MHz), margin ${fixed(before.beforeDb, 1)} dB; it has ${fixed(before.afterDb, 1)} dB when ${to}.`,
    `Best when ${to}: radio ch ${after.channel} (${after.centreMhz} MHz), margin ${fixed(after.afterDb, 1)} dB.`,
    `Sources: ${came} came, ${went} went, ${moved} moved to another Wi-Fi channel.`,
    ...tableLines(
      ["Wi-Fi ch", `level ${from}`, to, "change", `airtime ${from}`, to, "change", "name"].map(
        (head, index) => ({
          head,
          align: index === 7 ? ("left" as const) : ("right" as const),
        }),
      ),
      sources.slice(0, MOST_SOURCES).map(sourceRow),
      style.columnCount,
    ),
    ...(sources.length > MOST_SOURCES ? [`(and ${sources.length - MOST_SOURCES} that changed less)`] : []),
  ];
}

function sourceRow({
  names,
  emitter,
  before,
  after,
  levelChangeDb,
  airtimeChangeRatio,
}: EmitterChange): string[] {
  const channels = [before?.channel, after?.channel].filter((channel) => channel !== undefined);
  const level = (state: EmitterChange["before"]): string => (state === null ? "-" : fixed(state.levelDbm, 0));
  const airtime = (state: EmitterChange["before"]): string =>
    state === null ? "-" : `${wholePercent(state.airtimeRatio)}${state.airtimeAssumed ? "a" : ""}`;
  return [
    [...new Set(channels)].join(">"),
    level(before),
    level(after),
    levelChangeDb === null ? "" : signed(levelChangeDb),
    airtime(before),
    airtime(after),
    `${signed(airtimeChangeRatio * 100)} pt`,
    names[0] === undefined ? `hidden, ${emitter}` : `"${printable(names[0], 32)}"`,
  ];
}

function signed(value: number): string {
  const text = fixed(value, 0);
  return value > 0 && text !== "0" ? `+${text}` : text;
}
