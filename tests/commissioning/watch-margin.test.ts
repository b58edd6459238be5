import { describe, expect, test } from "vitest";
import { watchMargin } from "../../src/commissioning/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { exactLineFit } from "../helpers/exact-line-fit.js";

const DAYS = ["2026-03-01", "2026-03-08", "2026-03-22", "2026-04-05", "2026-04-12"];
const of = (...margins: number[]) => margins.map((marginDb, index) => ({ date: DAYS[index]!, marginDb }));

describe("watchMargin", () => {
  test("the drift by normal equations in exact rationals, weeks 0, 1, 3, 5, 6", () => {
    const margins = [9, 7.5, 5, -0.5, 1];
    const { slope, slopeVariance } = exactLineFit([0, 1, 3, 5, 6], margins);
    const watch = watchMargin(of(...margins));
    expect(watch.weeklyDriftDb).toBeCloseTo(slope, 9);
    // 3.182446: Student's t, 3 degrees of freedom, 0.025 above (printed tables).
    expect(watch.weeklyDriftIntervalDb![1]).toBeCloseTo(slope + 3.182446 * Math.sqrt(slopeVariance), 5);
    expect(watch.trend).toBe("falling");
    expect(watch.changeDb).toBe(-8);
  });
  test("the first date at which it would have failed, the worst, and how many", () => {
    const watch = watchMargin([...of(9, 0, -2, 4, -3)].reverse());
    expect(watch.series.map(({ date }) => date)).toEqual(DAYS);
    expect([watch.firstFailure?.date, watch.worst.date, watch.failureCount]).toEqual([DAYS[2], DAYS[4], 2]);
    expect(watchMargin(of(0, 5)).firstFailure).toBeNull();
  });
  test("rising, steady, and too few dates to tell", () => {
    expect(watchMargin(of(1, 2, 4, 6, 7)).trend).toBe("rising");
    expect(watchMargin(of(5, 5, 5, 5)).trend).toBe("steady");
    expect(watchMargin(of(5, 9, 4, 8)).trend).toBe("steady");
    const same = watchMargin([...of(5, 7), { date: DAYS[0]!, marginDb: 6 }]);
    expect([same.trend, same.weeklyDriftDb, same.weeklyDriftIntervalDb]).toEqual([
      "too-few-dates",
      null,
      null,
    ]);
  });
  test("a caller's mistakes throw", () => {
    expect(() => watchMargin([])).toThrow(ArgumentError);
    expect(() => watchMargin([{ date: "last week", marginDb: 3 }])).toThrow(ArgumentError);
    expect(() => watchMargin([{ date: "2026-03-01", marginDb: NaN }])).toThrow(ArgumentError);
  });
});
