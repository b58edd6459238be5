import { describe, expect, test } from "vitest";
import { accounts, oneRow, read } from "./dialects.js";

/** The one reading of a one-row file; fails where there is none. */
async function reading(cells: Record<string, string>, delimiter = ","): Promise<Record<string, unknown>> {
  const result = await read(oneRow(cells, delimiter));
  expect(result.readings.length, JSON.stringify(result.issues)).toBe(1);
  return { ...result.readings[0]! };
}

describe("out of band is judged first", () => {
  test.each([
    { centre_mhz: "5180", channel: "36" },
    {
      centre_mhz: "5180",
      channel: "rubbish",
      width_mhz: "80",
      signal_dbm: "none",
      time: "never",
      crowd: "?",
    },
    { centre_mhz: "2399.9" },
    { centre_mhz: "2500.1", bssid: "zz" },
    { centre_mhz: "", channel: "36", width_mhz: "160" },
    { channel: "15", signal_dbm: "" },
  ])("%o", async (cells) => {
    const result = await read(oneRow(cells));
    expect(result).toMatchObject({ rowCount: 1, outOfBandCount: 1, rejectedCount: 0, readings: [] });
    expect(result.issues.map(({ code }) => code)).toEqual(["no-usable-row"]);
  });

  test.each([
    { centre_mhz: "wide", channel: "36" },
    { centre_mhz: "2437", channel: "36" },
    { centre_mhz: "", channel: "36.5" },
    { centre_mhz: "", channel: "1e999" },
  ])("%o is not: it is rejected", async (cells) => {
    expect(await read(oneRow(cells))).toMatchObject({ outOfBandCount: 0, rejectedCount: 1 });
  });
});

describe("a row is rejected whole, its first bad cell named", () => {
  test.each([
    ["bad-cell", "signal_dbm", "n/a", {}],
    ["bad-cell", "signal_dbm", " -130.1", {}],
    ["bad-cell", "signal_dbm", "-4.9", {}],
    ["bad-cell", "signal_dbm", "60", {}],
    ["bad-cell", "signal_dbm", "NaN", {}],
    ["bad-cell", "signal_dbm", "-Infinity", {}],
    ["bad-cell", "signal_dbm", "-0x3c", {}],
    ["bad-cell", "width_mhz", "80", {}],
    ["bad-cell", "width_mhz", "wide", {}],
    ["bad-cell", "channel", "0", {}],
    ["bad-cell", "channel", "6.5", {}],
    ["bad-cell", "channel", "six", {}],
    ["bad-cell", "centre_mhz", "2.4x", {}],
    ["bad-cell", "centre_mhz", "2414.5", { channel: "" }],
    ["contradiction", "centre_mhz", "2438.5", {}],
    ["contradiction", "centre_mhz", "2447", { width_mhz: "20" }],
    ["contradiction", "centre_mhz", "2442", { width_mhz: "40" }],
    ["bad-cell", "airtime_ratio", "1.01", {}],
    ["bad-cell", "airtime_ratio", "-0.1", {}],
    ["bad-cell", "airtime_ratio", "45%", {}],
    ["bad-cell", "stations", "-1", {}],
    ["bad-cell", "stations", "2.5", {}],
    ["bad-cell", "crowd", "busy", {}],
    ["bad-cell", "time", "2026-02-30", {}],
    ["bad-cell", "time", "14.03.2026", {}],
    ["bad-cell", "bssid", "02:1a:00:00:00", {}],
    ["bad-cell", "bssid", "02:1a:00:00:00:0g", {}],
    ["bad-cell", "bssid", "021a00000001", {}],
    ["bad-cell", "bssid", "02:1a-00:00:00:01", {}],
    ["bad-cell", "bssid", "00:00:00:00:00:00", {}],
    ["bad-cell", "bssid", "FF:FF:FF:FF:FF:FF", {}],
  ])("%s %s %j %o", async (code, column, value, more) => {
    const result = await read(oneRow({ ...more, [column]: value }));
    expect(result).toMatchObject({ rowCount: 1, rejectedCount: 1, readings: [] });
    const issue = { severity: "warning", source: "scan", line: 2, record: 1, action: "row skipped" };
    expect(result.issues[0]).toMatchObject({ ...issue, code, column, value });
    expect(result.issues[0]!.expected).not.toBe("");
  });

  test.each([
    ["signal_dbm", {}],
    ["channel", { centre_mhz: "" }],
  ])("a row without %s", async (column, more) => {
    const result = await read(oneRow({ ...more, [column]: " " }));
    expect(result.issues[0]).toMatchObject({ code: "missing-cell", column, line: 2, action: "row skipped" });
    expect(result.issues[0]).not.toHaveProperty("value");
  });

  test("one issue a row, however many cells are bad", async () => {
    const result = await read(oneRow({ crowd: "x", time: "x", signal_dbm: "x", stations: "x" }));
    expect(result.issues.map(({ code, column }) => column ?? code)).toEqual(["time", "no-usable-row"]);
  });
});

describe("a row is read", () => {
  test("with every cell", async () => {
    const cells = {
      time: "2026-03-14T20:00+02:00",
      place: " Foyer ",
      crowd: "FULL",
      bssid: "02-1A-00-00-00-0F",
      ssid: " a b ",
      channel: "11",
      centre_mhz: "2452",
      width_mhz: "40",
      signal_dbm: "-130",
      airtime_ratio: "1",
      stations: "12",
      standard: "AX",
    };
    expect(await reading(cells)).toEqual({
      source: "scan",
      line: 2,
      timeMs: Date.parse("2026-03-14T18:00:00Z"),
      place: "Foyer",
      crowd: "full",
      bssid: "02:1a:00:00:00:0f",
      ssid: " a b ",
      channel: 11,
      centreMhz: 2452,
      widthMhz: 40,
      signalDbm: -130,
      signalAssumed: false,
      centreAssumed: false,
      airtimeRatio: 1,
      stationCount: 12,
      standard: "ax",
      ageMs: null,
    });
  });

  test("with blanks for what a row can do without", async () => {
    const blank = { time: "", place: "", crowd: "", ssid: "", centre_mhz: "", width_mhz: "", standard: "" };
    const expected = { timeMs: null, place: "", crowd: null, ssid: "", centreMhz: 2437, widthMhz: 20 };
    expect(await reading({ ...blank, bssid: "", airtime_ratio: "", stations: " " })).toMatchObject({
      ...expected,
      bssid: null,
      airtimeRatio: null,
      stationCount: null,
      standard: "unknown",
    });
  });

  // Centres: IEEE 802.11-2020 Annex E; 40 MHz sides as the design's rule has them.
  test.each([
    [{ width_mhz: "22" }, { widthMhz: 20, centreMhz: 2437 }],
    [
      { channel: "", centre_mhz: "2484" },
      { channel: 14, centreMhz: 2484 },
    ],
    [
      { channel: "", centre_mhz: "2413" },
      { channel: 1, centreMhz: 2413 },
    ],
    [
      { channel: "", centre_mhz: "2422", width_mhz: "40" },
      { channel: 3, centreMhz: 2432, centreAssumed: true },
    ],
    [{ width_mhz: "40" }, { widthMhz: 40, centreMhz: 2447, centreAssumed: true }],
    [
      { channel: "8", width_mhz: "40" },
      { centreMhz: 2437, centreAssumed: true },
    ],
    [
      { centre_mhz: "2437", width_mhz: "40" },
      { centreMhz: 2447, centreAssumed: true },
    ],
    [
      { centre_mhz: "2427", width_mhz: "40" },
      { centreMhz: 2427, centreAssumed: false },
    ],
    [{ signal_dbm: "-5" }, { signalDbm: -5 }],
    [{ signal_dbm: "-6.05e1" }, { signalDbm: -60.5 }],
    [{ airtime_ratio: "0" }, { airtimeRatio: 0 }],
    [{ standard: "wifi 9" }, { standard: "unknown" }],
    [{ ssid: "'=1+1" }, { ssid: "=1+1" }],
    [{ ssid: "'quoted" }, { ssid: "'quoted" }],
  ])("%o", async (cells, expected) => expect(await reading(cells)).toMatchObject(expected));

  test("with a decimal comma where the delimiter isn't one", async () => {
    for (const delimiter of [";", "\t"])
      expect(await reading({ signal_dbm: "-60,5", airtime_ratio: "0,25" }, delimiter)).toMatchObject({
        signalDbm: -60.5,
        airtimeRatio: 0.25,
      });
    expect(await read(oneRow({ signal_dbm: '"-60,5"' }))).toMatchObject({ rejectedCount: 1 });
  });

  test("with the options for its blank cells only", async () => {
    const options = { place: " Gallery ", crowd: "part", time: "2026-03-15" } as const;
    const blank = await read(oneRow({ place: "", time: " ", crowd: "" }), options);
    const timeMs = Date.parse("2026-03-15T00:00:00Z");
    expect(blank.readings[0]).toMatchObject({ place: "Gallery", crowd: "part", timeMs });
    expect((await read(oneRow({}), options)).readings[0]).toMatchObject({
      place: "Gallery",
      crowd: "part",
      timeMs,
    });
    const filled = await read(oneRow({ place: "Foyer", time: "2026-03-14", crowd: "full" }), options);
    expect(filled.readings[0]).toMatchObject({
      place: "Foyer",
      crowd: "full",
      timeMs: Date.parse("2026-03-14T00:00:00Z"),
    });
    const bad = await read(oneRow({ crowd: "busy" }), options);
    expect(accounts(bad) && bad.rejectedCount).toBe(1);
  });
});
