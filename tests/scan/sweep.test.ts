import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sweepLevelDbm } from "../../src/band/index.js";
import { seededRandom } from "../../src/numeric/index.js";
import { findProfile } from "../../src/radio/index.js";
import type { ScanImport } from "../../src/scan/scan-import.js";
import { dialect, read } from "./dialects.js";
import { countUpTo, naiveLevelDbm } from "./naive-sweep.js";
import type { Bin } from "./naive-sweep.js";

const CHANNELS = findProfile("raster-13").channels;

interface Plan {
  readonly hopMhz: number;
  readonly binMhz: number;
  readonly passes: readonly (readonly Bin[])[];
}

function randomPasses(seed: number, binMhz: number, passCount: number): Plan {
  const random = seededRandom(seed);
  const binCount = Math.round(100 / binMhz);
  const passes = Array.from({ length: passCount }, () =>
    Array.from({ length: binCount }, (_, k): Bin => ({
      fromMhz: 2400 + k * binMhz,
      toMhz: 2400 + (k + 1) * binMhz,
      levelDbm: Math.round((-100 + 60 * random() ** 4) * 100) / 100,
    })),
  );
  return { hopMhz: 20, binMhz, passes };
}

/** Wide rows as the format has them: five hops a pass, each with its own time stamp. */
function wideText({ hopMhz, binMhz, passes }: Plan, order = [0, 1, 2, 3, 4], separator = ", "): string {
  const perHop = Math.round(hopMhz / binMhz);
  return passes
    .flatMap((bins, pass) =>
      order.map((hop) => {
        const low = 2400 + hop * hopMhz;
        const levels = bins
          .slice(hop * perHop, (hop + 1) * perHop)
          .map(({ levelDbm }) => levelText(levelDbm));
        const minute = String(Math.floor(pass / 60)).padStart(2, "0");
        const time = `19:${minute}:${String(pass % 60).padStart(2, "0")}`;
        const head = ["2026-03-07", time, low * 1e6, (low + hopMhz) * 1e6, (binMhz * 1e6).toFixed(2), 16];
        return `${[...head, ...levels].join(separator)}\n`;
      }),
    )
    .join("");
}

/** Long rows: the bin is centred on its frequency. */
function longText({ passes }: Plan): string {
  const row = ({ fromMhz, toMhz, levelDbm }: Bin, pass: number): string =>
    `${pass + 0.5},${((fromMhz + toMhz) / 2).toFixed(3)},${levelText(levelDbm)}\n`;
  return passes.flatMap((bins, pass) => bins.map((bin) => row(bin, pass))).join("");
}

function levelText(levelDbm: number): string {
  return Number.isNaN(levelDbm) ? "nan" : levelDbm.toFixed(2);
}

/** Every cell of every channel's histogram holds the passes that the naive sum puts there. */
function expectSums({ sweep }: ScanImport, { passes, binMhz }: Plan, rbwMhz = binMhz): void {
  expect(sweep!.channels.map(({ channel }) => channel)).toEqual(CHANNELS.map(({ channel }) => channel));
  for (const heard of sweep!.channels) {
    const levels = passes
      .map((bins) => naiveLevelDbm(bins, heard.centreMhz, rbwMhz))
      .filter((levelDbm) => levelDbm !== null);
    expect(heard.passCount).toBe(levels.length);
    for (let edgeDbm = -130; edgeDbm <= 20; edgeDbm += edgeDbm < -20 ? 1 : 20) {
      // The naive average of the selectivity is good to some hundredths of a dB.
      const upTo = (limitDbm: number): number => levels.filter((levelDbm) => levelDbm <= limitDbm).length;
      expect(countUpTo(heard, edgeDbm)).toBeGreaterThanOrEqual(upTo(edgeDbm - 0.03));
      expect(countUpTo(heard, edgeDbm)).toBeLessThanOrEqual(upTo(edgeDbm + 0.03));
    }
  }
}

/** Rows and cells in = used + rejected + out of band (+ invalid and dropped cells). */
function accounts({ rowCount, rejectedCount, outOfBandCount, readings, sweep, issues }: ScanImport): boolean {
  const used = readings.length + (sweep?.usedRowCount ?? 0);
  const says = issues.some(({ code }) => code === "no-usable-row");
  if (rowCount !== used + rejectedCount + outOfBandCount || says !== (used === 0)) return false;
  if (sweep === null) return true;
  const { cellCount, usedCellCount, invalidCellCount, outOfBandCellCount } = sweep;
  const rest = sweep.droppedCellCount + sweep.rejectedCellCount;
  return cellCount === usedCellCount + invalidCellCount + outOfBandCellCount + rest;
}

describe("in-channel sums, against a sum written for the test (design: Σ 10^(L/10) · spacing/RBW · H)", () => {
  test.each([1, 0.5, 0.1, 0.25])("wide rows of %s MHz bins", async (binMhz) => {
    const plan = randomPasses(11, binMhz, 20);
    const result = await read(wideText(plan));
    expect(result).toMatchObject({
      format: "power-sweep",
      rowCount: 100,
      rejectedCount: 0,
      outOfBandCount: 0,
    });
    expect(result.sweep).toMatchObject({
      passCount: 20,
      binCount: 100 / binMhz,
      startMhz: 2400,
      stopMhz: 2500,
      resolutionBandwidthMhz: binMhz,
      resolutionBandwidthAssumed: true,
      cellCount: 2000 / binMhz,
      usedCellCount: 2000 / binMhz,
    });
    expectSums(result, plan);
  });
  test("long rows give what the same bins give as wide rows", async () => {
    const plan = randomPasses(12, 0.5, 12);
    const [wide, long] = [await read(wideText(plan)), await read(longText(plan))];
    expect(long).toMatchObject({ rowCount: 2400, rejectedCount: 0 });
    expect(long.sweep).toMatchObject({
      layout: "long",
      passCount: 12,
      binCount: 200,
      startMhz: 2400,
      stopMhz: 2500,
    });
    expect(long.sweep!.channels).toEqual(wide.sweep!.channels);
    expectSums(long, plan);
  });
  test("a resolution bandwidth of half a bin doubles the power", async () => {
    const plan = randomPasses(13, 1, 12);
    const result = await read(wideText(plan), { resolutionBandwidthMhz: 0.5 });
    expect(result.sweep).toMatchObject({ resolutionBandwidthMhz: 0.5, resolutionBandwidthAssumed: false });
    expectSums(result, plan, 0.5);
  });
  test("levels of many decimals, of none and with an exponent count as exactly as others", async () => {
    const plan = randomPasses(14, 1, 8);
    const texts = [".0", "", "0000e0"];
    const whole = {
      ...plan,
      passes: plan.passes.map((bins) => bins.map((bin) => ({ ...bin, levelDbm: Math.round(bin.levelDbm) }))),
    };
    const text = wideText(whole);
    let index = 0;
    const varied = text.replace(/(-\d+)\.00/g, (_, digits: string) => {
      const end = texts[index++ % texts.length]!;
      return end === "0000e0" ? `${digits}.00000e0` : `${digits}${end}`;
    });
    expect((await read(varied)).sweep!.channels).toEqual((await read(text)).sweep!.channels);
    const fine = {
      ...plan,
      passes: plan.passes.map((bins) => bins.map((bin) => ({ ...bin, levelDbm: bin.levelDbm - 0.004321 }))),
    };
    const longer = wideText(plan).replace(/(-\d+\.\d\d)(?=[,\n])/g, "$14321");
    const exact = (await read(longer)).sweep!;
    expect(exact.invalidCellCount).toBe(0);
    expectSums(await read(longer), fine);
  });
});

describe("quantiles, against sorting", () => {
  test("are the upper edge of the cell that holds the sorted one", async () => {
    const plan = randomPasses(21, 1, 101);
    const { sweep } = await read(wideText(plan));
    for (const heard of sweep!.channels) {
      const sorted = plan.passes
        .map((bins) => naiveLevelDbm(bins, heard.centreMhz, 1)!)
        .sort((a, b) => a - b);
      for (const share of [0, 0.01, 0.1, 0.25, 0.5, 0.9]) {
        const exact = sorted[sorted.length - 1 - Math.floor(share * sorted.length + 1e-9)]!;
        const found = sweepLevelDbm(heard, share)!;
        expect(found).toBeGreaterThanOrEqual(exact - 0.03);
        expect(found).toBeLessThanOrEqual(exact + 1.03);
        expect(Number.isInteger(found)).toBe(true);
      }
    }
  });
  test("of nothing are null", () => {
    const none = { channel: 1, centreMhz: 2412, passCount: 0, levelsDbm: [], atLevelCount: [] };
    expect(sweepLevelDbm(none, 0.5)).toBeNull();
  });
});

describe("a sweep reads alike", () => {
  const plan = randomPasses(31, 1, 4);
  test.each(["wide", "long"])("however %s rows are cut into chunks, from one byte up", async (kind) => {
    const text = kind === "wide" ? wideText(plan) : longText(plan);
    const bytes = new TextEncoder().encode(text);
    const whole = await read(bytes);
    for (const size of [1, 2, 3, 7, 64, 1000, 4099]) {
      const chunks = Array.from({ length: Math.ceil(bytes.length / size) }, (_, k) =>
        bytes.subarray(k * size, (k + 1) * size),
      );
      expect(await read(chunks)).toEqual(whole);
    }
    expect(await read(text)).toEqual(whole);
    expect(await read(`\ufeff${text.replaceAll("\n", "\r\n")}`)).toEqual(whole);
    expect(await read(text.replaceAll("\n", "\r"))).toEqual(whole);
    const utf16 = Uint8Array.from([0xff, 0xfe, ...[...text].flatMap((c) => [c.charCodeAt(0), 0])]);
    expect(await read(utf16)).toEqual(whole);
  });
  test("whichever way its hops run, and with its passes in any order", async () => {
    const [up, down] = [await read(wideText(plan)), await read(wideText(plan, [4, 3, 2, 1, 0]))];
    expect(down.sweep!.channels).toEqual(up.sweep!.channels);
    expect(down.sweep!.passCount).toBe(4);
    const mixed = await read(wideText({ ...plan, passes: [...plan.passes].reverse() }));
    expect(mixed.sweep!.channels).toEqual(up.sweep!.channels);
  });
  test("when a row lists its levels from the high frequency down", async () => {
    const turned = wideText(plan).replace(
      /^(\S+ \S+ )(\d+), (\d+)(, \S+ \S+ )(.*)$/gm,
      (_, ...groups: string[]) => {
        const [stamp = "", low = "", high = "", middle = "", levels = ""] = groups;
        return `${stamp}${high}, ${low}${middle}${levels.split(", ").reverse().join(", ")}`;
      },
    );
    expect(turned).not.toBe(wideText(plan));
    expect((await read(turned)).sweep!.channels).toEqual((await read(wideText(plan))).sweep!.channels);
  });
});

describe("what real files do", () => {
  const of = async (name: string): Promise<ScanImport> => {
    const result = await read(dialect(name));
    expect(accounts(result)).toBe(true);
    return result;
  };
  const passes = ({ sweep }: ScanImport): number[] => sweep!.channels.map(({ passCount }) => passCount);
  const codes = ({ issues }: ScanImport): string[] => issues.map(({ code }) => code);

  test.each([
    "sweep-wide.csv",
    "sweep-wide-backward-hops.csv",
    "sweep-wide-semicolon-decimal-comma.csv",
    "sweep-long.csv",
  ])("%s: three passes, every channel covered in each", async (name) => {
    const result = await of(name);
    expect(result).toMatchObject({ format: "power-sweep", rejectedCount: 0, outOfBandCount: 0 });
    expect(result.sweep!.passCount).toBe(3);
    expect(passes(result)).toEqual(CHANNELS.map(() => 3));
    expect(codes(result)).toEqual(["assumed"]);
  });
  test("passes out of order: four, and buckets by time", async () => {
    const result = await of("sweep-wide-passes-out-of-order.csv");
    expect(result.sweep!.passCount).toBe(4);
    const starts = result.sweep!.buckets.map(({ startMs }) => startMs!);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
    expect(starts.length).toBe(4);
  });
  test("nan, -inf, -1.#J and -1.#IND are holes, counted, never −1 dBm", async () => {
    const result = await of("sweep-wide-no-numbers.csv");
    expect(result.sweep).toMatchObject({ invalidCellCount: 4, usedCellCount: 296 });
    // Bin 2411–2412 has no level in the second pass: that pass does not cover 2411.5–2412.5 MHz.
    expect(passes(result)).toEqual(CHANNELS.map((_, index) => (index === 0 ? 2 : 3)));
    for (const { levelsDbm } of result.sweep!.channels) expect(Math.max(...levelsDbm)).toBeLessThan(-60);
    expect(result.issues.find(({ code }) => code === "bad-cell")).toMatchObject({
      line: 5,
      value: "-1.#J",
      count: 4,
    });
  });
  test("one level more than the span holds is dropped, and said", async () => {
    const result = await of("sweep-wide-one-more.csv");
    expect(result.sweep).toMatchObject({ droppedCellCount: 12, usedCellCount: 300, binCount: 100 });
    expect(result.issues.find(({ code }) => code === "ragged-row")).toMatchObject({
      severity: "note",
      count: 12,
    });
  });
  test("a last line cut short is rejected", async () => {
    const result = await of("sweep-wide-cut.csv");
    expect(result).toMatchObject({ rowCount: 12, rejectedCount: 1 });
    expect(result.issues.find(({ code }) => code === "ragged-row")).toMatchObject({
      line: 12,
      action: "row skipped",
    });
  });
  test("a last level cut short is no level: −7 of −72.35 would be the loudest of all", async () => {
    const text = wideText(randomPasses(41, 1, 2)).trimEnd();
    const cut = text.replace(/-(\d)\d*\.\d\d$/, "-$1");
    expect(cut.length).toBeLessThan(text.length);
    expect((await read(text)).sweep!.invalidCellCount).toBe(0);
    expect((await read(cut)).sweep).toMatchObject({ invalidCellCount: 1, usedCellCount: 199 });
  });
  test("two rows glued into one are rejected", async () => {
    expect(await of("sweep-wide-glued.csv")).toMatchObject({ rowCount: 11, rejectedCount: 1 });
  });
  test("levels above 0 are relative: said, and nothing ranks by them", async () => {
    const result = await of("sweep-wide-relative.csv");
    expect(result.sweep!.relative).toBe(true);
    expect(result.issues.find(({ code }) => code === "not-judged")!.expected).toMatch(/relative, not dBm/);
    expect(codes(result)).not.toContain("no-usable-row");
  });
  test("kHz under a header that says MHz: the content is believed, and said", async () => {
    const result = await of("sweep-long-khz-under-mhz.csv");
    expect(passes(result)).toEqual(CHANNELS.map(() => 3));
    expect(codes(result)).toContain("contradiction");
  });
  test("seconds since 1970, GHz, tabs, from the top down, one hole", async () => {
    const result = await of("sweep-long-epoch-ghz-tab.tsv");
    expect(result.sweep).toMatchObject({ passCount: 3, invalidCellCount: 1, resolutionBandwidthMhz: 1 });
    expect(result.sweep!.firstMs).toBe(Date.UTC(2026, 2, 7, 19, 20, 1));
  });
  test("another band is an error that names the band seen", async () => {
    const result = await of("sweep-another-band.csv");
    expect(result).toMatchObject({ sweep: null, rowCount: 6, outOfBandCount: 6 });
    expect(result.issues).toMatchObject([
      { code: "no-usable-row", severity: "error", value: "a sweep of 868–870 MHz" },
    ]);
  });
  test("a sweep that misses a channel says so", async () => {
    const text = wideText(randomPasses(42, 1, 3), [0, 1]);
    const result = await read(text);
    expect(passes(result).slice(0, 5)).toEqual([3, 3, 3, 3, 3]);
    expect(passes(result).slice(6)).toEqual(CHANNELS.slice(6).map(() => 0));
    expect(codes(result)).toContain("not-judged");
  });
  test("a clock time alone needs the file's date", async () => {
    const text = longText(randomPasses(43, 1, 2)).replace(/^[\d.]+/gm, "19:20:05");
    expect((await read(text)).sweep!.firstMs).toBeNull();
    expect((await read(text, { time: "2026-03-07" })).sweep!.firstMs).toBe(Date.UTC(2026, 2, 7, 19, 20, 5));
  });
  test("place and crowd are those of the file", async () => {
    const { sweep } = await read(wideText(randomPasses(44, 1, 1)), { place: "hall", crowd: "full" });
    expect(sweep).toMatchObject({ place: "hall", crowd: "full" });
  });
  test("thousands of passes stay in 128 stretches of time, none lost", async () => {
    const plan = randomPasses(45, 10, 3000);
    const { sweep } = await read(wideText(plan).replace(/19:(\d\d):/g, "19:$1:"));
    expect(sweep!.buckets.length).toBeLessThanOrEqual(129);
    const inBuckets = sweep!.buckets.reduce((sum, { channels }) => sum + channels[0]!.passCount, 0);
    expect(inBuckets).toBe(sweep!.channels[0]!.passCount);
    expect(sweep!.passCount).toBe(3000);
  });
});

describe("any sweep", () => {
  test("written wide or long is read back: passes, bins, holes, sums", async () => {
    const level = fc.oneof(
      { weight: 9, arbitrary: fc.integer({ min: -12000, max: -2000 }).map((h) => h / 100) },
      { weight: 1, arbitrary: fc.constant(NaN) },
    );
    const pass = fc.array(level, { minLength: 100, maxLength: 100 });
    await fc.assert(
      fc.asyncProperty(
        fc.array(pass, { minLength: 1, maxLength: 4 }),
        fc.shuffledSubarray([0, 1, 2, 3, 4], { minLength: 5 }),
        fc.constantFrom(", ", ",", ";", "\t"),
        async (levels, order, separator) => {
          const passes = levels.map((own) =>
            own.map((levelDbm, k): Bin => ({ fromMhz: 2400 + k, toMhz: 2401 + k, levelDbm })),
          );
          const plan = { hopMhz: 20, binMhz: 1, passes };
          const holeCount = levels.flat().filter(Number.isNaN).length;
          const wide = await read(wideText(plan, order, separator));
          expect(wide.sweep).toMatchObject({
            passCount: passes.length,
            invalidCellCount: holeCount,
            relative: false,
          });
          expect(accounts(wide)).toBe(true);
          expectSums(wide, plan);
          const long = await read(longText(plan));
          expect(long.sweep!.channels).toEqual(wide.sweep!.channels);
        },
      ),
      { numRuns: 8, seed: 2437, endOnFailure: true },
    );
  });

  test("damaged anyhow never crashes, and its accounting adds up", async () => {
    const random = seededRandom(99);
    const below = (count: number): number => Math.floor(random() * count);
    const names = [
      "sweep-wide.csv",
      "sweep-long.csv",
      "sweep-wide-no-numbers.csv",
      "sweep-wide-semicolon-decimal-comma.csv",
      "sweep-long-epoch-ghz-tab.tsv",
      "sweep-wide-one-more.csv",
    ];
    for (let round = 0; round < 300; round++) {
      let bytes = Uint8Array.from(dialect(names[round % names.length]!));
      const kind = below(3);
      if (kind === 0)
        for (let flips = below(20); flips >= 0; flips--) bytes[below(bytes.length)] = below(256);
      else if (kind === 1) bytes = bytes.slice(below(bytes.length), below(bytes.length) + 1);
      else {
        const lines = new TextDecoder().decode(bytes).split("\n");
        for (let at = lines.length - 1; at > 0; at--) {
          const other = below(at + 1);
          [lines[at], lines[other]] = [lines[other]!, lines[at]!];
        }
        bytes = new TextEncoder().encode(lines.join("\n"));
      }
      expect(accounts(await read(bytes)), `round ${round}`).toBe(true);
    }
  });
});
