import { describe, expect, it } from "vitest";
import { chooseBackup } from "../../src/scorer/index.js";
import { score } from "../helpers/scores.js";

const backup = (...ranking: ReturnType<typeof score>[]): number | null =>
  chooseBackup(ranking)?.channel ?? null;

describe("chooseBackup", () => {
  it("takes the highest-ranked with another dominant source at least 25 MHz away", () => {
    expect(backup(score(1, 10, "a"), score(2, 9, "b"), score(6, 8, "b"), score(7, 7, "c"))).toBe(6);
  });

  it("counts 25 MHz as away, 20 MHz not", () => {
    expect(backup(score(1, 10, "a"), score(5, 9, "b"), score(6, 8, "b"))).toBe(6);
  });

  it("looks to both sides", () => {
    expect(backup(score(13, 10, "a"), score(12, 9, "b"), score(1, 8, "b"))).toBe(1);
  });

  it("else takes the highest-ranked with another dominant source, however near", () => {
    expect(backup(score(1, 10, "a"), score(9, 9, "a"), score(2, 8, "b"), score(3, 7, "c"))).toBe(2);
  });

  it("else the second in rank", () => {
    expect(backup(score(1, 10, "a"), score(2, 9, "a"), score(9, 8, "a"))).toBe(2);
  });

  it("looks only 6 dB below the best", () => {
    expect(backup(score(1, 10, "a"), score(2, 9, "a"), score(9, 4, "b"))).toBe(9);
    expect(backup(score(1, 10, "a"), score(2, 9, "a"), score(9, 3.999, "b"))).toBe(2);
    expect(backup(score(1, 10, "a"), score(9, -20, "b"))).toBe(9); // nothing within 6 dB: the second in rank
  });

  it("compares decibels and MHz with a slack of 1e-9", () => {
    expect(backup(score(1, 10, "a"), score(2, 9, "a"), score(9, 4 - 5e-10, "b"))).toBe(9);
    expect(backup(score(1, 10, "a"), score(2, 9, "a"), score(9, 4 - 2e-9, "b"))).toBe(2);
    const at = (offsetMhz: number) => score(6, 8, "b", { centreMhz: 2412 + offsetMhz });
    expect(backup(score(1, 10, "a"), score(2, 9, "b"), at(25 - 5e-10))).toBe(6);
    expect(backup(score(1, 10, "a"), score(2, 9, "b"), at(25 - 5e-9))).toBe(2);
  });

  it("never takes a channel that no scan covers", () => {
    expect(backup(score(1, 10, "a"), score(9, 9, "b", { spokenBy: null }), score(2, 8, "a"))).toBe(2);
    expect(backup(score(1, 10, "a", { spokenBy: null }))).toBeNull();
  });

  it("takes two channels without any source as having the same, and one without as unlike one with", () => {
    expect(backup(score(1, 10, null), score(9, 10, null), score(8, 9, "b"))).toBe(8);
    expect(backup(score(1, 10, "a"), score(2, 9, "a"), score(9, 9, null))).toBe(9);
    expect(backup(score(1, 10, null), score(2, 10, null), score(9, 9, null))).toBe(2);
  });

  it("never takes a channel outside the band", () => {
    const outside = { allowed: false, reason: "leaves the band" };
    expect(backup(score(1, 10, "a"), score(9, 9, "b", outside))).toBeNull();
    expect(backup(score(1, 10, "a", outside))).toBeNull();
    expect(backup()).toBeNull();
  });
});
