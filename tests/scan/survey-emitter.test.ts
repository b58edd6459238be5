import { describe, expect, it } from "vitest";
import type { Reading, SurveyEmitter } from "../../src/scan/index.js";
import { ASSUMED_AIRTIME } from "../../src/scan/index.js";
import { surveyEmitter } from "../../src/scan/survey-emitter.js";
import { announcedSources } from "../../src/scan/survey-source.js";
import { minute, reading } from "../helpers/readings.js";

function radioOf(readings: readonly Partial<Reading>[], moved: readonly string[] = []): SurveyEmitter {
  const sources = announcedSources(readings.map((given) => ({ fileIndex: 0, reading: reading(given) })));
  return surveyEmitter(sources, {
    levelQuantile: 0.9,
    fullestRank: 0,
    assumedAirtime: ASSUMED_AIRTIME,
    marks: { building: [], neighbour: [] },
    moved: new Set(moved),
  });
}

describe("surveyEmitter, level", () => {
  // d3-array: h = (n − 1)·p. Of −70, −64, −60: h = 1.8, −64 + 0.8·4 = −60.8.
  it("is the 0.9 quantile in dBm at a place, linear between neighbours, by hand", () => {
    const radio = radioOf([-64, -70, -60].map((signalDbm, index) => ({ signalDbm, timeMs: minute(index) })));
    expect(radio.levelDbm).toBeCloseTo(-60.8, 12);
    expect(radio.places).toEqual([
      { place: "hall", levelDbm: radio.levelDbm, readingCount: 3, lowestDbm: -70, highestDbm: -60 },
    ]);
  });

  it("is the highest over the places, and names the place", () => {
    const radio = radioOf([
      { place: "hall", signalDbm: -60 },
      { place: "foyer", signalDbm: -50 },
      { place: "studio", signalDbm: -55 },
    ]);
    expect([radio.levelDbm, radio.levelPlace]).toEqual([-50, "foyer"]);
    expect(radio.places.map(({ place }) => place)).toEqual(["foyer", "hall", "studio"]);
  });

  it("takes the highest of a radio's names at each instant", () => {
    const other = "02:00:5e:10:00:02";
    const radio = radioOf([
      { signalDbm: -60, timeMs: minute(0) },
      { bssid: other, signalDbm: -63, timeMs: minute(0) },
      { signalDbm: -70, timeMs: minute(1) },
      { bssid: other, signalDbm: -65, timeMs: minute(1) },
    ]);
    // Levels −60 and −65: h = 0.9, −65 + 0.9·5 = −60.5; two instants, not four readings.
    expect(radio.levelDbm).toBeCloseTo(-60.5, 12);
    expect(radio.places[0]!.readingCount).toBe(2);
  });

  it("takes the greatest airtime that a radio's names report at an instant", () => {
    const radio = radioOf([{ airtimeRatio: 0.2 }, { bssid: "02:00:5e:10:00:02", airtimeRatio: 0.3 }]);
    expect([radio.airtimeRatio, radio.airtimeAssumed]).toEqual([0.3, false]);
  });
});

describe("surveyEmitter, rows that disagree", () => {
  const choice = (rows: readonly Partial<Reading>[]): unknown[] => {
    const { widthMhz, centreMhz, standard } = radioOf(rows);
    return [widthMhz, centreMhz, standard];
  };
  const wide = { widthMhz: 40, centreMhz: 2447, standard: "n" } as const;

  it("believes the latest time, whatever its width and standard", () => {
    const rows = [{ ...wide, timeMs: minute(0) }, { standard: "g", timeMs: minute(1) } as const];
    expect(choice(rows)).toEqual([20, 2437, "g"]);
    expect(choice([...rows].reverse())).toEqual([20, 2437, "g"]);
  });

  it("then the widest, then the newest standard", () => {
    expect(choice([{ standard: "ax" }, wide])).toEqual([40, 2447, "n"]);
    expect(choice([{ standard: "n" }, { standard: "ax" }, { standard: "unknown" }])).toEqual([
      20,
      2437,
      "ax",
    ]);
    expect(choice([{ standard: "b" }, { standard: "g" }])).toEqual([20, 2437, "g"]);
  });

  it("chooses between centres the same way round, whatever the order", () => {
    const [above, below] = [wide, { ...wide, centreMhz: 2427 }];
    expect(choice([above, below])).toEqual(choice([below, above]));
  });
});

describe("surveyEmitter, identity", () => {
  it("is called by its lowest address and tells all of them, and its names", () => {
    const radio = radioOf([
      { bssid: "06:00:5e:10:00:03", ssid: "rope" },
      { bssid: "02:00:5e:10:00:09", ssid: "" },
      { bssid: "02:00:5e:10:00:0a", ssid: "lantern" },
    ]);
    expect(radio.emitter).toBe("02:00:5e:10:00:09");
    expect(radio.bssids).toEqual(["02:00:5e:10:00:09", "02:00:5e:10:00:0a", "06:00:5e:10:00:03"]);
    expect(radio.names).toEqual(["lantern", "rope"]);
  });

  it("is address@channel where the address moved, name@channel where there is no address", () => {
    const moved = radioOf([{}], ["02:00:5e:10:00:01"]);
    expect([moved.emitter, moved.moved]).toEqual(["02:00:5e:10:00:01@6", true]);
    const named = radioOf([{ bssid: null, ssid: "lantern" }]);
    expect([named.emitter, named.moved, named.bssids]).toEqual(["lantern@6", false, []]);
  });

  it("tells when it was first and last seen, and nothing where no row has a time", () => {
    const timed = radioOf([
      { timeMs: Date.UTC(2026, 4, 1, 19) },
      { timeMs: null },
      { timeMs: Date.UTC(2026, 4, 1, 18) },
    ]);
    expect(timed.firstSeen).toBe("2026-05-01T18:00:00.000Z");
    expect(timed.lastSeen).toBe("2026-05-01T19:00:00.000Z");
    const untimed = radioOf([{ timeMs: null }]);
    expect([untimed.firstSeen, untimed.lastSeen]).toEqual([null, null]);
  });

  it("says where a level came as a percentage", () => {
    expect(radioOf([{}, { signalAssumed: true }]).levelAssumed).toBe(true);
    expect(radioOf([{}]).levelAssumed).toBe(false);
  });
});

describe("surveyEmitter, reported airtime by crowd", () => {
  // Full: of 0.4 and 0.6 the 0.9 quantile is 0.4 + 0.9·0.2 = 0.58. Blank counts as part.
  it("is the 0.9 quantile of each crowd, null where none was reported, by hand", () => {
    const radio = radioOf([
      { timeMs: minute(0), crowd: "full", airtimeRatio: 0.4 },
      { timeMs: minute(1), crowd: "full", airtimeRatio: 0.6 },
      { timeMs: minute(2), crowd: null, airtimeRatio: 0.2 },
      { timeMs: minute(3), crowd: "empty", airtimeRatio: null },
    ]);
    expect(radio.reportedAirtime.fullRatio).toBeCloseTo(0.58, 12);
    expect(radio.reportedAirtime.partRatio).toBe(0.2);
    expect(radio.reportedAirtime.emptyRatio).toBeNull();
  });
});
