/** The picture of the band tells the figures of the ranking: read back from the text, column by column. */
import { beforeAll, describe, expect, test } from "vitest";
import { CROWDED, DEMO, FOYER, inProcess } from "../cli/stillband.js";
import type { ChannelJson } from "../cli/json-types.js";

const EIGHTHS = " ▁▂▃▄▅▆▇█";
const LABEL = 6;

interface Picture {
  readonly rows: readonly { readonly floorDb: number; readonly cells: readonly string[] }[];
  readonly dbPerRow: number;
  readonly scale: string;
  readonly numbers: string;
  readonly ranking: ChannelJson["ranking"];
}

async function pictureOf(args: readonly string[]): Promise<Picture> {
  const [text, json] = [
    await inProcess(["channel", ...args]),
    await inProcess(["channel", "--json", ...args]),
  ];
  const lines = text.out.split("\n");
  const foot = lines.findIndex((line) => /^ +└─+$/.test(line));
  const first = lines.lastIndexOf("", foot) + 2;
  const drawn = lines.slice(first, foot);
  const labels = drawn.map((line) => line.slice(0, LABEL - 2).trim());
  const known = labels.flatMap((label, index) =>
    label === "" ? [] : [{ row: drawn.length - 1 - index, db: Number(label) }],
  );
  const [high, low] = [known[0]!, known[known.length - 1]!];
  const dbPerRow = (high.db - low.db) / (high.row - low.row);
  return {
    rows: drawn.map((line, index) => ({
      floorDb: (drawn.length - 1 - index) * dbPerRow,
      cells: [...line.slice(LABEL)],
    })),
    dbPerRow,
    scale: lines[foot + 1]!,
    numbers: lines[foot + 2]!,
    ranking: (JSON.parse(json.out) as ChannelJson).ranking,
  };
}

/** Level of the bar in a column, dB above the noise. */
function barDb({ rows, dbPerRow }: Picture, column: number): number {
  const top = rows.find(({ cells }) => EIGHTHS.indexOf(cells[column - LABEL] ?? " ") > 0);
  return top === undefined ? 0 : top.floorDb + (EIGHTHS.indexOf(top.cells[column - LABEL]!) / 8) * dbPerRow;
}

/** Columns a MHz and the column of 2400 MHz, from the scale's own labels. */
function axis({ scale }: Picture): { readonly perMhz: number; readonly at: (mhz: number) => number } {
  const ticks = [...scale.matchAll(/24\d0/g)].map((match) => ({
    mhz: Number(match[0]),
    column: match.index,
  }));
  const [first, last] = [ticks[0]!, ticks[ticks.length - 1]!];
  const perMhz = (last.column - first.column) / (last.mhz - first.mhz);
  return { perMhz, at: (mhz) => first.column + (mhz - first.mhz) * perMhz };
}

describe.each([
  { name: "demo", args: [...DEMO] },
  { name: "one look", args: [FOYER] },
  { name: "nothing clear", args: [CROWDED] },
])("the picture of $name", ({ args }) => {
  let picture: Picture;
  beforeAll(async () => {
    picture = await pictureOf(args);
  });

  test("puts each channel's number under its frequency, to a column", () => {
    const { at } = axis(picture);
    const found = [...picture.numbers.matchAll(/\d+/g)].map((match) => ({
      channel: Number(match[0]),
      column: match.index,
    }));
    expect(found.map(({ channel }) => channel)).toEqual(
      [...picture.ranking].map(({ channel }) => channel).sort((a, b) => a - b),
    );
    for (const { channel, column } of found) {
      const { centreMhz } = picture.ranking.find((score) => score.channel === channel)!;
      expect(Math.abs(column - at(centreMhz))).toBeLessThanOrEqual(1);
    }
  });

  test("draws over each channel what the ranking says reaches our receiver there", () => {
    const { at } = axis(picture);
    for (const { channel, centreMhz, interferenceDbm } of picture.ranking) {
      // Noise of the profile: −174 dBm/Hz + 60 dB·Hz (1 MHz) + 10 dB = −104 dBm; an eighth of a row is the ink.
      const overNoiseDb = interferenceDbm + 104;
      const seen = [-1, 0, 1].map((step) => barDb(picture, Math.round(at(centreMhz)) + step));
      const closest = Math.min(...seen.map((levelDb) => Math.abs(levelDb - overNoiseDb)));
      expect(closest, `radio ch ${channel}`).toBeLessThanOrEqual(picture.dbPerRow / 16 + 0.05);
    }
  });

  test("marks the recommended channel [ ] and the fallback ( )", () => {
    const best = picture.ranking[0]!.channel;
    expect(picture.numbers).toContain(`[${best}]`);
    expect(picture.numbers).toMatch(/\(\d+\)/);
  });
});
