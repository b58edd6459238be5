import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { seededRandom } from "../../src/numeric/index.js";
import { chainLongestRunProbability, expectedRunsInChain } from "../../src/quality/chain-longest-run.js";
import { chainLossRatio, frameChain } from "../../src/quality/frame-chain.js";
import {
  frameLossRatio,
  longestRunProbability,
  lookInBursts,
  lookOf,
  transmissionSuccessRatio,
  twoStateChannel,
} from "../../src/quality/index.js";
import type { BurstLookTerms } from "../../src/quality/index.js";
import type { FrameChain } from "../../src/quality/frame-chain.js";
import { moved, total } from "../../src/quality/matrix-two.js";
import { longestRun, shareWithRun, simulatedLosses } from "../helpers/lost-frames-simulation.js";
import { relativeError } from "../numeric/relative-error.js";

const timing = { packetMs: 4.5, transmissionsPerFrameCount: 1, frameRateHz: 44 };
const terms = (given: Partial<BurstLookTerms>): BurstLookTerms => ({
  clearAirRatio: (given.harmfulRatios ?? []).reduce((clear, share) => clear * (1 - share), 1),
  harmfulRatios: [],
  burstMs: 2,
  receivedDbm: -60,
  sensitivityDbm: -90,
  eventMinutes: 90,
  ...timing,
  ...given,
});
const chainOf = (onRatio: number, burstMs: number, transmissionsPerFrameCount = 1): FrameChain =>
  frameChain(twoStateChannel(terms({ harmfulRatios: [onRatio], burstMs })), {
    ...timing,
    transmissionsPerFrameCount,
  });

describe("twoStateChannel", () => {
  it("one group has its own burst and gap: gap = burst·(1 − a)/a", () => {
    const { harmfulRatio, harmfulMs, clearMs } = twoStateChannel(terms({ harmfulRatios: [0.2] }));
    expect([harmfulRatio, harmfulMs, clearMs].map((value) => value.toFixed(12))).toEqual([
      "0.200000000000",
      "2.000000000000",
      "8.000000000000",
    ]);
  });
  // a = 0.2, 0.5: A₀ = 0.6; onsets 0.125 + 0.5 a ms; clear stretches of 1.6 ms, harmful ones of 1.6·0.6/0.4 = 2.4 ms.
  it("two groups, by hand", () => {
    const channel = twoStateChannel(terms({ harmfulRatios: [0.2, 0.5] }));
    expect(channel.harmfulRatio).toBeCloseTo(0.6, 12);
    expect(channel.clearMs).toBeCloseTo(1.6, 12);
    expect(channel.harmfulMs).toBeCloseTo(2.4, 12);
  });
  it("joint harm counts as more stretches of the same length; without any alone, of one burst", () => {
    const joint = twoStateChannel({ clearAirRatio: 0.7, harmfulRatios: [0.2], burstMs: 2 });
    expect(joint.harmfulMs).toBeCloseTo(2, 12);
    expect(joint.clearMs).toBeCloseTo((2 * 0.7) / 0.3, 12);
    expect(twoStateChannel({ clearAirRatio: 0.75, harmfulRatios: [], burstMs: 2 }).clearMs).toBeCloseTo(
      6,
      12,
    );
  });
  it("nothing harmful, and nothing clear", () => {
    expect(twoStateChannel(terms({}))).toEqual({ harmfulRatio: 0, harmfulMs: 2, clearMs: Infinity });
    const never = { harmfulRatio: 1, harmfulMs: Infinity, clearMs: 0 };
    expect(twoStateChannel(terms({ harmfulRatios: [0.1, 1] }))).toEqual(never);
    expect(twoStateChannel(terms({ clearAirRatio: 0 }))).toEqual(never);
  });
});

describe("the chain of frames", () => {
  it("loses what frameLossRatio loses, for one transmission a frame and groups alone", () => {
    for (const harmfulRatios of [[0.001], [0.2], [0.9], [0.1, 0.2, 0.3]])
      for (const burstMs of [0.5, 2, 50]) {
        const given = terms({ harmfulRatios, burstMs });
        const independent = frameLossRatio(transmissionSuccessRatio(given), 1);
        expect(relativeError(lookInBursts(given).lossRatio, independent)).toBeLessThan(1e-12);
      }
  });
  it("keeps its long-run state, and repeats help less within long bursts", () => {
    for (const burstMs of [0.5, 2, 50, 2000])
      for (const count of [1, 2, 5]) {
        const { start, lost, kept } = chainOf(0.2, burstMs, count);
        const after = moved(start, lost).map((share, i) => share + moved(start, kept)[i]!);
        after.forEach((share, i) => expect(share).toBeCloseTo(start[i]!, 13));
        expect(Math.min(...lost, ...kept)).toBeGreaterThanOrEqual(0);
      }
    const single = chainLossRatio(chainOf(0.2, 50));
    expect(chainLossRatio(chainOf(0.2, 50, 2))).toBeLessThan(single);
    expect(chainLossRatio(chainOf(0.2, 50, 2))).toBeGreaterThan(frameLossRatio(1 - single, 2));
  });
});

describe("runs in the chain against every sequence of up to 16 frames, summed", () => {
  it.each([
    ["long bursts", chainOf(0.2, 60)],
    ["short bursts", chainOf(0.3, 2)],
    ["rare and long, two transmissions", chainOf(0.001, 200, 2)],
    ["nearly always harmful", chainOf(0.97, 30)],
  ])("%s", (_, chain) => {
    for (const n of [1, 2, 5, 11, 16]) {
      const byLongest = new Float64Array(n + 1);
      const runsOf = new Float64Array(n + 2);
      for (let bits = 0; bits < 2 ** n; bits++) {
        const flags = Array.from({ length: n }, (__, i) => (bits >> i) & 1);
        const probability = total(
          flags.reduce((row, flag) => moved(row, flag === 1 ? chain.lost : chain.kept), chain.start),
        );
        byLongest[longestRun(flags)]! += probability;
        for (const run of flags.join("").split("0")) runsOf[run.length]! += probability;
      }
      for (let k = 1; k <= n; k++) {
        const words = `${n} ${k}`;
        const chance = byLongest.slice(k).reduce((sum, share) => sum + share, 0);
        expect(relativeError(chainLongestRunProbability(chain, n, k), chance), words).toBeLessThan(1e-11);
        const runs = runsOf.slice(k).reduce((sum, share) => sum + share, 0);
        expect(relativeError(expectedRunsInChain(chain, n, k), runs), words).toBeLessThan(1e-11);
      }
    }
  });
});

describe("without memory the chain is the independent recursion", () => {
  it.each([0.003, 0.05, 0.4, 0.9])("p = %s", (p) => {
    const chain: FrameChain = {
      start: [0.7, 0.3],
      lost: [0.7 * p, 0.3 * p, 0.7 * p, 0.3 * p],
      kept: [0.7 * (1 - p), 0.3 * (1 - p), 0.7 * (1 - p), 0.3 * (1 - p)],
    };
    for (const [n, k] of [
      [40, 3],
      [2640, 5],
      [237_600, 5],
      [237_600, 22],
      [1_584_000, 88],
    ] as const) {
      const independent = longestRunProbability({ trials: n, runLength: k, failureProbability: p });
      expect(relativeError(chainLongestRunProbability(chain, n, k), independent), `${n} ${k}`).toBeLessThan(
        1e-9,
      );
    }
  });
  it("bursts of 2 ms are forgotten from frame to frame: both looks agree", () => {
    const bursts = lookInBursts(terms({ harmfulRatios: [0.15] }));
    const independent = lookOf({ lossRatio: bursts.lossRatio, frameRateHz: 44, eventMinutes: 90 });
    expect(bursts.holds[0]!.probability).toBeGreaterThan(0.1);
    bursts.holds.forEach(({ probability }, i) =>
      expect(probability / independent.holds[i]!.probability).toBeCloseTo(1, i === 2 ? 2 : 3),
    );
    expect(bursts.holdOnceAnEventS).toBe(independent.holdOnceAnEventS);
  });
});

/** 10-second events: 440 frames at 44/s. */
const EVENT_FRAMES = 440;
const EVENTS = 4000;
const standardError = (share: number): number => Math.sqrt((share * (1 - share)) / EVENTS);

describe("against an event simulation of bursts and packets: 4,000 events of 10 s, 4.5 standard errors", () => {
  it.each([
    ["bursts of 60 ms", 0.2, 60, 1, [5, 10, 15]],
    ["bursts of 200 ms, rare", 0.02, 200, 1, [5, 22, 44]],
    ["bursts of 60 ms, two transmissions", 0.2, 60, 2, [4, 9]],
    ["bursts of 2 ms", 0.15, 2, 1, [3, 5]],
  ])("%s", (_, onRatio, meanBurstMs, transmissionsPerFrameCount, ks) => {
    const lost = simulatedLosses(
      [{ onRatio, meanBurstMs, bursts: "exponential" }],
      { ...timing, transmissionsPerFrameCount },
      EVENTS * EVENT_FRAMES,
      seededRandom(1881),
    );
    const chain = chainOf(onRatio, meanBurstMs, transmissionsPerFrameCount);
    for (const k of ks) {
      const expected = chainLongestRunProbability(chain, EVENT_FRAMES, k);
      expect(expected).toBeGreaterThan(0.002);
      const seen = shareWithRun(lost, EVENT_FRAMES, k);
      expect(Math.abs(seen - expected), `${k}: ${seen} ${expected}`).toBeLessThan(
        4.5 * standardError(expected),
      );
    }
  });
  it("independence would have missed the holds that long bursts make", () => {
    const chain = chainOf(0.2, 60);
    const independent = longestRunProbability({
      trials: EVENT_FRAMES,
      runLength: 10,
      failureProbability: chainLossRatio(chain),
    });
    expect(chainLongestRunProbability(chain, EVENT_FRAMES, 10)).toBeGreaterThan(10 * independent);
  });
  it("fixed bursts of 2 ms, as frame loss assumes them", () => {
    const lost = simulatedLosses(
      [{ onRatio: 0.15, meanBurstMs: 2, bursts: "fixed" }],
      timing,
      EVENTS * EVENT_FRAMES,
      seededRandom(77),
    );
    const chain = chainOf(0.15, 2);
    const expected = chainLongestRunProbability(chain, EVENT_FRAMES, 4);
    expect(Math.abs(shareWithRun(lost, EVENT_FRAMES, 4) - expected)).toBeLessThan(
      4.5 * standardError(expected),
    );
  });
  it("of fixed bursts of 60 ms long holds are rarer than it says, as the docstring warns", () => {
    const lost = simulatedLosses(
      [{ onRatio: 0.2, meanBurstMs: 60, bursts: "fixed" }],
      timing,
      EVENTS * EVENT_FRAMES,
      seededRandom(3),
    );
    const said = chainLongestRunProbability(chainOf(0.2, 60), EVENT_FRAMES, 10);
    expect(shareWithRun(lost, EVENT_FRAMES, 10)).toBeLessThan(said - 4.5 * standardError(said));
  });
  it("two groups as one channel: the loss exactly, a run within a tenth", () => {
    const sources = [0.1, 0.2].map((onRatio) => ({
      onRatio,
      meanBurstMs: 60,
      bursts: "exponential" as const,
    }));
    const lost = simulatedLosses(sources, timing, EVENTS * EVENT_FRAMES, seededRandom(5));
    const chain = frameChain(twoStateChannel(terms({ harmfulRatios: [0.1, 0.2], burstMs: 60 })), timing);
    const share = lost.reduce((sum, flag) => sum + flag, 0) / lost.length;
    expect(share).toBeCloseTo(chainLossRatio(chain), 2);
    const expected = chainLongestRunProbability(chain, EVENT_FRAMES, 10);
    expect(Math.abs(shareWithRun(lost, EVENT_FRAMES, 10) / expected - 1)).toBeLessThan(0.1);
  });
});

describe("lookInBursts", () => {
  it("loses more and holds longer as airtime grows", () => {
    const figures = (onRatio: number): number[] => {
      const look = lookInBursts(terms({ harmfulRatios: [onRatio], burstMs: 20 }));
      return [look.lossRatio, ...look.holds.map(({ probability }) => probability), look.holdOnceAnEventS];
    };
    let before = figures(0.01);
    for (const onRatio of [0.02, 0.04, 0.08, 0.16, 0.32, 0.64]) {
      const now = figures(onRatio);
      now.forEach((value, i) => expect(value).toBeGreaterThanOrEqual(before[i]! - 1e-12));
      expect(now[0]).toBeGreaterThan(before[0]!);
      before = now;
    }
  });
  it("of the same airtime, longer bursts lose fewer frames, in longer runs", () => {
    const looks = [10, 20, 40, 80, 160].map((burstMs) =>
      lookInBursts(terms({ harmfulRatios: [0.02], burstMs })),
    );
    looks.slice(1).forEach((look, i) => {
      expect(look.lossRatio).toBeLessThan(looks[i]!.lossRatio);
      expect(look.holds[2]!.probability).toBeGreaterThan(looks[i]!.holds[2]!.probability);
      expect(look.holdOnceAnEventS).toBeGreaterThan(looks[i]!.holdOnceAnEventS);
    });
  });
  it("loses nothing in clear air and everything under what is always harmful or too weak", () => {
    const clear = lookInBursts(terms({}));
    expect([clear.lossRatio, clear.holds.map((h) => h.probability), clear.holdOnceAnEventS]).toEqual([
      0,
      [0, 0, 0],
      0,
    ]);
    for (const given of [{ harmfulRatios: [1] }, { clearAirRatio: 0 }, { receivedDbm: -90.1 }]) {
      const none = lookInBursts(terms(given));
      expect([none.lossRatio, none.holds.map((h) => h.probability)]).toEqual([1, [1, 1, 1]]);
      expect(none.lostPerMinute).toBe(2640);
      expect(none.holdOnceAnEventS).toBe(5400);
    }
    expect(lookInBursts(terms({ receivedDbm: -90 - 5e-10 })).lossRatio).toBe(0); // slack of 1e-9 dB
  });
  it.each([
    ["clearAirRatio", { clearAirRatio: 1.1 }],
    ["clearAirRatio", { clearAirRatio: NaN }],
    ["harmfulRatios", { clearAirRatio: 1, harmfulRatios: [-0.1] }],
    ["burstMs", { burstMs: 0 }],
    ["packetMs", { packetMs: 0 }],
    ["packetMs", { packetMs: 12, transmissionsPerFrameCount: 2 }],
    ["transmissionsPerFrameCount", { transmissionsPerFrameCount: 0 }],
    ["transmissionsPerFrameCount", { transmissionsPerFrameCount: 1.5 }],
    ["receivedDbm", { receivedDbm: NaN }],
    ["sensitivityDbm", { sensitivityDbm: Infinity }],
    ["frameRateHz", { frameRateHz: 0 }],
    ["eventMinutes", { eventMinutes: NaN }],
    ["eventMinutes", { eventMinutes: 1e6 }],
  ])("throws for %s: %j", (argument, wrong) => {
    const call = (): unknown => lookInBursts(terms(wrong));
    expect(call).toThrow(ArgumentError);
    expect(call).toThrow(argument);
  });
  it("counts of runs are whole and in range", () => {
    const chain = chainOf(0.2, 60);
    for (const bad of [0, 1.5, NaN, 2e8]) {
      expect(() => chainLongestRunProbability(chain, 10, bad)).toThrow("runLength");
      if (bad !== 0) expect(() => chainLongestRunProbability(chain, bad, 1)).toThrow("frameCount");
    }
    expect(chainLongestRunProbability(chain, 3, 4)).toBe(0);
  });
});
