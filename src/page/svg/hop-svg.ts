import { scaleLinear } from "d3-scale";
import { fixed } from "../../report/index.js";
import type { HopModel } from "../../report/index.js";
import type { Picture } from "../picture.js";
import { sideAxis } from "./axis.js";
import type { Plot } from "./axis.js";
import { bandChannels } from "./band-channels.js";
import { frequencyAxis, frequencyScale } from "./band-axis.js";
import { label, LEFT_PX, LINE_PX, pictureOf, RIGHT_PX, THIN, WIDTH_PX } from "./drawing.js";
import type { PictureWords } from "./drawing.js";
import { element } from "./element.js";
import { boxPath } from "./path.js";
import { limitLines, marginTicksDb } from "./verdict-shape.js";

const PLOT: Plot = { leftPx: LEFT_PX, rightPx: WIDTH_PX - RIGHT_PX, topPx: 34, bottomPx: 220 };
/** Around the hop frequencies, MHz. */
const EDGE_MHZ = 3;

type Block = HopModel["blocks"][number];

/**
 * A hop set: for each 5 MHz a bar from nothing to the least margin of its frequencies, filled where all are in use,
 * pale where some are, hollow where all are kept out; beneath, each frequency by itself.
 * @param model at least one frequency
 */
export function hopSvg(model: HopModel, words: PictureWords): Picture {
  const { frequencies, blocks, margin } = model;
  const startMhz = frequencies[0]!.centreMhz - EDGE_MHZ;
  const endMhz = frequencies[frequencies.length - 1]!.centreMhz + EDGE_MHZ;
  const xOf = frequencyScale(PLOT, startMhz, endMhz);
  const margins = blocks.flatMap(({ leastMarginDb }) => finite(leastMarginDb));
  const [lowDb, highDb] = [Math.min(-5, ...margins) - 1, Math.max(16, ...margins) + 1];
  const yOf = scaleLinear([lowDb, highDb], [PLOT.bottomPx, PLOT.topPx]);
  const channels = frequencies.map(
    ({ isKept, ...one }) => ({ ...one, use: isKept ? "hop" : "none" }) as const,
  );
  const strip = bandChannels({ channels, isHopping: true }, xOf, PLOT.bottomPx + LINE_PX + 14);
  const ticksDb = marginTicksDb(lowDb, highDb);
  return pictureOf({
    ...words,
    description: hopWords(model),
    heightPx: strip.bottomPx,
    parts: [
      label(0, 16, `least ${margin} in each 5 MHz, dB, by frequency in MHz`, { isFaint: true }),
      ...sideAxis(
        PLOT,
        ticksDb.map((db) => ({ atPx: yOf(db), text: fixed(db, 0) })),
      ),
      ...limitLines(PLOT, yOf, (db) => db > lowDb && db < highDb),
      ...blocks.flatMap((block) => bar(block, xOf, yOf)),
      ...frequencyAxis(PLOT, startMhz, endMhz),
      ...strip.parts,
    ],
  });
}

function bar(block: Block, xOf: (mhz: number) => number, yOf: (db: number) => number): string[] {
  const { fromMhz, toMhz, keptCount, hopCount } = block;
  return finite(block.leastMarginDb).map((marginDb) => {
    const x = xOf(fromMhz - 0.4);
    const d = boxPath(
      { x, y: yOf(Math.max(0, marginDb)) },
      xOf(toMhz + 0.4) - x,
      Math.abs(yOf(0) - yOf(marginDb)),
    );
    const isIn = keptCount === hopCount;
    const kind = isIn ? "in" : keptCount === 0 ? "out" : "part";
    return element("path", {
      ...THIN,
      class: `block ${kind}`,
      fill: keptCount === 0 ? "none" : "currentColor",
      "fill-opacity": isIn ? "0.55" : "0.2",
      d,
    });
  });
}

/** What can be drawn: a margin that is known and no true null. */
function finite(marginDb: number | null): number[] {
  return marginDb !== null && Number.isFinite(marginDb) ? [marginDb] : [];
}

function hopWords({ blocks, frequencies, margin }: HopModel): string {
  const kept = frequencies.filter(({ isKept }) => isKept).length;
  const each = blocks.map(({ fromMhz, toMhz, keptCount, hopCount, leastMarginDb }) => {
    const db = leastMarginDb === null ? "not judged" : `${fixed(leastMarginDb, 1)} dB`;
    return `${fromMhz}–${toMhz} MHz ${keptCount} of ${hopCount} in use, ${db}`;
  });
  return `${kept} of ${frequencies.length} hop frequencies are in use. Least ${margin}: ${each.join("; ")}.`;
}
