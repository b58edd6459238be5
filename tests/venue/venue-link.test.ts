import { describe, expect, it } from "vitest";
import { slabPlanningLossDb } from "../../src/propagation/index.js";
import { findProfile } from "../../src/radio/index.js";
import { venueLink, venueSite } from "../../src/venue/index.js";
import type { TransmitterPlace, Venue, VenueReceiver } from "../../src/venue/index.js";
import { dipole, receiver, rectangle, room, transmitter, venue, wall } from "../helpers/venues.js";

const profile = findProfile("raster-13");
const link = (built: Venue, from: TransmitterPlace, to: VenueReceiver, crowd?: "empty" | "full") =>
  venueLink(venueSite(built, { crowd }), { profile, transmitter: from, receiver: to, frequencyMhz: 2437 });
const booth = transmitter({ x: 2, y: 6, z: 3 });

describe("a link through a venue", () => {
  it("has the profile's lines and ITU-R P.1238 at the distance in three dimensions", () => {
    const { lines, distanceM, inSight, caveats } = link(
      venue(),
      booth,
      receiver("r", { x: 14, y: 10, z: 6 }),
    );
    expect(distanceM).toBe(13); // 12, 4, 3
    expect(lines.pathLossDb).toBeCloseTo(20 * Math.log10(2437) + 22 * Math.log10(13) - 28, 9);
    expect(lines).toMatchObject({
      txPowerDbm: 18,
      txFeederLossDb: 0,
      txGainDbi: 2,
      rxGainDbi: 2,
      wallLossDb: 0,
      enclosureLossDb: 10,
      crowdLossDb: 0,
      polarisationLossDb: 0,
    });
    expect([inSight, caveats]).toEqual([true, []]);
  });
  it("takes the model of the receiver's room, else of the kind of building", () => {
    const rooms = [room("hall", rectangle(0, 0, 20, 12), { pathModel: { kind: "free-space" } })];
    const at = receiver("r", { x: 12, y: 6, z: 3 });
    // Free space by hand: 20·log10(4π·d·f/c).
    const freeDb = 20 * Math.log10((4 * Math.PI * 10 * 2437e6) / 299_792_458);
    expect(link(venue({ rooms }), booth, at).lines.pathLossDb).toBeCloseTo(freeDb, 9);
    const office = link(venue({ building: "office" }), booth, at).lines.pathLossDb;
    expect(office).toBeCloseTo(20 * Math.log10(2437) + 30 - 28, 9); // N = 30 at 10 m
  });
  it("has both antennas towards each other, and their nulls", () => {
    // Upright dipole, 45° up: 2.15 dBi less the pattern, −1.89 dBi in the tables of Balanis' formula.
    const tilted = link(venue(), { ...booth, antenna: dipole() }, receiver("r", { x: 5, y: 6, z: 6 }));
    expect(tilted.lines.txGainDbi).toBeCloseTo(-1.89, 2);
    expect(tilted.lines.rxGainDbi).toBe(2);
    const above = link(venue(), { ...booth, antenna: dipole() }, receiver("r", { x: 2, y: 6, z: 6 }));
    expect([above.lines.txGainDbi, above.txNull, above.rxNull]).toEqual([-Infinity, true, false]);
    const crossed = link(
      venue(),
      { ...booth, antenna: dipole() },
      receiver("r", { x: 2, y: 11, z: 3 }, { antenna: { kind: "dipole", mounting: "sideways" } }),
    );
    expect(crossed.lines.polarisationLossDb).toBe(10); // crossed, capped indoors
  });
  it("has walls at their incidence, and loses sight behind 3 dB", () => {
    const brick = { material: "brick", thicknessM: 0.1 };
    const built = (build: Parameters<typeof wall>[2]) =>
      venue({ walls: [wall({ x: 8, y: 0 }, { x: 8, y: 12 }, build)] });
    const behind = receiver("r", { x: 14, y: 11, z: 3 });
    const incidenceDeg = (Math.atan(5 / 12) * 180) / Math.PI;
    const { lines, inSight } = link(built(brick), booth, behind);
    expect(lines.wallLossDb).toBeCloseTo(slabPlanningLossDb({ ...brick, incidenceDeg }), 9);
    expect(inSight).toBe(false);
    expect(link(built({ lossDb: 2.9 }), booth, behind).inSight).toBe(true);
    expect(link(built({ lossDb: 3 }), booth, behind).inSight).toBe(false);
    expect(link(built({ lossDb: 3 }), { ...booth, inSight: true }, behind).inSight).toBe(true);
    expect(link(built({ lossDb: 0 }), { ...booth, inSight: false }, behind).inSight).toBe(false);
  });
  it("counts floors with the path loss", () => {
    const storeys = [
      { name: "ground", floorM: 0, floorLossDb: null },
      { name: "upper", floorM: 4, floorLossDb: 17 },
    ];
    const rooms = [room("hall", rectangle(0, 0, 20, 12), { heightM: 3.5 })];
    const { lines, obstacles, inSight } = link(
      venue({ storeys, rooms }),
      booth,
      receiver("r", { x: 14, y: 10, z: 6 }),
    );
    expect(obstacles.floorLossDb).toBe(17);
    expect(lines.pathLossDb).toBeCloseTo(20 * Math.log10(2437) + 22 * Math.log10(13) - 28 + 17, 9);
    expect(inSight).toBe(false);
  });
  it("loses 6 dB where it runs through the audience, and nothing over their heads or without them", () => {
    const seated = (more: object) =>
      venue({
        rooms: [
          room("hall", rectangle(0, 0, 20, 12), {
            people: { empty: 0, part: 40, full: 120 },
            seating: rectangle(5, 2, 15, 10),
            ...more,
          }),
        ],
      });
    const low = transmitter({ x: 2, y: 6, z: 1 });
    const far = receiver("r", { x: 18, y: 6, z: 3 });
    // From 1 m to 3 m over 16 m: at x = 5 it is at 1.375 m, under heads at 1.4 m.
    expect(link(seated({}), low, far).lines.crowdLossDb).toBe(6);
    expect(link(seated({}), low, far, "empty").lines.crowdLossDb).toBe(0);
    expect(link(seated({ handsetHeightM: 1.1 }), low, far).lines.crowdLossDb).toBe(0); // heads at 1.3 m
    expect(link(seated({}), booth, far).lines.crowdLossDb).toBe(0);
    expect(link(seated({ seating: rectangle(8, 2, 15, 10) }), low, far).lines.crowdLossDb).toBe(0);
  });
  it("takes a receiver's own canopy before the profile's", () => {
    const enclosureDb = (enclosure: VenueReceiver["enclosure"]): number =>
      link(venue(), booth, receiver("r", { x: 9, y: 6, z: 5 }, { enclosure })).lines.enclosureLossDb;
    expect([enclosureDb(null), enclosureDb("closed-metal"), enclosureDb("antenna-outside")]).toEqual([
      10, 20, 0,
    ]);
  });
  it("is refused where both are at one place", () => {
    expect(() => link(venue(), booth, receiver("r", booth.at))).toThrow(/receiverAtM/);
  });
});
