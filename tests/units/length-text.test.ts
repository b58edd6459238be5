import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ArgumentError, feetInchesText, feetToM, metresText } from "../../src/index.js";

/** Reads `12' 4 1/2"` back, by fractions, in inches. */
function inchesOf(text: string): number {
  const [, sign, feet, inches, top = "0", bottom = "1"] = /^(-?)(\d+)' (\d+)(?: (\d+)\/(\d+))?"$/.exec(text)!;
  return (sign === "-" ? -1 : 1) * (Number(feet) * 12 + Number(inches) + Number(top) / Number(bottom));
}

describe("feet and inches", () => {
  test.each([
    // 0.3048 m = 1 ft exactly (international foot of 1959); the rest by hand
    [0.3048, 16, `1' 0"`],
    [6.4008, 16, `21' 0"`],
    [0.0254 * 148.5, 16, `12' 4 1/2"`],
    [0.0254 * 11.97, 16, `1' 0"`],
    [0.0254 * (7 + 3 / 8), 8, `0' 7 3/8"`],
    [0.0254 * (7 + 1 / 32), 16, `0' 7 1/16"`],
    [-0.0254 * 13.25, 4, `-1' 1 1/4"`],
    [-0.0001, 16, `0' 0"`],
    [0.0254 * 5.6, 1, `0' 6"`],
    [0, 64, `0' 0"`],
  ])("%f m in 1/%i inch", (lengthM, denominatorCount, text) => {
    expect(feetInchesText(lengthM, denominatorCount)).toBe(text);
  });
  test("are never farther off than half a part, inches below 12, fractions in lowest terms", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -300, max: 300, noNaN: true }),
        fc.constantFrom(1, 2, 4, 8, 10, 16, 32, 64),
        (lengthM, denominatorCount) => {
          const text = feetInchesText(lengthM, denominatorCount);
          expect(Math.abs(inchesOf(text) - lengthM / 0.0254)).toBeLessThanOrEqual(
            0.5 / denominatorCount + 1e-6,
          );
          const [, inches, top, bottom] = /' (\d+)(?: (\d+)\/(\d+))?"$/.exec(text)!;
          expect(Number(inches)).toBeLessThan(12);
          if (top === undefined) return;
          for (let divisor = 2; divisor <= Number(top); divisor++)
            expect(Number(top) % divisor === 0 && Number(bottom) % divisor === 0).toBe(false);
        },
      ),
    );
  });
  test("refuse what is no length or no part", () => {
    expect(() => feetInchesText(NaN, 16)).toThrow(ArgumentError);
    expect(() => feetInchesText(1, 0)).toThrow(ArgumentError);
    expect(() => feetInchesText(1, 2.5)).toThrow(ArgumentError);
  });
});

describe("metres", () => {
  test.each([
    [feetToM(21), "6.401 m"],
    [1.0005, "1.001 m"],
    [-0.0004, "0.000 m"],
    [-1.2345, "-1.235 m"],
    [12, "12.000 m"],
  ])("%f m", (lengthM, text) => {
    expect(metresText(lengthM)).toBe(text);
  });
  test("refuse infinity", () => {
    expect(() => metresText(Infinity)).toThrow(ArgumentError);
  });
});
