import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { trapezoid } from "../../src/numeric/index.js";

describe("trapezoid", () => {
  test("exact for straight lines, fast for a bell", () => {
    expect(trapezoid((x) => 3 * x + 1, -1, 3, 1)).toBeCloseTo(16, 13);
    // ∫ e^(−x²) = √π; 40 intervals over ±8 leave nothing of the error.
    expect(trapezoid((x) => Math.exp(-x * x), -8, 8, 40)).toBeCloseTo(Math.sqrt(Math.PI), 14);
  });
  test("throws", () => {
    expect(() => trapezoid((x) => x, NaN, 1, 4)).toThrow(ArgumentError);
    expect(() => trapezoid((x) => x, 0, Infinity, 4)).toThrow(ArgumentError);
    for (const bad of [0, 1.5, NaN]) expect(() => trapezoid((x) => x, 0, 1, bad)).toThrow(ArgumentError);
  });
});
