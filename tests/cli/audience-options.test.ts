/** `--event-minutes`, `--receivers`, `--reliability-all`: what the audience sees, and the whole job, as a process. */
import { describe, expect, test } from "vitest";
import { tooWide } from "./columns.js";
import { schemaFaults } from "./schemas.js";
import { CROWDED, firstBlock, FOYER, FULL, inProcess, stillband } from "./stillband.js";

interface LookJson {
  readonly lossRatio: number;
  readonly lostPerMinute: number;
  readonly look: {
    readonly eventMinutes: number;
    readonly holds: readonly { holdS: number; frameCount: number; probability: number }[];
    readonly holdOnceAnEventS: number;
    readonly inBursts: { readonly lossRatio: number; readonly holdOnceAnEventS: number } | null;
    readonly inBurstsReason: string | null;
  };
}
interface AudienceJson {
  readonly receiver: { readonly reliability: number };
  readonly link: {
    readonly fadeAllowanceDb: number;
    readonly reachM: number | null;
    readonly reference: { readonly heldRatio: number; readonly verdict: string };
  };
  readonly hopSet: { readonly channels: number[]; readonly leastHopCount: { value: number; source: string } };
  readonly frames: { readonly typical: LookJson; readonly edge: LookJson };
  readonly job: {
    readonly receiverCount: number;
    readonly reliability: number;
    readonly expectedInHoleCount: number;
    readonly allHoldProbability: number;
    readonly setForAll: boolean;
  } | null;
  readonly jobReason: string | null;
}

async function json(args: readonly string[]): Promise<AudienceJson> {
  const { code, out } = await inProcess([...args, "--json"]);
  expect(code).toBe(0);
  const value = JSON.parse(out) as AudienceJson;
  expect(schemaFaults(args[0]!, value)).toEqual([]);
  return value;
}
async function text(args: readonly string[]): Promise<string> {
  const { code, out } = await inProcess(args);
  expect(code).toBe(0);
  expect(tooWide(out, 80)).toEqual([]);
  expect(firstBlock(out).filter((line) => line.endsWith("…"))).toEqual([]);
  expect(firstBlock(out).length).toBeLessThanOrEqual(8);
  return out;
}
const flowing = (lines: string): string => lines.replace(/\s+/g, " ");

/** On radio channel 12 in the full room, 8 m away, most frames are lost at the edge, not all. */
const LOSSY = ["link", "--channel", "12", FULL, "--distance", "8m"];

describe("--event-minutes", () => {
  test("sets the event; 90 unless given; longer events see more", async () => {
    const usual = (await json(LOSSY)).frames.edge;
    expect(usual.look.eventMinutes).toBe(90);
    const day = (await json([...LOSSY, "--event-minutes", "1440"])).frames.edge;
    expect(day.look.eventMinutes).toBe(1440);
    expect(day.lossRatio).toBe(usual.lossRatio);
    expect(day.look.holdOnceAnEventS).toBeGreaterThanOrEqual(usual.look.holdOnceAnEventS);
    day.look.holds.forEach(({ probability }, index) =>
      expect(probability).toBeGreaterThanOrEqual(usual.look.holds[index]!.probability),
    );
  });

  /** The largest k with p^k·(1 + (n−k)(1−p)) ≥ 1 (linearity of expectation), over 44 frames a second. */
  test.each([
    ["link", LOSSY],
    ["channel", ["channel", CROWDED]],
    ["a hopping radio", ["channel", FULL, "--profile", "hop-79"]],
  ])("%s: the hold met once an event follows from the loss", async (_, args) => {
    const { frames } = await json(args);
    for (const { lossRatio, look } of [frames.typical, frames.edge]) {
      const n = 44 * 60 * 90;
      const runs = (k: number): number => lossRatio ** k * (1 + (n - k) * (1 - lossRatio));
      const k = Math.round(look.holdOnceAnEventS * 44);
      if (k > 0) expect(runs(k)).toBeGreaterThanOrEqual(1 - 1e-6);
      if (k < n) expect(runs(k + 1)).toBeLessThan(1 + 1e-6);
      expect(look.holds.map(({ frameCount }) => frameCount)).toEqual([5, 22, 88]);
    }
  });

  test.each(["0", "0.5", "1441", "-90", "90 min", ""])("%j is no event", async (word) => {
    const { code, err } = await stillband(["link", "--event-minutes", word]);
    expect(code).toBe(64);
    expect(err).toMatch(/--event-minutes: expected an event's length in minutes, 1 to 1440/);
    expect(err).toMatch(/\nTry: --event-minutes 90/);
  });
});

describe("what the audience sees, in words", () => {
  test("in a 45-minute event expect …, at both positions; a hold shows only while the look changes", async () => {
    for (const args of [LOSSY, ["channel", CROWDED], ["channel", FOYER]]) {
      const out = flowing(await text([...args, "--event-minutes", "45"]));
      expect(out).toMatch(/What the audience sees at \d+ m/);
      expect(out).toMatch(/In a 45-minute event expect\b.*typical position/);
      expect(out).toMatch(/A hold shows only while the look is changing/);
      expect(out).toMatch(/taken as lost independently of each other.*; in bursts/);
    }
  });
  test("the opening line says the longest hold where frames are lost", async () => {
    const { frames } = await json(["channel", FULL, "--profile", "hop-79"]);
    expect(frames.edge.lossRatio).toBeGreaterThan(0);
    const block = firstBlock(await text(["channel", FULL, "--profile", "hop-79"])).join("\n");
    expect(block).toMatch(/^Audience .*longest hold (?:<1 s|\d+ s|\d+ min)$/m);
    expect(firstBlock(await text(["link", "--channel", "6", FULL])).join("\n")).toMatch(
      /^Audience .*(?:frozen|hold)/m,
    );
  });
  test("no chance is told as none or as certain that isn't", async () => {
    for (const args of [LOSSY, ["channel", CROWDED], ["channel", FULL, "--profile", "hop-79"]]) {
      const { frames } = await json(args);
      const rows = [...(await text(args)).matchAll(/^(typical|edge)\S*(.*?) {2,}(\S.* %) +\S+ (?:s|min)$/gm)];
      expect(rows.length).toBeGreaterThan(0);
      for (const [, position, , cells] of rows) {
        const { lossRatio } = frames[position as "typical" | "edge"];
        if (lossRatio > 0) expect(cells).not.toMatch(/(?:^| )0(?:\.0+)? %/);
        if (lossRatio < 1) expect(cells).not.toMatch(/(?:^| )100(?:\.0+)? %/);
      }
    }
  });
  test("a hopping radio has no look in bursts: a hop leaves the burst behind", async () => {
    const args = ["channel", FULL, "--profile", "hop-79"];
    const { frames } = await json(args);
    expect(frames.edge.look.inBursts).toBeNull();
    expect(frames.edge.look.inBurstsReason).toMatch(/hop leaves the burst behind/);
    expect(flowing(await text(args))).toMatch(/in bursts: not told, a hop leaves the burst behind/);
  });
  test("long bursts stand beside, in rows of their own", async () => {
    const args = ["link", "--channel", "12", FULL, "--distance", "25m", "--burst-ms", "200"];
    const { typical, edge } = (await json(args)).frames;
    const differs = [typical, edge].some(
      ({ look }) => look.inBursts!.holdOnceAnEventS > look.holdOnceAnEventS,
    );
    expect(differs).toBe(true);
    expect(await text(args)).toMatch(/^(?:typical|edge of 99 %), in bursts/m);
  });
  test("where the bursts lose more frames, as sources that harm only together, their loss is told too", async () => {
    const args = ["link", "--channel", "3", FULL, "--distance", "30m"];
    const { edge } = (await json(args)).frames;
    expect(edge.look.inBursts!.lossRatio).toBeGreaterThan(edge.lossRatio + 0.01);
    const percent = `${(Math.floor(edge.look.inBursts!.lossRatio * 1e4) / 100).toFixed(2)} %`;
    expect(flowing(await text(args))).toContain(`at the edge ${percent} of frames lost and`);
  });
  test("transmissions longer than the frame: a warning with the figures, and no look in bursts", async () => {
    const args = ["link", "--set", "transmissions_per_frame_count=6"];
    const { frames } = await json(args);
    expect(frames.typical.look.inBurstsReason).toMatch(/longer than the frame/);
    const { err } = await inProcess(args);
    expect(flowing(err)).toMatch(/4\.5 ms × 6 sent a frame = 27 ms/);
  });
});

describe("--receivers and --reliability-all", () => {
  test("of twenty at 99 %: 0.2 in a hole, all hold with 82 %", async () => {
    // 0.99^20 = 0.8179069 (four-figure tables: 0.8179)
    for (const args of [
      ["link", "--receivers", "20"],
      ["channel", FOYER, "--receivers", "20"],
    ]) {
      const { job, jobReason } = await json(args);
      expect(job).toEqual({
        receiverCount: 20,
        reliability: 0.99,
        expectedInHoleCount: expect.closeTo(0.2, 9) as number,
        allHoldProbability: expect.closeTo(0.8179069, 7) as number,
        setForAll: false,
      });
      expect(jobReason).toBeNull();
      const out = flowing(await text(args));
      expect(out).toContain("99 % is per receiver: of 20, 0.2 in a hole on average; all hold with 82 %.");
      expect(out).toMatch(/shadows several at once/);
    }
    const near = firstBlock(await text(["channel", FULL, "--receivers", "20"])).join("\n");
    expect(near).toMatch(/all 20 hold: 82 %/);
  });
  test("not stated: null with the reason, and one line with an example named as such", async () => {
    const { job, jobReason } = await json(["link"]);
    expect([job, jobReason]).toEqual([null, "the number of receivers was not stated"]);
    expect(flowing(await text(["link"]))).toMatch(
      /99 % is per receiver: of 20, for example, 0\.2 in a hole on average; all hold with 82 %\. For your job: --receivers N\./,
    );
  });
  test("where the link fails, no chance that all hold is promised: what holds there stands beside it", async () => {
    const job = ["channel", FULL, "--distance", "30m", "--receivers", "20"];
    const { link } = await json(job);
    const { heldRatio, verdict } = link.reference;
    expect([verdict, link.reachM! > 0]).toEqual(["fails", true]);
    // Rician, K = 6 dB: 10 dB of margin hold at 98.35 %, 5 dB at 89.92 % (standards, "Rician outage": 1.646, 10.08 %)
    expect(heldRatio).toBeGreaterThan(0.8992);
    expect(heldRatio).toBeLessThan(0.99);
    const out = await text(job);
    expect(firstBlock(out).join("\n")).not.toMatch(/all 20 hold/);
    const share = `${(Math.floor(heldRatio * 1e4) / 100).toFixed(2)} %`;
    const all = `${Math.round(heldRatio ** 20 * 100)} %`;
    expect(flowing(out)).toContain(
      `all hold with 82 %. That is so only within the reach: at 30 m (98 ft) ${share} of positions hold, all 20 with ${all}.`,
    );
    const nowhere = ["link", "--receivers", "20", "--tx-antenna", "dipole,sideways"];
    expect(flowing(await text(nowhere))).toContain(
      "That is so nowhere here: at 20 m (66 ft) 0.00 % of positions hold, all 20 with under 0.1 %.",
    );
    expect(firstBlock(await text(nowhere)).join("\n")).not.toMatch(/hold:/);
  });
  test("99 % for all twenty: 99.95 % for each, and the fade allowance of it", async () => {
    const all = await json(["link", "--receivers", "20", "--reliability-all", "0.99"]);
    // ln 0.99 = −0.01005033585, over 20: x = −0.00050251679; 1 + x + x²/2 = 0.99949760947
    expect(all.receiver.reliability).toBeCloseTo(0.9994976094, 9);
    expect(all.job!.allHoldProbability).toBeCloseTo(0.99, 12);
    expect(all.job!.setForAll).toBe(true);
    const each = await json(["link", "--reliability", String(all.receiver.reliability)]);
    expect(all.link.fadeAllowanceDb).toBe(each.link.fadeAllowanceDb);
    const out = flowing(await text(["link", "--receivers", "20", "--reliability-all", "0.99"]));
    expect(out).toContain("99.949 % is per receiver, set so that all 20 hold with 99 %");
    expect(out).toContain("edge of 99.949 %");
  });
  test.each([
    [["--reliability-all", "0.99"], /--reliability-all: expected the number of receivers/],
    [
      ["--reliability-all", "0.99", "--receivers", "20", "--reliability", "0.99"],
      /--reliability-all: expected no --reliability beside it/,
    ],
    [["--receivers", "0"], /--receivers: expected a whole number of receivers, 1 to 10000, got "0"/],
    [["--receivers", "2.5"], /--receivers: expected a whole number/],
    [["--receivers", "many"], /--receivers: expected a whole number/],
    [["--receivers", "20", "--reliability-all", "1"], /--reliability-all: expected the chance/],
  ] as const)("%j is a usage error with a way out", async (args, told) => {
    const { code, out, err } = await stillband(["link", ...args]);
    expect([code, out]).toEqual([64, ""]);
    expect(err).toMatch(told);
    expect(err).toMatch(/\nTry: --\S+ \S+/);
  });
});

describe("the least hop set", () => {
  const AVOIDER = ["channel", CROWDED, "--profile", "hop-79-avoid"];
  test("without a region the profile's own; with one, the rule's at the power in use", async () => {
    // 47 CFR 15.247: 15 hop frequencies up to 125 mW, 75 above; the crowded room leaves none of its own accord.
    const own = await json(AVOIDER);
    expect([own.hopSet.channels.length, own.hopSet.leastHopCount.value]).toEqual([15, 15]);
    const strong = [...AVOIDER, "--region", "US", "--set", "tx_power_dbm=25"];
    const held = await json(strong);
    expect(held.hopSet.leastHopCount).toMatchObject({ value: 75 });
    expect(held.hopSet.leastHopCount.source).toMatch(/US.*47 CFR 15\.247/);
    expect(held.hopSet.channels).toHaveLength(75);
    expect(flowing(await text(strong))).toMatch(
      /At least 75 frequencies must stay in use; no more can be kept out \(rule of US: 47 CFR 15\.247/,
    );
  });
});
