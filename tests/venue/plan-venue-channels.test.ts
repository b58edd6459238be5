import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { planVenueChannels, receiverBudgets, systemsOnAir, venueSite } from "../../src/venue/index.js";
import type {
  PlannedSystem,
  RoomSurvey,
  Venue,
  VenueChannelOptions,
  VenueChannelPlan,
  VenueReceiver,
  VenueSystem,
} from "../../src/venue/index.js";
import { accessPoint } from "../helpers/access-point.js";
import { dipole, receiver, rectangle, room, system, transmitter, venue, wall } from "../helpers/venues.js";

const ROOMS = ["west", "middle", "east"] as const;
/** Each room hears the house's three access points, its own the loudest. */
const survey: ReadonlyMap<string, RoomSurvey> = new Map(
  ROOMS.map((name, here) => [
    name,
    {
      emitters: [1, 6, 11].map((channel, there) =>
        accessPoint(`ap ${there}`, channel, -52 - 14 * Math.abs(here - there)),
      ),
      scanHeightM: 5,
    },
  ]),
);
const walls = [12, 24].map((x) => wall({ x, y: 0 }, { x, y: 10 }, { lossDb: 9 }));
const rooms = ROOMS.map((name, k) => room(name, rectangle(12 * k, 0, 12 * k + 12, 10)));
const receivers: VenueReceiver[] = ROOMS.flatMap((name, k) =>
  [3, 9].map((x, index) =>
    receiver(`${name} ${index + 1}`, { x: 12 * k + x, y: 7, z: 5 }, { system: name, room: name }),
  ),
);
const own = (name: string, k: number, more: Partial<VenueSystem> = {}): VenueSystem =>
  system({
    name,
    rooms: [name],
    channel: null,
    transmitter: transmitter({ x: 12 * k + 6, y: 1, z: 3 }, { name: `${name} booth`, room: name }),
    ...more,
  });
const systems = ROOMS.map((name, k) => own(name, k));
const house = (more: Partial<Venue> = {}): Venue => venue({ rooms, walls, receivers, systems, ...more });
const planned = (more: Partial<Venue> = {}, options: Partial<VenueChannelOptions> = {}): VenueChannelPlan =>
  planVenueChannels(venueSite(house(more)), { survey, ...options });
const named = (plan: VenueChannelPlan, name: string): PlannedSystem =>
  plan.systems.find((one) => one.system.name === name)!;

/** The same by another way: every receiver scored with the others as emitters that are always on. */
function scoredDb(
  built: Venue,
  on: readonly { readonly system: VenueSystem; readonly channel: number }[],
): Map<string, number> {
  const site = venueSite(built);
  const air = on.map(({ system: its, channel }) => ({
    system: its,
    transmitter: its.transmitter!,
    centreMhz: its.profile.channels.find((one) => one.channel === channel)!.centreMhz,
  }));
  return new Map(
    on.flatMap(({ system: its, channel }, index) => {
      const further = systemsOnAir(site, air[index]!, air);
      const narrowed = { ...its, allowedChannels: [channel] };
      const { receivers: judged } = receiverBudgets(site, narrowed, its.transmitter!, {
        survey,
        channel,
        further,
      });
      return judged.map(
        ({ receiver: box, judged: { budget } }) => [box.name, budget.workingMarginDb] as const,
      );
    }),
  );
}

describe("the joint plan of a venue", () => {
  const plan = planned();

  it("has margins that agree with every receiver scored beside the others", () => {
    const scored = scoredDb(
      house(),
      plan.systems.map(({ system: its, channel }) => ({ system: its, channel: channel! })),
    );
    for (const one of plan.systems)
      for (const { receiver: name, workingMarginDb } of one.receivers)
        expect(workingMarginDb).toBeCloseTo(scored.get(name)!, 6);
    const least = Math.min(...plan.systems.map(({ workingMarginDb }) => workingMarginDb));
    expect(plan.proof!.minMarginDb).toBe(least);
  });
  it("is the best of all plans, scored one by one", () => {
    const allowedChannels = [1, 2, 4, 7, 9];
    const few = systems.map((one) => ({ ...one, allowedChannels }));
    const chosen = planned({ systems: few });
    let bestDb = -Infinity;
    for (const a of allowedChannels)
      for (const b of allowedChannels)
        for (const c of allowedChannels) {
          const on = few.map((its, k) => ({ system: its, channel: [a, b, c][k]! }));
          bestDb = Math.max(bestDb, Math.min(...scoredDb(house({ systems: few }), on).values()));
        }
    expect(chosen.proof).toMatchObject({ optimal: true });
    expect(chosen.proof!.minMarginDb).toBeCloseTo(bestDb, 6);
    expect(chosen.proof!.boundDb).toBe(chosen.proof!.minMarginDb);
    for (const { channel } of chosen.systems) expect(allowedChannels).toContain(channel);
  });
  it("has alone what receivers' budgets have, and the naive plan scored together", () => {
    for (const one of plan.systems) {
      const { channel, receivers: judged } = receiverBudgets(
        venueSite(house()),
        one.system,
        one.transmitter,
        {
          survey,
        },
      );
      expect(one.alone.channel).toBe(channel);
      expect(one.alone.workingMarginDb).toBeCloseTo(judged[0]!.judged.budget.workingMarginDb, 9);
      expect(one.alone.receivers[0]!.receiver).toBe(judged[0]!.receiver.name);
    }
    const naive = scoredDb(
      house(),
      plan.systems.map(({ system: its, alone }) => ({ system: its, channel: alone.channel! })),
    );
    for (const one of plan.systems)
      for (const { receiver: name, workingMarginDb } of one.naive.receivers)
        expect(workingMarginDb).toBeCloseTo(naive.get(name)!, 6);
    expect(plan.proof!.naiveMinMarginDb).toBeCloseTo(Math.min(...naive.values()), 6);
    expect(plan.proof!.naiveMinMarginDb).toBeLessThanOrEqual(plan.proof!.minMarginDb + 1e-9);
  });
  it("is better than the naive one where rooms would meet on one channel", () => {
    const quiet = new Map(
      ROOMS.map((name) => [name, { emitters: [accessPoint("ap", 1, -50)], scanHeightM: 5 }]),
    );
    const { proof, systems: parts } = planned({ walls: [] }, { survey: quiet });
    expect(new Set(parts.map(({ alone }) => alone.channel)).size).toBe(1);
    expect(new Set(parts.map(({ channel }) => channel)).size).toBe(3);
    expect(proof!.minMarginDb).toBeGreaterThan(proof!.naiveMinMarginDb + 10);
  });
  it("never gains by another system, less wall or a louder neighbour", () => {
    const leastDb = (more: Partial<Venue>): number => planned(more).proof!.minMarginDb;
    expect(leastDb({ systems: systems.slice(0, 2) })).toBeGreaterThanOrEqual(leastDb({}) - 1e-9);
    expect(leastDb({ walls: [] })).toBeLessThanOrEqual(leastDb({}) + 1e-9);
    const { profile } = system();
    const loud = { ...profile, txPowerDbm: { ...profile.txPowerDbm, value: 28 } };
    const louder = planned({ systems: [systems[0]!, { ...systems[1]!, profile: loud }, systems[2]!] });
    for (const name of ["west", "east"])
      expect(named(louder, name).naive.workingMarginDb).toBeLessThanOrEqual(
        named(plan, name).naive.workingMarginDb + 1e-9,
      );
  });
  it("keeps to settled and allowed channels, and to the band of the region", () => {
    const settled = planned({ systems: [{ ...systems[0]!, channel: 9 }, ...systems.slice(1)] });
    expect(named(settled, "west")).toMatchObject({ channel: 9, isSettled: true, alone: { channel: 9 } });
    expect(named(settled, "east").isSettled).toBe(false);
    const { profile } = system();
    const channels = [
      { channel: 40, centreMhz: 2400.2 },
      { channel: 41, centreMhz: 2440 },
      { channel: 42, centreMhz: 2483.2 },
    ];
    const edge = own("west", 0, { profile: { ...profile, channels } });
    expect(named(planned({ systems: [edge], region: "EU" }), "west").channel).toBe(41);
    expect(named(planned({ systems: [edge] }), "west")).toMatchObject({
      channel: 41,
      fallback: { channel: null, reason: "it has no other channel to choose", workingMarginDb: null },
    });
    const out = own("west", 0, { profile: { ...profile, channels: channels.slice(0, 1) } });
    expect(planned({ systems: [out] })).toMatchObject({
      systems: [],
      proof: null,
      excluded: [{ system: "west", reason: "none of its radio channels lies inside the band" }],
    });
  });
  it("names a fallback that is the next best with the others held, far away where that costs 6 dB at most", () => {
    for (const one of plan.systems) {
      const on = (channel: number): Map<string, number> =>
        scoredDb(
          house(),
          plan.systems.map(({ system: its, channel: theirs }) => ({
            system: its,
            channel: its === one.system ? channel : theirs!,
          })),
        );
      const leastDb = (channel: number): number =>
        Math.min(...one.receivers.map(({ receiver: name }) => on(channel).get(name)!));
      const { channel, workingMarginDb } = one.fallback;
      expect(channel).not.toBe(one.channel);
      expect(workingMarginDb).toBeCloseTo(leastDb(channel!), 6);
      const far = one.system.profile.channels.filter(
        ({ centreMhz, channel: number }) =>
          Math.abs(centreMhz - one.centreMhz!) >= 25 && leastDb(number) >= one.workingMarginDb - 6,
      );
      if (far.length > 0) expect(far.map(({ channel: number }) => number)).toContain(channel);
    }
  });
  it("tells who hears whom", () => {
    expect(plan.couplings).toHaveLength(6);
    const costs = plan.couplings.map(({ costDb }) => costDb);
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
    for (const one of plan.couplings) {
      expect(one.costDb).toBeGreaterThanOrEqual(0);
      const into = named(plan, one.into);
      const without = planned({
        systems: plan.systems.flatMap(({ system: its, channel }) =>
          its.name === one.from ? [] : [{ ...its, channel }],
        ),
      });
      expect(named(without, one.into).workingMarginDb - into.workingMarginDb).toBeCloseTo(one.costDb, 6);
    }
    const next = plan.couplings.find(({ into, from }) => into === "west" && from === "middle")!;
    // (15, 6, 2) and a wall of 9 dB from the middle room's booth to the receiver in the west: 18 + 2 + 2 − 10 dB.
    const pathDb = 20 * Math.log10(2442) + 11 * Math.log10(9 ** 2 + 6 ** 2 + 2 ** 2) - 28;
    expect(next.receiver).toBe("west 2");
    expect(next.sameChannelDbm).toBeCloseTo(12 - pathDb - 9, 0);
  });
  it("ends by the clock with a bound that holds", () => {
    const names = Array.from({ length: 6 }, (_, k) => `system ${k}`);
    const crowded = {
      walls: [],
      systems: names.map((name, k) => own(name, k / 2)),
      receivers: names.map((name, k) =>
        receiver(name, { x: 6 * k + 2, y: 8, z: 5 }, { system: name, room: "middle" }),
      ),
    };
    let nowMs = 0;
    const hurried = planned(crowded, { timeLimitS: 2, nowMs: () => (nowMs += 500) }).proof!;
    const patient = planned(crowded).proof!;
    expect([hurried.optimal, patient.optimal]).toEqual([false, true]);
    expect(hurried.boundDb).toBeGreaterThanOrEqual(patient.minMarginDb - 1e-9);
    expect(hurried.minMarginDb).toBeLessThanOrEqual(patient.minMarginDb + 1e-9);
  });
});

describe("systems that hop, and systems that can't be planned", () => {
  const hopping = findProfile("hop-79");
  const hopper = own("middle", 1, { profile: hopping });

  it("a hopping one counts as its power spread over its hops, and has no channel", () => {
    const mixed = planned({ systems: [systems[0]!, hopper, systems[2]!], walls: [] });
    const alone = planned({ systems: [systems[0]!, systems[2]!], walls: [] });
    expect(named(mixed, "middle")).toMatchObject({
      channel: null,
      centreMhz: null,
      isHopping: true,
      fallback: { channel: null },
    });
    for (const name of ["west", "east"])
      expect(named(mixed, name).alone.workingMarginDb).toBeCloseTo(
        named(alone, name).alone.workingMarginDb,
        9,
      );
    expect(mixed.proof!.minMarginDb).toBeLessThan(alone.proof!.minMarginDb);
    const heard = mixed.couplings.find(({ from, into }) => from === "middle" && into === "west")!;
    // One of 79 hops is on the channel, its neighbours a skirt: within 3 dB of 1/79 of all the power.
    expect(heard.inChannelDbm! - heard.sameChannelDbm).toBeGreaterThan(-10 * Math.log10(79) - 0.5);
    expect(heard.inChannelDbm! - heard.sameChannelDbm).toBeLessThan(-10 * Math.log10(79) + 3);
  });
  it("its own margin is each receiver's median, lower beside the others", () => {
    const mixed = named(planned({ systems: [systems[0]!, hopper, systems[2]!] }), "middle");
    const { receivers: judged } = receiverBudgets(venueSite(house()), hopper, hopper.transmitter!, {
      survey,
    });
    expect(mixed.alone.workingMarginDb).toBeCloseTo(judged[0]!.judged.budget.workingMarginDb, 9);
    expect(mixed.workingMarginDb).toBeLessThanOrEqual(mixed.alone.workingMarginDb);
  });
  it("where all hop there is nothing to choose", () => {
    const { proof, systems: parts, couplings } = planned({ systems: [hopper] });
    expect([proof, parts.length, couplings.length]).toEqual([null, 1, 0]);
  });
  it("one without a transmitter is planned from its first candidate, or left out with the reason", () => {
    const spare = systems[1]!.transmitter!;
    const unplaced = own("middle", 1, { transmitter: null, candidates: [spare] });
    const plan = planned({ systems: [systems[0]!, unplaced] });
    expect(named(plan, "middle")).toMatchObject({ isCandidate: true, transmitter: spare });
    expect(named(plan, "west").isCandidate).toBe(false);
    const nowhere = planned({ systems: [{ ...unplaced, candidates: [] }, own("attic", 2)] });
    expect(nowhere.systems).toEqual([]);
    expect(nowhere.excluded).toEqual([
      { system: "middle", reason: "its transmitter is not placed, and no candidate is named" },
      { system: "attic", reason: "no receiver belongs to it" },
    ]);
  });
  it("a receiver in a true null is named, and the plan made for the others", () => {
    const booth = transmitter({ x: 3, y: 7, z: 3 }, { antenna: dipole(), room: "west" });
    const plan = planned({ systems: [own("west", 0, { transmitter: booth }), systems[1]!] });
    expect(named(plan, "west").lostReceivers).toEqual(["west 1"]);
    expect(named(plan, "west").receivers.map((one) => one.receiver)).toEqual(["west 2"]);
    expect(Number.isFinite(plan.proof!.minMarginDb)).toBe(true);
    const [only] = receivers;
    expect(
      planned({ systems: [own("west", 0, { transmitter: booth })], receivers: [only!] }).excluded,
    ).toEqual([{ system: "west", reason: "all its receivers lie in a null of its transmitter's antenna" }]);
  });
  it("of differing radios: each hears the other by its own selectivity", () => {
    const wide = own("middle", 1, { profile: findProfile("raster-16") });
    const plan = planned({ systems: [systems[0]!, wide], walls: [] });
    const scored = scoredDb(
      house({ systems: [systems[0]!, wide], walls: [] }),
      plan.systems.map(({ system: its, channel }) => ({ system: its, channel: channel! })),
    );
    for (const one of plan.systems)
      for (const { receiver: name, workingMarginDb } of one.receivers)
        expect(workingMarginDb).toBeCloseTo(scored.get(name)!, 6);
  });
});
