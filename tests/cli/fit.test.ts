/** `fit`: a walk test becomes a model that `link` and a venue file take, or a refusal with the next step. */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { exactLineFit } from "../helpers/exact-line-fit.js";
import { tooWide } from "./columns.js";
import { scratch } from "./scratch.js";
import { schemaFaults } from "./schemas.js";
import { firstBlock, inProcess, PROJECT } from "./stillband.js";

const { file, folder } = scratch();
const DEMO = "fixtures/readings/ropewalk-walk.csv";
const VENUE = "fixtures/venues/ropewalk/venue.yaml";
/** raster-13 as design section 6 has it: 18 dBm, antennas of 2 dBi at both ends. */
const LOSSLESS_DBM = 22;

interface FitJson {
  readonly radio: { readonly losslessDbm: number };
  readonly readings: {
    readonly rowCount: number;
    readonly usedCount: number;
    readonly heardCount: number;
    readonly rejectedCount: number;
    readonly unusable: readonly { readonly line: number; readonly reason: string }[];
    readonly leftOutLines: readonly number[];
  };
  readonly refusal: { readonly code: string; readonly next: string } | null;
  readonly fit: {
    readonly exponent: number;
    readonly exponentInterval: readonly [number, number];
    readonly referenceLossDb: number;
    readonly referenceLossIntervalDb: readonly [number, number];
    readonly wallLossDb: number | null;
    readonly sigmaDb: number;
    readonly method: string;
    readonly heardOnly: { readonly exponent: number } | null;
    readonly robust: { readonly exponent: number } | null;
    readonly outliers: readonly { readonly line: number; readonly kind: string }[];
    readonly readings: readonly { readonly distanceM: number; readonly lossDb: number }[];
  } | null;
  readonly predictions: readonly { readonly distanceM: number; readonly intervalDb: readonly number[] }[];
  readonly model: object | null;
  readonly modelReason: string | null;
  readonly modelFile: string | null;
}

/** A table of readings. */
function walk(name: string, rows: readonly (readonly (string | number)[])[], header: string): string {
  return file(name, [header, ...rows.map((row) => row.join(","))].join("\n"));
}

const DISTANCES_M = [2, 3, 4, 5, 7, 9, 12, 15, 20, 26, 33, 40];
/** Loss of exponent 3 with 40 dB at 1 m. */
const lossDb = (distanceM: number): number => 40 + 30 * Math.log10(distanceM);
const exact = walk(
  "exact.csv",
  DISTANCES_M.map((m) => [m, LOSSLESS_DBM - lossDb(m)]),
  "distance_m,received_dbm",
);
/** Off the line by whole dB that add up to nothing. */
const OFF_DB = [2, -3, 1, 4, -2, -4, 3, 0, -1, 2, -3, 1];
const scattered = walk(
  "scattered.csv",
  DISTANCES_M.map((m, index) => [m, LOSSLESS_DBM - lossDb(m) - OFF_DB[index]!]),
  "distance_m,received_dbm",
);

async function json(args: readonly string[], expected = 0): Promise<FitJson> {
  const { code, out } = await inProcess(["fit", ...args, "--json"]);
  expect(code).toBe(expected);
  const value = JSON.parse(out) as FitJson;
  expect(schemaFaults("fit", value)).toEqual([]);
  return value;
}

describe("the model", () => {
  test("of a walk on a line is that line; -o FILE.json holds it and the report is printed", async () => {
    const path = join(folder, "model.json");
    const { code, out } = await inProcess(["fit", exact, "-o", path, "--frequency", "2442"]);
    expect(code).toBe(0);
    expect(firstBlock(out)[0]).toMatch(/^Model +exponent 3\.00 ± 0\.00, 40\.0 ± 0\.0 dB at 1 m/);
    const model = JSON.parse(readFileSync(path, "utf8")) as Record<string, unknown>;
    expect(model["schema"]).toBe("stillband/path-model@1");
    expect(model["exponent"]).toBeCloseTo(3, 9);
    expect(model["referenceLossDb"]).toBeCloseTo(40, 9);
    expect([model["frequencyMhz"], model["distanceRangeM"]]).toEqual([2442, [2, 40]]);
  });
  test("of a scattered walk is the least-squares line, worked from sums", async () => {
    const { fit, model, modelReason } = await json([scattered]);
    const x = DISTANCES_M.map((m) => 10 * Math.log10(m));
    const y = DISTANCES_M.map((m, index) => lossDb(m) + OFF_DB[index]!);
    const { slope, intercept, variance } = exactLineFit(x, y);
    expect(fit!.exponent).toBeCloseTo(slope, 9);
    expect(fit!.referenceLossDb).toBeCloseTo(intercept, 9);
    expect(fit!.sigmaDb).toBeCloseTo(Math.sqrt(variance), 9);
    expect([fit!.method, fit!.heardOnly, modelReason]).toEqual(["least-squares", null, null]);
    expect(model).not.toBeNull();
  });
  test("--json with -o puts the report there, --model the model", async () => {
    const [report, model] = [join(folder, "report.json"), join(folder, "own-model.json")];
    const ended = await inProcess(["fit", exact, "--json", "-o", report, "--model", model]);
    expect([ended.code, ended.out]).toEqual([0, ""]);
    const value = JSON.parse(readFileSync(report, "utf8")) as FitJson & { readonly schema: string };
    expect([value.schema, value.modelFile]).toEqual(["stillband/fit@1", model]);
    expect(JSON.parse(readFileSync(model, "utf8"))).toEqual(value.model);
  });
  test("power, gains and enclosure shift the loss, never the exponent", async () => {
    const quiet = await json([exact, "--set", "tx_power_dbm=0"]);
    const housed = await json([exact, "--enclosure", "slotted-metal"]);
    expect([quiet.radio.losslessDbm, housed.radio.losslessDbm]).toEqual([4, 12]);
    expect(quiet.fit!.referenceLossDb).toBeCloseTo(40 - 18, 9);
    expect(housed.fit!.referenceLossDb).toBeCloseTo(40 - 10, 9);
    for (const { fit } of [quiet, housed]) expect(fit!.exponent).toBeCloseTo(3, 9);
  });
  test("feet, semicolons and decimal commas are read; walls become a loss of their own, or not", async () => {
    const rows = DISTANCES_M.map((m, index) => {
      const level = LOSSLESS_DBM - lossDb(m) - 6 * (index % 3);
      return `${String(m / 0.3048).replace(".", ",")};${level.toFixed(6).replace(".", ",")};${index % 3}`;
    });
    const path = file("feet.csv", ["Distance (ft);RSSI dBm;Walls", ...rows].join("\n"));
    const { fit } = await json([path]);
    expect(fit!.exponent).toBeCloseTo(3, 4);
    expect(fit!.wallLossDb).toBeCloseTo(6, 4);
    expect((await json([path, "--without-walls"])).fit!.wallLossDb).toBeNull();
  });
});

describe("where a reading was taken", () => {
  /** The demo venue's booth. */
  const BOOTH = [2.5, 13, 5.6] as const;
  const SPOTS = DISTANCES_M.slice(0, 9).map((m) => [2.5 + m, 13, 5.6] as const);
  const levels = DISTANCES_M.slice(0, 9).map((m) => LOSSLESS_DBM - lossDb(m));
  const positions = walk(
    "positions.csv",
    SPOTS.map((spot, index) => ["hall", ...spot, levels[index]!]),
    "transmitter,x,y,z,received_dbm",
  );
  test.each([
    ["a system of the venue", ["--venue", VENUE]],
    ["--transmitter-at", ["--transmitter-at", BOOTH.join(",")]],
  ])("positions count from %s", async (_, words) => {
    const { fit } = await json([positions, ...words]);
    fit!.readings.forEach(({ distanceM }, index) => expect(distanceM).toBeCloseTo(DISTANCES_M[index]!, 9));
    expect(fit!.exponent).toBeCloseTo(3, 9);
  });
  test("a receiver of the venue stands where the venue file says", async () => {
    const path = walk(
      "named.csv",
      [
        ["H1", -50],
        ["H2", -51],
        ["nobody", -52],
      ],
      "receiver,received_dbm",
    );
    const { readings, refusal } = await json([path, "--venue", VENUE, "--transmitter", "hall"], 65);
    expect([readings.usedCount, readings.unusable.map(({ line }) => line)]).toEqual([2, [4]]);
    expect(readings.unusable[0]!.reason).toMatch(/position/);
    expect(refusal!.code).toBe("too-few-readings");
  });
  test("another transmitter's readings are left out", async () => {
    const rows = DISTANCES_M.map((m, index) => [
      index % 2 === 0 ? "hall" : "foyer",
      m,
      LOSSLESS_DBM - lossDb(m),
    ]);
    const path = walk("two.csv", rows, "transmitter,distance_m,received_dbm");
    const { readings } = await json([path, "--transmitter", "HALL"]);
    expect([readings.usedCount, readings.leftOutLines]).toEqual([6, [3, 5, 7, 9, 11, 13]]);
    const { code, err } = await inProcess(["fit", path, "--transmitter", "hal"]);
    expect(code).toBe(64);
    expect(err).toMatch(/hall, foyer[^]*Try: --transmitter hall/);
  });
});

describe("a fit that makes no sense is refused, with what to measure next", () => {
  const line = (distancesM: readonly number[], exponent = 3): (readonly (string | number)[])[] =>
    distancesM.map((m) => [m, LOSSLESS_DBM - 40 - 10 * exponent * Math.log10(m)]);
  test.each([
    ["too-few-readings", line([2, 5, 20]), /at least 3 more/],
    ["short-span", line([10, 11, 12, 13, 14, 15, 16]), /read at 5 m or less/],
    ["one-distance", line([8, 8, 8, 8, 8, 8]), /read at 4 m or less/],
    [
      "mostly-not-heard",
      [...line([2, 3, 4, 5, 6, 8]), ...[10, 12, 14, 16, 18, 20, 22].map((m) => [m, "not heard"])],
      /nearer the transmitter/,
    ],
    ["nonsense-exponent", line([2, 4, 8, 16, 32, 40], 0.4), /each level stands beside its own distance/],
    ["nonsense-exponent", line([2, 3, 4, 6, 8, 10, 12], 7), /distances and units/],
  ] as const)("%s", async (refusalCode, rows, next) => {
    const path = walk(`${refusalCode}.csv`, rows, "distance_m,received_dbm");
    const model = join(folder, `${refusalCode}-model.json`);
    const { code, out, err } = await inProcess(["fit", path, "-o", model]);
    expect(code).toBe(65);
    const block = firstBlock(out);
    expect(block[0]).toMatch(/^Model +NONE: /);
    expect(block.join(" ").replace(/\s+/g, " ")).toMatch(next);
    expect([block.length <= 8, tooWide(out, 80), block.filter((each) => each.endsWith("…"))]).toEqual([
      true,
      [],
      [],
    ]);
    expect(err).toMatch(/^stillband: no model: .*\nTry: /m);
    expect(existsSync(model)).toBe(false);
    const { refusal, fit, model: none, modelReason } = await json([path], 65);
    expect([refusal!.code, fit, none]).toEqual([refusalCode, null, null]);
    expect(modelReason).toMatch(/\w/);
  });
  test("a rejected row under --strict: the fit is shown, no model written", async () => {
    const path = file("bad-row.csv", `${readFileSync(exact, "utf8")}\n12,loud\n`);
    const model = join(folder, "strict-model.json");
    expect((await inProcess(["fit", path, "--strict", "-o", model])).code).toBe(65);
    expect(existsSync(model)).toBe(false);
    expect((await inProcess(["fit", path, "-o", model])).code).toBe(0);
    expect(existsSync(model)).toBe(true);
  });
  test.each([
    ["no readings named", ["fit"], 64, /fit walk\.csv/],
    ["no such file", ["fit", join(folder, "nowhere.csv")], 66, /no such file/],
    ["no level", ["fit", file("no-level.csv", "distance_m,notes\n4,ok\n")], 65, /received_dbm/],
    ["an unknown line", ["fit", exact, "--ignore-line", "99"], 64, /--ignore-line 2/],
    ["a frequency elsewhere", ["fit", exact, "--frequency", "5200"], 64, /2400 to 2500/],
    ["half a place", ["fit", exact, "--transmitter-at", "4"], 64, /X,Y,Z/],
    ["a foreign column", ["fit", exact, "--map", "ssid=Name"], 64, /received_dbm/],
  ] as const)("%s", async (_, args, expected, words) => {
    const { code, err } = await inProcess(args);
    expect(code).toBe(expected);
    expect(err).toMatch(words);
    expect(err).toMatch(/Try: /);
  });
  test("--json with readings of no use prints the one value that says so", async () => {
    const { code, out } = await inProcess(["fit", file("none.csv", "distance_m,dbm\n"), "--json"]);
    expect(code).toBe(65);
    expect(schemaFaults("refused", JSON.parse(out))).toEqual([]);
  });
});

describe("the demo walk", () => {
  const ARGS = [DEMO, "--set", "tx_power_dbm=0"];
  test("is what its maker writes, byte for byte", () => {
    const made = join(folder, "made");
    expect(
      spawnSync(process.execPath, ["tests/tools/make-demo-walk.js", made], { cwd: PROJECT }).status,
    ).toBe(0);
    const name = "ropewalk-walk.csv";
    expect(readFileSync(join(made, name), "utf8")).toBe(readFileSync(join(PROJECT, DEMO), "utf8"));
  });
  test("and the model kept beside it are one", async () => {
    const { model } = await json([...ARGS, "--frequency", "2442"]);
    const kept = readFileSync(join(PROJECT, "fixtures/readings/ropewalk-model.json"), "utf8");
    expect(JSON.parse(kept)).toEqual(model);
  });
  /** The maker's own figures: exponent 2.6, 41 dB at 1 m. */
  test("holds the truth within its intervals; what was not heard is not dropped; the stray is named", async () => {
    const { fit, readings } = await json(ARGS);
    const [low, high] = fit!.exponentInterval;
    expect(low < 2.6 && 2.6 < high).toBe(true);
    const [least, most] = fit!.referenceLossIntervalDb;
    expect(least < 41 && 41 < most).toBe(true);
    expect(fit!.method).toBe("censored-likelihood");
    expect(fit!.heardOnly!.exponent).toBeLessThan(fit!.exponent);
    expect([readings.rowCount, readings.usedCount, readings.heardCount]).toEqual([40, 40, 35]);
    expect(fit!.outliers.map(({ line, kind }) => [line, kind])).toEqual([[9, "more-loss"]]);
  });
  test("without the stray the others stand alone", async () => {
    const { fit, readings } = await json([...ARGS, "--ignore-line", "9"]);
    expect([readings.leftOutLines, fit!.outliers]).toEqual([[9], []]);
  });
  test("draws every reading once, within 80 columns, zero in the middle", async () => {
    const { out } = await inProcess(["fit", ...ARGS]);
    const plot = out.slice(out.indexOf("Measured less fitted\n"), out.indexOf("Up is more loss"));
    expect(plot.match(/ {4}0 \|/g)).toHaveLength(1);
    expect(plot.split("#")).toHaveLength(2);
    expect(tooWide(out, 80)).toEqual([]);
  });
  test("in feet says the same in feet", async () => {
    const { out } = await inProcess(["fit", ...ARGS, "--units", "ft"]);
    expect(out).toMatch(/heard from 7 to 128 ft/);
    expect(tooWide(out, 80)).toEqual([]);
  });
});

test("names from the file are shown, never obeyed", async () => {
  const rows = DISTANCES_M.map((m, index) => [
    "\u001b[2Jrow",
    m,
    LOSSLESS_DBM - lossDb(m) - (index === 5 ? 30 : OFF_DB[index]!),
  ]);
  const { out } = await inProcess(["fit", walk("hostile.csv", rows, "receiver,distance_m,received_dbm")]);
  expect(out).toMatch(/line 7 \(/);
  expect(out).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/);
});

describe("link with a model fitted on site", () => {
  interface Row {
    readonly distanceM: number;
    readonly pathLossDb: number;
    readonly predictionIntervalDb: readonly [number, number] | null;
  }
  const linked = async (
    args: readonly string[],
  ): Promise<{ rows: readonly Row[]; predictionReason: string | null }> => {
    const { code, out } = await inProcess(["link", ...args, "--json"]);
    expect(code).toBe(0);
    const value = JSON.parse(out) as { link: { rows: Row[]; predictionReason: string | null } };
    expect(schemaFaults("link", value)).toEqual([]);
    return value.link;
  };
  test("rows carry the textbook's prediction interval, s²·(1 + 1/n + (x − x̄)²/Sxx), worked from sums", async () => {
    const model = join(folder, "scattered-model.json");
    await inProcess(["fit", scattered, "-o", model]);
    const { rows, predictionReason } = await linked(["--path-model", model]);
    const x = DISTANCES_M.map((m) => 10 * Math.log10(m));
    const y = DISTANCES_M.map((m, index) => lossDb(m) + OFF_DB[index]!);
    const { slope, intercept, variance } = exactLineFit(x, y);
    const mean = x.reduce((sum, each) => sum + each, 0) / x.length;
    const spread = x.reduce((sum, each) => sum + (each - mean) ** 2, 0);
    expect(predictionReason).toBeNull();
    expect(rows).toHaveLength(7);
    for (const { distanceM, pathLossDb, predictionIntervalDb } of rows) {
      const at = 10 * Math.log10(distanceM);
      const half = 2.228139 * Math.sqrt(variance * (1 + 1 / x.length + (at - mean) ** 2 / spread));
      // 2.228139: Student's t, 10 degrees of freedom, 0.025 above (printed tables).
      expect(pathLossDb).toBeCloseTo(intercept + slope * at, 9);
      expect(predictionIntervalDb![0]).toBeCloseTo(pathLossDb - half, 4);
      expect(predictionIntervalDb![1]).toBeCloseTo(pathLossDb + half, 4);
    }
    const { out } = await inProcess(["link", "--path-model", model]);
    expect(out.replace(/\s+/g, " ")).toMatch(/95 % of readings lie within ±\d+\.\d dB at 20 m/);
    expect(out).not.toMatch(/sigma \d\.\d dB of the path model is not in it/);
    expect(tooWide(out, 80)).toEqual([]);
  });
  test("other models have none, and say why", async () => {
    const typed = file(
      "typed.json",
      JSON.stringify({
        schema: "stillband/path-model@1",
        kind: "log-distance",
        exponent: 2.4,
        referenceLossDb: 41,
      }),
    );
    for (const words of [[], ["--path-model", typed]]) {
      const { rows, predictionReason } = await linked(words);
      expect(rows.map((row) => row.predictionIntervalDb)).toEqual(rows.map(() => null));
      expect(predictionReason).toMatch(/not fitted on site/);
    }
  });
  test("a record that was spoilt is refused whole", async () => {
    const model = join(folder, "exact-model.json");
    await inProcess(["fit", exact, "-o", model]);
    const record = JSON.parse(readFileSync(model, "utf8")) as object;
    const spoilt = file("spoilt.json", JSON.stringify({ ...record, covariance: [[1, 2]] }));
    const { code, err } = await inProcess(["link", "--path-model", spoilt]);
    expect(code).toBe(65);
    expect(err).toMatch(/covariance/);
  });
});

describe("a venue's room takes a model's file", () => {
  const house = (model: string): string => `name: Tar House
units: m
rooms:
  - { name: hall, outline: [[0, 0], [20, 0], [20, 10], [0, 10]], height: 8, path_model: ${model} }
systems:
  - { name: main, rooms: [hall], profile: raster-13 }
luminaires:
  - { name: H1, room: hall, x: 5, y: 5, trim_height: 5 }
`;
  test("beside it, by name; what is wrong with it is told", async () => {
    await inProcess(["fit", exact, "-o", join(folder, "hall.json")]);
    const { loadVenue } = await import("../../src/cli/load-venue.js");
    const { Readable, Writable } = await import("node:stream");
    const io = { out: new Writable(), err: new Writable(), stdin: Readable.from([]), env: {} };
    const { venue } = await loadVenue(file("house.yaml", house("hall.json")), io);
    expect(venue.rooms[0]!.pathModel).toMatchObject({ kind: "log-distance", freedomCount: 10 });
    file("wrong.json", '{"schema": "stillband/path-model@1", "kind": "log-distance"}');
    await expect(loadVenue(file("wrong.yaml", house("wrong.json")), io)).rejects.toThrow(
      /wrong\.json.*exponent/,
    );
    await expect(loadVenue(file("lacking.yaml", house("gone.json")), io)).rejects.toMatchObject({
      exitCode: 66,
    });
  });
});
