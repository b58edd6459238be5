import { describe, expect, test } from "vitest";
import { CREW_COLUMNS, crewCell, crewFigures, hangSheet, surveyForm } from "../../src/index.js";
import type { CrewKind } from "../../src/index.js";

describe("a crew's cell", () => {
  test.each<[string, CrewKind, "m" | "ft", string | null, number | null]>([
    // 1 in = 0.0254 m, 1 lb = 0.45359237 kg, both exact since 1959
    ["450 mm", "length", "m", null, 0.45],
    ["1,25", "length", "m", null, 1.25],
    ["18", "length", "ft", "in", 0.4572],
    ["1.5", "length", "ft", null, 0.4572],
    [`1' 6"`, "length", "m", null, 0.4572],
    ["1 ft 6 in", "length", "m", null, 0.4572],
    ["1 1/4 in", "length", "m", null, 0.03175],
    [`1' 6 1/2"`, "length", "ft", null, 0.4699],
    ["3/4", "length", "m", "in", 0.01905],
    ["50", "weight", "ft", null, 22.6796185],
    ["50", "weight", "m", null, 50],
    ["50 lbs", "weight", "m", "kg", 22.6796185],
    ["900 g", "weight", "ft", null, 0.9],
    ["12°", "angle", "m", null, 12],
    ["20A", "amperes", "m", null, 20],
    ["8", "count", "m", null, 8],
    ["230 V", "volts", "ft", null, 230],
    ["10 %", "ratio", "m", null, 0.1],
    ["10", "ratio", "m", "%", 0.1],
    ["0,15", "ratio", "m", null, 0.15],
    ["0.5", "weight-per-length", "m", null, 0.5],
    ["500 g/m", "weight-per-length", "ft", null, 0.5],
    // 0.45359237 / 0.3048
    ["0.3", "weight-per-length", "ft", null, 0.4464491830708661],
    ["-18 in", "offset", "m", null, -0.4572],
    [`−1' 6"`, "offset", "m", null, -0.4572],
    ["+450 mm", "offset", "m", null, 0.45],
    ["0", "offset", "m", null, 0],
    ["- ", "offset", "m", null, null],
    ["0.5 kg", "weight-per-length", "m", null, null],
    ["1' 14\"", "length", "ft", null, null],
    ["-3", "length", "m", null, null],
    ["1/0 in", "length", "m", null, null],
    ["about 3", "length", "m", null, null],
    ["12 kg", "length", "m", null, null],
    ["1e3", "weight", "m", null, null],
    ["", "weight", "m", null, null],
  ])("%j as a %s in %s under a header of %s", (cell, kind, units, unit, value) => {
    const read = crewCell(cell, kind, units, unit);
    if (value === null) expect(read).toBeNull();
    else expect(read).toBeCloseTo(value, 12);
  });
});

describe("a crew's columns", () => {
  test("come from the survey form, by name whatever case, spaces or unit", () => {
    const { hang, circuit, faults } = crewFigures(
      {
        ...{
          "BODY HEIGHT (mm)": "457.2",
          hook_rated: "40 kg",
          "Hangs from": "Structure",
          suspension: "wire rope",
        },
        ...{
          Control: "Time clock",
          "Breaker (A)": "20",
          earth: "yes",
          "Old chain": "6 mm",
          "box rated": "?",
        },
      },
      "ft",
    );
    expect(hang).toEqual({
      bodyHeightM: 0.4572,
      hookRatedKg: 40,
      hangsFrom: "structure",
      suspension: "wire-rope",
    });
    expect(circuit).toEqual({ control: "time-clock", breakerA: 20, earth: "yes" });
    expect(faults).toEqual([]);
  });
  test("a cell that can't be is told and left open: a rating of nothing is none", () => {
    const { hang, faults } = crewFigures(
      { "Box rated": "0", slope: "steep", suspension: "string", constructor: "x" },
      "m",
    );
    expect(hang).toEqual({});
    expect(faults.map(({ column, value }) => [column, value])).toEqual([
      ["Box rated", "0"],
      ["slope", "steep"],
      ["suspension", "string"],
    ]);
    for (const { expected } of faults) expect(expected).not.toBe("");
  });
  test("a luminaire's own, shares of at most 1, and units that headers name in two words", () => {
    const { hang, circuit, point, faults } = crewFigures(
      {
        ...{ "Cord weight (lb/ft)": "0.1", "Weave share (%)": "12", "Floor offset (mm)": "-300" },
        ...{ "Trim from": "local floor", "Feed length": "4.5 m", "Power factor": "0.95", Supply: "120" },
      },
      "m",
    );
    expect(hang.cordKgPerM).toBeCloseTo(0.14881639, 8); // 0.1 · 0.45359237 / 0.3048
    expect(hang.weaveRatio).toBe(0.12);
    expect(circuit).toEqual({ supplyV: 120 });
    expect(point).toEqual({
      floorOffsetM: -0.3,
      trimFrom: "local-floor",
      feedM: 4.5,
      powerFactorRatio: 0.95,
    });
    expect(faults).toEqual([]);
    const bad = crewFigures({ "power factor": "95", supply: "0", "trim from": "floor" }, "m");
    expect([bad.point, bad.circuit, bad.faults.length]).toEqual([{}, {}, 3]);
  });
  test("what the form asks with a choice is what the sheets read", () => {
    const own = surveyForm()[0]!.fields.filter(({ isFiled }) => !isFiled);
    for (const { column, answer } of own) {
      const { holds } = CREW_COLUMNS[column] ?? { holds: null };
      if (answer.kind === "choice") expect([column, answer.choices]).toEqual([column, holds]);
    }
    const computed = own.filter(({ column }) => CREW_COLUMNS[column] !== undefined);
    expect(computed.length).toBeGreaterThan(8);
  });
  test("a surveyed point, typed in line by line, hangs", () => {
    const further = {
      ...{ "Link pitch": "1 1/4 in", "Body height": "18 in", Slope: "0" },
      ...{ "Box rated": "50 lb", "Hook rated": "60 lb", "Suspension rated": "80 lb" },
    };
    const figures = { suspensionKgPerM: 0.3, cordKgPerM: 0.1, receiverKg: 0 };
    const point = {
      name: "P",
      room: "loft",
      ceilingHeightM: 8,
      trimHeightM: 6,
      weightKg: 9,
      emergency: "no" as const,
    };
    const { rows } = hangSheet({ points: [{ ...point, ...crewFigures(further, "ft").hang }], figures });
    expect(rows[0]!.flags).toEqual([]);
    // (2 − 0.4572)/0.03175 = 48.6
    expect(rows[0]!.stepCount).toBe(48);
  });
});
