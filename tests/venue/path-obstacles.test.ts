import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { slabPlanningLossDb } from "../../src/propagation/index.js";
import { pathObstacles, venueSite } from "../../src/venue/index.js";
import type {
  Opening,
  Place,
  PlanPoint,
  Room,
  Storey,
  Venue,
  Wall,
  WallBuild,
} from "../../src/venue/index.js";
import { rectangle, room, venue, wall } from "../helpers/venues.js";

const through = (built: Venue, from: Place, to: Place) => pathObstacles(venueSite(built), from, to);
const p = (x: number, y: number, z = 2): Place => ({ x, y, z });
const door = (fromM: number, toM: number, topM = 2.1, build: WallBuild = { lossDb: 0 }): Opening => ({
  fromM,
  toM,
  bottomM: 0,
  topM,
  build,
});

describe("walls on a path", () => {
  const partition = wall({ x: 2, y: -5 }, { x: 2, y: 5 }, { lossDb: 7 }, { openings: [door(4, 6)] });
  const built = venue({ walls: [partition] });

  it("are met at the angle to their normal, in three dimensions", () => {
    // 3-4-5 on the plan: acos(4/5). In three dimensions (2, 2, 1) has length 3: acos(2/3).
    expect(through(built, p(0, 1, 3), p(4, 4, 3)).walls[0]!.incidenceDeg).toBeCloseTo(36.8698976458, 9);
    const rising = through(built, p(1, 2, 3), p(3, 4, 4)).walls[0]!;
    expect(rising.incidenceDeg).toBeCloseTo((Math.acos(2 / 3) * 180) / Math.PI, 9);
    expect(rising.alongPathM).toBeCloseTo(1.5, 12);
  });
  it("lose what their build loses at that angle", () => {
    const brick = { material: "brick", thicknessM: 0.1 };
    const met = through(venue({ walls: [{ ...partition, build: brick }] }), p(0, 1, 3), p(4, 4, 3));
    const incidenceDeg = (Math.acos(0.8) * 180) / Math.PI;
    expect(met.wallLossDb).toBeCloseTo(slabPlanningLossDb({ ...brick, incidenceDeg }), 9);
    expect(met.walls[0]!.edition).toBe("ITU-R P.2040-3");
  });
  it("let through by the build of an opening, within its width and height", () => {
    expect(through(built, p(0, 0, 1), p(4, 0, 1)).walls).toMatchObject([{ openingIndex: 0, lossDb: 0 }]);
    expect(through(built, p(0, 0, 2.5), p(4, 0, 2.5)).wallLossDb).toBe(7); // over the door
    expect(through(built, p(0, 2, 1), p(4, 2, 1)).wallLossDb).toBe(7); // beside it
    expect(through(built, p(0, 1, 1), p(4, 1, 1)).wallLossDb).toBe(7); // its edge is wall
    expect(through(built, p(0, 0, 0), p(4, 0, 0)).wallLossDb).toBe(0); // the threshold is none
  });
  it("count only between bottom and top", () => {
    const low = { ...partition, openings: [], topM: 1.5 };
    const hung = { ...partition, openings: [], bottomM: 4, topM: 6 };
    for (const [z, lossDb] of [
      [1, 7],
      [3, 0],
      [5, 7],
      [7, 0],
    ] as const)
      expect(through(venue({ walls: [low, hung] }), p(0, 1, z), p(4, 1, z)).wallLossDb).toBe(lossDb);
    // Sloping down from 8 m to 2 m: 5 m at the wall.
    expect(through(venue({ walls: [hung] }), p(0, 1, 8), p(4, 1, 2)).wallLossDb).toBe(7);
  });
  it("don't count where the path runs along them, or only starts or ends on them", () => {
    expect(through(built, p(2, -9), p(2, 9)).walls).toEqual([]);
    expect(through(built, p(2, -2), p(2, 2)).walls).toEqual([]);
    expect(through(built, p(2, 2), p(5, 2)).walls).toEqual([]);
    expect(through(built, p(0, 2), p(2, 2)).walls).toEqual([]);
    expect(through(built, p(2, 1, 1), p(2, 1, 6)).walls).toEqual([]); // straight up within the wall
  });
  it("count once where they join", () => {
    const up = wall({ x: 2, y: 0 }, { x: 2, y: 5 }, { lossDb: 7 });
    const down = wall({ x: 2, y: -5 }, { x: 2, y: 0 }, { lossDb: 4 });
    const corner = wall({ x: 2, y: 0 }, { x: 6, y: 3 }, { lossDb: 9 });
    const loss = (...walls: Wall[]): number => through(venue({ walls }), p(0, 0), p(4, 0)).wallLossDb;
    expect(loss(up)).toBe(7);
    expect(loss(up, down)).toBe(7); // in line: the greater
    expect(loss(up, corner)).toBe(9);
    expect(loss(up, down, corner)).toBe(9);
    const whole = wall({ x: 2, y: -5 }, { x: 2, y: 5 }, { lossDb: 8 });
    expect(loss(whole, corner)).toBe(9); // a T: never less than any of them
    expect(loss(whole, up)).toBe(8);
    expect(loss(whole, whole)).toBe(16); // two leaves on one line are two
    const across = wall({ x: 0, y: -1.5 }, { x: 4, y: 1.5 }, { lossDb: 9 });
    expect(loss(whole, across)).toBe(17); // an X: two walls
    expect(loss(across, down, up)).toBe(16); // one of them in two pieces, which together are one
    expect(loss(corner, down, up, { ...corner, to: { x: -2, y: -3 } })).toBe(16); // both
    expect(loss(down, up, up, down)).toBe(14); // two leaves, both cut there
    expect(loss(across, up)).toBe(9);
  });
  it("end at the next storey's floor where they have no top", () => {
    const storeys: Storey[] = [
      { name: "ground", floorM: 0, floorLossDb: null },
      { name: "upper", floorM: 4, floorLossDb: 9 },
    ];
    const both = [
      partition,
      { ...partition, name: "above", storey: "upper", build: { lossDb: 1 }, openings: [] },
    ];
    const stacked = venue({ storeys, walls: both, rooms: [] });
    expect(through(stacked, p(0, 2, 3), p(4, 2, 3)).wallLossDb).toBe(7);
    expect(through(stacked, p(0, 2, 5), p(4, 2, 5)).wallLossDb).toBe(1);
    expect(through(stacked, p(0, 2, 3), p(4, 2, 5)).wallLossDb).toBe(7); // through the joint: the greater
    const across = wall({ x: 1, y: 1 }, { x: 3, y: 3 }, { lossDb: 3 }, { topM: 8 });
    const crossed = venue({ storeys, walls: [...both, across], rooms: [] });
    expect(through(crossed, p(0, 2, 3), p(4, 2, 5)).wallLossDb).toBe(10); // and a wall right through it
  });
  it("are refused on an unknown storey or without length", () => {
    expect(() => venueSite(venue({ walls: [{ ...partition, storey: "attic" }] }))).toThrow(/wall.storey/);
    expect(() => venueSite(venue({ walls: [{ ...partition, to: partition.from }] }))).toThrow(/wall/);
  });
});

describe("floors on a path", () => {
  const storeys: Storey[] = [
    { name: "ground", floorM: 0, floorLossDb: null },
    { name: "first", floorM: 4, floorLossDb: null },
    { name: "second", floorM: 7, floorLossDb: null },
    { name: "third", floorM: 10, floorLossDb: 20 },
  ];
  const hall = (heightM: number): Room => room("hall", rectangle(0, 0, 10, 10), { heightM });

  it("lose by ITU-R P.1238 or as given", () => {
    const built = venue({ storeys, rooms: [hall(3.5)] });
    expect(through(built, p(1, 1, 2), p(9, 9, 3)).floorLossDb).toBe(0);
    // Commercial: 6 dB for one floor, 3 more for a second; the third storey's as given.
    expect(through(built, p(1, 1, 2), p(9, 9, 5)).floorLossDb).toBe(6);
    expect(through(built, p(1, 1, 2), p(9, 9, 8)).floorLossDb).toBe(9);
    expect(through(built, p(1, 1, 11), p(9, 9, 2)).floorLossDb).toBe(29);
    expect(through(built, p(1, 1, 11), p(9, 9, 2)).floors.map(({ storey }) => storey)).toEqual([
      "first",
      "second",
      "third",
    ]);
    const office = pathObstacles(venueSite(built, { building: "office" }), p(1, 1, 2), p(9, 9, 8));
    expect(office.floorLossDb).toBe(19); // 15 + 4
  });
  it("aren't there within a room that rises through them", () => {
    const high = venue({ storeys, rooms: [hall(8)] });
    expect(through(high, p(1, 1, 2), p(9, 9, 7.5)).floorLossDb).toBe(0);
    // Rises 1 m in 2 m: at 4 m it is at x = 9, in the hall; at 7 m at x = 15, outside.
    expect(through(high, p(5, 5, 2), p(17, 5, 8)).floors.map(({ storey }) => storey)).toEqual(["second"]);
  });
  it("don't count where the path only ends on them", () => {
    const built = venue({ storeys, rooms: [] });
    expect(through(built, p(0, 0, 4), p(3, 3, 2)).floors).toEqual([]);
    expect(through(built, p(0, 0, 4), p(3, 3, 6)).floors).toEqual([]);
  });
});

// Whole half-metres, so that paths through corners, along walls and at opening edges come often.
const half = fc.integer({ min: -12, max: 12 }).map((n) => n / 2);
const point = fc.record({ x: half, y: half });
const place = fc.record({ x: half, y: half, z: fc.integer({ min: 0, max: 14 }).map((n) => n / 2) });
const build = fc.constantFrom<WallBuild>(
  { lossDb: 4 },
  { lossDb: 11.5 },
  { material: "plasterboard", thicknessM: 0.0125 },
  { material: "brick", thicknessM: 0.1 },
  {
    layers: [
      { material: "wood", thicknessM: 0.02 },
      { material: "air", thicknessM: 0.1 },
    ],
  },
);
const anyWall = fc
  .record({ from: point, to: point, build, openTo: fc.integer({ min: 1, max: 8 }), high: fc.boolean() })
  .filter(({ from, to }) => from.x !== to.x || from.y !== to.y)
  .map(({ from, to, openTo, high, ...rest }) => {
    const lengthM = Math.hypot(to.x - from.x, to.y - from.y);
    const toM = Math.min(lengthM, openTo / 2);
    const openings = [door(Math.max(0, toM - 1.5), toM, 2, { lossDb: 1 })];
    return wall(from, to, rest.build, { topM: high ? null : 3, openings });
  });
const scene = fc.record({ walls: fc.array(anyWall, { minLength: 1, maxLength: 6 }), from: place, to: place });

const lossDb = (walls: readonly Wall[], from: Place, to: Place): number =>
  through(venue({ walls, rooms: [] }), from, to).wallLossDb;

describe("the loss on a path", () => {
  it("is the same from either end", () => {
    fc.assert(
      fc.property(scene, ({ walls, from, to }) => {
        expect(lossDb(walls, to, from)).toBeCloseTo(lossDb(walls, from, to), 9);
      }),
      { numRuns: 500 },
    );
  });
  it("is the same mirrored, rotated and moved, and whatever way and order walls are drawn in", () => {
    const angle = fc.double({ min: 0, max: 6.3, noNaN: true });
    fc.assert(
      fc.property(scene, angle, fc.boolean(), half, ({ walls, from, to }, turnRad, mirrored, shiftM) => {
        const moved = <At extends PlanPoint>(at: At): At => {
          const x = mirrored ? -at.x : at.x;
          return {
            ...at,
            x: x * Math.cos(turnRad) - at.y * Math.sin(turnRad) + shiftM,
            y: x * Math.sin(turnRad) + at.y * Math.cos(turnRad) - 3 * shiftM,
          };
        };
        const turned = walls.map((one) => ({ ...one, from: moved(one.from), to: moved(one.to) }));
        const before = lossDb(walls, from, to);
        expect(lossDb(turned, moved(from), moved(to))).toBeCloseTo(before, 9);
        expect(lossDb(walls.map(drawnBackwards).reverse(), from, to)).toBeCloseTo(before, 9);
      }),
      { numRuns: 500 },
    );
  });
  it("doesn't change when a wall is cut in two pieces of one line, at a crossing too", () => {
    fc.assert(
      fc.property(scene, fc.double({ min: 0.01, max: 0.99, noNaN: true }), ({ walls, from, to }, share) => {
        const before = lossDb(walls, from, to);
        const cuts = [share, crossingShare(walls[0]!, from, to) ?? 0.5];
        // At an opening's edge the wall counts before the cut, and the greater of wall and opening after it.
        for (const cut of cuts.filter((one) => !isAtOpeningEdge(walls[0]!, one)))
          expect(lossDb([...cutInTwo(walls[0]!, cut), ...walls.slice(1)], from, to)).toBeCloseTo(before, 9);
      }),
      { numRuns: 500 },
    );
  });
});

function drawnBackwards(one: Wall): Wall {
  const lengthM = Math.hypot(one.to.x - one.from.x, one.to.y - one.from.y);
  const openings = one.openings.map((open) => ({
    ...open,
    fromM: lengthM - open.toM,
    toM: lengthM - open.fromM,
  }));
  return { ...one, from: one.to, to: one.from, openings };
}

/** Where on a wall the line of a path crosses it, by Cramer's rule; null where it doesn't within the wall. */
function crossingShare({ from: a, to: b }: Wall, from: Place, to: Place): number | null {
  const [dx, dy, wx, wy] = [to.x - from.x, to.y - from.y, b.x - a.x, b.y - a.y];
  const share = (dx * (a.y - from.y) - dy * (a.x - from.x)) / (dy * wx - dx * wy);
  return share > 0.001 && share < 0.999 ? share : null;
}

function isAtOpeningEdge({ from, to, openings }: Wall, share: number): boolean {
  const cutM = share * Math.hypot(to.x - from.x, to.y - from.y);
  return openings.some(({ fromM, toM }) => [fromM, toM].some((edgeM) => Math.abs(edgeM - cutM) < 1e-6));
}

function cutInTwo(one: Wall, share: number): Wall[] {
  const middle = {
    x: one.from.x + share * (one.to.x - one.from.x),
    y: one.from.y + share * (one.to.y - one.from.y),
  };
  const cutM = share * Math.hypot(one.to.x - one.from.x, one.to.y - one.from.y);
  const first = one.openings
    .filter(({ fromM }) => fromM < cutM)
    .map((open) => ({ ...open, toM: Math.min(open.toM, cutM) }));
  const second = one.openings
    .filter(({ toM }) => toM > cutM)
    .map((open) => ({ ...open, fromM: Math.max(0, open.fromM - cutM), toM: open.toM - cutM }));
  return [
    { ...one, to: middle, openings: first },
    { ...one, from: middle, openings: second },
  ];
}
