import { describe, expect, test } from "vitest";
import { pathLoss, pathModelWords, readPathModel } from "../../src/propagation/index.js";

const FITTED = {
  schema: "stillband/path-model@1",
  kind: "log-distance",
  exponent: 2.4,
  referenceLossDb: 41.2,
  referenceDistanceM: 1,
  sigmaDb: 3.7,
  distanceRangeM: [3, 35],
};

describe("readPathModel", () => {
  test("takes a fitted model, either spelling, and lets other keys stand", () => {
    const { schema, ...model } = FITTED;
    expect(schema).toBe("stillband/path-model@1");
    expect(readPathModel({ ...FITTED, rmseDb: 3.6, readings: [] }, "hall.json")).toEqual({
      model,
      issues: [],
    });
    const snake = { schema, kind: "log-distance", exponent: 2.4, reference_loss_db: 41.2, sigma_db: null };
    expect(readPathModel(snake, "hall.yaml").model).toStrictEqual({
      kind: "log-distance",
      exponent: 2.4,
      referenceLossDb: 41.2,
    });
  });

  // Textbook form: 41.2 + 24·log10(10).
  test("its loss is the textbook's, with a caveat outside the distances that it was fitted over", () => {
    const model = readPathModel(FITTED, "hall.json").model!;
    const at = (distanceM: number): ReturnType<typeof pathLoss> =>
      pathLoss(model, { distanceM, frequencyMhz: 2450 });
    expect(at(10).lossDb).toBeCloseTo(65.2, 9);
    expect(at(10).sigmaDb).toBe(3.7);
    for (const [distanceM, isOutside] of [
      [2.9, true],
      [3, false],
      [35, false],
      [35.1, true],
    ] as const)
      expect(at(distanceM).caveats.includes("outside-model-range"), String(distanceM)).toBe(isOutside);
    expect(pathModelWords(model)).toMatch(/exponent 2\.4.*3\.7 dB.*3–35 m/);
  });

  test.each([
    ["schema", "stillband/path-model@2", "stillband/path-model@1"],
    ["schema", undefined, "stillband/path-model@1"],
    ["kind", "indoor", "log-distance"],
    ["exponent", "2.4", "from 0 to 10"],
    ["exponent", NaN, "from 0 to 10"],
    ["exponent", undefined, "from 0 to 10"],
    ["referenceLossDb", -1, "from 0 to 200"],
    ["referenceDistanceM", 0, "from 0.01"],
    ["sigmaDb", 31, "from 0 to 30"],
    ["distanceRangeM", [5, 2], "from <= to"],
    ["distanceRangeM", [0, 2], "from <= to"],
    ["distanceRangeM", [1, 2, 3], "from <= to"],
    ["distanceRangeM", "1-2", "from <= to"],
    ["distanceRangeM", [], "from <= to"],
    ["distanceRangeM", ["1", 2], "from <= to"],
    ["distanceRangeM", [1, "2"], "from <= to"],
    ["distanceRangeM", [1, Infinity], "from <= to"],
  ])("%s of %o: one message, naming the key and what was expected", (key, value, expected) => {
    const { model, issues } = readPathModel({ ...FITTED, [key]: value }, "hall.json");
    expect(model).toBeNull();
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({
      severity: "error",
      source: "hall.json",
      column: key,
      action: "stopped",
    });
    expect(issues[0]!.expected).toContain(expected);
  });

  test("takes the limits themselves, and one distance as a range", () => {
    for (const limits of [
      { exponent: 0, referenceLossDb: 200, referenceDistanceM: 0.01, sigmaDb: 0, distanceRangeM: [3, 3] },
      { exponent: 10, referenceLossDb: 0, referenceDistanceM: 1000, sigmaDb: 30, distanceRangeM: [3, 9] },
    ])
      expect(readPathModel({ ...FITTED, ...limits }, "x").model).toEqual({ kind: "log-distance", ...limits });
  });

  test.each([
    ["2.4", "2.4"],
    [-1, "-1"],
    [[5, 2], "[5, 2]"],
    [{ from: 5 }, "a mapping"],
    [null, "null"],
  ])("shows what it read: %o", (exponent, value) => {
    expect(readPathModel({ ...FITTED, exponent }, "x").issues).toEqual([
      {
        code: "bad-cell",
        severity: "error",
        source: "x",
        column: "exponent",
        value,
        expected: "a number from 0 to 10",
        action: "stopped",
      },
    ]);
  });

  test("tells what isn't there from what is wrong", () => {
    const { exponent, ...rest } = FITTED;
    expect(exponent).toBe(2.4);
    const [issue] = readPathModel(rest, "x").issues;
    expect(issue).toMatchObject({ code: "missing-cell", column: "exponent" });
    expect(issue).not.toHaveProperty("value");
    const [unreadable] = readPathModel(3, "x").issues;
    expect(unreadable).toStrictEqual({
      code: "unreadable",
      severity: "error",
      source: "x",
      value: "3",
      expected: "a mapping with schema: stillband/path-model@1",
      action: "stopped",
    });
  });

  test("tells every mistake at once, and what is no mapping at all", () => {
    expect(readPathModel({}, "x").issues.map(({ column }) => column)).toEqual([
      "schema",
      "kind",
      "exponent",
      "referenceLossDb",
    ]);
    for (const data of [null, 3, "x", []])
      expect(readPathModel(data, "x").issues[0]?.code).toBe("unreadable");
  });
});
