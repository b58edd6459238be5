import { describe, expect, it } from "vitest";
import { brickWall, transmitShapes } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";
import { channelInterference } from "../../src/scorer/index.js";
import type { OverlapCache, TunedReceiver } from "../../src/scorer/index.js";
import { numericOverlapRatio } from "../helpers/numeric-overlap.js";

const receiver: TunedReceiver = {
  centreMhz: 2437,
  selectivity: brickWall(2),
  noiseFloorDbm: -101,
  gainDb: -8,
};
const flat = (id: string, levelDbm: number, given: Partial<Emitter> = {}): Emitter => ({
  id,
  centreMhz: 2437,
  shape: brickWall(20),
  levelDbm,
  airtimeRatio: 0.25,
  airtimeAssumed: true,
  contentionChannel: 6,
  ...given,
});

describe("channelInterference", () => {
  // Flat 20 MHz into 2 MHz is −10 dB: −50 − 8 − 10.
  it("adds receiver gain and overlap to the scanned level, by hand", () => {
    const { contributors } = channelInterference([flat("a", -50)], receiver);
    expect(contributors).toEqual([
      {
        emitter: "a",
        inChannelDbm: expect.closeTo(-68, 9) as number,
        airtimeRatio: 0.25,
        airtimeAssumed: true,
        onRatio: 0.25,
      },
    ]);
  });

  it("takes the offset as receiver − emitter: an HT skirt agrees with numeric integration", () => {
    const lopsided = { points: [...transmitShapes.ht20.points.slice(0, 6), [9, -60], [30, -60]] } as const;
    for (const centreMhz of [2417, 2457]) {
      const emitter = flat("a", -40, { centreMhz, shape: lopsided });
      const { distribution } = channelInterference([emitter], receiver);
      const ratio = numericOverlapRatio(lopsided, receiver.selectivity, 2437 - centreMhz, 4000);
      expect(distribution.groups[0]![0]!.inChannelDbm).toBeCloseTo(-40 - 8 + 10 * Math.log10(ratio), 4);
    }
  });

  it("lists what is above the noise floor − 10 dB, strongest first; the distribution keeps all", () => {
    // In the channel: level − 18. The limit −111 is a level of −93.
    const emitters = [flat("low", -93.001), flat("edge", -92.999), flat("b", -60), flat("a", -60)];
    const { contributors, distribution } = channelInterference(emitters, receiver);
    expect(contributors.map(({ emitter }) => emitter)).toEqual(["a", "b", "edge"]);
    expect(distribution.groups.flat()).toHaveLength(4);
    expect(distribution.restDbm).toBe(-101);
  });

  it("leaves out of the list what sits exactly on the limit or doesn't meet the channel", () => {
    const emitters = [flat("limit", -93 - 1e-12), flat("elsewhere", -20, { centreMhz: 2472 })];
    expect(channelInterference(emitters, receiver).contributors).toEqual([]);
  });

  it("makes one group of each primary channel, and one of each source without", () => {
    const emitters = [
      flat("a", -50),
      flat("b", -60),
      flat("c", -50, { contentionChannel: 1 }),
      flat("d", -50, { contentionChannel: null }),
      flat("e", -50, { contentionChannel: null }),
    ];
    const { distribution } = channelInterference(emitters, receiver);
    const groups = distribution.groups.map((group) => group.map(({ emitter }) => emitter).join(""));
    expect(groups.sort()).toEqual(["ab", "c", "d", "e"]);
  });

  it("gives on-shares by the turns of the group in this channel: E(k) − E(k−1)", () => {
    const emitters = [
      flat("weak", -70, { airtimeRatio: 0.8 }),
      flat("strong", -50, { airtimeRatio: 0.5 }),
      // Strongest as scanned, but its spectrum lies mostly elsewhere.
      flat("aside", -40, { airtimeRatio: 0.3, centreMhz: 2479, shape: brickWall(100) }),
    ];
    const { contributors } = channelInterference(emitters, { ...receiver, selectivity: brickWall(20) });
    expect(contributors.map(({ emitter, onRatio }) => [emitter, onRatio])).toEqual([
      ["aside", expect.closeTo(0.3, 12)],
      ["strong", expect.closeTo(0.5, 12)],
      ["weak", expect.closeTo(0.2, 12)],
    ]);
  });

  it("gives the same with a cache of overlaps", () => {
    const cache: OverlapCache = new Map();
    const emitters = [flat("a", -50), flat("b", -60, { centreMhz: 2447 })];
    const first = channelInterference(emitters, receiver, cache);
    expect(channelInterference(emitters, receiver, cache)).toEqual(first);
    expect(first).toEqual(channelInterference(emitters, receiver));
  });

  it("leaves out a source of exactly the noise floor − 10 dB", () => {
    const narrow = { shape: brickWall(1), contentionChannel: null };
    // All of 1 MHz in 2 MHz: level − 8 dB against −111 dBm.
    const emitters = [flat("a", -103, narrow), flat("b", -102.999, narrow)];
    expect(channelInterference(emitters, receiver).contributors.map(({ emitter }) => emitter)).toEqual(["b"]);
  });

  it("takes an overlap that is known already, and works out with what is known of the shape", () => {
    const shape = brickWall(20);
    const cache: OverlapCache = new Map([[shape, { overlapDb: () => -3, byOffset: new Map([[5, -7]]) }]]);
    const inChannelDbm = (offsetMhz: number): number =>
      channelInterference([flat("a", -50, { shape, centreMhz: 2437 - offsetMhz })], receiver, cache)
        .contributors[0]!.inChannelDbm;
    expect(inChannelDbm(5)).toBe(-50 - 8 - 7);
    expect(inChannelDbm(4)).toBe(-50 - 8 - 3);
    expect(cache.get(shape)!.byOffset.get(4)).toBe(-3);
  });
});
