/** The examples as a reader runs them: processes on the built package, their figures against truth from elsewhere. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "csv-parse/sync";
import type { ScoreJson } from "./cli/json-types.js";
import { scratch } from "./cli/scratch.js";
import { FULL, PROJECT, run, stillband } from "./cli/stillband.js";

const FOLDER = "fixtures/examples";
const { file } = scratch();

/** @returns the lines that an example prints */
async function example(name: string, ...args: string[]): Promise<string[]> {
  const { code, out, err } = await run(process.execPath, [join(FOLDER, name), ...args]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return out.trimEnd().split("\n");
}

interface ChannelJson {
  readonly ranking: readonly ScoreJson[];
  readonly recommended: { readonly channel: number };
  readonly link: {
    readonly rows: readonly {
      readonly distanceM: number;
      readonly workingMarginDb: number;
      readonly verdict: string;
    }[];
  };
}

/** @returns the command's own answer */
async function channel(...args: string[]): Promise<ChannelJson> {
  const { code, out, err } = await stillband(["channel", "--json", ...args]);
  expect(code, err).toBe(0);
  return JSON.parse(out) as ChannelJson;
}

test("the table of examples names every one of them", () => {
  const names = readdirSync(join(PROJECT, FOLDER)).filter((name) => name !== "README.md");
  const table = readFileSync(join(PROJECT, FOLDER, "README.md"), "utf8");
  expect(names.filter((name) => !table.includes(`\`${name}`))).toEqual([]);
  expect(names.length).toBeGreaterThan(5);
});

test("rank-from-scan: ten lines, the command's ranking", async () => {
  expect(
    readFileSync(join(PROJECT, FOLDER, "rank-from-scan.mjs"), "utf8")
      .trimEnd()
      .split("\n"),
  ).toHaveLength(10);
  const [basis, ...lines] = await example("rank-from-scan.mjs", FULL);
  expect(basis).toBe("Generic figures, one receiver at 20 m: enter your radio's own.");
  const { ranking } = await channel(FULL);
  expect(lines).toEqual(
    ranking.map(
      (score) => `radio ch ${score.channel} (${score.centreMhz} MHz): ${score.marginDb.toFixed(1)} dB margin`,
    ),
  );
});

describe("own-radio-profile", () => {
  const OWN = `${FOLDER}/own-radio.json`;
  test("its own figures, as the command reads them, and not the generic ones", async () => {
    const lines = await example("own-radio-profile.mjs", OWN, FULL);
    const { recommended, link } = await channel("--profile", OWN, FULL);
    const { verdict, workingMarginDb } = link.rows.find(({ distanceM }) => distanceM === 20)!;
    expect(lines).toEqual([
      `our-radio: radio ch ${recommended.channel}`,
      `${verdict} at 20 m in sight: ${workingMarginDb.toFixed(1)} dB to spare`,
    ]);
    const generic = (await channel(FULL)).link.rows.find(({ distanceM }) => distanceM === 20)!;
    expect(Math.abs(generic.workingMarginDb - workingMarginDb)).toBeGreaterThan(0.5);
  });
  test("tells each mistake in the profile and ends with exit code 65", async () => {
    const wrong = file("wrong.json", '{ "based_on": "raster-13", "name": "x", "tx_power_dbm": "loud" }');
    const { code, out, err } = await run(process.execPath, [
      join(FOLDER, "own-radio-profile.mjs"),
      wrong,
      FULL,
    ]);
    expect([code, out]).toEqual([65, ""]);
    expect(err).toMatch(/wrong\.json.*tx_?power_?dbm.*loud/i);
  });
});

test("own-emitter-type: the margins are those of the power that falls into each channel, by hand", async () => {
  const [basis, ...lines] = await example("own-emitter-type.mjs");
  expect(basis).toContain("-50 dBm");
  expect(lines).toHaveLength(13);
  // A GFSK receiver of 1 MHz: what lies off its centre counts by the C/I classes of 1 Mb/s GFSK (Bluetooth Core,
  // fixtures/reference/ci_ratios.csv): 0 dB to 0.5 MHz, -11 dB to 1.5, -41 dB to 2.5, -51 dB beyond.
  const stepsMhz = [0.5, 1.5, 2.5, 100];
  const ratios = [1, 10 ** -1.1, 10 ** -4.1, 10 ** -5.1];
  const within = (lowMhz: number, highMhz: number, fromMhz: number, toMhz: number): number =>
    Math.max(0, Math.min(highMhz, toMhz) - Math.max(lowMhz, fromMhz));
  const shareIn = (offsetMhz: number): number =>
    ratios.reduce((sum, ratio, step) => {
      const [inner, outer] = [stepsMhz[step - 1] ?? 0, stepsMhz[step]!];
      const [low, high] = [-2 - offsetMhz, 2 - offsetMhz];
      return sum + (ratio * (within(low, high, inner, outer) + within(low, high, -outer, -inner))) / 4;
    }, 0);
  // kTB: -174 dBm/Hz in 1 MHz, noise figure 10 dB; antenna 2 dBi, enclosure 10 dB, required C/I 14 dB (design).
  const noiseMw = 10 ** ((-174 + 60 + 10) / 10);
  const marginDb = (interferenceMw: number): number => -50 - 10 * Math.log10(interferenceMw + noiseMw) - 14;
  const inChannelMw = (radio: number): number =>
    10 ** ((-50 + 2 - 10) / 10) * shareIn(2407 + 5 * radio - 2437);
  const expected = Array.from({ length: 13 }, (_, index) => {
    const mw = inChannelMw(index + 1);
    return `radio ch ${index + 1}: ${marginDb(mw).toFixed(2)} dB margin, ${marginDb(0).toFixed(2)} dB without it`;
  });
  expect([...lines].sort()).toEqual(expected.sort());
  expect(lines.at(-1), "worst on its own frequency").toContain("radio ch 6:");
});

describe("compare-rooms", () => {
  test("each room's margins are the command's on that room's rows alone, ordered by the smaller", async () => {
    const rooms = ["hall front,hall stage", "studio,studio store"];
    const [, ...lines] = await example("compare-rooms.mjs", FULL, ...rooms);
    const text = readFileSync(join(PROJECT, FULL), "utf8");
    const places = parse<{ readonly place: string }>(text, { columns: true }).map(({ place }) => place);
    const [header, ...rows] = text.trimEnd().split("\n");
    expect(rows).toHaveLength(places.length);
    const marginsDb = await Promise.all(
      rooms.map(async (room, index) => {
        const here = rows.filter((_row, row) => room.split(",").includes(places[row]!));
        expect(here.length).toBeGreaterThan(100);
        const { ranking } = await channel(file(`room-${index}.csv`, `${[header, ...here].join("\n")}\n`));
        return new Map(ranking.map((score) => [score.channel, score.marginDb]));
      }),
    );
    const expected = Array.from({ length: 13 }, (_, index) => index + 1)
      .map((radio) => ({ radio, here: marginsDb.map((room) => room.get(radio)!) }))
      .sort((a, b) => Math.min(...b.here) - Math.min(...a.here))
      .map(({ radio, here: [a, b] }) =>
        [
          `radio ch ${radio}: ${a!.toFixed(1)} dB`,
          `${b!.toFixed(1)} dB`,
          `${Math.min(a!, b!).toFixed(1)} dB`,
        ].join("  "),
      );
    expect(lines).toEqual(expected);
  });
});
