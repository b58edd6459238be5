import type { Reading, ScanImport } from "../../src/scan/index.js";

/** A reading with everything that a test doesn't name at a plain value. */
export function reading(given: Partial<Reading> = {}): Reading {
  const channel = given.channel ?? 6;
  return {
    source: "scan.csv",
    line: 2,
    timeMs: Date.UTC(2026, 4, 1, 18, 0),
    place: "hall",
    crowd: "empty",
    bssid: "02:00:5e:10:00:01",
    ssid: "lantern",
    channel,
    centreMhz: 2407 + 5 * channel,
    widthMhz: 20,
    signalDbm: -60,
    signalAssumed: false,
    centreAssumed: false,
    airtimeRatio: null,
    stationCount: null,
    standard: "n",
    ageMs: null,
    ...given,
  };
}

/** A file of readings as the reader hands it over. */
export function scanOf(readings: readonly Reading[], given: Partial<ScanImport> = {}): ScanImport {
  const { rejectedCount = 0, outOfBandCount = 0 } = given;
  return {
    source: "scan.csv",
    format: "scan-csv",
    hasAges: false,
    sweep: null,
    readings,
    rowCount: readings.length + rejectedCount + outOfBandCount,
    rejectedCount,
    outOfBandCount,
    issues: [],
    ...given,
  };
}

/** Minutes after a fixed evening hour, ms since 1970. */
export function minute(minutes: number): number {
  return Date.UTC(2026, 4, 1, 18, 0) + minutes * 60_000;
}
