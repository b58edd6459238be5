/** `--json`: one value that holds to its schema, adds up, and agrees with the text. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { schemaFaults } from "./schemas.js";
import { CROWDED, DEMO, EMPTY, FOYER, FULL, PROJECT, SCANS, stillband } from "./stillband.js";
import type { Ended } from "./stillband.js";
import type { ChannelJson, ConvertJson, SurveyCommandJson } from "./json-types.js";

const printed = new Map<string, Promise<Ended>>();

/** What a run prints with --json, each run once. */
async function json<T>(args: readonly string[]): Promise<T> {
  const key = args.join("\u0000");
  const running = printed.get(key) ?? stillband([...args, "--json"]);
  printed.set(key, running);
  const { code, out, err } = await running;
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out) as T; // throws on more than one value
}

const RUNS: readonly (readonly [schema: string, args: readonly string[]])[] = [
  ["channel", ["channel", ...DEMO]],
  ["channel", ["channel", FOYER]],
  ["channel", ["channel", CROWDED, "--profile", "raster-16"]],
  ["channel", ["channel", FULL, "--profile", "hop-79"]],
  ["channel", ["channel", FULL, "--profile", "hop-79-avoid", "--region", "US"]],
  ["channel", ["channel", FULL, "--profile", "raster-16", "--region", "JP"]],
  ["channel", ["channel", FULL, "--set", "tx_power_dbm=30", "--region", "EU"]],
  ["channel", ["channel", `${SCANS}/dialects/quoted-names.csv`]],
  ["survey", ["survey", ...DEMO]],
  ["survey", ["survey", `${SCANS}/dialects/few-columns.csv`]],
  ["link", ["link"]],
  ["link", ["link", "--channel", "13", FULL]],
  ["link", ["link", "--profile", "hop-79", FULL, "--distances", "1,50,150,400"]],
  ["profiles", ["profiles"]],
  ["profiles", ["profiles", "raster-16"]],
  ["convert", ["convert", EMPTY, FOYER]],
];

describe("JSON holds to its schema", () => {
  test.each(RUNS.map(([schema, args]) => ({ schema, args, words: args.join(" ") })))(
    "$words",
    async ({ schema, args }) => {
      const value = await json<{ readonly schema: string }>(args);
      expect(value.schema).toBe(`stillband/${schema}@1`);
      expect(schemaFaults(schema, value)).toEqual([]);
    },
  );
  test("and the schemas can fail: a key gone, a number as text, a margin without its reach's reason", async () => {
    const value = await json<ChannelJson>(["channel", FOYER]);
    const { backup, ...without } = value;
    expect(backup).toBeDefined();
    expect(schemaFaults("channel", without)).not.toEqual([]);
    const [first, ...rest] = value.ranking;
    expect(
      schemaFaults("channel", { ...value, ranking: [{ ...first, marginDb: "9" }, ...rest] }),
    ).not.toEqual([]);
    expect(schemaFaults("channel", { ...value, link: { ...value.link, reachM: null } })).not.toEqual([]);
  });
});

describe("channel --json", () => {
  const CASES = [
    { words: "demo", args: [...DEMO] },
    { words: "nothing clear", args: [CROWDED] },
    { words: "raster-16", args: [FULL, "--profile", "raster-16"] },
    { words: "hop-79-avoid", args: [FULL, "--profile", "hop-79-avoid"] },
    { words: "a busy share of 0.2", args: [FULL, "--busy-share", "0.2"] },
  ];
  /** Required C/I of the built-in profiles: design section 6. */
  const requiredCiDb = (args: readonly string[]): number => (args.includes("raster-16") ? 5 : 14);

  test.each(CASES)("$words: ranks 1, 2, 3 by margin, then clear air, then number", async ({ args }) => {
    const { ranking } = await json<ChannelJson>(["channel", ...args]);
    expect(ranking.map(({ rank }) => rank)).toEqual(ranking.map((_, index) => index + 1));
    const round = (value: number): number => Math.round(value * 1e9) / 1e9;
    const sorted = [...ranking].sort(
      (a, b) =>
        Number(b.allowed) - Number(a.allowed) ||
        round(b.marginDb) - round(a.marginDb) ||
        round(b.clearAirRatio) - round(a.clearAirRatio) ||
        a.channel - b.channel,
    );
    expect(ranking.map(({ channel }) => channel)).toEqual(sorted.map(({ channel }) => channel));
  });

  test.each(CASES)("$words: interference + margin + required C/I = wanted", async ({ args }) => {
    const { ranking } = await json<ChannelJson>(["channel", ...args]);
    for (const { wantedDbm, interferenceDbm, marginDb } of ranking)
      expect(interferenceDbm + marginDb + requiredCiDb(args)).toBeCloseTo(wantedDbm, 9);
  });

  test.each(CASES)(
    "$words: contributors fall in level and are on no longer than always",
    async ({ args }) => {
      const { ranking } = await json<ChannelJson>(["channel", ...args]);
      for (const { contributors } of ranking) {
        const levels = contributors.map(({ inChannelDbm }) => inChannelDbm);
        expect(levels).toEqual([...levels].sort((a, b) => b - a));
      }
    },
  );

  /** Design section 4: within 6 dB; another dominant source and 25 MHz away; else another source; else the second. */
  test.each(CASES.filter(({ words }) => words !== "hop-79-avoid"))(
    "$words: recommends the first and falls back by the rule",
    async ({ args }) => {
      const { ranking, recommended, backup } = await json<ChannelJson>(["channel", ...args]);
      const best = ranking[0]!;
      expect(recommended.channel).toBe(best.channel);
      const others = ranking
        .slice(1)
        .filter(({ allowed, marginDb }) => allowed && marginDb >= best.marginDb - 6 - 1e-9);
      const dominant = ({ contributors }: (typeof ranking)[number]): string =>
        contributors[0]?.emitter ?? "none";
      const differ = others.filter((score) => dominant(score) !== dominant(best));
      const far = differ.filter(({ centreMhz }) => Math.abs(centreMhz - best.centreMhz) >= 25);
      expect(backup.channel).toBe((far[0] ?? differ[0] ?? others[0])?.channel ?? null);
    },
  );

  test("a hopping radio: no one channel, with the reason; mean clear air and median margin of its hop set", async () => {
    const { ranking, recommended, backup, hopSet } = await json<ChannelJson>([
      "channel",
      FULL,
      "--profile",
      "hop-79-avoid",
    ]);
    expect([recommended.channel, backup.channel]).toEqual([null, null]);
    expect(recommended.reason).toMatch(/hop/);
    expect(ranking.map(({ channel }) => channel).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 79 }, (_, k) => k),
    );
    for (const { channel, centreMhz } of ranking) expect(centreMhz).toBe(2402 + channel);
    const used = ranking.filter(({ channel }) => hopSet!.channels.includes(channel));
    expect(hopSet!.clearAirRatio).toBeCloseTo(
      used.reduce((sum, score) => sum + score.clearAirRatio, 0) / used.length,
      9,
    );
    const margins = used.map(({ marginDb }) => marginDb).sort((a, b) => a - b);
    const middle =
      (margins[Math.floor((margins.length - 1) / 2)]! + margins[Math.ceil((margins.length - 1) / 2)]!) / 2;
    expect(hopSet!.marginDb).toBeCloseTo(middle, 9);
    const kept = (mhz: number): boolean =>
      !hopSet!.excludedRanges.some(({ fromMhz, toMhz }) => mhz >= fromMhz && mhz <= toMhz);
    expect([...hopSet!.channels]).toEqual(
      Array.from({ length: 79 }, (_, k) => k).filter((k) => kept(2402 + k)),
    );
  });

  test("numbers are not rounded", async () => {
    const { ranking, link } = await json<ChannelJson>(["channel", ...DEMO]);
    const figures = [
      ...ranking.map(({ marginDb }) => marginDb),
      ...link.rows.map(({ pathLossDb }) => pathLossDb),
    ];
    expect(
      figures.filter((figure) => Math.abs(figure * 1e4 - Math.round(figure * 1e4)) > 1e-6).length,
    ).toBeGreaterThan(figures.length / 2);
  });

  /** ITU-R P.1238: 20 log10 f + N log10 d − 28; the budget of design section 5 with the figures of section 6. */
  test("link rows follow from P.1238 and the profile's figures, by hand", async () => {
    const { link, ranking } = await json<ChannelJson>(["channel", ...DEMO]);
    expect(link.rows.map(({ distanceM }) => distanceM)).toEqual([5, 10, 15, 20, 30, 40, 60]);
    const best = ranking[0]!;
    for (const row of link.rows) {
      const pathLossDb = 20 * Math.log10(best.centreMhz) + 22 * Math.log10(row.distanceM) - 28;
      const receivedDbm = 18 + 2 - pathLossDb - 10 + 2;
      expect(row.pathLossDb).toBeCloseTo(pathLossDb, 6);
      expect(row.receivedDbm).toBeCloseTo(receivedDbm, 6);
      expect(row.sensitivityMarginDb).toBeCloseTo(receivedDbm + 90, 6);
      expect(row.interferenceMarginDb).toBeCloseTo(receivedDbm - best.interferenceDbm - 14, 6);
      const lesser = Math.min(row.sensitivityMarginDb, row.interferenceMarginDb);
      expect(row.workingMarginDb).toBeCloseTo(lesser - row.fadeAllowanceDb, 9);
      expect(row.limit).toBe(row.sensitivityMarginDb <= row.interferenceMarginDb ? "range" : "interference");
      const spare = row.workingMarginDb;
      expect(row.verdict).toBe(spare < 0 ? "fails" : spare < 6 ? "thin" : spare < 15 ? "sound" : "ample");
    }
  });

  test("reach, to 1 cm, is where nothing is to spare; Rayleigh reaches less far", async () => {
    const { link } = await json<ChannelJson>(["channel", ...DEMO]);
    const row = link.rows.find(({ limit }) => limit === "interference")!;
    const reachM = row.distanceM * 10 ** (row.workingMarginDb / 22); // P.1238's slope, N = 22
    expect(Math.abs(link.reachM! - reachM)).toBeLessThanOrEqual(0.01);
    // Rayleigh at 99 %: −10·log10(−ln 0.99) = 19.978 dB below the mean.
    const noSightM = reachM * 10 ** ((row.fadeAllowanceDb + 10 * Math.log10(-Math.log(0.99))) / 22);
    expect(Math.abs(link.reachNoSightM! - noSightM)).toBeLessThanOrEqual(0.01);
  });

  test("frames lost a minute = loss × 44 × 60", async () => {
    const { frames } = await json<ChannelJson>(["channel", CROWDED]);
    for (const { lossRatio, lostPerMinute } of [frames.typical, frames.edge])
      expect(lostPerMinute).toBeCloseTo(lossRatio * 44 * 60, 9);
    expect(frames.edge.lossRatio).toBeGreaterThanOrEqual(frames.typical.lossRatio);
  });

  test("the text tells the JSON's ranking, to one place", async () => {
    const { ranking } = await json<ChannelJson>(["channel", ...DEMO]);
    const { out } = await stillband(["channel", ...DEMO]);
    const told = [...out.matchAll(/^ *(\d+) +(\d+) \((\d+) MHz\) +(-?\d+\.\d) dB/gm)].map((match) =>
      match.slice(1, 5),
    );
    expect(told).toEqual(
      ranking.map(({ rank, channel, centreMhz, marginDb }) => [
        `${rank}`,
        `${channel}`,
        `${centreMhz}`,
        marginDb.toFixed(1),
      ]),
    );
  });

  test("a channel outside the region's band is last, not allowed, with the reason, and not recommended", async () => {
    const { ranking, recommended } = await json<ChannelJson>([
      "channel",
      FULL,
      "--profile",
      "raster-16",
      "--region",
      "EU",
    ]);
    const outside = ranking.filter(({ centreMhz }) => centreMhz + 1 > 2483.5 || centreMhz - 1 < 2400);
    for (const { allowed } of ranking.filter((score) => !outside.includes(score))) expect(allowed).toBe(true);
    for (const { allowed, reason } of outside) expect([allowed, typeof reason]).toEqual([false, "string"]);
    expect(outside.map(({ channel }) => channel)).not.toContain(recommended.channel);
  });
});

describe("every row is accounted for", () => {
  const dataRows = (text: string): number => text.trimEnd().split("\n").length - 1;
  test.each([EMPTY, FULL, CROWDED])("%s", async (file) => {
    const rowCount = dataRows(readFileSync(`${PROJECT}/${file}`, "utf8")); // no quoted newlines in these
    const { survey } = await json<SurveyCommandJson>(["survey", file]);
    expect(survey.observationCount + survey.rejectedCount + survey.outOfBandCount + survey.ignoredCount).toBe(
      rowCount,
    );
    const { files, readings } = await json<ConvertJson>(["convert", file]);
    const [counts] = files;
    expect(counts!.rowCount).toBe(rowCount);
    expect(counts!.usedCount + counts!.rejectedCount + counts!.outOfBandCount).toBe(rowCount);
    expect(readings).toHaveLength(counts!.usedCount);
  });
  test("an iw scan has one row a BSS block", async () => {
    const blocks = readFileSync(`${PROJECT}/${FOYER}`, "utf8").match(/^BSS /gm)!.length;
    const { survey } = await json<SurveyCommandJson>(["survey", FOYER]);
    expect(survey.observationCount + survey.rejectedCount + survey.outOfBandCount).toBe(blocks);
  });
});

describe("survey --json", () => {
  test("counts what it lists", async () => {
    const { survey, emitters } = await json<SurveyCommandJson>(["survey", ...DEMO]);
    expect(survey.emitterCount).toBe(emitters.length);
    expect(new Set(emitters.flatMap(({ bssids }) => bssids)).size).toBe(survey.bssCount);
    expect(survey.hiddenCount).toBeLessThanOrEqual(survey.bssCount);
    expect([...survey.places].sort()).toEqual(
      [...new Set(emitters.flatMap(({ places }) => places.map(({ place }) => place)))].sort(),
    );
  });
  test("a source is known by its lowest address and as loud as at its loudest place", async () => {
    const { emitters } = await json<SurveyCommandJson>(["survey", ...DEMO]);
    for (const { emitter, bssids, places, levelDbm, firstSeen, lastSeen } of emitters) {
      expect(emitter.split("@")[0]).toBe([...bssids].sort()[0]);
      expect(levelDbm).toBe(Math.max(...places.map((place) => place.levelDbm)));
      expect(firstSeen! <= lastSeen!).toBe(true);
    }
  });
  test("agrees with channel's survey block", async () => {
    const { survey } = await json<SurveyCommandJson>(["survey", ...DEMO]);
    const { survey: again } = await json<ChannelJson>(["channel", ...DEMO]);
    expect(again).toEqual(survey);
  });
});

test("profiles RASTER --json is a profile file: --profile reads it back to the same result", async () => {
  const folder = mkdtempSync(join(tmpdir(), "stillband-"));
  try {
    const { out } = await stillband(["profiles", "raster-16", "--json"]);
    writeFileSync(`${folder}/mine.json`, out);
    const mine = await json<ChannelJson>(["channel", FULL, "--profile", `${folder}/mine.json`]);
    const built = await json<ChannelJson>(["channel", FULL, "--profile", "raster-16"]);
    expect(mine.ranking).toEqual(built.ranking);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
