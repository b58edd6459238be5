import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { frameLoss, frameLossRatio } from "../../src/quality/index.js";

describe("frameLossRatio", () => {
  it.each([
    [0.9, 1, 0.1],
    [0.9, 2, 0.01],
    [0.9, 3, 0.001],
    [0, 1, 1],
    [0, 5, 1],
    [1, 1, 0],
  ])("(1 − %s)^%s = %s", (successRatio, count, expected) => {
    expect(frameLossRatio(successRatio, count)).toBeCloseTo(expected, 12);
  });

  it.each([
    [1.1, 1],
    [-0.1, 1],
    [Number.NaN, 1],
    [0.9, 0],
    [0.9, Number.NaN],
    [0.9, Infinity],
  ])("throws for (%s, %s)", (successRatio, count) => {
    expect(() => frameLossRatio(successRatio, count)).toThrow(ArgumentError);
  });
});

describe("frameLoss", () => {
  // 44 frames a second are 2640 a minute (ANSI E1.11: about 44 at full length); 1 % of them 26.4.
  it("counts lost frames a minute, by hand", () => {
    const terms = {
      successRatio: 0.99,
      clearAirRatio: 0.995,
      transmissionsPerFrameCount: 1,
      frameRateHz: 44,
    };
    expect(frameLoss(terms)).toEqual({
      lossRatio: expect.closeTo(0.01, 12) as number,
      lostPerMinute: expect.closeTo(26.4, 9) as number,
      clearAirRatio: 0.995,
    });
    expect(frameLoss({ ...terms, transmissionsPerFrameCount: 2 }).lostPerMinute).toBeCloseTo(0.264, 9);
  });

  it.each([0, -1, Number.NaN])("throws for %s frames a second", (frameRateHz) => {
    const terms = { successRatio: 1, clearAirRatio: 1, transmissionsPerFrameCount: 1, frameRateHz };
    expect(() => frameLoss(terms)).toThrow(ArgumentError);
  });
});
