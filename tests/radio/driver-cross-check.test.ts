import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { driverCrossCheck, driverLimits, findProfile, regionRules } from "../../src/radio/index.js";
import type { RegionCode } from "../../src/radio/index.js";
import { driverRows } from "../../src/radio/driver-limits.js";
import { referenceCsv } from "../helpers/reference-csv.js";

/** The open regulatory database, decoded outside the project (fixtures/reference/README.md). */
const published = referenceCsv("wireless_regdb_24ghz.csv");
const countries = [...new Set(published.map(({ country }) => country!))];
const raster = findProfile("raster-13");
/** Numbers of the channels that leave the row's band. */
const outside = (region: RegionCode, name: string): number[] =>
  driverCrossCheck(region, findProfile(name), 10).outside.map(({ channel }) => channel);

/** The member states of the European Union since 2020. */
const MEMBERS = "AT BE BG HR CY CZ DK EE FI FR DE GR HU IE IT LV LT LU MT NL PL PT RO SK SI ES SE".split(" ");

describe("the table", () => {
  test("holds every row of every country, and nothing else", () => {
    expect([published.length, countries.length]).toEqual([185, 182]);
    for (const country of countries) {
      const rows = published.filter((row) => row["country"] === country);
      const expected = rows.map((row) => ({
        lowMhz: Number(row["start_mhz"]),
        highMhz: Number(row["end_mhz"]),
        mostBandwidthMhz: Number(row["max_bw_mhz"]),
        maxEirpDbm: Number(row["max_eirp_mbm"]) / 100,
        flags: row["flags"] === "" ? [] : row["flags"]!.split("|"),
      }));
      expect(driverLimits(country), country).toEqual(expected);
    }
    expect(driverRows.flatMap((row) => row[5].split(" ")).length).toBe(185);
  });
  test("gives one row alike to all 27 member states: DE stands for the EU", () => {
    expect(MEMBERS.length).toBe(27);
    for (const member of MEMBERS) expect(driverLimits(member), member).toEqual(driverLimits("DE"));
  });
  test("knows nothing of a code that isn't in it, and refuses what is no code", () => {
    expect(driverLimits("ZZ")).toEqual([]);
    for (const bad of ["", "us", "USA", "U", "0"]) expect(() => driverLimits(bad)).toThrow(ArgumentError);
  });
});

describe("a radio beside it", () => {
  test.each([
    ["US", "US", 2400, 2472, 30],
    ["CA", "CA", 2400, 2483.5, 36.02],
    ["EU", "DE", 2400, 2483.5, 20],
    ["GB", "GB", 2400, 2483.5, 20],
    ["AU", "AU", 2400, 2483.5, 36.02],
    ["NZ", "NZ", 2400, 2483.5, 36],
    ["JP", "JP", 2402, 2482, 20],
    ["world", "00", 2402, 2472, 20],
  ] as const)("%s is judged by %s: %d to %d MHz, %d dBm", (region, country, lowMhz, highMhz, maxEirpDbm) => {
    const expected = { country, lowMhz, highMhz, maxEirpDbm };
    expect(driverCrossCheck(region, raster, 10)).toMatchObject(expected);
  });
  test("covers every region that has a rule", () => {
    for (const region of Object.keys(regionRules) as RegionCode[])
      expect(driverCrossCheck(region, raster, -40).excessDb).toBe(0);
  });
  test("US: it ends at 2472 MHz, so a 1 MHz channel there leaves it by half a megahertz", () => {
    const check = driverCrossCheck("US", raster, 20);
    expect([check.within, check.excessDb]).toEqual([false, 0]);
    expect(check.outside).toEqual([{ channel: 13, centreMhz: 2472 }]);
    expect(outside("US", "raster-16")).toEqual([25, 26]); // 2475, 2480
    expect(driverCrossCheck("CA", raster, 20).within).toBe(true);
  });
  test("world and JP begin at 2402 MHz: the lowest hop frequency reaches 2401.5", () => {
    expect(outside("JP", "hop-79")).toEqual([0]);
    expect(outside("world", "hop-79")).toEqual([0, 70, 71, 72, 73, 74, 75, 76, 77, 78]);
  });
  test("a power above it is told in dB; at it, it is within", () => {
    expect(driverCrossCheck("GB", raster, 22.5)).toMatchObject({ within: false, excessDb: 2.5 });
    expect(driverCrossCheck("GB", raster, 20)).toMatchObject({ within: true, excessDb: 0 });
  });
  test("throws", () => {
    expect(() => driverCrossCheck("XX" as RegionCode, raster, 10)).toThrow(
      "US, CA, EU, GB, AU, NZ, JP, world",
    );
    expect(() => driverCrossCheck("toString" as RegionCode, raster, 10)).toThrow(ArgumentError);
    for (const bad of [NaN, Infinity]) expect(() => driverCrossCheck("US", raster, bad)).toThrow("eirpDbm");
  });
});
