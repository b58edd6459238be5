import { describe, expect, it } from "vitest";
import { transmitShapes } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";
import { findProfile } from "../../src/radio/index.js";
import { receiverBudgets, venueRequest, venueSite } from "../../src/venue/index.js";
import type { RoomSurvey, Venue, VenueReceiver, VenueSystem } from "../../src/venue/index.js";
import { receiver, rectangle, room, system, transmitter, venue } from "../helpers/venues.js";

const hall = room("hall", rectangle(0, 0, 20, 12));
const loft = room("loft", rectangle(30, 0, 50, 12));
const systems: VenueSystem[] = [
  system({ name: "A", channel: 8, transmitter: transmitter({ x: 2, y: 6, z: 4 }) }),
  system({
    name: "B",
    rooms: ["loft"],
    channel: 13,
    transmitter: transmitter({ x: 32, y: 6, z: 4 }, { room: "loft" }),
  }),
];
const receivers: VenueReceiver[] = [
  receiver("h1", { x: 8, y: 6, z: 4 }),
  receiver("h2", { x: 18, y: 6, z: 4 }),
  receiver("l1", { x: 46, y: 6, z: 4 }, { system: "B", room: "loft" }),
];
const radio = (id: string, channel: number, levelDbm: number): Emitter => ({
  id,
  centreMhz: 2407 + 5 * channel,
  shape: transmitShapes.ht20,
  levelDbm,
  airtimeRatio: 0.3,
  airtimeAssumed: false,
  contentionChannel: channel,
});
const inHall = [radio("porch", 1, -48), radio("desk", 11, -70), radio("shop", 6, -80)];
const inLoft = [radio("porch", 1, -80), radio("loft", 6, -62)];

const surveyOf = (
  place: (emitter: Emitter) => Emitter | null = (one) => one,
): ReadonlyMap<string, RoomSurvey> => {
  const placed = (emitters: readonly Emitter[]): Emitter[] => emitters.flatMap((one) => place(one) ?? []);
  return new Map([
    ["hall", { emitters: placed(inHall), scanHeightM: 4 }],
    ["loft", { emitters: placed(inLoft), scanHeightM: 4 }],
  ]);
};
const built: Partial<Venue> = { rooms: [hall, loft], systems, receivers };
const site = venueSite(venue(built));
const buildingIds = new Set(["porch", "desk", "loft"]);
const requesting = systems.map((one) => ({
  system: one,
  transmitter: one.transmitter!,
  channel: one.channel,
}));
const options = { survey: surveyOf(), buildingIds, systems: requesting };
const request = venueRequest(site, options);

/** A system's weakest working margin by its budgets, with the radios elsewhere. */
const leastDb = (of: VenueSystem, survey: ReadonlyMap<string, RoomSurvey>): number =>
  receiverBudgets(site, of, of.transmitter!, { survey }).receivers[0]!.judged.budget.workingMarginDb;
const moved = (emitter: Emitter, channel: number): Emitter => ({
  ...emitter,
  centreMhz: 2407 + 5 * channel,
  contentionChannel: channel,
});

/** Each of the three channels tried for each radio on its own: the worst for a receiver's channel. */
const WORST_FOR: Readonly<Record<string, number>> = { A: 6, B: 11 }; // 2447 lies 10 MHz above 6, 2472 10 above 11

describe("the request for all systems together", () => {
  it("starts from the margins of the receivers' budgets", () => {
    for (const [index, one] of systems.entries())
      expect(request.systems[index]!.workingMarginDb).toBeCloseTo(leastDb(one, surveyOf()), 9);
  });
  it("knows what it costs when every radio of the building's goes to its worst channel", () => {
    for (const [index, one] of systems.entries()) {
      const worst = surveyOf((emitter) =>
        buildingIds.has(emitter.id) ? moved(emitter, WORST_FOR[one.name]!) : emitter,
      );
      expect(request.systems[index]!.ifWifiMovesDb).toBeCloseTo(
        Math.min(leastDb(one, surveyOf()), leastDb(one, worst)),
        9,
      );
    }
  });
  it("granted, it keeps every system within 1 dB of what fixing all would give, by the budgets", () => {
    const asked = new Map(request.fixes.map(({ emitter, wifiChannel }) => [emitter, wifiChannel]));
    for (const [index, one] of systems.entries()) {
      const granted = surveyOf((emitter) => {
        if (!buildingIds.has(emitter.id)) return emitter;
        return moved(emitter, asked.get(emitter.id) ?? WORST_FOR[one.name]!);
      });
      const grantedDb = leastDb(one, granted);
      expect(request.systems[index]!.ifGrantedDb).toBeCloseTo(grantedDb, 9);
      expect(grantedDb).toBeGreaterThanOrEqual(leastDb(one, surveyOf()) - 1 - 1e-9);
    }
  });
  it("asks for the loud radio that either system fears, where it is, and not for neighbours", () => {
    expect(request.buildingCount).toBe(3);
    expect(request.fixes[0]).toMatchObject({ emitter: "porch", wifiChannel: 1, scannedWifiChannel: 1 });
    expect(request.fixes.map(({ emitter }) => emitter)).not.toContain("shop");
    const alone = surveyOf((emitter) => (emitter.id === "porch" ? moved(emitter, 6) : emitter));
    expect(request.fixes[0]!.system).toBe("A");
    expect(request.fixes[0]!.workingMarginIfMovedDb).toBeCloseTo(leastDb(systems[0]!, alone), 9);
  });
  it("sends a radio away that alone spoils a system that doesn't work", () => {
    const survey = new Map([["hall", { emitters: [radio("porch", 6, -30)], scanHeightM: 4 }]]);
    const asked = venueRequest(site, { ...options, survey });
    expect(asked.systems[0]!.workingMarginDb).toBeLessThan(0);
    // Radio ch 8 (2447 MHz): Wi-Fi 1 is 35 MHz off, 11 is 15.
    expect(asked.fixes[0]).toMatchObject({ emitter: "porch", wifiChannel: 1, scannedWifiChannel: 6 });
    expect(asked.systems[0]!.ifGrantedDb).toBeGreaterThan(asked.systems[0]!.workingMarginDb! + 10);
  });
  it("knows which radios are in and beside the rooms: by place, else by level", () => {
    const sourcePlaces = new Map([
      ["porch", { x: 5, y: 5, z: 3 }],
      ["desk", { x: 24, y: 6, z: 3 }],
    ]);
    const { nearby } = venueRequest(site, { ...options, sourcePlaces });
    expect(nearby).toEqual([
      { emitter: "desk", room: "hall", known: "beside" },
      { emitter: "porch", room: "hall", known: "in" },
    ]);
    expect(request.nearby).toEqual([{ emitter: "porch", room: "hall", known: "by-level" }]);
  });
  it("says what each system radiates: MHz, width, EIRP, airtime, minutes", () => {
    // 18 dBm + 2 dBi; packets of 4.5 ms, 44 a second.
    const airtimeRatio: unknown = expect.closeTo(0.0045 * 44, 12);
    expect(request.systems.map(({ radiates }) => radiates)).toEqual([
      { centresMhz: [2447], bandwidthMhz: 1, eirpDbm: 20, airtimeRatio, airtimeCapped: false },
      { centresMhz: [2472], bandwidthMhz: 1, eirpDbm: 20, airtimeRatio, airtimeCapped: false },
    ]);
    expect(request.eventMinutes).toBe(site.venue.eventMinutes);
  });
  it("has all radios stay for the sake of a hopping system, and no margins for it", () => {
    const hopping = system({ name: "A", profile: findProfile("hop-79"), channel: null });
    const asked = venueRequest(site, {
      ...options,
      systems: [{ system: hopping, transmitter: systems[0]!.transmitter!, channel: null }, requesting[1]!],
    });
    expect(asked.fixes.map(({ emitter }) => emitter).sort()).toEqual(["desk", "loft", "porch"]);
    expect(asked.systems[0]!.workingMarginDb).toBeNull();
    expect(asked.systems[0]!.reason).toMatch(/it hops/);
    expect(asked.systems[0]!.radiates.centresMhz).toHaveLength(79);
  });
  it("takes handsets along: off in the rooms means off for them, and a moved network moves them", () => {
    const crowded = venueSite(
      venue({ ...built, rooms: [{ ...hall, people: { empty: 0, part: 0, full: 300 } }, loft] }),
      { crowd: "full", handsetChannels: [1] },
    );
    const before = venueRequest(crowded, options);
    expect(before.systems[0]!.ifWifiMovesDb).toBeLessThan(request.systems[0]!.ifWifiMovesDb! + 1e-9);
    expect(before.systems[0]!.ifOffDb).toBeGreaterThan(before.systems[0]!.ifGrantedDb!);
  });
});
