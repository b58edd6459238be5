import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { transmitShapes } from "../../src/band/index.js";
import type { Emitter, SweepLevels } from "../../src/band/index.js";
import { findProfile } from "../../src/radio/index.js";
import { rankChannels } from "../../src/scorer/index.js";
import { planChannel, planWifiMoves } from "../../src/venue/index.js";
import { arbitraryEmitters } from "../helpers/arbitrary-emitters.js";
import { numericOverlapRatio } from "../helpers/numeric-overlap.js";
import { accessPoint } from "../helpers/venue-emitters.js";
import { worstByHand } from "../helpers/wifi-by-hand.js";

const profile = findProfile("raster-13");
const ids = (emitters: readonly Emitter[]): Set<string> => new Set(emitters.map(({ id }) => id));

describe("planWifiMoves against sources moved by hand and ranked anew", () => {
  const wantedDbm = planChannel({ emitters: [], profile }).ranking.reduce(
    (levels, score) => levels.set(score.channel, score.wantedDbm),
    new Map<number, number>(),
  );
  /** The margin of one radio channel with every building source on its worst channel. */
  const byHand = (emitters: readonly Emitter[], own: ReadonlySet<string>, channel: number): number => {
    const { centreMhz } = profile.channels.find((one) => one.channel === channel)!;
    const moved = emitters.map((emitter) =>
      own.has(emitter.id) && emitter.contentionChannel !== null
        ? worstByHand(emitter, profile, centreMhz)
        : emitter,
    );
    const levels = profile.channels.map((one) => wantedDbm.get(one.channel)!);
    const { ranking } = rankChannels({ emitters: moved, profile, wantedDbm: levels });
    return ranking.find((score) => score.channel === channel)!.marginDb;
  };

  it("is the lesser of that margin and today's, on every channel", () => {
    fc.assert(
      fc.property(arbitraryEmitters(1, 10), fc.integer({ min: 0, max: 1023 }), (emitters, mask) => {
        const own = ids(emitters.filter((_, index) => (mask >> index) & 1));
        const plan = planChannel({ emitters, profile });
        const { ifWifiMovesDb } = planWifiMoves(plan, { emitters, buildingIds: own });
        for (const { channel, marginDb } of plan.ranking)
          expect(ifWifiMovesDb.get(channel)).toBeCloseTo(
            Math.min(marginDb, byHand(emitters, own, channel)),
            9,
          );
      }),
      { seed: 612, numRuns: 40 },
    );
  });
});

describe("planWifiMoves, one access point", () => {
  // On 2462 MHz, 30 % of the time; nothing else but noise: −174 + 60 + 10 dBm.
  const emitters = [accessPoint(11)];
  const plan = planChannel({ emitters, profile });

  it("puts it square onto radio ch 6: wanted − (level − 8 dB + overlap, and noise) − 14 dB", () => {
    const { ifWifiMovesDb } = planWifiMoves(plan, { emitters, buildingIds: new Set(["wifi-11"]) });
    const ratio = numericOverlapRatio(transmitShapes.ht20, profile.selectivity.value, 0, 2000);
    const interferenceDbm = 10 * Math.log10(10 ** ((-45 + 2 - 10) / 10) * ratio + 10 ** (-104 / 10));
    // ITU-R P.1238 with N = 22 on one floor at 20 m: 18 + 2 − loss − 10 + 2 dBm.
    const receivedDbm = 12 - (20 * Math.log10(2437) + 22 * Math.log10(20) - 28);
    expect(ifWifiMovesDb.get(6)).toBeCloseTo(receivedDbm - interferenceDbm - 14, 3);
  });
  it("leaves every margin as it is where it is a neighbour's", () => {
    const { ifWifiMovesDb, movingIds } = planWifiMoves(plan, { emitters, buildingIds: new Set() });
    expect(movingIds).toEqual([]);
    for (const { channel, marginDb } of plan.ranking) expect(ifWifiMovesDb.get(channel)).toBe(marginDb);
  });
  it("and where it is no Wi-Fi", () => {
    const others = [accessPoint(11, { contentionChannel: null })];
    const moves = planWifiMoves(planChannel({ emitters: others, profile }), {
      emitters: others,
      buildingIds: ids(others),
    });
    expect(moves.movingIds).toEqual([]);
  });
});

describe("planWifiMoves, invariants", () => {
  it("no channel's figure is above today's margin, and marking one a neighbour leaves that one in place", () => {
    fc.assert(
      fc.property(arbitraryEmitters(2, 12), (emitters) => {
        const plan = planChannel({ emitters, profile });
        const all = planWifiMoves(plan, { emitters, buildingIds: ids(emitters) });
        for (const { channel, marginDb } of plan.ranking)
          expect(all.ifWifiMovesDb.get(channel)).toBeLessThanOrEqual(marginDb);
        const rest = ids(emitters.slice(1));
        expect(planWifiMoves(plan, { emitters, buildingIds: rest }).movingIds).not.toContain(emitters[0]!.id);
      }),
      { seed: 611, numRuns: 25 },
    );
  });
  it("does not depend on the order of the sources", () => {
    fc.assert(
      fc.property(arbitraryEmitters(2, 12), (emitters) => {
        const turned = [...emitters].reverse();
        const figures = [emitters, turned].map((list) =>
          planWifiMoves(planChannel({ emitters: list, profile }), { emitters: list, buildingIds: ids(list) }),
        );
        expect(figures[1]!.ifWifiMovesDb).toEqual(figures[0]!.ifWifiMovesDb);
        expect(figures[1]!.survivor).toEqual(figures[0]!.survivor);
      }),
      { seed: 613, numRuns: 15 },
    );
  });
  it("a sweep can't be moved: it holds a channel's margin down all the same", () => {
    const emitters = [accessPoint(11, { levelDbm: -90 })];
    const channels = profile.channels.map(({ channel, centreMhz }) => ({
      channel,
      centreMhz,
      passCount: 10,
      levelsDbm: [-60],
      atLevelCount: [10],
    }));
    const sweeps: SweepLevels[] = [{ place: "", crowd: null, channels }];
    const plan = planChannel({ emitters, sweeps, profile });
    const { ifWifiMovesDb } = planWifiMoves(plan, { emitters, sweeps, buildingIds: ids(emitters) });
    for (const { channel, marginDb } of plan.ranking)
      expect(ifWifiMovesDb.get(channel)).toBeCloseTo(marginDb, 9);
  });
});

describe("planWifiMoves, the survivor", () => {
  const survivorOf = (emitters: readonly Emitter[], own: readonly string[], distanceM = 20) => {
    const plan = planChannel({ emitters, profile, distanceM });
    const moves = planWifiMoves(plan, { emitters, buildingIds: new Set(own) });
    return { plan, ...moves };
  };
  it("is the best channel where nothing moves and it works", () => {
    const { plan, survivor, reason } = survivorOf([accessPoint(6)], []);
    expect(survivor?.channel).toBe(plan.recommended.channel);
    expect(survivor?.ifWifiMovesDb).toBe(plan.ranking[0]!.marginDb);
    expect(reason).toBeNull();
  });
  it("is, of those within 3 dB of the best, the one with the greatest figure, and works at the edge", () => {
    fc.assert(
      fc.property(arbitraryEmitters(1, 8), fc.integer({ min: 2, max: 30 }), (emitters, distanceM) => {
        const { plan, survivor, reason, ifWifiMovesDb, recommendedHolds } = survivorOf(
          emitters,
          [...ids(emitters)],
          distanceM,
        );
        const best = plan.ranking[0]!;
        const near = plan.ranking.filter(({ marginDb }) => marginDb >= best.marginDb - 3);
        // Fade allowance of 99 % and sensitivity −90 dBm, as the profile has it.
        const works = near.filter(({ channel, wantedDbm }) => {
          const leastDb = Math.min(wantedDbm + 90, ifWifiMovesDb.get(channel)!);
          return leastDb - plan.link.fadeAllowanceDb >= 0;
        });
        expect(recommendedHolds).toBe(works.includes(best));
        if (works.length === 0) {
          expect(survivor).toBeNull();
          expect(reason).toMatch(/within 3 dB/);
        } else {
          const greatest = Math.max(...works.map(({ channel }) => ifWifiMovesDb.get(channel)!));
          expect(survivor!.ifWifiMovesDb).toBeCloseTo(greatest, 8);
          expect(works.map(({ channel }) => channel)).toContain(survivor!.channel);
        }
      }),
      { seed: 614, numRuns: 40 },
    );
  });
  it("a quiet source that can go anywhere does no harm: there is one", () => {
    const quiet = [1, 6, 11].map((channel) => accessPoint(channel, { levelDbm: -85 }));
    expect(
      survivorOf(
        quiet,
        quiet.map(({ id }) => id),
      ).survivor,
    ).not.toBeNull();
  });
  it("a loud one that can go anywhere spoils all: there is none, and it says why", () => {
    const { survivor, reason } = survivorOf([accessPoint(11, { levelDbm: -30 })], ["wifi-11"]);
    expect(survivor).toBeNull();
    expect(reason).toMatch(/still works/);
  });
});

describe("planWifiMoves, hopping", () => {
  it("gives the median over the hop set and no survivor, with the reason", () => {
    const hopping = findProfile("hop-79");
    const emitters = [accessPoint(6), accessPoint(11, { id: "own" })];
    const plan = planChannel({ emitters, profile: hopping });
    const moves = planWifiMoves(plan, { emitters, buildingIds: new Set(["own"]) });
    const figures = plan.hopSet!.channels.map((channel) => moves.ifWifiMovesDb.get(channel)!);
    expect(moves.hopSetIfWifiMovesDb).toBe([...figures].sort((a, b) => a - b)[39]); // the middle one of 79
    expect(moves.survivor).toBeNull();
    expect(moves.reason).toMatch(/hops/);
  });
});
