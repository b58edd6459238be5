/** What the text says is what the figures say: nothing rounded into an untruth, nothing left out that a verdict needs. */
import { describe, expect, test } from "vitest";
import { CROWDED, DEMO, EMPTY, firstBlock, FOYER, FULL, inProcess, SCANS } from "../cli/stillband.js";
import type { ChannelJson, SurveyCommandJson } from "../cli/json-types.js";

async function text(args: readonly string[]): Promise<string> {
  const { code, out } = await inProcess(args);
  expect(code).toBe(0);
  return out;
}
async function json(args: readonly string[]): Promise<ChannelJson> {
  return JSON.parse((await inProcess([...args, "--json"])).out) as ChannelJson;
}
const flowing = (lines: string): string => lines.replace(/\s+/g, " ");

describe("the opening block of channel against its JSON", () => {
  test.each([
    { name: "demo", args: ["channel", ...DEMO] },
    { name: "one look", args: ["channel", FOYER] },
    { name: "nothing clear", args: ["channel", CROWDED] },
    { name: "empty room", args: ["channel", EMPTY, "--distance", "12m"] },
    { name: "a few names", args: ["channel", `${SCANS}/dialects/few-columns.csv`] },
  ])("$name: dB to spare, never rounded in our favour; channel, fallback, reach", async ({ args }) => {
    const distanceM = args.includes("--distance") ? 12 : 20;
    const told = await json([...args, "--distances", String(distanceM)]);
    const block = firstBlock(await text(args)).join("\n");
    const [row] = told.link.rows;
    const spare = row!.workingMarginDb;
    expect(block).toMatch(
      spare < 0 ? `${Math.ceil(-spare - 1e-9)} dB short` : `${Math.floor(spare + 1e-9)} dB to spare`,
    );
    expect(block).toContain(row!.verdict.toUpperCase());
    expect(block).toContain(`radio ch ${told.recommended.channel}`);
    if (told.backup.channel !== null) expect(block).toContain(`fallback radio ch ${told.backup.channel}`);
    const { reachM } = told.link;
    // The international foot is 0.3048 m exactly.
    if (reachM !== null && reachM <= 100)
      expect(block).toContain(`${Math.floor(reachM)} m (${Math.floor(reachM / 0.3048 + 1e-9)} ft)`);
    else expect(block).toMatch(/beyond 100 m: outside the model/);
    expect(block).toContain(told.survey.evidence.grade);
  });
});

describe("shares", () => {
  test("99.9 % of positions is not told as all of them, nor the rest as none", async () => {
    const out = flowing(await text(["channel", "--reliability", "0.999", FULL]));
    expect(out).toMatch(/99\.9 %/);
    expect(out).not.toMatch(
      /\b100 % of (?:spots|positions|receivers)|\b0 % of (?:spots|positions)|edge of 100 %/,
    );
  });
  test.each(["0.001", "0.005", "0.025"])("a busy share of %s is told as it is", async (share) => {
    const out = flowing(await text(["channel", "--busy-share", share, FULL]));
    const percent = String(Number((Number(share) * 100).toFixed(3)));
    const told = [...out.matchAll(/exceeded ([\d.]+) % of the time/g)].map((match) => Number(match[1]));
    expect(told.length).toBeGreaterThan(0);
    expect(new Set(told)).toEqual(new Set([Number(percent)]));
  });
  test("what the edge of 99 % loses is not told as what the worst 1 % lose: they lose more", async () => {
    for (const args of [DEMO, [FOYER], [CROWDED], [FULL, "--profile", "hop-79-avoid"]])
      expect(flowing(await text(["channel", ...args]))).not.toMatch(/worst 1 % of (?:spots|positions)/);
  });
});

describe("beyond 100 m", () => {
  test("rows, reach and the verdict at the reference distance are outside the model, and it says so", async () => {
    const out = await text(["channel", "--distance", "150m", "--distances", "50m,150m", FOYER]);
    expect(out).toMatch(/beyond 100 m: outside the model/);
    expect(firstBlock(out).find((line) => /150 m/.test(line)) ?? "").toMatch(/outside the model/);
  });
});

describe("power and the region", () => {
  test("a built-in profile's power that was lowered is said in the report itself", async () => {
    const out = flowing(await text(["channel", "--quiet", "--region", "EU", FOYER]));
    expect(out).toMatch(/10\.0 dB lower|lowered by 10|10 dB below/);
  });
  test("a breach of the user's own figure stands in the report with the dB to turn down", async () => {
    const args = ["channel", "--region", "EU", "--set", "tx_power_dbm=18", FOYER];
    const out = flowing(await text(args));
    expect(out).toMatch(/10(?:\.0)? dB too much|turn (?:it )?down (?:by )?10/);
    expect(out).toMatch(/local rule/);
    const { issues, ranking } = await json(args);
    expect(
      issues.filter(({ code, severity }) => code === "rule-breach" && severity === "error"),
    ).toHaveLength(1);
    expect(ranking).toEqual((await json(["channel", "--set", "tx_power_dbm=18", FOYER])).ranking);
  });
});

describe("every screen that rests on a built-in profile says so", () => {
  test.each([
    ["channel", ["channel", FOYER]],
    ["channel with one figure set", ["channel", "--set", "tx_power_dbm=10", FOYER]],
    ["link", ["link"]],
    ["survey", ["survey", FOYER]],
    ["profiles", ["profiles"]],
    ["one profile", ["profiles", "raster-16"]],
  ] as const)("%s", async (_, args) => {
    expect(flowing(await text(args))).toMatch(/[Gg]eneric figures/);
  });
});

describe("frame loss stands beside the clear air wherever a verdict is shown", () => {
  test.each([
    ["channel", ["channel", FULL]],
    ["link against a scan", ["link", "--channel", "6", FULL]],
    ["link against noise", ["link", "--distance", "90m"]],
  ] as const)("%s", async (_, args) => {
    const out = flowing(await text(args));
    expect(out).toMatch(/fails|thin|sound|ample/i);
    expect(out).toMatch(/position clear air frames lost/);
    for (const position of ["typical", "edge of 99 %"])
      expect(out).toMatch(new RegExp(`${position} [\\d.]+ % [\\d.<]+ % (?:no frames|.* a minute)`));
  });
});

describe("a hopping radio", () => {
  test("hop-79-avoid says what keeping ranges out gains", async () => {
    const out = flowing(await text(["channel", "--profile", "hop-79-avoid", FULL]));
    const { hopSet } = await json(["channel", "--profile", "hop-79-avoid", FULL]);
    for (const { fromMhz, toMhz } of hopSet!.excludedRanges) expect(out).toContain(`${fromMhz}–${toMhz}`);
    expect(out).toMatch(/gain|instead of|without keeping/);
  });
  test.each(["hop-79", "hop-79-avoid"])(
    "%s: asks to clear the Wi-Fi channel that is the strongest on most of its hop set",
    async (profile) => {
      const args = ["--profile", profile, FULL];
      const { ranking, hopSet } = await json(["channel", ...args]);
      const survey = JSON.parse((await inProcess(["survey", "--json", FULL])).out) as SurveyCommandJson;
      const counts = new Map<number, number>();
      for (const { channel, contributors } of ranking) {
        if (!hopSet!.channels.includes(channel)) continue;
        const source = survey.emitters.find(({ emitter }) => emitter === contributors[0]!.emitter)!;
        counts.set(source.channel, (counts.get(source.channel) ?? 0) + 1);
      }
      const [worst] = [...counts].sort((a, b) => b[1] - a[1])[0]!;
      expect(firstBlock(await text(["channel", ...args])).join(" ")).toMatch(
        new RegExp(`clear .*Wi-Fi ch ${worst}\\b`),
      );
    },
  );
});

test("the enclosure's loss is the one of its word: 0, 3, 10, 20 dB (design's assumptions)", async () => {
  const received: number[] = [];
  for (const word of ["antenna-outside", "plastic-or-glass", "slotted-metal", "closed-metal"]) {
    const { link } = await json(["link", "--enclosure", word]);
    received.push(link.rows[0]!.receivedDbm);
  }
  expect(received.map((levelDbm) => Math.round((received[0]! - levelDbm) * 1e6) / 1e6)).toEqual([
    0, 3, 10, 20,
  ]);
  expect(await text(["link", "--enclosure", "closed-metal"])).toMatch(
    /antenna (?:brought )?out|bring the antenna out/i,
  );
});

test("a distance typed in feet is told as typed, and in metres to the nearest", async () => {
  const block = firstBlock(await text(["channel", "--distance", "65ft", "--units", "ft", FOYER])).join("\n");
  expect(block).toMatch(/65 ft/);
  expect(block).toMatch(/\b20 m\b/); // 65 ft = 19.81 m
});
