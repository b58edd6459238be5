import { describe, expect, test } from "vitest";
import { plainPen } from "../../src/report/index.js";
import { venueRequestBlock } from "../../src/report/venue-request-json.js";
import { venueRequestLines } from "../../src/report/venue-request-lines.js";
import { buildSurvey, readScan } from "../../src/scan/index.js";
import type { VenueRequest } from "../../src/venue/index.js";
import { tooWide } from "../cli/columns.js";

const SCAN = `time,place,crowd,bssid,ssid,channel,signal_dbm
2026-03-07T20:00:00Z,hall,full,02:00:00:00:00:10,House \u001b[31m,1,-50
2026-03-07T20:00:00Z,hall,full,02:00:00:00:00:20,Cellar,11,-60
`;
const survey = buildSurvey([await readScan(SCAN, { source: "hall.csv" })], {
  building: ["02:00:00:00:00:10"],
});
const radiates = {
  centresMhz: [2447],
  bandwidthMhz: 1,
  eirpDbm: 20,
  airtimeRatio: 0.198,
  airtimeCapped: false,
};
const request: VenueRequest = {
  fixes: [
    {
      emitter: "02:00:00:00:00:10",
      wifiChannel: 1,
      scannedWifiChannel: 1,
      system: "hall",
      workingMarginIfMovedDb: -4.25,
    },
    {
      emitter: "02:00:00:00:00:20",
      wifiChannel: 1,
      scannedWifiChannel: 11,
      system: "hall",
      workingMarginIfMovedDb: 1,
    },
  ],
  buildingCount: 2,
  nearby: [{ emitter: "02:00:00:00:00:10", room: "hall", known: "in" }],
  systems: [
    {
      system: "hall",
      channel: 8,
      radiates,
      workingMarginDb: 3,
      ifWifiMovesDb: -5,
      ifGrantedDb: 2.5,
      ifOffDb: 9,
      reason: null,
    },
    {
      system: "hops",
      channel: null,
      radiates: { ...radiates, centresMhz: [2402, 2480] },
      workingMarginDb: null,
      ifWifiMovesDb: null,
      ifGrantedDb: null,
      ifOffDb: null,
      reason: "it hops",
    },
  ],
  eventMinutes: 150,
};
const style = { pen: plainPen, units: "m", columnCount: 80 } as const;
const lines = venueRequestLines(request, survey, style);
const text = lines.join("\n").replace(/\s+/g, " ");

describe("the request to the network staff", () => {
  test("names each radio by its address, where to fix it, and what it costs if it moves", () => {
    expect(text).toMatch(/1 as now -50 dBm hall hall -4\.3 dB 02:00:00:00:00:10/);
    expect(text).toMatch(/1 from 11 -60 dBm hall hall 1\.0 dB 02:00:00:00:00:20/);
    expect(text).toMatch(
      /Fix these 2 radios of 2 so: 20 MHz wide, automatic channel and automatic power off/,
    );
    expect(text).toMatch(/2\.4 GHz off in and beside our rooms where guests can use 5 or 6 GHz/);
  });
  test("tells whose ownership is presumed, and only that", () => {
    expect(text).toMatch(/Presumed the building's by level alone .* check first: 02:00:00:00:00:20\./);
  });
  test("says in return what each system radiates, and for how long", () => {
    expect(text).toMatch(
      /hall radiates at 2447 MHz, 1 MHz wide, 20\.0 dBm EIRP, on the air 20 % of the time, during set-up and the event \(2\.5 h\) only/,
    );
    expect(text).toMatch(/hops radiates hopping over 2 frequencies, 2402–2480 MHz/);
    expect(text).toMatch(/hops: no margins here; it hops/);
  });
  test("fits in 80 columns and carries no escape", () => {
    expect(tooWide(lines.join("\n"), 80)).toEqual([]);
    expect(lines.join("")).not.toContain("\u001b");
  });
  test("as JSON has the same, unrounded", () => {
    expect(venueRequestBlock(request, survey)).toMatchObject({
      widthMhz: 20,
      automaticChannel: false,
      automaticPower: false,
      fix: [
        { emitter: "02:00:00:00:00:10", wifiChannel: 1, levelDbm: -50, workingMarginIfMovedDb: -4.25 },
        {},
      ],
      off: [{ emitter: "02:00:00:00:00:10", room: "hall", known: "in" }],
      systems: request.systems,
    });
  });
  test("nothing to fix is said in words", () => {
    const none = venueRequestLines({ ...request, fixes: [], nearby: [] }, survey, style).join(" ");
    expect(none.replace(/\s+/g, " ")).toMatch(
      /No radio need be fixed: wherever the building's go, every system keeps/,
    );
  });
});
