import type { BandChannel, BandModel } from "../../report/index.js";
import { HUE, label, LINE_PX, textWidthPx, THIN, WIDTH_PX } from "./drawing.js";
import { element } from "./element.js";
import { boxPath } from "./path.js";

const BOX_HEIGHT_PX = 24;
/** Of hop frequencies. */
const TICK_HEIGHT_PX = 16;

/** Markup and how far down it reaches. */
export interface DrawnRow {
  readonly parts: readonly string[];
  readonly bottomPx: number;
}

/**
 * The radio's channels beneath the band: boxes with their numbers, the one in use heavy and said so, the fallback
 * dashed and said so; hop frequencies as bars, those kept out hollow.
 */
export function bandChannels(
  model: Pick<BandModel, "channels" | "isHopping">,
  xOf: (mhz: number) => number,
  topPx: number,
): DrawnRow {
  return model.isHopping ? hopBars(model.channels, xOf, topPx) : boxes(model.channels, xOf, topPx);
}

function boxes(channels: readonly BandChannel[], xOf: (mhz: number) => number, topPx: number): DrawnRow {
  const widthPx = boxWidthPx(channels, xOf);
  const parts = channels.flatMap(({ channel, centreMhz, use }) => {
    const x = xOf(centreMhz);
    const box = {
      ...THIN,
      class: `channel ${use}`,
      "stroke-opacity": use === "none" ? "0.5" : undefined,
      stroke: use === "use" ? HUE : THIN["stroke"],
      "stroke-width": use === "use" ? 4 : use === "fallback" ? 2 : 1,
      "stroke-dasharray": use === "fallback" ? "5 3" : undefined,
      d: boxPath({ x: x - widthPx / 2, y: topPx }, widthPx, BOX_HEIGHT_PX),
    };
    const number = { anchor: "middle", isFaint: use === "none", isStrong: use === "use" } as const;
    return [element("path", box), label(x, topPx + BOX_HEIGHT_PX - 7, String(channel), number)];
  });
  const words = choiceWords(channels, xOf, topPx + BOX_HEIGHT_PX + LINE_PX - 2);
  return { parts: [...parts, ...words], bottomPx: topPx + BOX_HEIGHT_PX + LINE_PX + 6 };
}

/** As wide as the closest two leave room for. */
function boxWidthPx(channels: readonly BandChannel[], xOf: (mhz: number) => number): number {
  const gaps = channels
    .slice(1)
    .map(({ centreMhz }, index) => xOf(centreMhz) - xOf(channels[index]!.centreMhz));
  return Math.max(4, Math.min(34, ...gaps.map((gap) => gap - 4)));
}

/** Under the boxes; pushed apart where they would meet, and kept on the drawing. */
function choiceWords(channels: readonly BandChannel[], xOf: (mhz: number) => number, y: number): string[] {
  const chosen = channels.flatMap(({ channel, centreMhz, use }) =>
    use === "use" || use === "fallback"
      ? [{ x: xOf(centreMhz), text: `${use} radio ch ${channel}`, isStrong: use === "use" }]
      : [],
  );
  const halfPx = (text: string): number => textWidthPx(text) / 2;
  const [left, right] = chosen;
  const needPx = chosen.reduce((sum, { text }) => sum + halfPx(text), 10);
  const pushPx = left === undefined || right === undefined ? 0 : Math.max(0, needPx - (right.x - left.x)) / 2;
  return chosen.map(({ x, text, isStrong }, index) => {
    const wantedPx = x + (index === 0 ? -pushPx : pushPx);
    const atPx = Math.min(WIDTH_PX - halfPx(text), Math.max(halfPx(text), wantedPx));
    return label(atPx, y, text, { anchor: "middle", isStrong });
  });
}

function hopBars(channels: readonly BandChannel[], xOf: (mhz: number) => number, topPx: number): DrawnRow {
  const widthPx = Math.max(2, boxWidthPx(channels, xOf));
  const pathOf = (isKept: boolean): string =>
    channels
      .filter(({ use }) => (use === "hop") === isKept)
      .map(({ centreMhz }) => boxPath({ x: xOf(centreMhz) - widthPx / 2, y: topPx }, widthPx, TICK_HEIGHT_PX))
      .join("");
  const kept = channels.filter(({ use }) => use === "hop").length;
  const outCount = channels.length - kept;
  const out = outCount === 0 ? "" : `; hollow: ${outCount} kept out`;
  const words = `filled: ${kept} hop frequencies in use${out}`;
  return {
    parts: [
      element("path", { class: "kept", d: pathOf(true), fill: HUE }),
      element("path", { ...THIN, class: "out", d: pathOf(false) }),
      label(xOf(channels[0]?.centreMhz ?? 0), topPx + TICK_HEIGHT_PX + LINE_PX - 2, words, { isFaint: true }),
    ],
    bottomPx: topPx + TICK_HEIGHT_PX + LINE_PX + 6,
  };
}
