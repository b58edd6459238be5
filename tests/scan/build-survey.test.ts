import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { buildSurvey, CROWDS } from "../../src/scan/index.js";
import type { Reading, ScanImport, SurveyEmitter } from "../../src/scan/index.js";
import { minute, reading, scanOf } from "../helpers/readings.js";
import { shuffled } from "../helpers/shuffled.js";

const OTHER = "02:00:5e:77:00:01";
const sourcesOf = (...readings: Reading[]): readonly SurveyEmitter[] =>
  buildSurvey([scanOf(readings)]).emitters;

describe("buildSurvey, counts", () => {
  it("accounts for every row", () => {
    const imports = [
      scanOf([reading(), reading({ ssid: "crew" })], { rejectedCount: 3, outOfBandCount: 5 }),
      scanOf([reading({ bssid: OTHER })], { rejectedCount: 1 }),
    ];
    const survey = buildSurvey(imports, { ignore: ["crew"] });
    expect(survey).toMatchObject({
      observationCount: 2,
      rejectedCount: 4,
      outOfBandCount: 5,
      ignoredCount: 1,
      emitterCount: 2,
    });
    const rows = imports.reduce((sum, { rowCount }) => sum + rowCount, 0);
    const { observationCount, rejectedCount, outOfBandCount, ignoredCount } = survey;
    expect(observationCount + rejectedCount + outOfBandCount + ignoredCount).toBe(rows);
  });

  it("counts addresses once, wherever they were heard, and hidden those nameless in every reading", () => {
    const survey = buildSurvey([
      scanOf([
        reading({ ssid: "" }),
        reading({ ssid: "lantern", timeMs: minute(1) }),
        reading({ bssid: OTHER, ssid: "" }),
        reading({ bssid: OTHER, ssid: "", channel: 1 }),
      ]),
    ]);
    expect([survey.bssCount, survey.hiddenCount]).toEqual([2, 1]);
  });

  it("counts distinct name × channel where a format has no addresses", () => {
    const nameless = { bssid: null, timeMs: null };
    const survey = buildSurvey([
      scanOf([
        reading({ ...nameless, ssid: "lantern" }),
        reading({ ...nameless, ssid: "lantern" }),
        reading({ ...nameless, ssid: "lantern", channel: 1 }),
        reading({ ...nameless, ssid: "rope" }),
      ]),
    ]);
    expect(survey.bssCount).toBe(3);
    expect(survey.emitters.map(({ emitter }) => emitter)).toEqual(["lantern@1", "lantern@6", "rope@6"]);
  });

  it("has an answer for no scan at all", () => {
    expect(buildSurvey([])).toMatchObject({
      emitters: [],
      emitterCount: 0,
      bssCount: 0,
      observationCount: 0,
      places: [],
      fullestCrowd: null,
      evidence: { grade: "one-look" },
    });
  });
});

describe("buildSurvey, radios that move", () => {
  it("makes an emitter of each channel, called address@channel and marked as moved", () => {
    const emitters = sourcesOf(reading({ channel: 1 }), reading({ channel: 11, timeMs: minute(1) }));
    expect(emitters.map(({ emitter, moved }) => [emitter, moved])).toEqual([
      ["02:00:5e:10:00:01@1", true],
      ["02:00:5e:10:00:01@11", true],
    ]);
  });

  it("marks a radio of many names of which one moved", () => {
    const emitters = sourcesOf(
      reading(),
      reading({ bssid: "02:00:5e:10:00:02" }),
      reading({ bssid: "02:00:5e:10:00:02", channel: 11, timeMs: minute(1) }),
    );
    expect(emitters.map(({ emitter, moved, bssids }) => [emitter, moved, bssids.length])).toEqual([
      ["02:00:5e:10:00:01", true, 2],
      ["02:00:5e:10:00:02@11", true, 1],
    ]);
  });
});

describe("buildSurvey, airtime", () => {
  it("assumes by the fullest crowd of the whole survey", () => {
    const strong = reading({ signalDbm: -60 });
    const elsewhere = (crowd: Reading["crowd"]): Reading =>
      reading({ bssid: OTHER, crowd, timeMs: minute(9) });
    for (const [crowd, ratio] of [
      ["empty", 0.1],
      ["part", 0.25],
      [null, 0.25], // a blank crowd counts as part
      ["full", 0.5],
    ] as const) {
      const survey = buildSurvey([scanOf([strong]), scanOf([elsewhere(crowd)])]);
      expect(survey.emitters.map(({ airtimeRatio }) => airtimeRatio)).toEqual([ratio, ratio]);
    }
    expect(buildSurvey([scanOf([strong, elsewhere(null)])]).fullestCrowd).toBe("empty"); // the only one named
  });

  it("judges 'the building's own' by the survey's level: the loudest place", () => {
    const [radio] = sourcesOf(
      reading({ crowd: "full", signalDbm: -90, place: "foyer" }),
      reading({ crowd: "full", signalDbm: -75, place: "hall" }),
    );
    expect(radio).toMatchObject({ airtimeRatio: 0.5, airtimeAssumed: true });
    const [weak] = sourcesOf(reading({ crowd: "full", signalDbm: -76 }));
    expect(weak).toMatchObject({ airtimeRatio: 0.1, airtimeAssumed: true });
  });

  it("believes a report over any assumption, in the fullest crowd that has one", () => {
    const [radio] = sourcesOf(
      reading({ crowd: "empty", airtimeRatio: 0.05 }),
      reading({ crowd: "part", airtimeRatio: 0.2, timeMs: minute(1) }),
      reading({ crowd: "full", airtimeRatio: null, timeMs: minute(2) }),
    );
    expect(radio).toMatchObject({ airtimeRatio: 0.2, airtimeAssumed: false });
  });
});

describe("buildSurvey, options", () => {
  it("takes another level quantile", () => {
    const rows = [-70, -60].map((signalDbm, index) => reading({ signalDbm, timeMs: minute(index) }));
    expect(buildSurvey([scanOf(rows)], { levelQuantile: 0.5 }).emitters[0]!.levelDbm).toBe(-65);
    expect(buildSurvey([scanOf(rows)], { levelQuantile: 1 }).emitters[0]!.levelDbm).toBe(-60);
    expect(buildSurvey([scanOf(rows)], { levelQuantile: 0 }).emitters[0]!.levelDbm).toBe(-70);
  });

  it.each([-0.01, 1.01, Number.NaN])("throws for a level quantile of %s", (levelQuantile) => {
    expect(() => buildSurvey([], { levelQuantile })).toThrow(ArgumentError);
  });

  it("ignores by name exactly, by address in any writing, and says what matched nothing", () => {
    const rows = [reading({ ssid: "crew" }), reading({ ssid: "Crew", bssid: OTHER }), reading({ ssid: "" })];
    const named = buildSurvey([scanOf(rows)], { ignore: ["crew"] });
    expect([named.ignoredCount, named.observationCount]).toEqual([1, 2]);
    const addressed = buildSurvey([scanOf(rows)], { ignore: [OTHER.toUpperCase().replaceAll(":", "-")] });
    expect([addressed.ignoredCount, addressed.observationCount]).toEqual([1, 2]);
    const unknown = buildSurvey([scanOf(rows)], { ignore: ["nobody", ""] });
    expect(unknown.ignoredCount).toBe(0);
    expect(unknown.issues.map(({ code, value }) => [code, value])).toEqual([
      ["ignored", "nobody"],
      ["ignored", ""],
    ]);
  });
});

const address = fc
  .record({ first: fc.constantFrom("02", "06"), last: fc.integer({ min: 0, max: 20 }) })
  .map(({ first, last }) => `${first}:00:5e:10:00:${last.toString(16).padStart(2, "0")}`);
const arbitraryReading = fc
  .record({
    bssid: fc.option(address, { freq: 8 }),
    ssid: fc.constantFrom("", "lantern", "rope"),
    // Few levels: equal ones are common.
    signalDbm: fc.constantFrom(-80, -75, -70, -65, -60),
    minutes: fc.option(fc.integer({ min: 0, max: 3 }), { freq: 2 }),
    channel: fc.constantFrom(1, 6, 9),
    wide: fc.boolean(),
    standard: fc.constantFrom("unknown", "b", "g", "n", "ax"),
    place: fc.constantFrom("", "hall", "foyer"),
    crowd: fc.option(fc.constantFrom(...CROWDS)),
    airtimeRatio: fc.option(fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10)),
  })
  .map(({ minutes, wide, ...given }) => {
    const primaryMhz = 2407 + 5 * given.channel;
    return reading({
      ...given,
      timeMs: minutes === null ? null : minute(minutes),
      widthMhz: wide ? 40 : 20,
      centreMhz: wide ? primaryMhz + (given.channel === 9 ? -10 : 10) : primaryMhz,
    });
  });
const arbitraryImports: fc.Arbitrary<ScanImport[]> = fc
  .array(fc.array(arbitraryReading, { minLength: 1, maxLength: 15 }), { minLength: 1, maxLength: 3 })
  .map((files) => files.map((readings) => scanOf(readings)));

describe("buildSurvey, invariants", () => {
  it("doesn't depend on the order of rows or files", () => {
    fc.assert(
      fc.property(arbitraryImports, fc.nat(), (imports, seed) => {
        const mixed = shuffled(imports, seed).map((scan) => scanOf(shuffled(scan.readings, seed)));
        expect(buildSurvey(mixed)).toEqual(buildSurvey(imports));
      }),
      { numRuns: 500 },
    );
  });

  // Two untimed rows of one level and different loads: which is the first and which the second instant?
  it("doesn't depend on the order of untimed rows of one level that report different loads", () => {
    const untimed = { timeMs: null };
    const rows = [
      reading({ ...untimed, signalDbm: -50, airtimeRatio: 0.2 }),
      reading({ ...untimed, signalDbm: -50, airtimeRatio: 0.8 }),
      reading({ ...untimed, bssid: "02:00:5e:10:00:02", signalDbm: -52, airtimeRatio: 0.9 }),
      reading({ ...untimed, bssid: "02:00:5e:10:00:02", signalDbm: -53, airtimeRatio: 0.1 }),
    ];
    const swapped = [rows[1]!, rows[0]!, rows[2]!, rows[3]!];
    expect(sourcesOf(...swapped)).toEqual(sourcesOf(...rows));
  });

  it("puts every address into some emitter, and every emitter under a name of its own", () => {
    fc.assert(
      fc.property(arbitraryImports, (imports) => {
        const { emitters } = buildSurvey(imports);
        expect(new Set(emitters.map(({ emitter }) => emitter)).size).toBe(emitters.length);
        const told = new Set(emitters.flatMap(({ bssids }) => bssids));
        const heard = imports.flatMap(({ readings }) => readings.map(({ bssid }) => bssid));
        expect(told).toEqual(new Set(heard.filter((bssid) => bssid !== null)));
      }),
    );
  });

  it("never tells a level above the loudest or below the weakest reading", () => {
    fc.assert(
      fc.property(arbitraryImports, (imports) => {
        const levels = imports.flatMap(({ readings }) => readings.map(({ signalDbm }) => signalDbm));
        for (const { levelDbm, places } of buildSurvey(imports).emitters) {
          expect(levelDbm).toBe(Math.max(...places.map((place) => place.levelDbm)));
          expect(levelDbm).toBeLessThanOrEqual(Math.max(...levels));
          expect(levelDbm).toBeGreaterThanOrEqual(Math.min(...levels));
        }
      }),
    );
  });
});
