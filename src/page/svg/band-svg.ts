import { range } from "d3-array";
import { scaleLinear } from "d3-scale";
import { fixed } from "../../report/index.js";
import type { BandModel } from "../../report/index.js";
import type { Picture } from "../picture.js";
import { sideAxis } from "./axis.js";
import type { Plot } from "./axis.js";
import { bandChannels } from "./band-channels.js";
import { frequencyAxis, frequencyScale } from "./band-axis.js";
import { HUE, label, LEFT_PX, LINE_PX, pictureOf, RIGHT_PX, THIN, WIDTH_PX } from "./drawing.js";
import type { PictureWords } from "./drawing.js";
import { element } from "./element.js";
import { linePath, stepPath } from "./path.js";

const PLOT: Plot = { leftPx: LEFT_PX, rightPx: WIDTH_PX - RIGHT_PX, topPx: 52, bottomPx: 240 };

/**
 * The band as flat steps of what reaches our receiver, dB above its own noise, the radio's channels as boxes beneath;
 * a dotted line where the wanted signal is spoilt.
 */
export function bandSvg(model: BandModel, words: PictureWords): Picture {
  const { profile, topDb, rowDb, spoiltAboveNoiseDb } = model;
  const { startMhz, stepMhz, aboveNoiseDb } = profile;
  const endMhz = startMhz + stepMhz * aboveNoiseDb.length;
  const yOf = scaleLinear([0, topDb], [PLOT.bottomPx, PLOT.topPx]);
  const ticks = range(0, topDb + rowDb / 2, topDb / rowDb > 6 ? 2 * rowDb : rowDb);
  const channels = bandChannels(model, frequencyScale(PLOT, startMhz, endMhz), PLOT.bottomPx + LINE_PX + 14);
  return pictureOf({
    ...words,
    description: bandWords(model),
    heightPx: channels.bottomPx,
    parts: [
      label(0, 16, "dB above the receiver's own noise, by frequency in MHz", { isFaint: true }),
      ...sideAxis(
        PLOT,
        ticks.map((db) => ({ atPx: yOf(db), text: fixed(db, 0) })),
      ),
      stepsPath(model, yOf),
      ...spoiltLine(spoiltAboveNoiseDb, yOf),
      ...frequencyAxis(PLOT, startMhz, endMhz),
      ...channels.parts,
    ],
  });
}

/** Each step from its lower to its upper edge, filled down to the noise. */
function stepsPath({ profile }: BandModel, yOf: (db: number) => number): string {
  const { startMhz, stepMhz, aboveNoiseDb } = profile;
  const xOf = frequencyScale(PLOT, startMhz, startMhz + stepMhz * aboveNoiseDb.length);
  const d = stepPath(
    range(aboveNoiseDb.length + 1).map((edge) => xOf(startMhz + edge * stepMhz)),
    aboveNoiseDb.map((db) => yOf(Math.max(0, db))),
    yOf(0),
  );
  return element("path", { d, class: "steps", "fill-opacity": "0.35" });
}

/** The level across the plot, and what it means above. */
function spoiltLine(spoiltDb: number | null, yOf: (db: number) => number): string[] {
  if (spoiltDb === null || spoiltDb < 0) return [];
  const across = (from: number, to: number, y: number): string =>
    element("path", {
      ...THIN,
      class: "spoilt",
      stroke: HUE,
      "stroke-width": 3,
      "stroke-dasharray": "0.1 6",
      "stroke-linecap": "round",
      d: linePath([
        { x: from, y },
        { x: to, y },
      ]),
    });
  return [
    across(PLOT.leftPx, PLOT.rightPx, yOf(spoiltDb)),
    across(2, 32, 16 + LINE_PX - 5),
    label(42, 16 + LINE_PX, `above this level the signal is spoilt: ${fixed(spoiltDb, 1)} dB`, {
      isFaint: true,
    }),
  ];
}

/** The figures in words. */
function bandWords({ profile, spoiltAboveNoiseDb, channels, isHopping }: BandModel): string {
  const { startMhz, stepMhz, aboveNoiseDb } = profile;
  const levelAt = (mhz: number): string => {
    const index = Math.min(aboveNoiseDb.length - 1, Math.max(0, Math.floor((mhz - startMhz) / stepMhz)));
    return `${fixed(aboveNoiseDb[index] ?? null, 1)} dB`;
  };
  const spoilt =
    spoiltAboveNoiseDb === null
      ? "There is no one level that spoils the signal."
      : `The signal is spoilt above ${fixed(spoiltAboveNoiseDb, 1)} dB.`;
  const chosen = channels.filter(({ use }) => use === "use" || use === "fallback");
  const each = chosen.map(
    ({ channel, centreMhz, use }) =>
      `${use === "use" ? "In use" : "Fallback"}: radio ch ${channel} (${centreMhz} MHz), ${levelAt(centreMhz)} there.`,
  );
  const kept = channels.filter(({ use }) => use === "hop").length;
  const hops = isHopping ? [`The radio hops over ${kept} of ${channels.length} frequencies.`] : [];
  const highest = `Highest: ${fixed(Math.max(...aboveNoiseDb), 1)} dB above the receiver's noise.`;
  return [spoilt, ...each, ...hops, highest].join(" ");
}
