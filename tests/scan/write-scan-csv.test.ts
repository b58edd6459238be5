import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { wifiChannelCentreMhz } from "../../src/band/index.js";
import { placeOnChannel } from "../../src/scan/channel-placement.js";
import { STANDARDS } from "../../src/scan/reading.js";
import type { Reading } from "../../src/scan/reading.js";
import { writeScanCsv } from "../../src/scan/write-scan-csv.js";
import { facts, read } from "./dialects.js";

const name = fc.oneof(
  fc.string({ unit: "grapheme" }),
  fc
    .array(fc.constantFrom("'", "=", "+", "-", "@", "\t", "\r", "\n", '"', ",", ";", " ", "a", "☃", "\0"))
    .map((parts) => parts.join("")),
);
const octet = fc.nat(255).map((value) => value.toString(16).padStart(2, "0"));
const bssid = fc.array(octet, { minLength: 5, maxLength: 5 }).map((octets) => ["02", ...octets].join(":"));
const placement = fc
  .record({
    channel: fc.integer({ min: 1, max: 14 }),
    side: fc.constantFrom(null, -10, 10),
    wide: fc.boolean(),
  })
  .map(({ channel, side, wide }) =>
    placeOnChannel(
      channel,
      side === null || !wide ? null : wifiChannelCentreMhz(channel)! + side,
      wide ? 40 : 20,
    )!,
  );
const reading: fc.Arbitrary<Reading> = fc
  .record({
    timeMs: fc.option(fc.integer({ min: Date.parse("0000-01-01"), max: Date.parse("9999-12-31") })),
    place: name.map((text) => text.trim()),
    crowd: fc.option(fc.constantFrom("empty", "part", "full")),
    bssid: fc.option(bssid),
    ssid: name,
    placement,
    signalDbm: fc.double({ min: -130, max: -5, noNaN: true }),
    airtimeRatio: fc.option(fc.double({ min: 0, max: 1, noNaN: true }).map((ratio) => ratio + 0)),
    stationCount: fc.option(fc.nat(65_535)),
    standard: fc.constantFrom(...STANDARDS),
  })
  .map(({ placement: placed, ...rest }) => {
    return { source: "", line: 0, ...rest, ...placed, signalAssumed: false, ageMs: null };
  });

test("readings written come back, in any delimiter, line end, encoding and cut", async () => {
  const form = fc.record({
    delimiter: fc.constantFrom(",", ";", "\t"),
    end: fc.constantFrom("\n", "\r\n", "\r"),
    encoding: fc.constantFrom("utf8", "utf16le"),
    marked: fc.boolean(),
    size: fc.integer({ min: 1, max: 40 }),
    comma: fc.boolean(),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(reading, { minLength: 1, maxLength: 6 }), form, async (readings, chosen) => {
      const { delimiter, end, encoding, marked, size, comma } = chosen;
      const rows: string[][] = parse(writeScanCsv(readings));
      const cells = rows.map((row) =>
        row.map((cell, index) => {
          const number = comma && delimiter !== "," && [6, 8, 9].includes(index);
          return `"${(number ? cell.replace(".", ",") : cell).replaceAll('"', '""')}"`;
        }),
      );
      const text = cells.map((row) => `${row.join(delimiter)}${end}`).join("");
      const bytes = Buffer.from(
        `${marked || encoding === "utf16le" ? "\ufeff" : ""}${text}`,
        encoding as "utf8",
      );
      const chunks = Array.from({ length: Math.ceil(bytes.length / size) }, (_, index) =>
        bytes.subarray(index * size, (index + 1) * size),
      );
      const result = await read(chunks);
      expect(result.issues).toEqual([]);
      expect(facts(result)).toEqual(readings);
    }),
    { numRuns: 300 },
  );
});

test("the file as written comes back as it is, and no cell begins as a spreadsheet would run it", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(reading, { minLength: 1, maxLength: 6 }), async (readings) => {
      const text = writeScanCsv(readings);
      expect(facts(await read(text))).toEqual(readings);
      const rows: string[][] = parse(text);
      for (const row of rows.slice(1))
        for (const column of [1, 4]) expect(row[column]).not.toMatch(/^[=+\-@\t\r\n]/);
    }),
  );
});

const PLAIN: Reading = {
  source: "a.csv",
  line: 2,
  timeMs: Date.parse("2026-03-14T20:00:00Z"),
  place: "Foyer",
  crowd: "full",
  bssid: "02:1a:00:00:00:01",
  ssid: '=say "cue", twice',
  channel: 6,
  centreMhz: 2447,
  widthMhz: 40,
  signalDbm: -60.5,
  signalAssumed: false,
  centreAssumed: true,
  airtimeRatio: 0.25,
  stationCount: 3,
  standard: "n",
  ageMs: null,
};

test("the form: comma, LF, the header of the format, an assumed centre left blank", () => {
  expect(writeScanCsv([PLAIN])).toBe(
    "time,place,crowd,bssid,ssid,channel,centre_mhz,width_mhz,signal_dbm,airtime_ratio,stations,standard\n" +
      '2026-03-14T20:00:00.000Z,Foyer,full,02:1a:00:00:00:01,"\'=say ""cue"", twice",6,,40,-60.5,0.25,3,n\n',
  );
});

describe("throws", () => {
  test.each([
    ["readings[1].signalDbm", { signalDbm: Number.NaN }],
    ["readings[1].centreMhz", { centreMhz: Infinity }],
    ["readings[1].airtimeRatio", { airtimeRatio: Number.NaN }],
    ["readings[1].timeMs", { timeMs: Number.NaN }],
    ["readings[1].timeMs", { timeMs: 0.5 }],
    ["readings[1].timeMs", { timeMs: Date.parse("9999-12-31T23:59:59.999Z") + 1 }],
  ])("%s %o", (argument, change) => {
    expect(() => writeScanCsv([PLAIN, { ...PLAIN, ...change }])).toThrow(
      expect.objectContaining({ code: "E_ARGUMENT", argument }) as Error,
    );
  });
});
