/** Busy time by power sweep, alone and beside beacon lists, against arithmetic by hand. */
import { describe, expect, test } from "vitest";
import { sweptCells } from "../../src/report/busy-swept.js";
import type { Sweep, SweepBucket } from "../../src/scan/index.js";
import { schemaFaults } from "../cli/schemas.js";
import { scanCsv } from "../cli/scan-rows.js";
import { scratch } from "../cli/scratch.js";
import { firstBlock, inProcess, SCANS } from "../cli/stillband.js";
import { wideSweep } from "./sweep-rows.js";

const { file } = scratch();

function bucket(passCount: number, meanDbm: number | null, maxDbm: number | null): SweepBucket {
  const channels = [{ channel: 1, centreMhz: 2412, passCount, levelsDbm: [-100], atLevelCount: [passCount] }];
  return { startMs: 0, lengthMs: 1000, channels, meanDbm: [meanDbm], maxDbm: [maxDbm] };
}

function sweep(buckets: readonly SweepBucket[], given: Partial<Sweep> = {}): Sweep {
  return { relative: false, place: "hall", crowd: "full", buckets, ...given } as Sweep;
}

describe("share of passes above a threshold of -60 dBm", () => {
  test("one pass a stretch of time: counted exactly; at the threshold is not above it", () => {
    const buckets = [-50, -60, -61, -59.9].map((dbm) => bucket(1, dbm, dbm));
    expect(sweptCells([sweep(buckets)], -60, 0.01)).toEqual([{ busyRatio: 0.5, levelDbm: -50 }]);
  });
  test("several passes a stretch: the most that the mean allows, never less than one pass", () => {
    // One of four at -58 dBm, the rest as good as nothing: mean -58 - 6.02 = -64.02 dBm, 4.02 dB below -60: 0.396.
    const cells = sweptCells([sweep([bucket(4, -58 - 10 * Math.log10(4), -58)])], -60, 0.01);
    expect(cells[0]!.busyRatio).toBeCloseTo(10 ** 0.2 / 4, 12);
    expect(sweptCells([sweep([bucket(4, -75, -59)])], -60, 0.01)[0]!.busyRatio).toBe(0.25);
    expect(sweptCells([sweep([bucket(4, -75, -61)])], -60, 0.01)[0]!.busyRatio).toBe(0);
  });
  test("stretches count by their passes", () => {
    const cells = sweptCells([sweep([bucket(3, -50, -50), bucket(1, -90, -90)])], -60, 0.5);
    expect(cells).toEqual([{ busyRatio: 0.75, levelDbm: -50 }]);
  });
  test("the level is exceeded in no more than the share: a quarter of four passes may be louder", () => {
    const buckets = [-40, -70, -80, -90].map((dbm) => bucket(1, dbm, dbm));
    expect(sweptCells([sweep(buckets)], -60, 0.25)[0]!.levelDbm).toBe(-70);
    expect(sweptCells([sweep(buckets)], -60, 0.24)[0]!.levelDbm).toBe(-40);
  });
  test("of one place and crowd pooled, of several the worst; relative levels say nothing", () => {
    const [loud, still] = [bucket(1, -50, -50), bucket(1, -90, -90)];
    expect(sweptCells([sweep([loud]), sweep([still])], -60, 0)[0]!.busyRatio).toBe(0.5);
    expect(sweptCells([sweep([loud]), sweep([still], { place: "foyer" })], -60, 0)[0]!.busyRatio).toBe(1);
    expect(sweptCells([sweep([loud], { relative: true })], -60, 0)).toEqual([]);
    expect(sweptCells([sweep([bucket(1, null, null)])], -60, 0)).toEqual([null]);
  });
});

interface BusyJson {
  readonly survey: { readonly observationCount: number };
  readonly occupancy: {
    readonly thresholdDbm: number;
    readonly cells: readonly {
      readonly fromMhz: number;
      readonly levelDbm: number | null;
      readonly busyRatio: number | null;
      readonly spokenBy: string | null;
      readonly reason: string | null;
    }[];
  };
  readonly crowds: readonly {
    readonly crowd: string | null;
    readonly observationCount: number;
    readonly passCount: number;
    readonly busyRatio: number | null;
    readonly firstSeen: string | null;
    readonly lastSeen: string | null;
  }[];
}

async function survey(args: readonly string[]): Promise<BusyJson> {
  const { code, out } = await inProcess(["survey", "--json", ...args]);
  expect(code).toBe(0);
  expect(schemaFaults("survey", JSON.parse(out))).toEqual([]);
  return JSON.parse(out) as BusyJson;
}

const SWEEP = file(
  "sweep.csv",
  wideSweep([
    { time: "19:00:00", levels: { 2440: -50, 2450: -50 } },
    { time: "19:00:10", levels: { 2440: -50 } },
    { time: "19:00:20", levels: {} },
    { time: "19:00:30", levels: { 2410: -70 } },
  ]),
);
const LIST = file(
  "list.csv",
  scanCsv([
    {
      time: "2026-05-01T18:30:00Z",
      bssid: "02:10:20:30:40:50",
      ssid: "lantern",
      channel: 6,
      signal: -45,
      airtime: 0.2,
      standard: "n",
    },
  ]),
);
const FULL = ["--place", "hall", "--crowd", "full"];

describe("survey of sweeps and lists", () => {
  test("a sweep alone: the share of its passes, and the level exceeded in no more than 1 % of them", async () => {
    const { occupancy, crowds } = await survey([...FULL, SWEEP]);
    // 18 + 2 + 2 - 10 dBm less 20·log10(2442) + 22·log10(20) - 28 dB (ITU-R P.1238), less C/I 14, plus 10 - 2 dB.
    expect(occupancy.thresholdDbm).toBeCloseTo(
      12 - (20 * Math.log10(2442) + 22 * Math.log10(20) - 28) - 6,
      9,
    );
    const busy = new Map(occupancy.cells.map((cell) => [cell.fromMhz, cell]));
    expect([2440, 2450, 2410, 2420].map((mhz) => busy.get(mhz)!.busyRatio)).toEqual([0.5, 0.25, 0, 0]);
    expect(busy.get(2410)!.levelDbm).toBeCloseTo(-70, 9);
    expect(occupancy.cells.every(({ spokenBy }) => spokenBy === "sweep")).toBe(true);
    expect(crowds).toEqual([
      expect.objectContaining({
        crowd: "full",
        observationCount: 0,
        passCount: 4,
        firstSeen: "2026-05-01T19:00:00.000Z",
        lastSeen: "2026-05-01T19:00:30.000Z",
      }),
    ]);
    expect(crowds[0]!.busyRatio).toBeCloseTo((0.5 + 0.25) / 84, 12);
  });
  test("with a beacon list the busier of the two counts, and it says which", async () => {
    const { occupancy, crowds } = await survey([...FULL, SWEEP, LIST]);
    const busy = new Map(occupancy.cells.map(({ fromMhz, ...cell }) => [fromMhz, cell]));
    // -45 dBm over some 18 MHz is -58 dBm in one, above the threshold for the 0.2 that the network reports.
    expect(busy.get(2437)).toMatchObject({
      busyRatio: expect.closeTo(0.2, 9) as number,
      spokenBy: "beacons",
    });
    expect(busy.get(2440)).toMatchObject({ busyRatio: 0.5, spokenBy: "sweep" });
    expect(busy.get(2470)).toMatchObject({ spokenBy: "beacons" });
    expect(crowds[0]).toMatchObject({
      observationCount: 1,
      passCount: 4,
      firstSeen: "2026-05-01T18:30:00.000Z",
    });
    const { out } = await inProcess(["survey", ...FULL, SWEEP, LIST]);
    expect(out).toMatch(/By the power sweeps in 2440–2441 MHz, 2450–2451 MHz/);
    expect(out).toMatch(/^On air .*1 radio sources? .*4 passes/m);
  });
  test("the text of a sweep alone claims no finding about networks, and has no empty table", async () => {
    const { out } = await inProcess(["survey", ...FULL, SWEEP]);
    expect(firstBlock(out).join("\n")).toMatch(/power sweep only: 4 passes; no beacon list/);
    expect(out).not.toMatch(/\b0 (?:radio )?sources|\b0 of 0|\b0 radio/);
    expect(out).not.toMatch(/Sources, hardest|owner/);
    expect(out).toMatch(/crowd +readings +passes .*\nfull +0 +4 /);
  });
  test("relative levels alone: quiet is not claimed", async () => {
    const relative = `${SCANS}/dialects/sweep-wide-relative.csv`;
    const { occupancy } = await survey([...FULL, relative]);
    for (const { busyRatio, spokenBy, reason } of occupancy.cells)
      expect([busyRatio, spokenBy, reason]).toEqual([null, null, "no scan covers it"]);
    const { out } = await inProcess(["survey", ...FULL, relative]);
    expect(firstBlock(out).join("\n")).toMatch(/Quietest +not known/);
    expect(out).not.toMatch(/Share of time in which/);
    expect(out).toMatch(/not dBm: not drawn/);
  });
});
