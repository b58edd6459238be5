import { describe, expect, test } from "vitest";
import { findProfile, judgeRegion, leastHopsOf, withLeastHops } from "../../src/radio/index.js";
import type { RadioProfile, RegionCode } from "../../src/radio/index.js";

const avoider = findProfile("hop-79-avoid");

function withPower(txPowerDbm: number, leastHopCount = 15): RadioProfile {
  return {
    ...avoider,
    txPowerDbm: { value: txPowerDbm, status: "yours", source: "test" },
    hopping: { avoids: true, leastHopCount: { value: leastHopCount, status: "yours", source: "test" } },
  };
}
const least = (profile: RadioProfile, region: RegionCode): number =>
  withLeastHops(profile, region).hopping!.leastHopCount.value;

describe("the least hop set of the region at the power in use", () => {
  // 47 CFR 15.247: 125 mW (20.97 dBm) with 15 to 74 hop frequencies, 1 W (30 dBm) with 75 or more.
  test.each([
    [18, 15],
    [20.9, 15],
    [21, 75],
    [30, 75],
  ])("US at %s dBm: %s", (txPowerDbm, count) => {
    expect(leastHopsOf(withPower(txPowerDbm), "US")!.value).toBe(count);
    expect(
      judgeRegion({ profile: withLeastHops(withPower(txPowerDbm), "US"), region: "US" }).turnDownDb,
    ).toBe(0);
  });
  test("above every row's limit: the row that leaves most, and the breach stands", () => {
    const held = withLeastHops(withPower(33), "US");
    expect(held.hopping!.leastHopCount.value).toBe(75);
    expect(judgeRegion({ profile: held, region: "US" }).turnDownDb).toBeCloseTo(3, 9);
  });
  test("the greater of the radio's own and the region's holds, and says whose it is", () => {
    expect(least(withPower(18, 30), "US")).toBe(30);
    expect(least(withPower(18, 5), "EU")).toBe(15); // EN 300 328: 15
    expect(withLeastHops(withPower(18, 30), "US").hopping!.leastHopCount.status).toBe("yours");
    expect(withLeastHops(withPower(25, 30), "US").hopping!.leastHopCount).toMatchObject({
      value: 75,
      source: expect.stringMatching(/US.*15\.247/) as string,
    });
  });
  test("a radio with too few frequencies for a row is not held to it", () => {
    const few = { ...withPower(25), channels: avoider.channels.slice(0, 40) };
    expect(leastHopsOf(few, "US")!.value).toBe(15);
    const fewer = { ...withPower(18, 5), channels: avoider.channels.slice(0, 10) };
    expect(leastHopsOf(fewer, "US")).toBeNull();
    expect(withLeastHops(fewer, "US")).toBe(fewer);
  });
  test("a fixed channel has none", () => {
    const fixed = findProfile("raster-13");
    expect(leastHopsOf(fixed, "US")).toBeNull();
    expect(withLeastHops(fixed, "US")).toBe(fixed);
  });
});
