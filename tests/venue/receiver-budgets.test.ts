import { describe, expect, it } from "vitest";
import type { Emitter } from "../../src/band/index.js";
import { fadeAllowanceDb } from "../../src/propagation/index.js";
import { findProfile } from "../../src/radio/index.js";
import { rankChannels } from "../../src/scorer/index.js";
import { receiverBudgets, venueSite } from "../../src/venue/index.js";
import type {
  ReceiverBudgetOptions,
  RoomSurvey,
  TransmitterPlace,
  Venue,
  VenueSystem,
} from "../../src/venue/index.js";
import { accessPoint } from "../helpers/access-point.js";
import { dipole, receiver, rectangle, room, system, transmitter, venue, wall } from "../helpers/venues.js";

const profile = findProfile("raster-13");
const heard = [
  accessPoint("a", 1, -50),
  accessPoint("b", 6, -62),
  accessPoint("c", 11, -70),
  accessPoint("d", 11, -80),
];
const survey = (emitters: readonly Emitter[], scanHeightM: number | null): ReadonlyMap<string, RoomSurvey> =>
  new Map([["hall", { emitters, scanHeightM }]]);
const booth = transmitter({ x: 2, y: 6, z: 3 });
const near = receiver("near", { x: 8, y: 6, z: 6 });
const far = receiver("far", { x: 19, y: 11, z: 6 });

const judge = (
  built: Partial<Venue> = {},
  options: Partial<ReceiverBudgetOptions> = {},
  from: TransmitterPlace = booth,
  of: VenueSystem = system(),
) =>
  receiverBudgets(venueSite(venue({ receivers: [near, far], ...built })), of, from, {
    survey: survey(heard, 6),
    ...options,
  });

describe("receivers' budgets", () => {
  it("agree with the channel ranking for the same wanted levels and scan", () => {
    const { receivers } = judge();
    expect(receivers.map((one) => one.receiver.name)).toEqual(["far", "near"]);
    for (const { channels } of receivers) {
      const wantedDbm = channels.map(({ budget }) => budget.receivedDbm);
      const { ranking } = rankChannels({ emitters: heard, profile, wantedDbm });
      expect(channels).toHaveLength(13);
      for (const score of ranking) {
        const mine = channels.find(({ channel }) => channel === score.channel)!;
        expect(mine.budget.interferenceMarginDb).toBeCloseTo(score.marginDb, 9);
        expect(mine.clearAirRatio).toBeCloseTo(score.clearAirRatio, 12);
        expect(mine.contributors).toEqual(score.contributors);
      }
    }
  });
  it("are the budget's own lines, by hand", () => {
    const quiet = judge({}, { survey: new Map() }).receivers[0]!.judged.budget;
    // (17, 5, 3) is √323 m; 18 + 2 + 2 − 10 − loss; noise −174 + 60 + 10 = −104 dBm, needs 14 dB: −90.
    const lossDb = 20 * Math.log10(2437) + 11 * Math.log10(323) - 28;
    expect(quiet.receivedDbm).toBeCloseTo(12 - lossDb, 9);
    expect(quiet.interferenceDbm).toBeCloseTo(-104, 9);
    const allowanceDb = fadeAllowanceDb({ law: "rician", kDb: 6, reliability: 0.99 });
    expect(quiet.workingMarginDb).toBeCloseTo(12 - lossDb + 90 - allowanceDb, 9);
  });
  it("raise a scan from the floor by 6 dB for receivers that hang, and for those alone", () => {
    const interferenceDbm = (scanHeightM: number | null, heightM = 6): number => {
      const receivers = [{ ...far, heightM }];
      const loud = [{ ...heard[1]!, airtimeRatio: 1 }];
      return judge({ receivers }, { survey: survey(loud, scanHeightM) }).receivers[0]!.judged.budget
        .interferenceDbm;
    };
    // One source 20 dB above the noise, all of the time: all but 1 % of the level moves.
    expect(interferenceDbm(null) - interferenceDbm(6)).toBeCloseTo(6, 1);
    expect(interferenceDbm(1.2)).toBe(interferenceDbm(null));
    expect(interferenceDbm(null, 1.5)).toBe(interferenceDbm(6));
  });
  it("take the larger fade allowance where the transmitter is hidden", () => {
    const walls = [wall({ x: 5, y: 0 }, { x: 5, y: 12 }, { lossDb: 5 })];
    const hidden = judge({ walls }).receivers[0]!.judged.budget;
    expect(hidden.fadeAllowanceDb).toBeCloseTo(-10 * Math.log10(-Math.log(0.99)), 9); // Rayleigh
    expect(hidden.wallLossDb).toBe(5);
  });
  it("choose the channel that serves the weakest best, or take the one that is settled", () => {
    const open = judge({}, {}, booth, system({ channel: null }));
    const leastDb = (channel: number): number =>
      Math.min(
        ...open.receivers.map(
          ({ channels }) => channels.find((one) => one.channel === channel)!.budget.workingMarginDb,
        ),
      );
    const all = profile.channels.map(({ channel }) => leastDb(channel));
    expect(leastDb(open.channel!)).toBe(Math.max(...all));
    expect(judge().channel).toBe(6);
    expect(judge({}, { channel: 9 }).channel).toBe(9);
    expect(() => judge({}, { channel: 14 })).toThrow(/channel/);
    expect(() => judge({}, { channel: 3 }, booth, system({ allowedChannels: [1, 6] }))).toThrow(/channel/);
    expect(() => judge({}, {}, booth, system({ allowedChannels: [] }))).toThrow(/allowedChannels/);
    expect(judge({ receivers: [] })).toEqual({ channel: null, receivers: [] });
  });
  it("judge a hopping radio at each receiver's middle frequency", () => {
    const hopping = judge({}, {}, booth, system({ profile: findProfile("hop-79"), channel: null }));
    expect(hopping.channel).toBeNull();
    const { judged, channels } = hopping.receivers[0]!;
    const rising = channels.map(({ budget }) => budget.workingMarginDb).sort((a, b) => a - b);
    expect(channels).toHaveLength(79);
    expect(judged.budget.workingMarginDb).toBe(rising[39]);
  });
  it("stand in a true null: no level, no clear air, fails", () => {
    const above = receiver("above", { x: 2, y: 6, z: 7 });
    const { judged, hurts, mends } = judge({ receivers: [above] }, {}, { ...booth, antenna: dipole() })
      .receivers[0]!;
    expect(judged.budget).toMatchObject({
      receivedDbm: -Infinity,
      workingMarginDb: -Infinity,
      verdict: "fails",
    });
    expect(judged.clearAirRatio).toBe(0);
    expect(hurts[0]).toEqual({ line: "tx-antenna", lossDb: null });
    expect(mends.map(({ code, helpDb }) => [code, helpDb])).toContainEqual(["other-antenna", null]);
  });
});

describe("what hurts and what mends", () => {
  it("names the line that takes most", () => {
    const first = (built: Partial<Venue>, of = system(), from = booth): string =>
      judge({ receivers: [near], ...built }, { survey: new Map() }, from, of).receivers[0]!.hurts[0]!.line;
    expect(first({})).toBe("canopy"); // 10 dB, 7 m away
    expect(first({ walls: [wall({ x: 5, y: 0 }, { x: 5, y: 12 }, { lossDb: 14 })] })).toBe("walls");
    const fed = system({ profile: { ...profile, txFeederLossDb: { ...profile.txFeederLossDb, value: 12 } } });
    expect(first({}, fed)).toBe("feeder");
    const distant = receiver("distant", { x: 90, y: 6, z: 3 });
    expect(first({ receivers: [distant] })).toBe("distance"); // 88 m: 18.9 dB beyond 10 m
    const loud = judge({ receivers: [near] }, { survey: survey([accessPoint("x", 6, -40)], 6) })
      .receivers[0]!;
    expect(loud.hurts[0]!.line).toBe("interference");
    expect(loud.hurts[0]!.lossDb).toBeCloseTo(loud.judged.budget.interferenceDbm + 14 + 90, 9);
  });
  it("counts what brings half a decibel or more, each as its own budget gives it", () => {
    const walls = [wall({ x: 5, y: 0 }, { x: 5, y: 12 }, { lossDb: 9 }, { topM: 5 })];
    const spare = transmitter({ x: 7, y: 3, z: 4 }, { name: "spare" });
    const of = system({ candidates: [booth, spare] });
    const jammed = [accessPoint("x", 6, -45)];
    const { mends, judged } = judge({ walls, receivers: [near] }, { survey: survey(jammed, 6) }, booth, of)
      .receivers[0]!;
    const by = new Map(mends.map((mend) => [mend.code, mend]));
    expect(mends.map(({ workingMarginDb }) => workingMarginDb)).toEqual(
      mends.map(({ workingMarginDb }) => workingMarginDb).sort((a, b) => b - a),
    );
    // Another channel hears a mask's skirt in place of its middle.
    expect(by.get("other-channel")!.helpDb).toBeGreaterThan(20);
    // At 6 m it sees over the wall: 9 dB, some 8.5 dB of fade allowance (19.98 less Rician's) and 1.1 dB of distance.
    const raised = by.get("raise-transmitter")!;
    expect(raised.heightM).toBe(6);
    const there = judge({ walls, receivers: [near] }, { survey: survey(jammed, 6) }, raised.transmitter, of)
      .receivers[0]!;
    expect(there.judged.budget.workingMarginDb).toBe(raised.workingMarginDb);
    expect(raised.helpDb).toBeCloseTo(raised.workingMarginDb - judged.budget.workingMarginDb, 12);
    expect(raised.helpDb).toBeGreaterThan(9 + 9);
    expect(by.get("second-transmitter")!.transmitter.name).toBe("spare");
    // Interference loses the canopy as the wanted signal does: nothing gained against it.
    expect(by.has("antenna-out")).toBe(false);
    expect(judge({}, { survey: new Map() }).receivers[0]!.mends.map(({ code }) => code)).toContain(
      "antenna-out",
    );
  });
});

describe("other emitters and the crowd in a budget", () => {
  it("lower the margin, never raise it", () => {
    const people = { empty: 0, part: 60, full: 200 };
    const rooms = [room("hall", rectangle(0, 0, 20, 12), { people, seating: rectangle(5, 1, 18, 11) })];
    const oven = {
      name: "oven",
      type: "microwave-oven",
      at: { x: 10, y: 1, z: 1 },
      eirpDbm: null,
      airtimeRatio: null,
      centreMhz: null,
      bandwidthMhz: null,
    } as const;
    const before = judge().receivers;
    for (const worse of [
      { rooms },
      { emitters: [oven] },
      { emitters: [{ ...oven, type: "bluetooth" } as const] },
    ])
      for (const { receiver: box, channels } of judge(worse).receivers) {
        const was = before.find(({ receiver: other }) => other.name === box.name)!;
        channels.forEach((one, index) => {
          expect(one.budget.workingMarginDb).toBeLessThanOrEqual(
            was.channels[index]!.budget.workingMarginDb + 1e-9,
          );
          expect(one.clearAirRatio).toBeLessThanOrEqual(was.channels[index]!.clearAirRatio + 1e-9);
        });
      }
    const loudest = judge({ emitters: [oven] }, { channel: 9 }).receivers[0]!.judged.contributors[0]!;
    expect(loudest).toMatchObject({ emitter: "oven", airtimeRatio: 0.5, airtimeAssumed: true });
  });
  it("tell a device that hops in one line", () => {
    const headset = {
      name: "headset",
      type: "bluetooth",
      at: { x: 18, y: 10, z: 1 },
      eirpDbm: 20,
      airtimeRatio: 0.79,
      centreMhz: null,
      bandwidthMhz: null,
    } as const;
    const { contributors } = judge({ emitters: [headset] }, { survey: new Map() }).receivers[0]!.judged;
    expect(contributors.map(({ emitter }) => emitter)).toEqual(["headset"]);
    expect(contributors[0]!.onRatio).toBeLessThanOrEqual(0.79 + 1e-9);
  });
});
