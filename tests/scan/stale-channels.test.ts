import fc from "fast-check";
import { expect, test } from "vitest";
import type { Reading } from "../../src/scan/reading.js";
import { staleReadings } from "../../src/scan/stale-channels.js";
import { accounts, read } from "./dialects.js";

type Heard = readonly [channel: number, signalDbm: number, ageMs: number | null, place?: string];

const reading = ([channel, signalDbm, ageMs, place = ""]: Heard, index: number): Reading => ({
  source: "",
  line: index + 1,
  timeMs: null,
  place,
  crowd: null,
  bssid: "02:1a:00:00:00:01",
  ssid: "",
  channel,
  centreMhz: 2407 + 5 * channel,
  widthMhz: 20,
  signalDbm,
  signalAssumed: false,
  centreAssumed: false,
  airtimeRatio: null,
  stationCount: null,
  standard: "n",
  ageMs,
});

const droppedOf = (...heard: readonly Heard[]): number[] =>
  [...staleReadings(heard.map(reading))].map(({ line }) => line).sort((a, b) => a - b);

test.each<[string, Heard[], number[]]>([
  [
    "one channel: nothing",
    [
      [6, -60, 10],
      [6, -70, 5000],
    ],
    [],
  ],
  [
    "the older of two",
    [
      [6, -60, 5000],
      [1, -70, 10],
    ],
    [1],
  ],
  [
    "a missing age is the oldest",
    [
      [6, -60, null],
      [1, -70, 9999],
    ],
    [1],
  ],
  [
    "no age at all: nothing",
    [
      [6, -60, null],
      [1, -70, null],
    ],
    [],
  ],
  [
    "of equal ages the weaker",
    [
      [6, -71, 10],
      [1, -70, 10],
    ],
    [1],
  ],
  [
    "of equal ages and levels the higher channel",
    [
      [6, -70, 10],
      [1, -70, 10],
    ],
    [1],
  ],
  [
    "the k-th highest of each channel belong together",
    [
      [6, -60, 10],
      [6, -80, 500],
      [1, -61, 20],
      [1, -81, 400],
    ],
    [2, 3],
  ],
  [
    "what has no partner stays",
    [
      [6, -60, 10],
      [6, -80, 9000],
      [1, -61, 20],
    ],
    [3],
  ],
  [
    "three channels: the freshest of them",
    [
      [6, -60, 30],
      [1, -60, 20],
      [11, -60, 10],
    ],
    [1, 2],
  ],
  [
    "places are apart",
    [
      [6, -60, 10, "Foyer"],
      [1, -60, 20, "Gallery"],
    ],
    [],
  ],
])("%s", (_, heard, dropped) => expect(droppedOf(...heard)).toEqual(dropped));

test("readings without an address are left alone", () => {
  const [a, b] = [reading([6, -60, 10], 0), reading([1, -60, 20], 1)];
  expect(
    staleReadings([
      { ...a, bssid: null },
      { ...b, bssid: null },
    ]).size,
  ).toBe(0);
});

test("the order of rows decides nothing", () => {
  const heard = fc.tuple(
    fc.constantFrom(1, 6, 11),
    fc.constantFrom(-60, -70),
    fc.constantFrom(null, 10, 20),
    fc.constantFrom("", "Foyer"),
  );
  const shuffled = fc
    .array(heard, { maxLength: 9 })
    .chain((rows) => fc.tuple(fc.constant(rows), fc.shuffledSubarray(rows, { minLength: rows.length })));
  const kept = (rows: readonly Heard[]): string[] => {
    const readings = rows.map(reading);
    const dropped = staleReadings(readings);
    return readings
      .filter((row) => !dropped.has(row))
      .map(({ channel, signalDbm, ageMs, place }) => JSON.stringify([channel, signalDbm, ageMs, place]))
      .sort();
  };
  fc.assert(
    fc.property(shuffled, ([rows, other]) => {
      expect(kept(other)).toEqual(kept(rows));
    }),
  );
});

test("in a file the older one counts as rejected, and is said", async () => {
  const block = (freq: number, ageMs: number): string =>
    `BSS 02:1a:00:00:00:01(on wlan0)\n\tfreq: ${freq}\n\tsignal: -60.00 dBm\n\tlast seen: ${ageMs} ms ago\n\tSSID: Slipway\n`;
  const result = await read(block(2412, 9000) + block(2437, 40));
  expect(result).toMatchObject({ rowCount: 2, rejectedCount: 1, outOfBandCount: 0 });
  expect(result.readings).toMatchObject([{ channel: 6, line: 6 }]);
  expect(result.issues).toMatchObject([
    { code: "stale-channel", severity: "warning", line: 1, action: "row skipped" },
  ]);
  expect(accounts(result)).toBe(true);
});
