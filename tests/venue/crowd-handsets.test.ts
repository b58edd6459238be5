import { describe, expect, it } from "vitest";
import type { Emitter } from "../../src/band/index.js";
import { crowdHandsets, referenceCrowd, venueSite, wifiChannelsInUse } from "../../src/venue/index.js";
import type { Venue } from "../../src/venue/index.js";
import { seatCells } from "../../src/venue/seat-cells.js";
import { audiencesOf, throughAudienceM } from "../../src/venue/audience.js";
import { rectangle, room, venue, wall } from "../helpers/venues.js";

const people = { empty: 0, part: 60, full: 240 };
const seating = rectangle(4, 2, 16, 10);
const built = (more: Partial<Venue> = {}): Venue =>
  venue({ rooms: [room("hall", rectangle(0, 0, 20, 12), { people, seating })], ...more });
const at = { at: { x: 9.9, y: 6.2, z: 6 }, room: "hall" };
const airtime = (emitters: readonly Emitter[]): number =>
  emitters.reduce((sum, { airtimeRatio }) => sum + airtimeRatio, 0);

/** The slow route: each seat by itself, N = 22 at 2442 MHz, no walls, nobody in the way. */
function seatLevelsDbm(): number[] {
  const levels: number[] = [];
  for (let x = 4.25; x < 16; x += 0.5)
    for (let y = 2.25; y < 10; y += 0.5) {
      const distanceM = Math.hypot(x - 9.9, y - 6.2, 6 - 1.2);
      levels.push(15 - (20 * Math.log10(2442) + 22 * Math.log10(distanceM) - 28));
    }
  return levels.sort((a, b) => b - a);
}

describe("a crowd's handsets", () => {
  it("are people × carried × on the air, over the channels in use, each in its group", () => {
    const handsets = crowdHandsets(venueSite(built()), [1, 6, 11])(at);
    expect(airtime(handsets)).toBeCloseTo(240 * referenceCrowd.carriedRatio * referenceCrowd.onAirRatio, 9);
    for (const channel of [1, 6, 11]) {
      const mine = handsets.filter(({ contentionChannel }) => contentionChannel === channel);
      expect(airtime(mine)).toBeCloseTo(airtime(handsets) / 3, 9);
      expect(mine.every(({ centreMhz }) => centreMhz === 2407 + 5 * channel)).toBe(true);
      expect(mine.length).toBeLessThanOrEqual(4);
    }
    expect(new Set(handsets.map(({ id }) => id)).size).toBe(handsets.length);
    expect(handsets.every(({ airtimeAssumed }) => airtimeAssumed)).toBe(true);
  });
  it("follow the crowd that is in", () => {
    const of = (crowd: "empty" | "part" | "full") => crowdHandsets(venueSite(built(), { crowd }), [6])(at);
    expect(of("empty")).toEqual([]);
    expect(airtime(of("full"))).toBeCloseTo(4 * airtime(of("part")), 9);
  });
  it("are never quieter than seat by seat, and the nearest is the nearest seat", () => {
    const handsets = crowdHandsets(venueSite(built()), [6])(at).sort((a, b) => b.levelDbm - a.levelDbm);
    const seats = seatLevelsDbm();
    const each = airtime(handsets) / seats.length;
    expect(handsets[0]!.levelDbm).toBeCloseTo(seats[0]!, 9);
    seats.forEach((levelDbm, index) => {
      // On the air at or above this seat's level: at least as long as all seats from the nearest to this one.
      const above = airtime(handsets.filter((handset) => handset.levelDbm >= levelDbm - 1e-9));
      expect(above).toBeGreaterThanOrEqual((index + 1) * each - 1e-9);
    });
    // At 1 % of the time the merging costs little: cells of three seats by three, 5 m away.
    let atOnePercentDbm = Infinity;
    let shareRatio = 0;
    for (const { levelDbm, airtimeRatio } of handsets)
      if (shareRatio <= 0.01) [atOnePercentDbm, shareRatio] = [levelDbm, shareRatio + airtimeRatio];
    const exactDbm = seats[Math.floor(0.01 / each)]!;
    expect(atOnePercentDbm).toBeGreaterThanOrEqual(exactDbm - 1e-9);
    expect(atOnePercentDbm).toBeLessThan(exactDbm + 1);
  });
  it("lose the audience on their way only where it is longer than a row", () => {
    const low = { at: { x: 19, y: 6, z: 1.3 }, room: "hall" };
    const own = { ...referenceCrowd, bodyLossDb: 0 };
    const loudest = (one: Venue, to: typeof at): number =>
      Math.max(...crowdHandsets(venueSite(one), [6])(to).map(({ levelDbm }) => levelDbm));
    expect(loudest(built(), at)).toBe(loudest(built({ crowd: own }), at)); // straight overhead
    const farthest = (one: Venue): number =>
      Math.min(...crowdHandsets(venueSite(one), [6])(low).map(({ levelDbm }) => levelDbm));
    expect(farthest(built())).toBeLessThanOrEqual(farthest(built({ crowd: own })));
  });
  it("lose the walls, from the next room too", () => {
    const rooms = [
      room("hall", rectangle(0, 0, 20, 12), { people, seating }),
      room("foyer", rectangle(0, 12, 20, 20)),
    ];
    const walls = [wall({ x: 0, y: 12 }, { x: 20, y: 12 }, { lossDb: 8 })];
    const foyer = { at: { x: 10, y: 15, z: 4 }, room: "foyer" };
    const levels = (one: Venue): number[] =>
      crowdHandsets(venueSite(one), [6])(foyer).map(({ levelDbm }) => levelDbm);
    const open = levels(built({ rooms }));
    levels(built({ rooms, walls })).forEach((dbm, index) => expect(dbm).toBeCloseTo(open[index]! - 8, 9));
  });
  it("need a Wi-Fi channel", () => {
    expect(() => crowdHandsets(venueSite(built()), [])).toThrow(/channels/);
    expect(() => crowdHandsets(venueSite(built()), [15])).toThrow(/channels/);
  });
});

describe("seats", () => {
  it("share out all people, however large or thin the seating is", () => {
    for (const outline of [seating, rectangle(0, 0, 300, 200), rectangle(3, 3, 3.1, 3.2)]) {
      const audience = { room: "hall", outline, bottomM: 0, topM: 1.4, peopleCount: 500 };
      const cells = seatCells(audience, 1.2);
      expect(cells.reduce((sum, { peopleRatio }) => sum + peopleRatio, 0)).toBeCloseTo(1, 12);
      expect(cells.length).toBeLessThanOrEqual(500);
      for (const { seats } of cells)
        for (const { x, y, z } of seats) {
          expect(x >= outline[0]!.x && x <= outline[2]!.x && y >= outline[0]!.y && y <= outline[2]!.y).toBe(
            true,
          );
          expect(z).toBe(1.2);
        }
    }
  });
  it("fill the seating, or the room where none is drawn, on its storey", () => {
    const storeys = [
      { name: "ground", floorM: 0, floorLossDb: null },
      { name: "upper", floorM: 4, floorLossDb: null },
    ];
    const upper = room("gallery", rectangle(0, 0, 5, 5), { storey: "upper", people });
    const [audience] = audiencesOf([upper], storeys, "part");
    expect(audience).toMatchObject({ outline: upper.outline, bottomM: 4, peopleCount: 60 });
    expect(audience!.topM).toBeCloseTo(4 + 1.2 + 0.2, 12);
    expect(audiencesOf([upper], storeys, "empty")).toEqual([]);
  });
});

describe("the way through an audience", () => {
  const audience = { room: "hall", outline: rectangle(0, 0, 10, 10), bottomM: 0, topM: 1.4, peopleCount: 9 };
  it("is what lies within the seating and under the heads", () => {
    const through = (...[x1, y1, z1, x2, y2, z2]: number[]): number =>
      throughAudienceM(audience, { x: x1!, y: y1!, z: z1! }, { x: x2!, y: y2!, z: z2! });
    expect(through(-5, 5, 1, 15, 5, 1)).toBeCloseTo(10, 12);
    expect(through(-5, 5, 1.5, 15, 5, 1.5)).toBe(0);
    expect(through(-5, -5, 1, 15, -5, 1)).toBe(0);
    expect(through(5, 5, 1, 5, 5, 6)).toBeCloseTo(0.4, 12); // straight up to the heads
    // Down from 2.8 m to 0 over 10 m: under 1.4 m for the second half, √(25 + 1.96) m.
    expect(through(0, 5, 2.8, 10, 5, 0)).toBeCloseTo(Math.hypot(5, 1.4), 12);
    expect(through(10, 5, 0, 0, 5, 2.8)).toBeCloseTo(Math.hypot(5, 1.4), 12);
  });
});

describe("Wi-Fi channels in use", () => {
  const heard = (contentionChannel: number | null, levelDbm: number) =>
    ({ contentionChannel, levelDbm }) as Emitter;
  it("are those of the strong sources, or of those that are the building's", () => {
    const emitters = [
      heard(11, -60),
      heard(3, -75),
      heard(6, -80),
      heard(null, -40),
      heard(11, -70),
      heard(-1, -40),
    ];
    expect(wifiChannelsInUse(emitters)).toEqual([3, 11]);
    expect(wifiChannelsInUse(emitters, ({ levelDbm }) => levelDbm === -80)).toEqual([6]);
    expect(wifiChannelsInUse([heard(6, -90)])).toEqual([1, 6, 11]);
  });
});
