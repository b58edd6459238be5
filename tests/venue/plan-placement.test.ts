/**
 * A system's transmitter as planned beside its candidates and the grid. Free space without walls, scans or crowd
 * leaves Friis alone, so that differences of margins are 20·log10 of distances: worked out here by hand.
 */
import { describe, expect, test } from "vitest";
import {
  planPlacement,
  planVenueChannels,
  sceneMemory,
  secondSystemCost,
  splitSystem,
  venueSite,
} from "../../src/venue/index.js";
import type { TransmitterPlace, Venue } from "../../src/venue/index.js";
import { findProfile } from "../../src/radio/index.js";
import { receiver, rectangle, room, system, transmitter, venue } from "../helpers/venues.js";

const generic = findProfile("raster-13");
/** So little power that no place is ample. */
const faint = { ...generic, txPowerDbm: { ...generic.txPowerDbm, value: -8 } };
const outdoors = { kind: "free-space" } as const;
const boxes = [receiver("1", { x: 2, y: 6, z: 6 }), receiver("2", { x: 18, y: 6, z: 6 })];

function house(place: TransmitterPlace | null, candidates: readonly TransmitterPlace[] = []): Venue {
  return venue({
    rooms: [room("hall", rectangle(0, 0, 20, 12), { pathModel: outdoors })],
    receivers: boxes,
    systems: [system({ profile: faint, transmitter: place, candidates })],
  });
}

function planOf(asked: Venue, options: Partial<Parameters<typeof planPlacement>[2]> = {}) {
  return planPlacement(venueSite(asked, { crowd: "empty" }), asked.systems[0]!, {
    survey: new Map(),
    ...options,
  });
}

const farthestM = ({ at }: TransmitterPlace): number =>
  Math.max(...boxes.map((box) => Math.hypot(at.x - box.at.x, at.y - box.at.y, at.z - box.at.z)));

const end = transmitter({ x: 1, y: 1, z: 3 }, { name: "end" });
const middle = transmitter({ x: 10, y: 6, z: 3 }, { name: "middle" });
const side = transmitter({ x: 10, y: 1, z: 3 }, { name: "side" });

describe("the places of a plan", () => {
  test("stand best first, and give up what the longer path takes", () => {
    const { places, grid } = planOf(house(end, [side, middle]), { among: "candidates" });
    expect(grid).toBeNull();
    expect(places.map(({ place, from }) => [place.name, from])).toEqual([
      ["middle", "candidate"],
      ["side", "candidate"],
      ["end", "planned"],
    ]);
    for (const { place, givesUpDb, weakest } of places) {
      // ITU-R P.525: 20 dB a decade of distance.
      expect(givesUpDb).toBeCloseTo(20 * Math.log10(farthestM(place) / farthestM(middle)), 9);
      if (place === end) expect(weakest).toBe("2");
    }
  });

  test("hold the grid's three best beside them, the planned place never left out", () => {
    const { places, grid, choice } = planOf(house(end), { antenna: null });
    expect(places.filter(({ from }) => from === "grid")).toHaveLength(3);
    expect(places.at(-1)!.place.name).toBe("end");
    expect(grid!.triedCount).toBeGreaterThan(900);
    // Half a metre apart, points lie at 9.75 and 10.25: none is nearer to the middle.
    expect(Math.abs(choice!.place.at.x - 10)).toBeCloseTo(0.25, 9);
    expect(choice!.from).toBe("grid");
  });

  test("leave a transmitter where it is for less than 1 dB, unless it breaks the practice", () => {
    const near = transmitter({ x: 10.8, y: 6, z: 3 }, { name: "near" });
    const lossDb = 20 * Math.log10(farthestM(near) / farthestM(middle));
    expect(lossDb).toBeGreaterThan(0.5);
    expect(lossDb).toBeLessThan(1);
    expect(planOf(house(near, [middle]), { among: "candidates" }).choice!.place.name).toBe("near");
    // 2.6 m from one, 3.4 m from the other.
    const accessPoints = [{ x: 13.2, y: 6, z: 4 }];
    const moved = planOf(house(near, [middle]), { among: "candidates", accessPoints });
    expect(moved.places.map(({ place, breaks }) => [place.name, breaks])).toEqual([
      ["middle", []],
      ["near", ["near-access-point"]],
    ]);
    expect(moved.choice!.place.name).toBe("middle");
  });

  test("leave an ample one alone, however much better another is", () => {
    const loud = house(end, [middle]);
    const systems = loud.systems.map((one) => ({ ...one, profile: generic }));
    const { places, choice } = planOf({ ...loud, systems }, { among: "candidates" });
    expect(places.map(({ leastMarginDb }) => leastMarginDb >= 15)).toEqual([true, true]);
    expect([places[0]!.place.name, choice!.place.name]).toEqual(["middle", "end"]);
  });

  test("tell who sees the transmitter: a wall of 3 dB or more hides it", () => {
    const walled = {
      ...house(middle),
      walls: [
        {
          name: "w",
          storey: "ground",
          from: { x: 14, y: 0 },
          to: { x: 14, y: 12 },
          bottomM: 0,
          topM: null,
          build: { lossDb: 3 },
          openings: [],
        },
      ],
    };
    const [only] = planOf(walled, { among: "candidates" }).places;
    expect(only!.margins.map(({ receiver: name, inSight }) => [name, inSight])).toEqual([
      ["1", true],
      ["2", false],
    ]);
  });

  test("are none where nobody named one and no grid is wanted", () => {
    const { places, choice, pair } = planOf(house(null), { among: "candidates" });
    expect([places, choice, pair]).toEqual([[], null, null]);
  });
});

describe("a system shared out to two transmitters", () => {
  const places = [
    transmitter({ x: 1, y: 1, z: 3 }),
    transmitter({ x: 19, y: 1, z: 3 }, { name: "far" }),
  ] as const;
  const pair = { places, receivers: [["1"], ["2"]], leastMarginDb: 1, margins: [] } as const;

  test("is two systems, each with its receivers; the second has no channel yet", () => {
    const whole = venue({ ...house(end), systems: [system({ channel: 6 }), system({ name: "A 2" })] });
    const { venue: split, systems } = splitSystem(whole, "A", pair);
    expect(systems).toEqual(["A", "A 3"]);
    expect(
      split.systems.map(({ name, channel, transmitter: at }) => [name, channel, at?.name ?? null]),
    ).toEqual([
      ["A", 6, "booth"],
      ["A 3", null, "far"],
      ["A 2", 6, null],
    ]);
    expect(split.receivers.map(({ name, system: of }) => [name, of])).toEqual([
      ["1", "A"],
      ["2", "A 3"],
    ]);
    expect(whole.receivers.map(({ system: of }) => of)).toEqual(["A", "A"]);
  });

  test("must be one of the venue's", () => {
    expect(() => splitSystem(house(end), "B", pair)).toThrow("name: expected A, got B");
  });
});

describe("what a second transmitter costs in the band", () => {
  const weak = { ...generic, txPowerDbm: { ...generic.txPowerDbm, value: -26 } };
  const base = house(end, [side, middle]);
  const neighbour = system({
    name: "B",
    channel: null,
    profile: weak,
    transmitter: transmitter({ x: 4, y: 10, z: 3 }, { name: "B's" }),
  });
  const asked: Venue = {
    ...base,
    systems: [
      system({ profile: weak, channel: null, transmitter: end, candidates: [side, middle] }),
      neighbour,
    ],
    receivers: [...boxes, receiver("b", { x: 5, y: 10, z: 6 }, { system: "B" })],
  };
  const site = venueSite(asked, { crowd: "empty" });
  const options = { survey: new Map() };
  const plan = planPlacement(site, asked.systems[0]!, { ...options, stepM: 2 });

  test("is told by the joint plans with the best single place and with the pair", () => {
    expect(plan.choice!.leastMarginDb).toBeLessThan(0);
    expect(plan.pair).not.toBeNull();
    const cost = secondSystemCost(site, plan, options)!;
    const at = (systems: Venue["systems"], receivers = asked.receivers) =>
      planVenueChannels(venueSite({ ...asked, systems, receivers }, { crowd: "empty" }), options).systems;
    const one = at([{ ...asked.systems[0]!, transmitter: plan.choice!.place }, neighbour]);
    const second = new Set(plan.pair!.receivers[1]);
    const two = at(
      [
        { ...asked.systems[0]!, transmitter: plan.pair!.places[0] },
        { ...asked.systems[0]!, name: "A 2", transmitter: plan.pair!.places[1] },
        neighbour,
      ],
      asked.receivers.map((box) => (second.has(box.name) ? { ...box, system: "A 2" } : box)),
    );
    expect(cost.halves).toEqual(["A", "A 2"]);
    expect(cost.oneMarginDb).toBeCloseTo(one[0]!.workingMarginDb, 9);
    expect(cost.twoMarginDb).toBeCloseTo(Math.min(two[0]!.workingMarginDb, two[1]!.workingMarginDb), 9);
    expect(cost.systems.map(({ name, oneChannel, twoChannel }) => [name, oneChannel, twoChannel])).toEqual([
      ["A", one[0]!.channel, two[0]!.channel],
      ["A 2", null, two[1]!.channel],
      ["B", one[1]!.channel, two[2]!.channel],
    ]);
    expect(cost.oneMinMarginDb).toBeCloseTo(Math.min(...one.map((each) => each.workingMarginDb)), 9);
    // Two transmitters of one house don't share a channel.
    expect(two[0]!.channel).not.toBe(two[1]!.channel);
  });

  test("is the same with what an earlier plan knew, and none without a pair", () => {
    const known = new Map();
    const first = secondSystemCost(site, plan, { ...options, known });
    expect(known.has(asked.systems[1])).toBe(true);
    expect(secondSystemCost(site, plan, { ...options, known })).toEqual(first);
    expect(secondSystemCost(site, plan, options)).toEqual(first);
    const memory = sceneMemory();
    for (let time = 0; time < 2; time++) {
      expect(planPlacement(site, asked.systems[0]!, { ...options, stepM: 2, memory })).toEqual(plan);
      expect(secondSystemCost(site, plan, { ...options, memory })).toEqual(first);
    }
    expect(memory.channels.size).toBe(3);
    expect(secondSystemCost(site, { ...plan, pair: null }, options)).toBeNull();
  });
});
