/** The rules are common practice, no source; what is tested is that each decides on its own fact alone. */
import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { antennaPractice, OPEN_SITE, planChannel } from "../../src/venue/index.js";
import type { LinkSite, PracticeCheck, PracticeFacts } from "../../src/venue/index.js";

const stateOf = (checks: readonly PracticeCheck[], code: string): string =>
  checks.find((check) => check.code === code)!.state;

describe("antennaPractice", () => {
  it("leaves everything to be looked at where nothing is known", () => {
    const checks = antennaPractice({});
    expect(checks).toHaveLength(11);
    expect(new Set(checks.map(({ state }) => state))).toEqual(new Set(["look"]));
  });

  // Common practice, no source: 3 m up, 3 m from an access point, 2 m between transmitters, 2 m and 6 cm at receivers.
  it.each<readonly [keyof PracticeFacts, string, number]>([
    ["txHeightM", "tx-above-heads", 3],
    ["txToAccessPointM", "tx-from-access-point", 3],
    ["txToNextTxM", "tx-from-next-tx", 2],
    ["rxToAccessPointM", "rx-from-access-point", 2],
    ["rxToMetalM", "rx-clear-of-metal", 0.06],
    ["rxPlayM", "rx-can-move", 0.06],
  ])("%s decides %s from %d m", (fact, code, leastM) => {
    for (const [figureM, state] of [
      [leastM, "kept"],
      [leastM - 0.001, "broken"],
    ] as const) {
      const checks = antennaPractice({ [fact]: figureM });
      expect(checks.find((check) => check.code === code)).toMatchObject({ state, figureM, leastM });
      expect(checks.filter((check) => check.state !== "look")).toHaveLength(1);
    }
  });

  it.each<readonly [keyof PracticeFacts, string, boolean]>([
    ["txInRoom", "tx-in-room", true],
    ["txInSight", "tx-in-sight", true],
    ["txInRack", "tx-not-in-rack", false],
    ["txUnderLuminaire", "tx-not-under-luminaire", false],
    ["allVertical", "all-vertical", true],
  ])("%s decides %s", (fact, code, good) => {
    expect(stateOf(antennaPractice({ [fact]: good }), code)).toBe("kept");
    expect(stateOf(antennaPractice({ [fact]: !good }), code)).toBe("broken");
  });

  it("has a reason of one line at 80 columns for each", () => {
    for (const { reason } of antennaPractice({})) {
      expect(reason).toMatch(/: \S/);
      expect(`BROKEN  ${reason}`.length).toBeLessThanOrEqual(80);
    }
  });
});

describe("what a site decides of it", () => {
  const practice = (site: Partial<LinkSite>, distanceM = 20): readonly PracticeCheck[] =>
    planChannel({
      emitters: [],
      profile: findProfile("raster-13"),
      site: { ...OPEN_SITE, ...site },
      distanceM,
    }).practice;

  it("a wall between is neither in the room nor in sight", () => {
    const checks = practice({ walls: [{ words: "3dB", crossing: { lossDb: 3 } }] });
    expect([stateOf(checks, "tx-in-room"), stateOf(checks, "tx-in-sight")]).toEqual(["broken", "broken"]);
  });
  it("heights decide the 3 m, and a receiver straight above the null of a rod", () => {
    const high = { heights: { txHeightM: 3.5, rxHeightM: 8 } };
    expect(stateOf(practice(high), "tx-above-heads")).toBe("kept");
    expect(stateOf(practice(high), "tx-not-under-luminaire")).toBe("look");
    expect(stateOf(practice(high, 1), "tx-not-under-luminaire")).toBe("broken");
  });
  it("one antenna that lies breaks vertical throughout, both upright keep it", () => {
    const [upright, hanging, laid] = (["upright", "hanging", "sideways"] as const).map(
      (mounting) => ({ kind: "dipole", mounting }) as const,
    );
    expect(stateOf(practice({ txAntenna: upright!, rxAntenna: hanging! }), "all-vertical")).toBe("kept");
    expect(stateOf(practice({ txAntenna: upright! }), "all-vertical")).toBe("look");
    expect(stateOf(practice({ rxAntenna: laid! }), "all-vertical")).toBe("broken");
  });
});
