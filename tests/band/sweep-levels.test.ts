import { describe, expect, it } from "vitest";
import { sweepLevelDbm } from "../../src/band/index.js";

const heard = (levelsDbm: readonly number[], atLevelCount: readonly number[]) => ({
  channel: 1,
  centreMhz: 2412,
  passCount: atLevelCount.reduce((sum, count) => sum + count, 0),
  levelsDbm,
  atLevelCount,
});

describe("sweepLevelDbm, by counting passes", () => {
  const five = heard([-90, -80, -60], [2, 2, 1]);

  it.each([
    [0, -60],
    [0.19, -60], // one of five is louder than −80: a share of 0.2
    [0.2, -80],
    [0.5, -80], // the median of −90 −90 −80 −80 −60
    [0.59, -80],
    [0.6, -90],
    [1, -90],
  ])("is exceeded in no more than %s of them: %s dBm", (exceededRatio, levelDbm) => {
    expect(sweepLevelDbm(five, exceededRatio)).toBe(levelDbm);
  });
  it("compares shares with a slack of 1e-9, itself included", () => {
    expect(sweepLevelDbm(heard([-90, -60], [999_999_999, 1]), 0)).toBe(-90);
    expect(sweepLevelDbm(heard([-90, -60], [999_999_998, 2]), 0)).toBe(-60);
  });
  it("is nothing where no pass covered the channel", () => {
    expect(sweepLevelDbm(heard([], []), 0.01)).toBeNull();
  });
});
