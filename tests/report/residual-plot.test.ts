import { describe, expect, test } from "vitest";
import { residualPlot } from "../../src/report/residual-plot.js";
import type { PlotPoint } from "../../src/report/residual-plot.js";

const point = (distanceM: number, residualDb: number, mark: PlotPoint["mark"] = "o"): PlotPoint => ({
  distanceM,
  residualDb,
  mark,
});
/** Rows of the drawing, top first, without the scale. */
const cells = (lines: readonly string[]): string[] => lines.slice(0, 13).map((line) => line.slice(7));

describe("residualPlot", () => {
  test("puts a reading where its logarithm and its dB say", () => {
    // 47 columns to draw in: 1 m at 0, 10 m in the middle (23), 100 m at 46; ±6 dB over 13 rows: 1 dB a row.
    const rows = cells(residualPlot([point(1, -6), point(10, 0), point(100, 6)], "m", 54));
    expect(rows[12]![0]).toBe("o");
    expect(rows[6]![23]).toBe("o");
    expect(rows[0]![46]).toBe("o");
    expect(rows.join("").match(/o/g)).toHaveLength(3);
  });
  test("has its zero line in the middle and a scale that goes as far down as up", () => {
    const lines = residualPlot([point(2, 3), point(20, -13)], "m", 60);
    expect(
      lines.map((line) => line.slice(0, 7).trim()).filter((label) => label !== "|" && label !== ""),
    ).toEqual(["+14 |", "+7 |", "0 |", "-7 |", "-14 |", "+"]);
    expect(lines[6]).toMatch(/^ {4}0 \|-+$/);
  });
  test("lets the mark stand that says most where marks meet", () => {
    const there = [point(1, 0, "^"), point(1, 0, "#"), point(1, 0), point(9, 5)];
    expect(cells(residualPlot(there, "m", 60))[6]![0]).toBe("#");
  });
  test("names distances beneath, in the reader's unit, none over another", () => {
    const [metres, feet] = (["m", "ft"] as const).map((unit) =>
      residualPlot([point(1, 1), point(90, -1)], unit, 80)
        .at(-1)!
        .trim()
        .split(/ {2,}/),
    );
    expect(metres!.slice(0, 3)).toEqual(["1 m", "2 m", "3 m"]);
    expect(feet!.every((label) => /^\d+ ft$/.test(label))).toBe(true);
  });
  test("stands for one reading, or readings at one distance, or none off the line", () => {
    for (const points of [[point(5, 0)], [point(5, 1), point(5, -1)]])
      expect(residualPlot(points, "m", 40)).toHaveLength(15);
  });
  test("never runs past its columns, however far off a reading is", () => {
    const lines = residualPlot([point(0.3, 300), point(900, -2)], "ft", 80);
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });
});
