/** What luminaires of one circuit say of it when they don't agree: the sheet errs to the grave side. */
import { describe, expect, test } from "vitest";
import type { Circuit, CrewFigures } from "../../src/install/index.js";
import type { Luminaire } from "../../src/venue/index.js";
import { venueCircuits } from "../../src/venue/venue-circuits.js";

const luminaire = (name: string): Luminaire => ({
  ...{ name, room: "hall", x: 1, y: 1, ceilingHeightM: null, trimHeightM: null, system: "A", receiver: null },
  ...{ mode: null, footprintSlotCount: 8, universe: null, address: null, watts: null, weightKg: null },
  ...{ circuit: "K", group: null, emergency: "no", onLinkLoss: "hold", further: {} },
});
const saying = (circuit: Partial<Circuit>): CrewFigures => ({ hang: {}, circuit, point: {}, faults: [] });
const merged = (rows: readonly Partial<Circuit>[], forAll: Partial<Circuit> = {}) =>
  venueCircuits(
    { luminaires: rows.map((_, index) => luminaire(`L${index}`)), circuits: [] },
    new Map(rows.map((said, index) => [`L${index}`, saying(said)])),
    forAll,
  );

describe("rows that contradict each other", () => {
  test.each<[Partial<Circuit>, Partial<Circuit>, Partial<Circuit>]>([
    [{ control: "dimmer" }, { control: "none" }, { control: "dimmer" }],
    [{ control: "none" }, { control: "dimmer" }, { control: "dimmer" }],
    [{ earth: "yes" }, { earth: "no" }, { earth: "no" }],
    [{ sharedNeutral: "no" }, { sharedNeutral: "yes" }, { sharedNeutral: "yes" }],
  ])("%j and %j: the gravest stands, and is told", (one, other, grave) => {
    const { circuits, issues } = merged([one, other]);
    expect(circuits).toEqual([{ ...grave, circuit: "K" }]);
    expect(issues).toMatchObject([{ code: "contradiction", source: "circuit K" }]);
  });
  test("a figure stays open, though something holds for all", () => {
    const { circuits } = merged([{ breakerA: 10 }, { breakerA: 16 }], { breakerA: 20, supplyV: 230 });
    expect(circuits).toEqual([{ circuit: "K", supplyV: 230 }]);
  });
  test("what holds for all does not take a dimmer out", () => {
    const { circuits } = merged([{ control: "sensor" }, { control: "time-clock" }], { control: "none" });
    expect(circuits).toEqual([{ circuit: "K" }]);
  });
});
