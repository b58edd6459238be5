/** Frame loss against an event simulation that adds powers over time and knows nothing of harmful shares. */
import { describe, expect, it } from "vitest";
import { seededRandom } from "../../src/numeric/index.js";
import { lookInBursts } from "../../src/quality/index.js";
import { findProfile } from "../../src/radio/index.js";
import { interferenceDistribution, takeTurns } from "../../src/scorer/index.js";
import { receiverFrames } from "../../src/venue/index.js";
import type { ReceiverFrames } from "../../src/venue/index.js";
import { simulatedFrameLoss } from "../helpers/packet-simulation.js";
import type { PulsedSource } from "../helpers/packet-simulation.js";
import { profileWith } from "../helpers/profiles.js";
import { score } from "../helpers/scores.js";

const FRAMES = 100_000;
const NOISE_DBM = -104;
const WANTED_DBM = -56;
const REQUIRED_CI_DB = 14; // raster-13: design's figure, as are 4.5 ms and 44 frames a second
const FADE_DB = 10;

interface Case {
  readonly words: string;
  readonly sources: readonly PulsedSource[];
  readonly transmissionsPerFrameCount?: number;
}

const pulsed = (levelDbm: number, onRatio: number, burstMs = 2): PulsedSource => ({
  levelDbm,
  onRatio,
  burstMs,
});

/** Ceilings: −70 dBm at the local mean, −80 dBm at the edge, 10 dB down. */
const CASES: readonly Case[] = [
  { words: "one source, harmful at both positions", sources: [pulsed(-60, 0.1)] },
  { words: "one source, harmful at the edge alone", sources: [pulsed(-75, 0.2)] },
  { words: "three groups, two harmful", sources: [pulsed(-60, 0.05), pulsed(-65, 0.1), pulsed(-98, 0.5)] },
  { words: "more sources at the edge", sources: [pulsed(-60, 0.03), pulsed(-74, 0.1), pulsed(-78, 0.2)] },
  { words: "long bursts", sources: [pulsed(-60, 0.15, 5), pulsed(-62, 0.1, 5)] },
  // Bursts far shorter than the pause between transmissions, so that these fail independently.
  {
    words: "each frame sent twice",
    sources: [pulsed(-60, 0.05, 0.5), pulsed(-75, 0.05, 0.5)],
    transmissionsPerFrameCount: 2,
  },
];

function formula({ sources, transmissionsPerFrameCount = 1 }: Case): ReceiverFrames {
  const groups = sources.map(({ levelDbm, onRatio }, index) =>
    takeTurns([{ emitter: `${index}`, inChannelDbm: levelDbm, airtimeRatio: onRatio, airtimeAssumed: true }]),
  );
  const distribution = interferenceDistribution(NOISE_DBM, groups);
  return receiverFrames([score(1, 0, null, { distribution, wantedDbm: WANTED_DBM })], {
    profile: profileWith("raster-13", { transmissionsPerFrameCount }),
    burstMs: sources[0]!.burstMs,
    fadeAllowanceDb: FADE_DB,
  });
}

function simulated({ sources, transmissionsPerFrameCount = 1 }: Case, fadeDb: number, seed: number): number {
  const terms = {
    noiseDbm: NOISE_DBM,
    ceilingDbm: WANTED_DBM - fadeDb - REQUIRED_CI_DB,
    packetMs: 4.5,
    transmissionsPerFrameCount,
    frameRateHz: 44,
  };
  return simulatedFrameLoss(sources, terms, FRAMES, seededRandom(seed));
}

const standardErrors = (seen: number, expected: number): number =>
  Math.abs(seen - expected) / Math.sqrt((expected * (1 - expected)) / FRAMES);

describe("receiverFrames against 100,000 simulated frames, three standard errors", () => {
  it.each(CASES)("$words", (given) => {
    const { typical, edge } = formula(given);
    for (const [lossRatio, fadeDb, seed] of [
      [typical.lossRatio, 0, 20260307],
      [edge.lossRatio, FADE_DB, 1512],
    ] as const) {
      const seen = simulated(given, fadeDb, seed);
      if (lossRatio === 0) expect(seen).toBe(0);
      else expect(standardErrors(seen, lossRatio), `${seen} ${lossRatio}`).toBeLessThan(3);
    }
    expect(edge.lossRatio).toBeGreaterThan(0.01); // something is lost in every case
  });

  // Two sources of −72 dBm are −69 dBm together: the clear air holds their overlap at an instant, and what begins
  // within the transmission is not counted.
  it("what is harmful only together is lost at least as often as it says", () => {
    const pair: Case = { words: "", sources: [pulsed(-72, 0.3), pulsed(-72, 0.3)] };
    const { typical } = formula(pair);
    expect(typical.lossRatio).toBeCloseTo(0.09, 12);
    const seen = simulated(pair, 0, 9);
    expect(seen).toBeGreaterThan(typical.lossRatio);
    // Where such overlaps count as bursts of their own the loss is greater, and nearer.
    const bursts = lookInBursts({
      clearAirRatio: 0.91,
      harmfulRatios: [],
      packetMs: 4.5,
      burstMs: 2,
      receivedDbm: WANTED_DBM,
      sensitivityDbm: -90,
      transmissionsPerFrameCount: 1,
      frameRateHz: 44,
      eventMinutes: 90,
    });
    expect(bursts.lossRatio).toBeGreaterThan(typical.lossRatio);
    expect(Math.abs(seen - bursts.lossRatio)).toBeLessThan(Math.abs(seen - typical.lossRatio) / 1.5);
  });

  it("the figures are those of the built-in profile", () => {
    const { requiredCiDb, packetMs, frameRateHz } = findProfile("raster-13");
    expect([requiredCiDb.value, packetMs.value, frameRateHz.value]).toEqual([REQUIRED_CI_DB, 4.5, 44]);
  });
});
