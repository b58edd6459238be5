import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { planVenueLinks, venuePractice, venueSite } from "../../src/venue/index.js";
import type { SystemLinks, Venue } from "../../src/venue/index.js";
import { dipole, receiver, system, transmitter, venue } from "../helpers/venues.js";

const booth = transmitter({ x: 2, y: 6, z: 3 }, { antenna: dipole(), inRack: true });
const near = receiver("near", { x: 8, y: 6, z: 6 });
const far = receiver("far", { x: 19, y: 11, z: 6 });
const built = (more: Partial<Venue> = {}): Venue =>
  venue({ systems: [system({ transmitter: booth })], receivers: [near, far], ...more });
const linksOf = (of: Venue, options: Partial<Parameters<typeof planVenueLinks>[1]> = {}): SystemLinks[] =>
  planVenueLinks(venueSite(of), { survey: new Map(), ...options });
const state = (links: SystemLinks, code: string): [string, number | null] => {
  const check = links.practice.find((one) => one.code === code)!;
  return [check.state, check.figureM];
};

describe("a venue's links", () => {
  it("are the weakest first, on the settled channel, with nothing lost in empty air", () => {
    const [links] = linksOf(built());
    expect(links!.receivers.map((one) => one.receiver.name)).toEqual(["far", "near"]);
    expect([links!.channel, links!.centreMhz, links!.isSettled]).toEqual([6, 2437, true]);
    for (const { frames, looks, heldRatio } of links!.receivers) {
      expect([frames.typical.lossRatio, frames.edge.lossRatio, looks.edge.holdOnceAnEventS]).toEqual([
        0, 0, 0,
      ]);
      expect(heldRatio).toBeGreaterThan(0.9999);
    }
    expect(links!.job!.allHoldProbability).toBeCloseTo(0.99 ** 2, 12);
  });
  it("take another channel, or leave systems out, where asked to", () => {
    const [links] = linksOf(built(), { channelOf: new Map([["A", 13]]) });
    expect([links!.channel, links!.isSettled]).toEqual([13, true]);
    expect(linksOf(built(), { systems: [] })).toEqual([]);
    const [free] = linksOf(built({ systems: [system({ transmitter: booth, channel: null })] }));
    expect(free!.isSettled).toBe(false);
  });
  it("of a hopping radio have no channel of their own", () => {
    const hopping = system({ transmitter: booth, profile: findProfile("hop-79"), channel: null });
    const [links] = linksOf(built({ systems: [hopping] }));
    expect([links!.channel, links!.centreMhz, links!.isSettled]).toEqual([null, null, false]);
    expect(links!.receivers).toHaveLength(2);
  });
  it("without a transmitter are those of the first candidate; without one, none, and why", () => {
    const [candidate] = linksOf(built({ systems: [system({ candidates: [booth] })] }));
    expect([candidate!.isCandidate, candidate!.transmitter]).toEqual([true, booth]);
    expect(candidate!.receivers).toHaveLength(2);
    const [nothing] = linksOf(built({ systems: [system()] }));
    expect(nothing).toMatchObject({ transmitter: null, channel: null, receivers: [], job: null });
    expect(nothing!.reason).toMatch(/not placed/);
    const [idle] = linksOf(built({ receivers: [] }));
    expect(idle!.reason).toMatch(/no receiver/);
    expect(idle!.practice).toHaveLength(11);
  });
});

describe("antenna practice by positions", () => {
  const other = system({ name: "B", transmitter: transmitter({ x: 2, y: 7, z: 3 }) });
  const [links] = linksOf(
    built({
      systems: [system({ transmitter: booth }), other],
      sources: [
        { source: "House", owner: "building", at: { x: 2, y: 6, z: 7 } },
        { source: "Cellar", owner: "building", at: { x: 8, y: 7, z: 6 } },
        { source: "Nowhere", owner: "building", at: null },
      ],
    }),
  );
  it("measures in three dimensions: 4 m to the nearest access point, 1 m to the next transmitter", () => {
    expect(state(links!, "tx-from-access-point")).toEqual(["kept", 4]);
    expect(state(links!, "tx-from-next-tx")).toEqual(["broken", 1]);
    expect(state(links!, "rx-from-access-point")).toEqual(["broken", 1]);
    expect(state(links!, "tx-above-heads")).toEqual(["kept", 3]);
    expect(state(links!, "tx-not-in-rack")).toEqual(["broken", null]);
  });
  it("leaves to the eye what no position decides", () => {
    for (const code of ["rx-can-move", "all-vertical", "rx-clear-of-metal", "tx-not-under-luminaire"])
      expect(state(links!, code)[0], code).toBe("look");
  });
  it("sees a luminaire straight above, and a receiver in another room", () => {
    const hung = { ...LUMINAIRE, x: 2.2, y: 6.1, trimHeightM: 6 };
    const away = receiver("away", { x: 8, y: 6, z: 6 }, { room: "attic" });
    const [under] = linksOf(built({ luminaires: [hung], receivers: [near, away] }));
    expect(state(under!, "tx-not-under-luminaire")[0]).toBe("broken");
    expect(state(under!, "tx-in-room")[0]).toBe("broken");
    const [beside] = linksOf(built({ luminaires: [{ ...hung, x: 2.5, y: 6.1 }] }));
    expect(state(beside!, "tx-not-under-luminaire")[0]).toBe("kept");
  });
  it("knows a closed metal canopy without asking", () => {
    const closed = receiver("closed", { x: 8, y: 6, z: 6 }, { enclosure: "closed-metal" });
    const [shut] = linksOf(built({ receivers: [closed] }));
    expect(state(shut!, "rx-clear-of-metal")).toEqual(["broken", 0]);
    expect(venuePractice(venueSite(built()), system(), booth, [])).toHaveLength(11);
  });
});

const LUMINAIRE: Venue["luminaires"][number] = {
  name: "H1",
  room: "hall",
  x: 0,
  y: 0,
  ceilingHeightM: 8,
  trimHeightM: 6,
  system: "A",
  receiver: null,
  mode: null,
  footprintSlotCount: null,
  universe: null,
  address: null,
  watts: null,
  weightKg: null,
  circuit: null,
  group: null,
  emergency: "no",
  onLinkLoss: "hold",
  further: {},
};
