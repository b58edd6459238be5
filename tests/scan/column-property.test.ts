/** Random surveys under other headers, units and delimiters read back equal; damaged files are accounted for. */
import { readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { accounts, dialect, read } from "./dialects.js";

interface Row {
  readonly octets: readonly number[];
  readonly name: string;
  readonly channel: number;
  readonly tenthsDbm: number;
  readonly minute: number;
  readonly place: string;
}

/** Words of our own choice for each column, and how its cells are written. */
const FREQUENCY: readonly (readonly [string, (mhz: number) => string])[] = [
  ["Frequency", (mhz) => String(mhz)],
  ["freq (MHz)", (mhz) => `${mhz}.0`],
  ["Frequenz", (mhz) => String(mhz * 1000)],
  ["fréquence en GHz", (mhz) => (mhz / 1000).toFixed(3)],
  ["Frequency", (mhz) => `${mhz} MHz`],
];
const CHANNEL: readonly string[] = ["Channel", "Kanal", "canal", "CHAN", "チャンネル"];
const LEVEL: readonly (readonly [string, (dbm: number) => string])[] = [
  ["RSSI", (dbm) => String(dbm)],
  ["Signal level (dBm)", (dbm) => dbm.toFixed(1)],
  ["Pegel", (dbm) => `${dbm} dBm`],
  ["niveau", (dbm) => String(dbm)],
];
const NAME: readonly string[] = ["Network name", "SSID", "Netzwerk", "nombre de red", "名"];
const ADDRESS: readonly (readonly [string, (octets: readonly string[]) => string])[] = [
  ["MAC", (octets) => octets.join(":")],
  ["Address", (octets) => octets.join("-").toUpperCase()],
  ["bssid", (octets) => octets.join("")],
  ["Hardware-Adresse", (octets) => `${octets.join(":")}:`],
];
const TIME: readonly (readonly [string, (ms: number) => string])[] = [
  ["Time", (ms) => new Date(ms).toISOString()],
  ["Zeitpunkt", (ms) => new Date(ms).toISOString().replace(/(\d+)-(\d+)-(\d+)T(.*)\.\d+Z/, "$3.$2.$1 $4")],
  ["timestamp", (ms) => String(ms / 1000)],
];
const PLACE: readonly string[] = ["Place", "Room", "Ort", "lieu"];

const octet = fc.nat(255);
const row: fc.Arbitrary<Row> = fc.record({
  octets: fc.tuple(octet, octet, octet, octet),
  name: fc.constantFrom("Foyer", "Rope, walk", 'say "cue"', "Halle; B", "7", "舞台", "x\ty", "bar|stage"),
  channel: fc.integer({ min: 1, max: 13 }),
  tenthsDbm: fc.integer({ min: -980, max: -200 }),
  minute: fc.nat(600),
  place: fc.constantFrom("hall", "upper foyer", "stage left"),
});

describe("a survey written as foreign tables are", () => {
  test("reads back equal", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(row, { minLength: 1, maxLength: 12 }),
        fc.record({
          frequency: fc.option(fc.constantFrom(...FREQUENCY)),
          channel: fc.constantFrom(...CHANNEL),
          level: fc.constantFrom(...LEVEL),
          name: fc.constantFrom(...NAME),
          address: fc.constantFrom(...ADDRESS),
          time: fc.constantFrom(...TIME),
          place: fc.constantFrom(...PLACE),
          delimiter: fc.constantFrom(",", ";", "\t", "|"),
          order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }),
          lineEnd: fc.constantFrom("\n", "\r\n"),
          title: fc.constantFrom("", "A walk through the house\n", "\n\n"),
        }),
        async (rows, style) => {
          const place = style.frequency;
          const columns: readonly (readonly [string, (row: Row) => string])[] = [
            place === null
              ? [style.channel, ({ channel }) => String(channel)]
              : [place[0], ({ channel }) => place[1](2407 + 5 * channel)],
            [style.level[0], ({ tenthsDbm }) => style.level[1](tenthsDbm / 10)],
            [style.name, ({ name }) => name],
            [style.address[0], (one) => style.address[1](octetsOf(one))],
            [style.time[0], ({ minute }) => style.time[1](START_MS + minute * 60_000)],
            [style.place, (one) => one.place],
          ];
          const ordered = style.order.map((index) => columns[index]!);
          const lines = [
            ordered.map(([header]) => header),
            ...rows.map((one) => ordered.map(([, cell]) => cell(one))),
          ];
          const text = lines.map((cells) => cells.map(quoted).join(style.delimiter) + style.lineEnd).join("");
          const result = await read(style.title + text);
          const said = result.readings.map(({ bssid, ssid, channel, signalDbm, timeMs, place: at }) => {
            return { bssid, ssid, channel, signalDbm, timeMs, place: at };
          });
          expect(said, text).toEqual(
            rows.map((one) => ({
              bssid: octetsOf(one).join(":"),
              ssid: one.name,
              channel: one.channel,
              signalDbm: one.tenthsDbm / 10,
              timeMs: START_MS + one.minute * 60_000,
              place: one.place,
            })),
          );
          expect(accounts(result)).toBe(true);
        },
      ),
      { numRuns: 400, seed: 2437 },
    );
  });
  test("as a fingerprint table too", async () => {
    const levels = fc.array(
      fc.array(fc.option(fc.integer({ min: -95, max: -20 })), { minLength: 4, maxLength: 4 }),
      {
        minLength: 1,
        maxLength: 8,
      },
    );
    await fc.assert(
      fc.asyncProperty(
        levels,
        fc.constantFrom("100", "-110", "", "nan"),
        fc.constantFrom(",", ";", "\t"),
        fc.shuffledSubarray([1, 6, 11, 13], { minLength: 4 }),
        async (grid, fill, delimiter, channels) => {
          // Two unheard cells alone could be levels: −110 is told by its repetition.
          const blanks = grid.flat().filter((level) => level === null).length;
          const sign = fill === "-110" && blanks < 6 ? "" : fill;
          const addresses = channels.map((channel) => `02:1a:00:00:00:${String(channel).padStart(2, "0")}`);
          const lines = [
            ["place", ...addresses],
            ["channel", ...channels.map(String)],
            ...grid.map((cells, index) => [`spot ${index}`, ...cells.map((level) => String(level ?? sign))]),
          ];
          const result = await read(lines.map((cells) => `${cells.join(delimiter)}\n`).join(""));
          const heard = result.readings.map(({ place, channel, signalDbm }) => [place, channel, signalDbm]);
          const expected = grid.flatMap((cells, index) =>
            cells.flatMap((level, at) => (level === null ? [] : [[`spot ${index}`, channels[at], level]])),
          );
          if (
            sign === "-110" &&
            new Set(grid.flatMap((cells) => cells.flatMap((level, at) => (level === null ? [at] : []))))
              .size < 2
          )
            return;
          expect(heard).toEqual(expected);
          expect(result.rowCount).toBe(expected.length);
        },
      ),
      { numRuns: 200, seed: 2462 },
    );
  });
});

const START_MS = Date.UTC(2026, 2, 14, 18);

function octetsOf({ octets }: Row): readonly string[] {
  return ["02", "1a", ...octets.map((value) => value.toString(16).padStart(2, "0"))];
}

function quoted(cell: string): string {
  return /[",;\t|\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

const FILES = readdirSync(new URL("../../fixtures/scans/dialects", import.meta.url)).filter((name) =>
  name.endsWith(".csv"),
);

test.each(FILES)("%s damaged anyhow is still accounted for", async (name) => {
  const bytes = dialect(name);
  const flip = fc.tuple(fc.nat(bytes.length - 1), fc.nat(255));
  const lines = Buffer.from(bytes).toString("latin1").split("\n");
  await fc.assert(
    fc.asyncProperty(
      fc.array(flip, { maxLength: 12 }),
      fc.nat(bytes.length),
      fc.option(fc.shuffledSubarray(lines)),
      async (flips, length, shuffled) => {
        const start = shuffled === null ? bytes : Buffer.from(shuffled.join("\n"), "latin1");
        const damaged = Uint8Array.from(start);
        for (const [index, value] of flips) if (index < damaged.length) damaged[index] = value;
        const result = await read(damaged.subarray(0, length));
        const { readings, sweep, rowCount, rejectedCount, outOfBandCount } = result;
        if (sweep === null) expect(rowCount).toBe(readings.length + rejectedCount + outOfBandCount);
        for (const { signalDbm, centreMhz } of readings) {
          expect(signalDbm >= -130 && signalDbm <= -5).toBe(true);
          expect(centreMhz >= 2400 && centreMhz <= 2500).toBe(true);
        }
      },
    ),
    { numRuns: 120, seed: 2412 },
  );
});

test.each(FILES)("%s reads the same in chunks of any size", async (name) => {
  const bytes = dialect(name);
  const whole = await read(bytes);
  for (const size of [1, 7, 61]) {
    const chunks = Array.from({ length: Math.ceil(bytes.length / size) }, (_, index) =>
      bytes.subarray(index * size, (index + 1) * size),
    );
    expect(await read(chunks)).toEqual(whole);
  }
});
