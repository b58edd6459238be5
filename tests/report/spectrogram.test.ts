/** The grey picture of a sweep, read back from the text, against the sweep's own file read another way. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { tooWide } from "../cli/columns.js";
import { scratch } from "../cli/scratch.js";
import { inProcess, PROJECT, SCANS } from "../cli/stillband.js";
import { wideSweep } from "./sweep-rows.js";

const { file } = scratch();
const DEMO_SWEEP = `${SCANS}/ropewalk-full-sweep.csv`;
const SHADES = "█▓▒░";

interface Picture {
  readonly head: string;
  readonly rows: readonly {
    readonly clock: string;
    readonly cells: readonly string[];
    readonly after: string;
  }[];
  readonly scale: string;
}

interface Drawn {
  /** The level that each shade is above, dBm, as the legend says. */
  readonly edges: ReadonlyMap<string, number>;
  readonly pictures: readonly Picture[];
  readonly busyScale: string;
}

async function drawn(args: readonly string[]): Promise<Drawn> {
  const { code, out } = await inProcess(["survey", ...args]);
  expect(code).toBe(0);
  expect(tooWide(out, 80)).toEqual([]);
  const all = out.split("\n");
  const start = all.indexOf("Power by time and frequency");
  const lines = all.slice(start + 1, all.indexOf("", start));
  const legend = lines.slice(0, 2).join(" ");
  const edges = [...SHADES].map((shade) => {
    const [, level] = new RegExp(`${shade} over (-\\d+)`).exec(legend)!;
    return [shade, Number(level)] as const;
  });
  const pictures: Picture[] = [];
  for (let at = 2; at < lines.length;) {
    const foot = lines.findIndex((line, index) => index > at && /^ +└─+$/.test(line));
    const width = lines[foot]!.length - lines[foot]!.indexOf("└") - 1;
    const rows = lines.slice(at + 1, foot).map((line) => {
      const axis = line.indexOf("│");
      const cells = [...line.slice(axis + 1).padEnd(width)];
      return {
        clock: line.slice(0, axis).trim(),
        cells: cells.slice(0, width),
        after: cells.slice(width).join("").trim(),
      };
    });
    pictures.push({ head: lines[at]!, rows, scale: lines[foot + 1]! });
    at = foot + 2;
  }
  return { edges: new Map(edges), pictures, busyScale: all.find((line) => /^ +2400 .* MHz$/.test(line))! };
}

/** The shade of a level by the legend. */
function shadeOf(levelDbm: number, edges: Drawn["edges"]): string {
  return [...SHADES].find((shade) => levelDbm > edges.get(shade)!) ?? " ";
}

/** The wide rows of a file: time stamp → level by MHz, cell by cell. */
function naive(path: string): Map<string, Map<number, number>> {
  const passes = new Map<string, Map<number, number>>();
  for (const line of readFileSync(path, "utf8").trim().split("\n")) {
    const [date, time, low, , bin, , ...levels] = line.split(",").map((cell) => cell.trim());
    const key = `${date} ${time}`;
    const pass = passes.get(key) ?? new Map<number, number>();
    for (const [index, level] of levels.entries())
      pass.set(Math.floor((Number(low) + index * Number(bin)) / 1e6), Number(level));
    passes.set(key, pass);
  }
  return passes;
}

describe("the demo's sweep", () => {
  test("every mark is the highest level of its 2 MHz and its stretch of time", async () => {
    const { edges, pictures } = await drawn(["--place", "hall front", "--crowd", "full", DEMO_SWEEP]);
    const passes = [...naive(join(PROJECT, DEMO_SWEEP))];
    expect(pictures).toHaveLength(1);
    const { rows, head } = pictures[0]!;
    expect(head).toBe("hall front, full: 40 passes, 2026-03-07");
    expect(rows.length).toBeLessThanOrEqual(24);
    const perRow = passes.length / rows.length;
    expect(Number.isInteger(perRow)).toBe(true);
    const used = new Set<string>();
    for (const [index, { clock, cells }] of rows.entries()) {
      const own = passes.slice(index * perRow, (index + 1) * perRow);
      expect(own[0]![0]).toBe(`2026-03-07 ${clock}`);
      for (const [column, mark] of cells.entries()) {
        const mhz = 2400 + 2 * column;
        const highest = Math.max(...own.flatMap(([, levels]) => [levels.get(mhz)!, levels.get(mhz + 1)!]));
        expect(mark, `${clock} ${mhz} MHz ${highest} dBm`).toBe(shadeOf(highest, edges));
        used.add(mark);
      }
    }
    expect([...used].sort()).toEqual([" ", "░", "▒", "▓", "█"].sort());
  });
  test("stands over the same scale as the picture of busy time", async () => {
    const { pictures, busyScale } = await drawn([DEMO_SWEEP]);
    expect(pictures[0]!.scale).toBe(busyScale);
    const ticks = [...busyScale.matchAll(/24\d\d/g)].map(
      ({ 0: mhz, index }) => index - 10 - (Number(mhz) - 2400) / 2,
    );
    expect(ticks).toEqual([0, 0, 0, 0, 0]);
  });
});

describe("sweeps of our own", () => {
  const clock = (second: number): string =>
    `19:${String(Math.floor(second / 60)).padStart(2, "0")}:${String(second % 60).padStart(2, "0")}`;

  test("several places one after the other, each with its place and crowd", async () => {
    const hall = file("hall.csv", wideSweep([{ time: "19:00:00", levels: { 2442: -30 } }]));
    const foyer = file("foyer.csv", wideSweep([{ time: "20:00:00", levels: { 2402: -30 } }]));
    const { pictures } = await drawn([
      "--place",
      "hall",
      "--crowd",
      "full",
      hall,
      "--place",
      "foyer",
      "--crowd",
      "empty",
      foyer,
    ]);
    expect(pictures.map(({ head }) => head)).toEqual([
      "foyer, empty: 1 pass, 2026-05-01",
      "hall, full: 1 pass, 2026-05-01",
    ]);
    expect(pictures.map(({ rows }) => rows[0]!.cells.indexOf("█"))).toEqual([1, 21]);
  });
  test("300 passes a second apart: at most 24 rows, and the one burst is not lost", async () => {
    const passes = Array.from({ length: 300 }, (_, second) => ({
      time: clock(second),
      levels: second === 187 ? { 2461: -60 } : {},
    }));
    const { pictures } = await drawn([file("long.csv", wideSweep(passes))]);
    const { rows } = pictures[0]!;
    expect(rows.length).toBeLessThanOrEqual(24);
    const marked = rows.filter(({ cells }) => cells.some((mark) => mark !== " "));
    expect(marked.map(({ cells }) => cells.indexOf("█"))).toEqual([30]);
    const after = rows[rows.indexOf(marked[0]!) + 1]!.clock;
    expect(marked[0]!.clock <= clock(187) && clock(187) < after).toBe(true);
  });
  test("what was not swept is not drawn as quiet", async () => {
    const cells = Array.from({ length: 20 }, () => "-100").join(", ");
    const part = `2026-05-01, 19:00:00, 2420000000, 2440000000, 1000000, 20, ${cells}\n`;
    const { pictures } = await drawn([file("part.csv", part)]);
    const marks = pictures[0]!.rows[0]!.cells.join("");
    expect(marks).toBe("·".repeat(10) + " ".repeat(10) + "·".repeat(22));
  });
  test("over midnight each day is named", async () => {
    const passes = [
      { date: "2026-05-01", time: "23:59:50", levels: {} },
      { date: "2026-05-02", time: "00:00:10", levels: {} },
      { date: "2026-05-02", time: "00:00:20", levels: {} },
    ];
    const { pictures } = await drawn([file("night.csv", wideSweep(passes))]);
    expect(pictures[0]!.rows.map(({ clock: time, after }) => [time, after])).toEqual([
      ["23:59:50", "2026-05-01"],
      ["00:00:10", "2026-05-02"],
      ["00:00:20", ""],
    ]);
  });
});
