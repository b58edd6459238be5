import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { transmitShapes } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";
import { findProfile } from "../../src/radio/index.js";
import { rankChannels } from "../../src/scorer/index.js";
import { planChannel, planWifi, planWifiRequest } from "../../src/venue/index.js";
import type { ChannelPlan, WifiFix } from "../../src/venue/index.js";
import { arbitraryEmitters } from "../helpers/arbitrary-emitters.js";
import { accessPoint } from "../helpers/venue-emitters.js";
import { setBy, worstByHand } from "../helpers/wifi-by-hand.js";

const profile = findProfile("raster-13");
const ids = (emitters: readonly Emitter[]): Set<string> => new Set(emitters.map(({ id }) => id));

/** A source as asked, by hand: 20 MHz wide on a Wi-Fi channel. */
function fixed(emitter: Emitter, wifiChannel: number): Emitter {
  const shape = emitter.shape === transmitShapes.ht40 ? transmitShapes.ht20 : emitter.shape;
  return { ...emitter, shape, centreMhz: 2407 + 5 * wifiChannel, contentionChannel: wifiChannel };
}

/** Our margin with some fixed as asked and the rest of the building's on their worst. */
function marginByHand(
  plan: ChannelPlan,
  emitters: readonly Emitter[],
  fixes: readonly Pick<WifiFix, "emitter" | "wifiChannel">[],
): number {
  const best = plan.ranking[0]!;
  const among = emitters.map((emitter) => {
    const fix = fixes.find((one) => one.emitter === emitter.id);
    if (emitter.contentionChannel === null) return emitter;
    return fix === undefined
      ? worstByHand(emitter, profile, best.centreMhz)
      : fixed(emitter, fix.wifiChannel);
  });
  const wantedDbm = best.wantedDbm;
  const { ranking } = rankChannels({ emitters: among, profile, wantedDbm });
  return ranking.find(({ channel }) => channel === best.channel)!.marginDb;
}

describe("planWifiRequest", () => {
  it("what it promises holds when the sources are set by hand and the channel is scored anew", () => {
    fc.assert(
      fc.property(arbitraryEmitters(1, 10), (emitters) => {
        const plan = planChannel({ emitters, profile });
        const request = planWifiRequest(plan, { emitters, buildingIds: ids(emitters) })!;
        const granted = marginByHand(plan, emitters, request.fixes);
        // All of the building's fixed: those that aren't asked for stay where they are.
        const others = emitters
          .filter(({ id }) => !request.fixes.some(({ emitter }) => emitter === id))
          .flatMap(({ id, contentionChannel }) =>
            contentionChannel === null ? [] : [{ emitter: id, wifiChannel: contentionChannel }],
          );
        const allFixed = marginByHand(plan, emitters, [...request.fixes, ...others]);
        expect(request.marginIfGrantedDb).toBeCloseTo(Math.min(granted, allFixed), 9);
        expect(request.marginIfGrantedDb).toBeGreaterThanOrEqual(allFixed - 1 - 1e-8);
      }),
      { seed: 621, numRuns: 40 },
    );
  });
  it("asks for the loud one alone, where it is, and not for the quiet one", () => {
    const emitters = [accessPoint(6, { levelDbm: -40 }), accessPoint(1, { levelDbm: -88 })];
    const plan = planChannel({ emitters, profile });
    const { fixes, marginIfGrantedDb } = planWifiRequest(plan, { emitters, buildingIds: ids(emitters) })!;
    expect(plan.recommended.channel).toBe(13);
    expect(
      fixes.map(({ emitter, wifiChannel, scannedWifiChannel }) => [emitter, wifiChannel, scannedWifiChannel]),
    ).toEqual([["wifi-6", 6, 6]]);
    expect(marginIfGrantedDb).toBeGreaterThanOrEqual(plan.ranking[0]!.marginDb - 1);
    // The loud one on 11, 10 MHz below radio ch 13, alone: the other stays on 1.
    const alone = [setBy(emitters[0]!, 11), emitters[1]!];
    const { ranking } = rankChannels({ emitters: alone, profile, wantedDbm: plan.ranking[0]!.wantedDbm });
    expect(fixes[0]!.marginIfMovedDb).toBeCloseTo(ranking.find(({ channel }) => channel === 13)!.marginDb, 9);
  });
  it("asks for nothing where nothing that moves can matter", () => {
    const emitters = [accessPoint(6, { levelDbm: -30 }), accessPoint(1, { levelDbm: -120 })];
    const plan = planChannel({ emitters, profile });
    const request = planWifiRequest(plan, { emitters, buildingIds: new Set(["wifi-1"]) })!;
    expect(request.fixes).toEqual([]);
    expect(planWifiRequest(plan, { emitters, buildingIds: new Set() })!.fixes).toEqual([]);
  });
  it("sends away what spoils every channel: to the one of 1, 6, 11 that is farthest from ours", () => {
    const emitters = [2, 5, 8, 11, 13].map((channel) => accessPoint(channel, { levelDbm: -30 }));
    const plan = planChannel({ emitters, profile });
    expect(plan.link.reference!.workingMarginDb).toBeLessThan(0);
    const { fixes, marginIfGrantedDb } = planWifiRequest(plan, { emitters, buildingIds: ids(emitters) })!;
    const { centreMhz } = plan.ranking[0]!;
    const moved = fixes.filter(({ wifiChannel, scannedWifiChannel }) => wifiChannel !== scannedWifiChannel);
    expect(moved.length).toBeGreaterThan(0);
    for (const { wifiChannel } of moved) {
      const apart = [1, 6, 11].map((channel) => Math.abs(2407 + 5 * channel - centreMhz));
      expect(Math.abs(2407 + 5 * wifiChannel - centreMhz)).toBeGreaterThanOrEqual(40);
      expect(apart).toContain(Math.abs(2407 + 5 * wifiChannel - centreMhz));
    }
    expect(marginIfGrantedDb!).toBeGreaterThan(plan.ranking[0]!.marginDb);
  });
  it("counts a 40 MHz source that is fixed as 20 MHz wide on its primary", () => {
    const wide = accessPoint(6, { shape: transmitShapes.ht40, centreMhz: 2447, levelDbm: -40 });
    const plan = planChannel({ emitters: [wide], profile });
    const request = planWifiRequest(plan, { emitters: [wide], buildingIds: ids([wide]) })!;
    expect(request.fixes.map(({ wifiChannel }) => wifiChannel)).toEqual([6]);
    const { ranking } = rankChannels({
      emitters: [fixed(wide, 6)],
      profile,
      wantedDbm: plan.ranking[0]!.wantedDbm,
    });
    const best = ranking.find(({ channel }) => channel === plan.recommended.channel)!;
    expect(request.marginIfGrantedDb).toBeCloseTo(best.marginDb, 9);
  });
  it("never asks for a neighbour's", () => {
    fc.assert(
      fc.property(arbitraryEmitters(2, 12), (emitters) => {
        const own = ids(emitters.slice(0, 3));
        const request = planWifiRequest(planChannel({ emitters, profile }), { emitters, buildingIds: own })!;
        for (const { emitter } of request.fixes) expect(own).toContain(emitter);
      }),
      { seed: 622, numRuns: 25 },
    );
  });
  it("for a hop set asks that all stay where they are, loudest first", () => {
    const emitters = [accessPoint(6, { levelDbm: -60 }), accessPoint(11, { levelDbm: -50 })];
    const plan = planChannel({ emitters, profile: findProfile("hop-79-avoid") });
    const request = planWifiRequest(plan, { emitters, buildingIds: ids(emitters) })!;
    expect(request.fixes.map(({ emitter, wifiChannel }) => [emitter, wifiChannel])).toEqual([
      ["wifi-11", 11],
      ["wifi-6", 6],
    ]);
    expect(request.marginIfGrantedDb).toBe(plan.hopSet!.marginDb);
  });
  it("is null where no channel may be used, and so is all that hangs on one", () => {
    const plan = planChannel({ emitters: [], profile, bandMhz: [2500, 2501] });
    const wifi = planWifi(plan, { emitters: [], buildingIds: new Set() });
    expect([wifi.request, wifi.radiated, wifi.neighbours]).toEqual([null, null, null]);
    expect(wifi.moves.survivor).toBeNull();
    expect(wifi.moves.reason).toMatch(/band/);
  });
});
