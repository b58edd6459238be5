/** A room's plan in text: read back cell by cell against the coordinates that went in. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { verdictOf } from "../../src/propagation/index.js";
import { plainPen } from "../../src/report/pen.js";
import { planKey } from "../../src/report/plan-key.js";
import { planPicture, planStepM } from "../../src/report/plan-picture.js";
import { cellsBetween } from "../../src/report/plan/line-cells.js";
import { columnsOf } from "../../src/report/text-layout.js";
import { verdictMark, verdictWord } from "../../src/report/verdict-mark.js";
import type { MarginField } from "../../src/venue/index.js";
import { rectangle, room, wall } from "../helpers/venues.js";

const LEFT = 6;
const style = { pen: plainPen, units: "m", columnCount: 78 } as const;
/** 30 m in at most 71 columns between cells: half a metre a column, a metre a row; 19 rows. */
const hall = room("hall", rectangle(0, 0, 30, 18));
const brick = { lossDb: 9 };

function cell(lines: readonly string[], x: number, y: number): string {
  return [...lines[18 - Math.round(y)]!][LEFT + Math.round(x / 0.5)] ?? " ";
}

function fieldOf(marginDb: (x: number, y: number) => number | null): MarginField {
  const leastMarginDb = Array.from({ length: 60 * 36 }, (_, index) =>
    marginDb(((index % 60) + 0.5) / 2, (Math.floor(index / 60) + 0.5) / 2),
  );
  return { from: { x: 0, y: 0 }, stepM: 0.5, columnCount: 60, rowCount: 36, leastMarginDb };
}

describe("walls", () => {
  const south = wall({ x: 0, y: 0 }, { x: 30, y: 0 }, brick, {
    openings: [{ fromM: 10, toM: 13, bottomM: 0, topM: 2, build: { lossDb: 0 } }],
  });
  const across = wall({ x: 20, y: 0 }, { x: 20, y: 12 }, brick);
  const lines = planPicture({ room: hall, walls: [south, across], spots: [], field: null }, style);

  test("stand where they are, meet, and leave their doors open; the outline without a wall is dotted", () => {
    expect(planStepM(hall.outline, style)).toBe(0.5);
    expect(cell(lines, 5, 0)).toBe("━");
    for (const x of [10.5, 11, 12, 12.5]) expect(cell(lines, x, 0), `door at ${x}`).toBe(" ");
    expect(cell(lines, 9, 0)).toBe("━");
    expect(cell(lines, 14, 0)).toBe("━");
    expect(cell(lines, 20, 0)).toBe("┻");
    for (const y of [1, 6, 11, 12]) expect(cell(lines, 20, y), `wall at ${y}`).toBe("┃");
    expect(cell(lines, 20, 13)).toBe(" ");
    for (const [x, y] of [
      [30, 9],
      [0, 9],
      [15, 18],
    ] as const)
      expect(cell(lines, x, y)).toBe("·");
  });

  test("of another storey are left out", () => {
    const upstairs = { ...across, storey: "first" };
    const drawn = planPicture({ room: hall, walls: [upstairs], spots: [], field: null }, style);
    expect(drawn.join("")).not.toMatch(/[┃━]/);
  });

  test("a slanted wall is one unbroken line from end to end", () => {
    fc.assert(
      fc.property(fc.integer({ min: -30, max: 30 }), fc.integer({ min: -30, max: 30 }), (column, row) => {
        const cells = cellsBetween({ columnIndex: 0, rowIndex: 0 }, { columnIndex: column, rowIndex: row });
        expect(cells.at(-1)).toEqual({ columnIndex: column || 0, rowIndex: row || 0 });
        expect(cells).toHaveLength(Math.abs(column) + Math.abs(row) + 1);
        cells.slice(1).forEach((one, index) => {
          const before = cells[index]!;
          expect(
            Math.abs(one.columnIndex - before.columnIndex) + Math.abs(one.rowIndex - before.rowIndex),
          ).toBe(1);
          // Never farther than a cell from the straight line.
          expect(Math.abs(one.columnIndex * row - one.rowIndex * column)).toBeLessThanOrEqual(
            Math.abs(column) + Math.abs(row),
          );
        });
      }),
    );
  });

  test("a door narrower than a row still shows", () => {
    const west = wall({ x: 0, y: 0 }, { x: 0, y: 18 }, brick, {
      openings: [{ fromM: 8.6, toM: 9.2, bottomM: 0, topM: 2, build: { lossDb: 0 } }],
    });
    expect(cell(planPicture({ room: hall, walls: [west], spots: [], field: null }, style), 0, 9)).toBe(" ");
  });
});

describe("spots", () => {
  test("stand at their places, and side by side where two share one", () => {
    const spots = [
      { mark: "T", at: { x: 2.5, y: 13 } },
      { mark: "12", at: { x: 15, y: 9 } },
      { mark: "13", at: { x: 15, y: 9 } },
    ];
    const lines = planPicture({ room: hall, walls: [], spots, field: null }, style);
    expect(cell(lines, 2.5, 13)).toBe("T");
    expect(cell(lines, 15, 9) + cell(lines, 15.5, 9)).toBe("12");
    const text = lines.join("\n");
    expect(text.match(/(?<!\d)13(?!\d)/g)).toHaveLength(1);
    expect(text).not.toMatch(/1213|1312/);
  });
});

describe("a field of margins", () => {
  test("draws a thin line where it crosses 0, 6 and 15 dB, and the verdicts' marks between", () => {
    // x - 8 dB: the limits lie at x = 8, 14 and 23 m.
    const lines = planPicture({ room: hall, walls: [], spots: [], field: fieldOf((x) => x - 8) }, style);
    for (const limit of [8, 14, 23])
      for (const y of [2, 7, 16]) {
        const near = [limit - 0.5, limit, limit + 0.5].map((x) => cell(lines, x, y)).join("");
        expect(near.trim(), `at ${limit}, ${y}`).toBe("│");
      }
    for (const line of lines.slice(1, 18)) {
      expect(line.match(/│/g)).toHaveLength(3);
      expect(line.slice(LEFT)).not.toMatch(/[─┌┐└┘┼]/);
      const [fails, thin, sound, ample] = line.slice(LEFT).split("│");
      expect(fails).toMatch(/^[·x ]*$/);
      expect(thin).toMatch(/^[! ]*$/);
      expect(sound).toMatch(/^[o ]*$/);
      expect(ample).toMatch(/^[* ·]*$/);
    }
    expect(["x", "!", "o", "*"].every((mark) => lines.join("").includes(mark))).toBe(true);
  });

  test("closes its lines round a hill", () => {
    const hill = fieldOf((x, y) => (Math.hypot(x - 15, y - 9) < 4 ? 3 : -3));
    const lines = planPicture({ room: hall, walls: [], spots: [], field: hill }, style);
    const drawn = lines.slice(1, 18).join("");
    for (const corner of "┌┐└┘") expect(drawn).toContain(corner);
    expect(drawn).not.toMatch(/[╵╶╷╴]/);
    // Round it, the lines stay within a column's width and a row's height of the circle.
    lines.slice(1, 18).forEach((line, index) => {
      [...line].slice(LEFT).forEach((mark, column) => {
        if (!/[─│┌┐└┘]/.test(mark)) return;
        const [x, y] = [column * 0.5, 17 - index];
        expect(Math.abs(Math.hypot(x - 15, y - 9) - 4)).toBeLessThan(1.2);
      });
    });
  });
});

describe("the scale", () => {
  test.each(["m", "ft"] as const)("is round in %s, and every line fits", (units) => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 200, noNaN: true }),
        fc.double({ min: 2, max: 200, noNaN: true }),
        (widthM, depthM) => {
          const outline = rectangle(-3, 5, widthM - 3, depthM + 5);
          const walls = outline.map((from, index) => wall(from, outline[(index + 1) % 4]!, brick));
          const lines = planPicture(
            { room: { outline, storey: "ground" }, walls, spots: [], field: null },
            { ...style, units },
          );
          for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(78);
          expect(lines.length).toBeLessThanOrEqual(26);
          const step = planStepM(outline, { units, columnCount: 78 }) / (units === "ft" ? 0.3048 : 1);
          const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
          expect([1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10].some((one) => Math.abs(one - lead) < 1e-9)).toBe(
            true,
          );
        },
      ),
    );
  });
});

describe("the list beneath", () => {
  test("numbers the receivers, downwards, each with its verdict's mark", () => {
    const receivers = [-3.2, 0, 6.04, 15, null].map((workingMarginDb, index) => ({
      name: `H${index + 1}`,
      workingMarginDb,
    }));
    const lines = planKey(receivers, { ...style, columnCount: 40 });
    expect(lines).toEqual([
      " 1 x  -3.2 H1    4 *  15.0 H4",
      " 2 !   0.0 H2    5 -  none H5",
      " 3 o   6.0 H3",
    ]);
  });

  test("marks as the verdicts are", () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), (marginDb) => {
        expect(verdictWord(marginDb)).toBe(verdictOf(marginDb));
        expect(verdictMark(marginDb)).toBe(
          { fails: "x", thin: "!", sound: "o", ample: "*" }[verdictOf(marginDb)],
        );
      }),
      { examples: [[0], [6], [15], [6 - 1e-12], [-1e-12], [-Infinity]] },
    );
  });
});
