import type { ChannelPlan } from "../venue/index.js";
import { hopBlocks } from "./hop-blocks.js";
import { dB, sharePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets } from "./section.js";
import { tableLines } from "./text-layout.js";

/** The hop set, the ranges to keep out, what that gains, and the band under it in blocks of 5 MHz. */
export function hopSetLines(plan: ChannelPlan, style: TextStyle): string[] {
  const { hopSet } = plan;
  if (hopSet === null) return [];
  return [
    ...bullets([...gainLines(hopSet), ...leastLines(plan)], style),
    ...(hopSet.channels.length === 0 ? [] : blockTable(plan, style)),
  ];
}

function gainLines({
  channels,
  excludedRanges,
  clearAirRatio,
  marginDb,
  whole,
}: NonNullable<ChannelPlan["hopSet"]>): string[] {
  const now = `mean clear air ${sharePercent(clearAirRatio)}, median margin ${dB(marginDb)}`;
  if (excludedRanges.length === 0) return [`${channels.length} frequencies, none kept out: ${now}.`];
  const ranges = excludedRanges.map(({ fromMhz, toMhz }) => `${fromMhz}–${toMhz} MHz`).join(", ");
  return [
    `${channels.length} frequencies with ${ranges} kept out: ${now}.`,
    `The gain: without keeping any out, mean clear air ${sharePercent(whole.clearAirRatio)}, median margin ${dB(whole.marginDb)}.`,
  ];
}

/** The least number of frequencies that must stay in use, and what asks for it. */
function leastLines({ setting, hopSet }: ChannelPlan): string[] {
  const { hopping } = setting.profile;
  if (hopping === null || hopSet === null) return [];
  const { value, source } = hopping.leastHopCount;
  const atLeast = hopping.avoids && hopSet.channels.length <= value ? "; no more can be kept out" : "";
  return [`At least ${value} frequencies must stay in use${atLeast} (${source}).`];
}

function blockTable({ ranking, hopSet }: ChannelPlan, style: TextStyle): string[] {
  const rows = hopBlocks(ranking, new Set(hopSet?.channels)).map(
    ({ fromMhz, toMhz, keptCount, hopCount, leastMarginDb, clearAirRatio }) => [
      fromMhz === toMhz ? `${fromMhz}` : `${fromMhz}–${toMhz}`,
      keptCount === 0 ? "out" : keptCount === hopCount ? "in" : `${keptCount} of ${hopCount} in`,
      leastMarginDb === null ? "not judged" : dB(leastMarginDb),
      clearAirRatio === null ? "" : sharePercent(clearAirRatio),
    ],
  );
  const heads = ["MHz", "hop set", "least margin", "mean clear air"];
  return tableLines(
    heads.map((head, index) => ({ head, align: index < 2 ? ("left" as const) : ("right" as const) })),
    rows,
    style.columnCount,
  );
}
