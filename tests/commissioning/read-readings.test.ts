import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitPathLoss, readReadings, WALK_COLUMNS, walkLosses } from "../../src/commissioning/index.js";
import type { CutRow, ReadReadingsOptions } from "../../src/commissioning/index.js";
import { ArgumentError } from "../../src/issues/index.js";

const table = (...lines: string[]): CutRow[] =>
  lines.map((line, index) => ({ line: index + 1, cells: line.split(",") }));
const read = (lines: string[], more: Partial<ReadReadingsOptions> = {}) =>
  readReadings(table(...lines), { source: "walk.csv", ...more });

describe("columns are read by meaning", () => {
  test.each([
    ["receiver,distance_m,received_dbm", "P1,4,-52"],
    ["Fixture,Distance (m),dBm", "P1,4,-52"],
    ["Leuchte,Entfernung,Pegel [dBm]", "P1,4,-52"],
    ["RX,range,RSSI", "P1,4 m,-52 dBm"],
  ])("%s", (header, row) => {
    const { readings, issues } = read([header, row]);
    expect(issues).toEqual([]);
    expect(readings[0]).toMatchObject({
      line: 2,
      receiver: "P1",
      distanceM: 4,
      receivedDbm: -52,
      isHeard: true,
    });
  });
  test("its own columns all mean themselves", () => {
    const row = "2026-05-01T10:00:00Z,P1,T1,4,1,2,3,-52,,yes,-95,1,trim";
    const { readings } = read([WALK_COLUMNS.join(","), row]);
    expect(readings[0]).toEqual({
      line: 2,
      timeMs: Date.UTC(2026, 4, 1, 10),
      receiver: "P1",
      transmitter: "T1",
      distanceM: 4,
      at: { x: 1, y: 2, z: 3 },
      isHeard: true,
      receivedDbm: -52,
      isLevelAssumed: false,
      floorDbm: -95,
      wallCount: 1,
      stage: "trim",
    });
  });
  test("a column can be named", () => {
    const { readings } = read(["d (m),Feld", "4,-52"], {
      columns: { distance_m: "d (m)", received_dbm: "Feld" },
    });
    expect(readings[0]).toMatchObject({ distanceM: 4, receivedDbm: -52 });
    expect(() => read(["a"], { columns: { level: "a" } })).toThrow(ArgumentError);
  });
  test("feet by header, option or cell, and feet with inches", () => {
    const of = (header: string, cell: string, more = {}) =>
      read([`${header},dBm`, `${cell},-52`], more).readings[0]!.distanceM;
    expect(of("distance (ft)", "10")).toBeCloseTo(3.048, 12);
    expect(of("distance", "10", { units: "ft" })).toBeCloseTo(3.048, 12);
    expect(of("distance (m)", "10 ft")).toBeCloseTo(3.048, 12);
    expect(of("distance", "14'6\"")).toBeCloseTo(14.5 * 0.3048, 12);
    expect(of("distance_m", "10", { units: "ft" })).toBe(10);
  });
  test("a decimal comma where it may be one", () => {
    const rows = [
      { line: 1, cells: ["distance", "dBm"] },
      { line: 2, cells: ["4,5", "-52,5"] },
    ];
    const { readings } = readReadings(rows, { source: "w", decimalComma: true });
    expect(readings[0]).toMatchObject({ distanceM: 4.5, receivedDbm: -52.5 });
  });
  test("a quality becomes a level, marked assumed", () => {
    expect(read(["distance,quality %", "4,70"]).readings[0]).toMatchObject({
      receivedDbm: -65,
      isLevelAssumed: true,
    });
  });
});

describe("what was not heard is never a level", () => {
  test.each(["not heard", "No signal", "lost", "0", "100", "127", "-200", "-999"])("%s", (cell) => {
    const { readings, notHeardCount } = read(["distance,dBm", "4,-60", `40,${cell}`], { floorDbm: -92 });
    expect(readings[1]).toMatchObject({ isHeard: false, receivedDbm: null, floorDbm: -92 });
    expect(notHeardCount).toBe(1);
  });
  test("a level below a floor that the cell names", () => {
    expect(read(["distance,dBm", "40,<-95"]).readings[0]).toMatchObject({ isHeard: false, floorDbm: -95 });
  });
  test("a no outranks whatever fill value stands beside it", () => {
    const { readings } = read(["distance,dBm,heard,floor", "4,-60,yes,", "40,-110,no,-93", "50,,no,"], {
      floorDbm: -90,
    });
    expect(readings.map(({ receivedDbm, floorDbm }) => [receivedDbm, floorDbm])).toEqual([
      [-60, null],
      [null, -93],
      [null, -90],
    ]);
  });
  test("a lowest level that repeats as only a fill value does", () => {
    const { readings } = read(["distance,dBm", "4,-60", "8,-71", "9,-73", "40,-110", "45,-110", "50,-110"], {
      floorDbm: -95,
    });
    expect(readings.map(({ isHeard }) => isHeard)).toEqual([true, true, true, false, false, false]);
    expect(readings[5]!.floorDbm).toBe(-95);
  });
  test("without a floor the lowest level heard stands in, and that is said", () => {
    const { readings, issues } = read(["distance,dBm", "4,-60", "30,-88", "40,not heard"]);
    expect(readings[2]!.floorDbm).toBe(-88);
    expect(issues.map(({ code, severity }) => [code, severity])).toEqual([["assumed", "warning"]]);
    expect(read(["distance,dBm", "40,not heard"]).readings[0]!.floorDbm).toBeNull();
  });
});

describe("a row with a bad cell is rejected whole, and told by line, column and value", () => {
  test.each([
    ["distance,dBm", "x,-52", "distance", "bad-cell"],
    ["distance,dBm", "0,-52", "distance", "bad-cell"],
    ["distance,dBm", "4,abc", "dBm", "bad-cell"],
    ["distance,dBm", "4,-140", "dBm", "bad-cell"],
    ["distance,dBm", "4,", "dBm", "missing-cell"],
    ["distance,quality", "4,140", "quality", "bad-cell"],
    ["distance,dBm,walls", "4,-52,1.5", "walls", "bad-cell"],
    ["distance,dBm,heard", "4,-52,perhaps", "heard", "bad-cell"],
    ["distance,dBm,heard", "4,100,yes", "dBm", "contradiction"],
    ["distance,dBm,heard", "4,,yes", "dBm", "missing-cell"],
    ["x,y,dBm", "4,,-52", "y", "missing-cell"],
    ["receiver,dBm", ",-52", "receiver", "missing-cell"],
    ["distance,dBm,time", "4,-52,yesterday", "time", "bad-cell"],
    ["distance,dBm", "4,-52,9", undefined, "ragged-row"],
  ])("%s / %s", (header, row, column, code) => {
    const { readings, rejectedCount, issues } = read([header, "", row]);
    expect([readings.length, rejectedCount]).toEqual([0, 1]);
    expect(issues[0]).toMatchObject({ code, line: 3, severity: "error", ...(column && { column }) });
  });
  test.each([
    [["distance,place", "4,here"], "missing-column"],
    [["dBm,place", "-52,here"], "missing-column"],
    [["distance,dBm,RSSI", "4,-52,-53"], "contradiction"],
    [[], "no-usable-row"],
    [["distance,dBm"], "no-usable-row"],
  ])("a table that can't be used says why: %j", (lines, code) => {
    const { readings, issues, rowCount, rejectedCount } = read(lines);
    expect([readings, issues.map((issue) => issue.code), rowCount - rejectedCount]).toEqual([[], [code], 0]);
  });
  test("rows of other checks on a typed-in checklist are left aside with a note", () => {
    const { readings, issues } = read([
      "receiver,stage,received_dbm,heard",
      "P1,room,-60,yes",
      "P1,handover,,",
    ]);
    expect(readings.length).toBe(1);
    expect(issues.map(({ code, severity }) => [code, severity])).toEqual([["ignored", "note"]]);
  });
  test("rows in = used + rejected, whatever stands in the cells", () => {
    const cell = fc.oneof(
      fc.constantFrom("", "-60", "-110", "not heard", "<-90", "4", "3 m", "yes", "no", "100", "x"),
      fc.string({ maxLength: 6 }),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 30 }), (rows) => {
        const header = { line: 1, cells: ["receiver", "distance", "dBm", "heard", "walls", "x", "y"] };
        const cut = rows.map((cells, index) => ({ line: index + 2, cells }));
        const result = readReadings([header, ...cut], { source: "w" });
        const filled = cut.filter(({ cells }) => cells.some((each) => each.trim() !== ""));
        expect(result.rowCount).toBe(filled.length);
        expect(result.readings.length + result.rejectedCount).toBe(filled.length);
        for (const { isHeard, receivedDbm } of result.readings) expect(receivedDbm === null).toBe(!isHeard);
      }),
      { numRuns: 200, seed: 7 },
    );
  });
});

describe("walkLosses", () => {
  test("lossless level − received level; of what was not heard the least by its floor", () => {
    const { readings } = read(["distance,dBm,walls", "4,-52,0", "40,not heard,2"], { floorDbm: -95 });
    expect(walkLosses(readings, { losslessDbm: 20 })).toMatchObject({
      distanceM: [4, 40],
      lossDb: [72, 115],
      censored: [false, true],
      wallCount: [0, 2],
      unusable: [],
    });
  });
  test("distances from positions: to the transmitter that is named, or the only one", () => {
    const { readings } = read([
      "transmitter,x,y,z,dBm",
      "T1,3,4,0,-50",
      "T2,0,0,12,-60",
      "T3,1,1,1,-60",
      ",1,1,1,-60",
    ]);
    const transmitters = new Map([
      ["T1", { x: 0, y: 0, z: 0 }],
      ["T2", { x: 0, y: 0, z: 0 }],
    ]);
    const losses = walkLosses(readings, { losslessDbm: 0, transmitters });
    expect(losses.distanceM).toEqual([5, 12]);
    expect(losses.unusable.map(({ line }) => line)).toEqual([4, 5]);
    const only = walkLosses(readings.slice(3), {
      losslessDbm: 0,
      transmitters: new Map([["T9", { x: 1, y: 1, z: 4 }]]),
    });
    expect(only.distanceM).toEqual([3]);
    expect(() => walkLosses(readings, { losslessDbm: NaN })).toThrow(ArgumentError);
  });
  test("wall counts only where every reading has one", () => {
    const { readings } = read(["distance,dBm,walls", "4,-52,0", "8,-60,"]);
    expect(walkLosses(readings, { losslessDbm: 20 })).not.toHaveProperty("wallCount");
  });
  test("from a table to the model, by a known line", () => {
    const rows = [1, 2, 4, 8, 16, 32].map((d) => `${d},${20 - (42 + 30 * Math.log10(d))}`);
    const { readings } = read(["distance,dBm", ...rows, "60,not heard"], { floorDbm: -70 });
    const fit = fitPathLoss(walkLosses(readings, { losslessDbm: 20 }));
    expect([fit.exponent, fit.referenceLossDb]).toEqual([expect.closeTo(3, 9), expect.closeTo(42, 9)]);
  });
});
