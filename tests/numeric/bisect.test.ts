import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { bisect } from "../../src/numeric/index.js";

describe("bisect", () => {
  test("finds known roots to the tolerance, rising or falling", () => {
    expect(Math.abs(bisect((x) => x * x - 2, 0, 2, 1e-12) - Math.SQRT2)).toBeLessThan(1e-12);
    expect(Math.abs(bisect((x) => Math.cos(x), 0, 3, 1e-12) - Math.PI / 2)).toBeLessThan(1e-12);
    expect(Math.abs(bisect((x) => 2 - x * x, -2, 0, 1e-12) + Math.SQRT2)).toBeLessThan(1e-12);
  });
  test("a root at an end, a step, a tolerance finer than doubles", () => {
    expect(bisect((x) => x, 0, 5, 1e-9)).toBe(0);
    expect(bisect((x) => x - 5, 0, 5, 1e-9)).toBe(5);
    expect(bisect((x) => (x < 7 ? -1 : 1), 0, 1000, 1e-9)).toBeCloseTo(7, 8);
    expect(bisect((x) => x - 1 / 3, 0, 1, 1e-300)).toBeCloseTo(1 / 3, 15);
  });
  test("throws", () => {
    expect(() => bisect((x) => x + 10, 0, 1, 1e-9)).toThrow(ArgumentError);
    expect(() => bisect(() => NaN, 0, 1, 1e-9)).toThrow(ArgumentError);
    expect(() => bisect((x) => (x === 0.5 ? NaN : x - 0.2), 0, 1, 1e-9)).toThrow("NaN at 0.5");
    expect(() => bisect((x) => x, -Infinity, 1, 1e-9)).toThrow(ArgumentError);
    expect(() => bisect((x) => x, -1, NaN, 1e-9)).toThrow(ArgumentError);
    expect(() => bisect((x) => x, -1, 1, 0)).toThrow(ArgumentError);
  });
});
