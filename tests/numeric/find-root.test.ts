import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { findRoot } from "../../src/numeric/index.js";

describe("findRoot", () => {
  test("finds known roots, rising, falling and bent, in few evaluations", () => {
    let evaluations = 0;
    const counted = (target: (x: number) => number) => (x: number) => {
      evaluations++;
      return target(x);
    };
    const roots: [(x: number) => number, number, number, number][] = [
      [(x) => x * x - 2, 0, 2, Math.SQRT2],
      [(x) => Math.cos(x), 0, 3, Math.PI / 2],
      [(x) => Math.exp(x) - 10, -20, 20, Math.LN10],
      [(x) => (x - 1) ** 3, 0, 5, 1],
      [(x) => Math.atan(x + 3), -50, 4, -3],
    ];
    for (const [target, low, high, root] of roots) {
      evaluations = 0;
      // A triple root is flat: its place is only known to the cube root of a double's precision.
      const within = root === 1 ? 1e-4 : 1e-11;
      expect(Math.abs(findRoot(counted(target), low, high, 1e-13) - root)).toBeLessThan(within);
      expect(evaluations).toBeLessThan(200);
    }
    evaluations = 0;
    findRoot(
      counted((x) => x + 0.01 * x * x - 3),
      -1,
      16,
      1e-12,
    );
    expect(evaluations).toBeLessThan(12);
  });
  test("a root at an end", () => {
    expect(findRoot((x) => x, 0, 5, 1e-9)).toBe(0);
    expect(findRoot((x) => x - 5, 0, 5, 1e-9)).toBe(5);
  });
  test("throws", () => {
    expect(() => findRoot((x) => x + 10, 0, 1, 1e-9)).toThrow(ArgumentError);
    expect(() => findRoot(() => NaN, 0, 1, 1e-9)).toThrow(ArgumentError);
    expect(() => findRoot((x) => (x === 0 ? -Infinity : x), 0, 1, 1e-9)).toThrow("-Infinity at 0");
    expect(() => findRoot((x) => x, NaN, 1, 1e-9)).toThrow(ArgumentError);
    expect(() => findRoot((x) => x, -1, Infinity, 1e-9)).toThrow(ArgumentError);
    expect(() => findRoot((x) => x, -1, 1, 0)).toThrow(ArgumentError);
  });
});
