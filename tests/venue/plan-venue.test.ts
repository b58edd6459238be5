/** The whole radio plan: channels and links agree; margins by distance and the band by independent arithmetic. */
import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import {
  linksOnPlan,
  marginByDistance,
  planVenue,
  planVenueChannels,
  receiverBand,
  receiverBudgets,
  venueSite,
} from "../../src/venue/index.js";
import type { RoomSurvey, VenueReceiver } from "../../src/venue/index.js";
import { accessPoint } from "../helpers/access-point.js";
import { dipole, receiver, rectangle, room, system, transmitter, venue, wall } from "../helpers/venues.js";

const survey: ReadonlyMap<string, RoomSurvey> = new Map([
  ["hall", { emitters: [accessPoint("a", 1, -55), accessPoint("b", 6, -70)], scanHeightM: 5 }],
  ["bar", { emitters: [accessPoint("b", 6, -58), accessPoint("c", 11, -64)], scanHeightM: 5 }],
]);
const receivers: VenueReceiver[] = [
  receiver("H1", { x: 4, y: 6, z: 5 }),
  receiver("H2", { x: 17, y: 10, z: 5 }),
  receiver("B1", { x: 26, y: 4, z: 4 }, { system: "B", room: "bar" }),
];
const house = venue({
  rooms: [room("hall", rectangle(0, 0, 20, 12)), room("bar", rectangle(20, 0, 32, 12))],
  walls: [wall({ x: 20, y: 0 }, { x: 20, y: 12 }, { lossDb: 7 })],
  systems: [
    system({ channel: null, transmitter: transmitter({ x: 2, y: 2, z: 3 }, { antenna: dipole() }) }),
    system({
      name: "B",
      rooms: ["bar"],
      channel: null,
      transmitter: transmitter({ x: 30, y: 8, z: 3 }, { name: "shelf", room: "bar" }),
    }),
  ],
  receivers,
});
const site = venueSite(house);
const plan = planVenue(site, { survey });

describe("the whole radio plan", () => {
  it("has the links of its own channels: the same margins as the joint plan", () => {
    expect(plan.channels.systems.map(({ channel }) => channel)).toEqual(
      plan.links.map(({ channel }) => channel),
    );
    for (const planned of plan.channels.systems) {
      const links = plan.links.find((one) => one.system.name === planned.system.name)!;
      expect(links.isSettled).toBe(true);
      for (const { receiver: name, workingMarginDb } of planned.receivers) {
        const link = links.receivers.find((one) => one.receiver.name === name)!;
        expect(link.judged.budget.workingMarginDb).toBeCloseTo(workingMarginDb, 6);
        // The channel is final: none is offered instead.
        expect(link.channels).toHaveLength(1);
        expect(link.mends.every(({ code }) => code !== "other-channel")).toBe(true);
      }
    }
  });
  it("counts the other systems: without them no margin is smaller", () => {
    const alone = planVenueChannels(site, { survey });
    const quiet = linksOnPlan(site, [alone.systems[0]!], { survey })[0]!;
    const busy = plan.links[0]!;
    for (const [index, link] of quiet.receivers.entries())
      expect(link.judged.budget.workingMarginDb).toBeGreaterThanOrEqual(
        busy.receivers[index]!.judged.budget.workingMarginDb - 1e-9,
      );
  });
});

describe("a receiver's margin by distance", () => {
  // ITU-R P.525: 20 dB a tenfold distance.
  const own = system({ transmitter: transmitter({ x: 2, y: 2, z: 5 }) });
  const one = venueSite(venue({ systems: [own], receivers: [receiver("H1", { x: 12, y: 2, z: 5 })] }), {
    pathModel: { kind: "free-space" },
  });
  const [link] = receiverBudgets(one, own, own.transmitter!, { survey: new Map() }).receivers;
  const { workingMarginDbAt, reach } = marginByDistance(one, link!.receiver, link!.judged);
  const hereDb = link!.judged.budget.workingMarginDb;
  it("falls by 20 dB a tenfold distance in free space, from where the receiver hangs", () => {
    expect(workingMarginDbAt(10)).toBeCloseTo(hereDb, 9);
    expect(workingMarginDbAt(100)).toBeCloseTo(hereDb - 20, 9);
    expect(workingMarginDbAt(1)).toBeCloseTo(hereDb + 20, 9);
  });
  it("ends where it is used up", () => {
    const byHandM = 10 * 10 ** (hereDb / 20);
    if (byHandM > 1000) expect(reach.reachM).toBeNull();
    else expect(reach.reachM!).toBeCloseTo(byHandM, 1);
    expect(workingMarginDbAt(byHandM)).toBeCloseTo(0, 9);
  });
});

describe("the band at a receiver", () => {
  it("is at a channel's centre what the channel is judged with", () => {
    const profile = findProfile("raster-13");
    const [links] = plan.links;
    const noiseDbm = -174 + 10 * Math.log10(profile.bandwidthMhz.value * 1e6) + profile.noiseFigureDb.value;
    for (const { receiver: own } of links!.receivers) {
      const budgets = receiverBudgets(site, links!.system, links!.transmitter!, { survey }).receivers;
      const { channels } = budgets.find((each) => each.receiver.name === own.name)!;
      for (const { centreMhz, budget } of channels) {
        const grid = { startMhz: centreMhz - 0.5, stepMhz: 1, stepCount: 1 };
        const { aboveNoiseDb } = receiverBand(site, profile, own, { survey, grid });
        expect(aboveNoiseDb[0]).toBeCloseTo(budget.interferenceDbm - noiseDbm, 9);
      }
    }
  });
});
