import { describe, expect, test } from "vitest";
import { AS_GOOD_DB, channelToday, compareBands } from "../../src/commissioning/index.js";
import type { RankedChannel } from "../../src/commissioning/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { findProfile } from "../../src/radio/index.js";
import { buildSurvey, toEmitters } from "../../src/scan/index.js";
import type { Reading, Survey } from "../../src/scan/index.js";
import { rankChannels } from "../../src/scorer/index.js";
import { reading, scanOf } from "../helpers/readings.js";

const A = "02:00:00:00:10:01";
const B = "02:00:00:00:20:01";
const NEW = "06:00:00:00:30:01";
const profile = findProfile("raster-13");
const survey = (...given: Partial<Reading>[]): Survey =>
  buildSurvey([scanOf(given.map((each) => reading({ airtimeRatio: 0.3, ...each })))]);
const at = (
  bssid: string,
  channel: number,
  signalDbm = -60,
  more: Partial<Reading> = {},
): Partial<Reading> => ({
  bssid,
  channel,
  centreMhz: 2407 + 5 * channel,
  signalDbm,
  ...more,
});
const ranked = (of: Survey) => rankChannels({ emitters: toEmitters(of), profile, wantedDbm: -60 });
const before = survey(at(A, 1), at(B, 6));
const { recommended, ranking } = ranked(before);
const planned = recommended.channel!;

/** What today's survey makes of the channel that the first one chose. */
const today = (fresh: Survey) =>
  compareBands(before, fresh, [{ system: "hall", channel: planned, ranking: ranked(fresh).ranking }]);

describe("a fresh scan against the surveyed one", () => {
  test("the same band holds", () => {
    const { verdict, systems, newSources, goneSources, movedSources } = today(before);
    expect(verdict).toBe("holds");
    expect(systems[0]).toMatchObject({
      system: "hall",
      verdict: "still-best",
      behindDb: 0,
      isStillBest: true,
      causes: [],
    });
    expect([newSources, goneSources, movedSources]).toEqual([[], [], []]);
  });
  test("a new access point on the planned channel: it fails, by how many dB, and who it is", () => {
    const wifi = Math.max(1, Math.min(13, Math.round((ranking[0]!.centreMhz - 2407) / 5)));
    const fresh = survey(at(A, 1), at(B, 6), at(NEW, wifi, -45));
    const { verdict, systems, newSources } = today(fresh);
    const now = ranked(fresh).ranking;
    const own = now.find(({ channel }) => channel === planned)!;
    expect(verdict).toBe("fails");
    expect(newSources.map(({ emitter }) => emitter)).toEqual([NEW]);
    expect(systems[0]!.bestChannel).toBe(now[0]!.channel);
    expect(systems[0]!.behindDb).toBeCloseTo(now[0]!.marginDb - own.marginDb, 12);
    expect(systems[0]!.behindDb!).toBeGreaterThan(AS_GOOD_DB);
    expect(systems[0]!.causes[0]).toMatchObject({ emitter: NEW, kind: "new" });
    expect(systems[0]!.causes[0]!.inChannelDbm).toBe(own.contributors[0]!.inChannelDbm);
  });
  test("a source that moved, one that is gone, one that grew", () => {
    const fresh = survey(at(A, 11, -50, { airtimeRatio: 0.7 }));
    const { movedSources, goneSources, airtimeChanges, levelChanges } = today(fresh);
    expect(movedSources.map(({ before: then, after }) => [then!.channel, after!.channel])).toEqual([[1, 11]]);
    expect(goneSources.map(({ emitter }) => emitter)).toEqual([B]);
    expect(airtimeChanges.map(({ airtimeChangeRatio }) => airtimeChangeRatio)).toEqual([
      expect.closeTo(0.4, 12),
    ]);
    expect(levelChanges.map(({ levelChangeDb }) => levelChangeDb)).toEqual([10]);
  });
  test("the causes tell a source that moved here from one that grew here", () => {
    const contributor = (emitter: string) => ({ emitter, inChannelDbm: -70 });
    const channel = { channel: 3, marginDb: 9, clearAirRatio: 1, allowed: true };
    const list: RankedChannel[] = [
      { ...channel, contributors: [contributor(A), contributor(B), contributor("x")] },
    ];
    const fresh = survey(at(A, 11), at(B, 6, -54));
    const { systems } = compareBands(before, fresh, [{ system: "hall", channel: 3, ranking: list }]);
    expect(systems[0]!.causes.map(({ emitter, kind }) => [emitter, kind])).toEqual([
      [A, "moved"],
      [B, "grown"],
    ]);
  });
  test("assumed airtime is no change of airtime; without a ranking nothing is judged", () => {
    const assumed = survey(at(A, 1, -60, { airtimeRatio: null }), at(B, 6, -60, { airtimeRatio: 0.35 }));
    expect(today(assumed).airtimeChanges).toEqual([]);
    expect(compareBands(before, before, []).verdict).toBe("not-judged");
  });
});

describe("channelToday", () => {
  const ranked3 = (...margins: number[]): RankedChannel[] =>
    margins.map((marginDb, index) => ({
      channel: index + 1,
      marginDb,
      clearAirRatio: 1,
      allowed: true,
      contributors: [],
    }));

  test.each([
    [1, ranked3(20, 17, 16), 0, "still-best", 0],
    [2, ranked3(20, 17, 16), 0, "as-good", 3],
    [3, ranked3(20, 17, 16), 0, "beaten", 4],
    [1, ranked3(-1, -2), 0, "fails", 0],
    [1, ranked3(5, 4), 6, "fails", 0],
    [9, ranked3(20), 0, "not-ranked", null],
    [1, ranked3(20).map((each) => ({ ...each, allowed: false })), 0, "not-ranked", null],
    [2, [...ranked3(20), { ...ranked3(0, 30)[1]!, allowed: false }], 0, "fails", 0],
  ] as const)("channel %i: case %#", (channel, list, allowanceDb, verdict, behindDb) => {
    expect(channelToday(channel, list, allowanceDb)).toMatchObject({ verdict, behindDb });
  });
  test("a caller's mistake throws", () => {
    const bad = { system: "hall", channel: 1, ranking: [], fadeAllowanceDb: NaN };
    expect(() => compareBands(before, before, [bad])).toThrow(ArgumentError);
  });
});
