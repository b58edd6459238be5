/** README's figures of accuracy are computed, and good enough; `node tests/tools/accuracy.js` writes them. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { accuracyBlock, comparisons, withAccuracy } from "./tools/accuracy.js";
import { PROJECT } from "./tools/core-program.js";

interface Comparison {
  readonly formula: string;
  readonly unit: string;
  readonly rowCount: number;
  readonly greatest: number;
}
const rows = (await comparisons()) as readonly Comparison[];

/** What a planner may be off by and never see it; relative ones leave eight digits. */
const MOST: Readonly<Record<string, number>> = { dB: 0.1, mm: 1e-3, relative: 1e-8, absolute: 1e-8 };

describe("the comparison with outside tables", () => {
  test.each(rows.map((row) => [row.formula, row] as const))("%s: close enough", (_formula, row) => {
    expect(row.rowCount).toBeGreaterThan(1);
    expect(row.greatest).toBeGreaterThanOrEqual(0);
    // Ours has the mask's skirts, the worst legal: up to 0.51 dB more power lies there than in the simulator's.
    const most = row.formula.startsWith("overlap") ? 0.51 : MOST[row.unit]!;
    expect(row.greatest).toBeLessThan(most);
  });
  test("stands in the README as computed", async () => {
    const readme = readFileSync(join(PROJECT, "README.md"), "utf8");
    expect(readme).toBe(await withAccuracy(readme));
  });
  test("shows a deviation rounded up, and one that is no number as such", () => {
    const shown = (greatest: number, unit: string): string =>
      accuracyBlock([{ formula: "f", check: "c", unit, rowCount: 2, greatest }])
        .split(" | ")
        .at(-1)!;
    expect(shown(0.0121, "dB")).toMatch(/^0\.02 dB \|/);
    expect(shown(0.3, "dB")).toMatch(/^0\.3 dB \|/);
    expect(shown(2.1e-10, "dB")).toMatch(/^3e-10 dB \|/);
    expect(shown(9.5e-10, "dB")).toMatch(/^1e-9 dB \|/);
    expect(shown(3e-11, "relative")).toMatch(/^3e-11, of the value \|/);
    expect(shown(0, "absolute")).toMatch(/^below 1e-12 \|/);
    expect(shown(NaN, "dB")).toMatch(/^not a number \|/);
  });
});
