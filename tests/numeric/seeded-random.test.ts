import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { seededRandom } from "../../src/numeric/index.js";

describe("seededRandom", () => {
  test("the published values of MT19937 with seed 5489", () => {
    // First four outputs: the authors' widely printed listing, from memory. The 10 000th output,
    // 4123659995, is the check value of the C++ standard (ISO/IEC 14882, [rand.predef]).
    const [a, b, c, d] = [3499211612, 581869302, 3890346734, 3586334585];
    const random = seededRandom(5489);
    expect(random()).toBe(((a >>> 5) * 2 ** 26 + (b >>> 6)) / 2 ** 53);
    expect(random()).toBe(((c >>> 5) * 2 ** 26 + (d >>> 6)) / 2 ** 53);
    for (let call = 3; call < 5000; call++) random();
    expect((random() * 2 ** 53) % 2 ** 26).toBe(4123659995 >>> 6);
  });
  test("uniform: mean and variance of 100 000 numbers within 4 standard errors", () => {
    const random = seededRandom(1);
    const count = 100_000;
    let [sum, squares] = [0, 0];
    for (let i = 0; i < count; i++) {
      const value = random();
      expect(value >= 0 && value < 1).toBe(true);
      sum += value;
      squares += (value - 0.5) ** 2;
    }
    expect(Math.abs(sum / count - 0.5)).toBeLessThan((4 * Math.sqrt(1 / 12)) / Math.sqrt(count));
    expect(Math.abs(squares / count - 1 / 12)).toBeLessThan((4 * Math.sqrt(1 / 180)) / Math.sqrt(count));
  });
  test("the same seed gives the same numbers, another seed others", () => {
    const [one, same, other] = [seededRandom(7), seededRandom(7), seededRandom(8)];
    const drawn = Array.from({ length: 20 }, () => one());
    expect(Array.from({ length: 20 }, () => same())).toEqual(drawn);
    expect(Array.from({ length: 20 }, () => other())).not.toEqual(drawn);
  });
  test("throws", () => {
    for (const bad of [-1, 0.5, 2 ** 32, NaN]) expect(() => seededRandom(bad)).toThrow(ArgumentError);
  });
});
