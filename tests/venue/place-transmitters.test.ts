import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { transmitShapes } from "../../src/band/index.js";
import {
  fadeAllowances,
  marginField,
  placeTransmitters,
  receiverBudgets,
  receiverChannel,
  receiverScene,
  venueSite,
} from "../../src/venue/index.js";
import type {
  Opening,
  PlaceTransmittersOptions,
  TransmitterPlace,
  Venue,
  VenueSite,
  VenueSystem,
} from "../../src/venue/index.js";
import { bestPlaces } from "../../src/venue/best-places.js";
import { bestPair } from "../../src/venue/best-pair.js";
import { lossTables } from "../../src/venue/loss-tables.js";
import { buildLosses } from "../../src/venue/build-losses.js";
import { marginSearch } from "../../src/venue/margin-search.js";
import { placedBudget, placementSetting } from "../../src/venue/placement-setting.js";
import { dipole, receiver, rectangle, room, system, transmitter, venue, wall } from "../helpers/venues.js";

const doorway: Opening = { fromM: 3, toM: 5, bottomM: 0, topM: 2.5, build: { lossDb: 0 } };
const brick = { material: "brick", thicknessM: 0.2 };
const hall = venue({
  rooms: [
    room("hall", rectangle(0, 0, 20, 12), {
      people: { empty: 0, part: 50, full: 150 },
      seating: rectangle(6, 2, 16, 10),
    }),
  ],
  walls: [
    wall({ x: 9, y: 0 }, { x: 9, y: 8 }, brick, { topM: 5, openings: [doorway] }),
    wall({ x: 13, y: 5 }, { x: 20, y: 9 }, { lossDb: 6 }),
    wall({ x: 3, y: 3 }, { x: 6, y: 3 }, { material: "glass", thicknessM: 0.006 }),
  ],
  receivers: [
    receiver("1", { x: 3, y: 2, z: 6 }),
    receiver("2", { x: 3, y: 10, z: 5 }, { antenna: dipole() }),
    receiver("3", { x: 11, y: 3, z: 6.5 }),
    receiver("4", { x: 17, y: 2, z: 5.5 }, { antenna: { kind: "dipole", mounting: "sideways" } }),
    receiver("5", { x: 18, y: 10.5, z: 6 }, { enclosure: "closed-metal" }),
  ],
});
const site = venueSite(hall);
const survey = new Map([
  [
    "hall",
    {
      emitters: [
        {
          id: "a",
          centreMhz: 2437,
          shape: transmitShapes.ht20,
          levelDbm: -68,
          airtimeRatio: 0.3,
          airtimeAssumed: false,
          contentionChannel: 6,
        },
      ],
      scanHeightM: 1,
    },
  ],
]);
const place = (of: VenueSystem, more: Partial<PlaceTransmittersOptions> = {}, at = site) =>
  placeTransmitters(at, of, { survey, ...more });
const at = (x: number, y: number, name = `${x}, ${y}`): TransmitterPlace =>
  transmitter({ x, y, z: 3 }, { name, antenna: dipole() });

/** The slow route: the whole budget of every receiver. */
function leastMarginIn(inside: VenueSite): (from: TransmitterPlace) => number {
  const { profile } = system();
  const score = receiverScene(inside, profile, { survey });
  const setting = { site: inside, profile, score, allowances: fadeAllowances({}) };
  return (from) =>
    Math.min(
      ...inside.venue.receivers.map(
        (box) => receiverChannel(setting, from, box, { channel: 6, centreMhz: 2437 }).budget.workingMarginDb,
      ),
    );
}
const leastDb = leastMarginIn(site);

describe("the best places", () => {
  const found = place(system(), { stepM: 1 });
  const grid = Array.from({ length: 20 * 12 }, (_, index) =>
    at((index % 20) + 0.5, Math.floor(index / 20) + 0.5),
  );

  it("are those of an exhaustive look at every point by the whole budget", () => {
    const slow = grid
      .filter(({ at: { x, y } }) =>
        hall.receivers.every((box) => Math.hypot(box.at.x - x, box.at.y - y, box.at.z - 3) >= 0.5),
      )
      .map((from) => ({ from, db: leastDb(from) }));
    const chosen: typeof slow = [];
    while (chosen.length < 3) {
      const apart = slow.filter(({ from }) =>
        chosen.every((one) => Math.hypot(one.from.at.x - from.at.x, one.from.at.y - from.at.y) >= 2),
      );
      chosen.push(apart.reduce((best, one) => (one.db > best.db ? one : best)));
    }
    expect(found.ranked.map((one) => one.place.at)).toEqual(chosen.map(({ from }) => from.at));
    found.ranked.forEach(({ leastMarginDb }, index) =>
      expect(leastMarginDb).toBeCloseTo(chosen[index]!.db, 9),
    );
    expect([found.triedCount, found.keptOutCount, found.channel]).toEqual([240, 0, 6]);
  });
  it("say what each gives up, and at which receiver", () => {
    for (const { place: from, margins, weakest, leastMarginDb, givesUpDb } of found.ranked) {
      expect(margins.map((one) => one.receiver)).toEqual(["1", "2", "3", "4", "5"]);
      expect(margins.find((one) => one.receiver === weakest)!.workingMarginDb).toBe(leastMarginDb);
      expect(Math.min(...margins.map((one) => one.workingMarginDb))).toBe(leastMarginDb);
      expect(givesUpDb).toBeCloseTo(found.ranked[0]!.leastMarginDb - leastMarginDb, 12);
      const budgets = receiverBudgets(site, system(), from, { survey }).receivers;
      for (const { receiver: box, judged } of budgets)
        expect(margins.find((one) => one.receiver === box.name)!.workingMarginDb).toBeCloseTo(
          judged.budget.workingMarginDb,
          9,
        );
    }
  });
  it("are chosen among candidates, those that break the antenna practice told", () => {
    const candidates = [at(2, 6, "booth"), at(10, 10, "bar"), { ...at(16, 6, "rack"), heightM: 1.2 }];
    const { ranked, keptOutCount } = place(system({ candidates }), { accessPoints: [{ x: 10, y: 9, z: 4 }] });
    expect(ranked.map((one) => one.place.name).sort()).toEqual(["bar", "booth", "rack"]);
    expect(ranked[0]!.leastMarginDb).toBeCloseTo(Math.max(...candidates.map((one) => leastDb(one))), 9);
    expect(ranked.find((one) => one.place.name === "bar")!.breaks).toEqual(["near-access-point"]);
    expect(ranked.find((one) => one.place.name === "rack")!.breaks).toEqual(["too-low"]);
    expect(keptOutCount).toBe(0);
  });
  it("on a grid keep clear of access points, other transmitters and luminaires", () => {
    const accessPoints = [found.ranked[0]!.place.at];
    const luminaires = [{ ...found.ranked[1]!.place.at, z: 6 }];
    const kept = place(system(), {
      stepM: 1,
      accessPoints,
      luminaires,
      transmitters: [{ x: 0.5, y: 0.5, z: 3 }],
    });
    expect(kept.keptOutCount).toBeGreaterThan(20);
    for (const { place: one } of kept.ranked) {
      expect(Math.hypot(one.at.x - accessPoints[0]!.x, one.at.y - accessPoints[0]!.y)).toBeGreaterThanOrEqual(
        3,
      );
      expect([one.at.x, one.at.y]).not.toEqual([luminaires[0]!.x, luminaires[0]!.y]);
    }
    expect(kept.ranked[0]!.leastMarginDb).toBeLessThanOrEqual(found.ranked[0]!.leastMarginDb);
    const nowhere = place(system(), {
      stepM: 5,
      accessPoints: [5, 10, 15].flatMap((x) => [{ x, y: 6, z: 3 }]),
      transmitters: grid.map((one) => one.at),
    });
    expect(nowhere).toMatchObject({ ranked: [], triedCount: 0, pair: null });
  });
  it("need no second transmitter where one serves all, and find the best two where none does", () => {
    const strong = { ...system().profile, txPowerDbm: { ...system().profile.txPowerDbm, value: 60 } };
    expect(place(system({ profile: strong }), { stepM: 2 }).pair).toBeNull();
    const weak = { ...system().profile, txPowerDbm: { ...system().profile.txPowerDbm, value: 2 } };
    const faint = system({
      profile: weak,
      candidates: [at(2, 6), at(7, 10), at(11, 6), at(18, 4), at(15, 11)],
    });
    const { pair, ranked } = place(faint);
    expect(ranked[0]!.leastMarginDb).toBeLessThan(0);
    const margins = faint.candidates.map((from) => {
      const budgets = receiverBudgets(site, faint, from, { survey }).receivers;
      return hall.receivers.map(
        ({ name }) => budgets.find((one) => one.receiver.name === name)!.judged.budget.workingMarginDb,
      );
    });
    const joint = margins.flatMap((one, i) =>
      margins.slice(i + 1).map((other) => Math.min(...one.map((db, index) => Math.max(db, other[index]!)))),
    );
    expect(pair!.leastMarginDb).toBeCloseTo(Math.max(...joint), 9);
    expect(pair!.receivers.flat().sort()).toEqual(["1", "2", "3", "4", "5"]);
    expect(Math.min(...pair!.margins.map((one) => one.workingMarginDb))).toBe(pair!.leastMarginDb);
  });
  it("find a channel for themselves, or take a hopping radio's middle", () => {
    const quiet = place(system({ channel: null }), { stepM: 4 });
    expect(Math.abs(quiet.frequencyMhz - 2437)).toBeGreaterThan(15);
    const hopping = place(
      system({
        channel: null,
        profile: {
          ...system().profile,
          hopping: { avoids: false, leastHopCount: { value: 15, status: "assumed", source: "" } },
        },
      }),
      { stepM: 4 },
    );
    expect(hopping.channel).toBeNull();
  });
  it("are refused for a system without receivers, an unknown room, a step of nothing", () => {
    expect(() => place(system({ name: "B" }))).toThrow(/receivers/);
    expect(() => place(system({ rooms: ["attic"] }))).toThrow(/rooms/);
    expect(() => place(system(), { stepM: 0 })).toThrow(/stepM/);
    expect(() => place(system({ allowedChannels: [], channel: null }))).toThrow(/channel/);
  });
});

describe("the quick margins", () => {
  const setting = placementSetting(site, system(), { survey });
  const search = marginSearch(site, setting);
  it("lie within their stated error of the whole budget, and never above their bound", () => {
    const coordinate = (most: number) => fc.double({ min: 0.1, max: most, noNaN: true });
    const antennas = fc.constantFrom(
      null,
      dipole(),
      { kind: "collinear", gainDbi: 6 } as const,
      {
        kind: "panel",
        gainDbi: 8,
        azimuthBeamwidthDeg: 70,
        elevationBeamwidthDeg: 60,
        tiltDeg: -20,
      } as const,
    );
    expect(search.errorDb).toBeLessThan(0.01);
    fc.assert(
      fc.property(coordinate(19.9), coordinate(11.9), coordinate(4.5), antennas, (x, y, z, antenna) => {
        const from = transmitter({ x, y, z }, { antenna });
        hall.receivers.forEach((_, index) => {
          const exactDb = placedBudget(site, setting, from, index).workingMarginDb;
          expect(Math.abs(search.marginDb(index, from) - exactDb)).toBeLessThanOrEqual(search.errorDb);
          expect(search.boundDb(index, from)).toBeGreaterThanOrEqual(exactDb - 1e-9);
        });
      }),
      { numRuns: 300 },
    );
  });
  it("rest on tables that give a wall's loss to some thousandths of a decibel", () => {
    const builds = [brick, { material: "concrete", thicknessM: 0.2 }, { lossDb: 3 }];
    const tables = lossTables(builds.length, buildLosses(builds));
    const exact = buildLosses(builds);
    for (let deg = 0.07; deg < 89.99; deg += 0.53)
      builds.forEach((_, index) => {
        const cosineRatio = Math.cos((deg * Math.PI) / 180);
        const errorDb = Math.abs(tables.lossDb(index, cosineRatio) - exact(index, cosineRatio).lossDb);
        expect(errorDb).toBeLessThanOrEqual(tables.errorDb);
      });
    expect(tables.errorDb).toBeLessThan(0.005);
  });
});

describe("the search itself, on made-up margins", () => {
  const margins = fc.array(fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 3, maxLength: 3 }), {
    minLength: 1,
    maxLength: 25,
  });
  const asPlaces = (rows: readonly (readonly number[])[]) =>
    rows.map((_, x) => ({ at: { x, y: 0, z: 0 }, antenna: null, inSight: null }));
  const asSearch = (rows: readonly (readonly number[])[]) => ({
    errorDb: 1e-9,
    boundDb: (index: number, from: { at: { x: number } }) => rows[from.at.x]![index]! + 2,
    marginDb: (index: number, from: { at: { x: number } }) => rows[from.at.x]![index]!,
  });
  it("takes greedily the best, apart from each other, the first of equals", () => {
    fc.assert(
      fc.property(margins, fc.integer({ min: 0, max: 4 }), (rows, apartM) => {
        const least = rows.map((row) => Math.min(...row));
        const slow: number[] = [];
        for (;;) {
          const free = least
            .map((_, i) => i)
            .filter((i) => slow.every((j) => i !== j && Math.abs(i - j) >= apartM));
          if (free.length === 0 || slow.length === 3) break;
          slow.push(free.reduce((best, i) => (least[i]! > least[best]! ? i : best)));
        }
        const found = bestPlaces({
          places: asPlaces(rows),
          receiverCount: 3,
          search: asSearch(rows),
          exactDb: (index) => least[index]!,
          topCount: 3,
          apartM,
        });
        expect(found).toEqual(slow);
      }),
    );
  });
  it("finds the best pair where there are few places, and a pair no single move betters where many", () => {
    const jointDb = (rows: readonly (readonly number[])[], a: number, b: number): number =>
      Math.min(...rows[a]!.map((db, index) => Math.max(db, rows[b]![index]!)));
    fc.assert(
      fc.property(margins, (rows) => {
        const pair = bestPair({
          places: asPlaces(rows),
          receiverCount: 3,
          search: asSearch(rows),
          apartM: 1,
        });
        if (rows.length < 2) {
          expect(pair).toBeNull();
          return;
        }
        const all = rows.flatMap((_, a) =>
          rows.map((_row, b) => (a === b ? -Infinity : jointDb(rows, a, b))),
        );
        expect(jointDb(rows, pair!.oneIndex, pair!.otherIndex)).toBe(Math.max(...all));
      }),
    );
    const many = Array.from({ length: 700 }, (_, i) => [
      ((i * 37) % 101) - 50,
      ((i * 53) % 97) - 50,
      ((i * 71) % 89) - 50,
    ]);
    const pair = bestPair({ places: asPlaces(many), receiverCount: 3, search: asSearch(many), apartM: 1 })!;
    const found = jointDb(many, pair.oneIndex, pair.otherIndex);
    for (let i = 0; i < many.length; i++) {
      if (i !== pair.oneIndex) expect(jointDb(many, pair.oneIndex, i)).toBeLessThanOrEqual(found);
      if (i !== pair.otherIndex) expect(jointDb(many, pair.otherIndex, i)).toBeLessThanOrEqual(found);
    }
  });
});

describe("the field of margins", () => {
  it("holds for each cell of the room what the whole budget gives there, nothing outside", () => {
    const ell: Venue = {
      ...hall,
      rooms: [
        room("hall", [
          ...rectangle(0, 0, 20, 12).slice(0, 3),
          { x: 8, y: 12 },
          { x: 8, y: 6 },
          { x: 0, y: 6 },
        ]),
      ],
    };
    const options = { survey, room: "hall", stepM: 2, heightM: 3, antenna: dipole() };
    const inside = venueSite(ell);
    const least = leastMarginIn(inside);
    const field = marginField(inside, system(), options);
    expect([field.columnCount, field.rowCount, field.from]).toEqual([10, 6, { x: 0, y: 0 }]);
    field.leastMarginDb.forEach((db, index) => {
      const [x, y] = [(index % 10) * 2 + 1, Math.floor(index / 10) * 2 + 1];
      if (x < 8 && y > 6) expect(db).toBeNull();
      else expect(db).toBeCloseTo(least(at(x, y)), 2);
    });
    expect(() => marginField(inside, system(), { ...options, room: "attic" })).toThrow(/room/);
    expect(() => marginField(inside, system(), { ...options, stepM: 0.001 })).toThrow(/stepM/);
  });
});
