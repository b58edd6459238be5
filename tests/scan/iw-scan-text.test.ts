import { describe, expect, test } from "vitest";
import { accounts, dialect, facts, read } from "./dialects.js";

// Every form below: iw scan.c output format (Linux nl80211 tool), read.

const block = (...lines: string[]): string =>
  ["BSS 02:1a:00:00:00:01(on wlan0)", "\tTSF: 1 usec (0d, 00:00:00)", ...lines].join("\n") + "\n";
const LEVEL = "\tsignal: -60.00 dBm";
const HT = (primary: string, offset: string, width: string): string =>
  `\tHT operation:\n\t\t * primary channel: ${primary}\n\t\t * secondary channel offset: ${offset}\n\t\t * STA channel width: ${width}`;

async function only(...lines: string[]): Promise<Record<string, unknown>> {
  const result = await read(block(...lines));
  expect(result.readings.length, JSON.stringify(result.issues)).toBe(1);
  return { ...result.readings[0]! };
}

describe("a scan as it is printed", () => {
  test("one row a block, with all that it says", async () => {
    const result = await read(dialect("iw-scan.txt"), { place: "Foyer", crowd: "full", time: "2026-03-14" });
    expect(result).toMatchObject({
      format: "linux-iw-scan",
      hasAges: true,
      rowCount: 7,
      rejectedCount: 1,
      outOfBandCount: 2,
    });
    expect(result.readings).toEqual([
      {
        source: "scan",
        line: 1,
        timeMs: Date.parse("2026-03-14T00:00:00Z"),
        place: "Foyer",
        crowd: "full",
        bssid: "02:1a:00:00:00:01",
        ssid: "Lantern Guest",
        channel: 1,
        centreMhz: 2422, // 802.11-2020 clause 19.3.15, from memory: primary + 10 MHz
        widthMhz: 40,
        signalDbm: -48.5,
        signalAssumed: false,
        centreAssumed: false,
        airtimeRatio: 0.2, // 51 of 255: 802.11 clause 9.4.2.27
        stationCount: 7,
        standard: "ax",
        ageMs: 120,
      },
      expect.objectContaining({
        ssid: "",
        channel: 6,
        signalDbm: -72,
        signalAssumed: true,
        standard: "b",
        widthMhz: 20,
      }),
      expect.objectContaining({
        ssid: 'Bühne "A" ',
        channel: 11,
        centreMhz: 2462,
        standard: "g",
        airtimeRatio: null,
      }),
      expect.objectContaining({ channel: 9, centreMhz: 2452, widthMhz: 20, standard: "n", ageMs: 40 }),
    ]);
    expect(result.issues).toMatchObject([
      { code: "missing-cell", column: "signal", line: 87, record: 7, action: "row skipped" },
    ]);
  });

  test.each(["iw-scan-crlf-prompt.txt", "iw-scan-spaces.txt", "iw-scan-no-indent.txt"])(
    "%s reads alike",
    async (name) => {
      const [result, plain] = [await read(dialect(name)), await read(dialect("iw-scan.txt"))];
      expect(facts(result)).toEqual(facts(plain));
      expect(result).toMatchObject({ rowCount: 7, rejectedCount: 1, outOfBandCount: 2 });
    },
  );
});

describe("the channel", () => {
  test.each([
    [
      "HT operation before the DS set and the frequency",
      "2437",
      ["\tDS Parameter set: channel 5", HT("4", "no secondary", "20 MHz")],
      4,
    ],
    ["the DS set before the frequency", "2437", ["\tDS Parameter set: channel 5"], 5],
    ["the frequency", "2437", [], 6],
    ["a fractional frequency", "2437.0", [], 6],
    ["channel 14", "2484", [], 14],
  ])("comes from %s", async (_, freq, lines, channel) => {
    const centreMhz = channel === 14 ? 2484 : 2407 + 5 * channel;
    expect(await only(`\tfreq: ${freq}`, LEVEL, ...lines)).toMatchObject({
      channel,
      centreMhz,
      widthMhz: 20,
    });
  });

  test.each([
    ["above", "any", 40, 2447],
    ["below", "any", 40, 2427],
    ["above", "20 MHz", 20, 2437],
    ["no secondary", "any", 20, 2437],
    ["[reserved!]", "any", 20, 2437],
  ])("secondary %s, station width %s: %d MHz around %d", async (offset, width, widthMhz, centreMhz) => {
    const row = await only("\tfreq: 2437", LEVEL, HT("6", offset, width));
    expect(row).toMatchObject({ widthMhz, centreMhz, centreAssumed: false });
  });

  test("VHT and HE operation don't speak for HT operation", async () => {
    const vht = "\tVHT operation:\n\t\t * channel width: 1 (80 MHz)\n\t\t * secondary channel offset: above";
    const he = "\tHE Operation:\n\t\t * primary channel: 36\n\t\t * STA channel width: any";
    expect(await only("\tfreq: 2437", LEVEL, HT("6", "no secondary", "20 MHz"), vht, he)).toMatchObject({
      channel: 6,
      widthMhz: 20,
      standard: "ax",
    });
  });
});

describe("the standard", () => {
  test.each([
    ["be", ["\tHT capabilities:", "\tHE capabilities:", "\tEHT capabilities:"]],
    ["ax", ["\tHT capabilities:", "\tVHT capabilities:", "\tHE capabilities:"]],
    ["n", ["\tSupported rates: 1.0* 6.0 ", "\tHT capabilities:"]],
    ["g", ["\tSupported rates: 1.0* 2.0* ", "\tExtended supported rates: 54.0 "]],
    ["g", ["\tSupported rates: 6.0* 9.0 "]],
    ["b", ["\tSupported rates: 1.0* 2.0* 5.5* 11.0* 16.0 "]],
    ["b", []],
  ])("is %s with %j", async (standard, lines) => {
    expect(await only("\tfreq: 2437", LEVEL, ...lines)).toMatchObject({ standard });
  });
});

describe("a block is rejected whole", () => {
  test.each([
    ["bad-cell", "signal", ["\tfreq: 2437", "\tsignal: strong"]],
    ["bad-cell", "signal", ["\tfreq: 2437", "\tsignal: -131.00 dBm"]],
    ["missing-cell", "signal", ["\tfreq: 2437"]],
    ["missing-cell", "freq", [LEVEL]],
    ["bad-cell", "freq", ["\tfreq: 24", LEVEL]],
    ["bad-cell", "freq", ["\tfreq: 2414.5", LEVEL]],
    ["bad-cell", "ds parameter set", ["\tfreq: 2437", LEVEL, "\tDS Parameter set: channel 36"]],
    ["bad-cell", "ht operation/primary channel", ["\tfreq: 2437", LEVEL, HT("0", "above", "any")]],
    [
      "bad-cell",
      "ht operation/secondary channel offset",
      ["\tfreq: 2437", LEVEL, HT("6", "sideways", "any")],
    ],
    ["bad-cell", "ht operation/sta channel width", ["\tfreq: 2437", LEVEL, HT("6", "above", "80 MHz")]],
    [
      "bad-cell",
      "bss load/channel utilisation",
      ["\tfreq: 2437", LEVEL, "\tBSS Load:\n\t\t * channel utilisation: 256/255"],
    ],
    [
      "bad-cell",
      "bss load/station count",
      ["\tfreq: 2437", LEVEL, "\tBSS Load:\n\t\t * station count: many"],
    ],
    ["bad-cell", "last seen", ["\tfreq: 2437", LEVEL, "\tlast seen: yesterday"]],
  ])("%s %s", async (code, column, lines) => {
    const result = await read(block(...lines));
    expect(result).toMatchObject({ rowCount: 1, rejectedCount: 1 });
    expect(result.issues[0]).toMatchObject({ code, column, line: 1, record: 1, action: "row skipped" });
  });

  test.each(["00:00:00:00:00:00", "ff:ff:ff:ff:ff:ff", "02:1a:00:00:00:0g"])(
    "address %s",
    async (address) => {
      const result = await read(`BSS ${address}(on wlan0)\n\tfreq: 2437\n${LEVEL}\n`);
      expect(result.issues[0]).toMatchObject({ code: "bad-cell", column: "BSS", value: address });
    },
  );
});

describe("blocks are kept apart", () => {
  test("nothing of one block is left for the next", async () => {
    const first = block(
      "\tfreq: 2437",
      LEVEL,
      HT("6", "above", "any"),
      "\tBSS Load:",
      "\t\t * channel utilisation: 9/255",
    );
    const result = await read(
      `${first}BSS 02:1a:00:00:00:02(on wlan0)\n\t\t * station count: 5\n\tfreq: 2462\n${LEVEL}\n`,
    );
    expect(result.readings[1]).toMatchObject({
      channel: 11,
      widthMhz: 20,
      airtimeRatio: null,
      stationCount: null,
      standard: "b",
    });
  });

  test("a block whose first line is lost is a row of its own, rejected", async () => {
    const lost = `\tTSF: 2 usec\n\tfreq: 2462\n\tsignal: -50.00 dBm\n${HT("11", "above", "any")}\n`;
    const result = await read(`${block("\tfreq: 2437", LEVEL)}${lost}`);
    expect(result).toMatchObject({ rowCount: 2, rejectedCount: 1 });
    expect(result.readings[0]).toMatchObject({ channel: 6, widthMhz: 20, signalDbm: -60 });
    expect(result.issues[0]).toMatchObject({ code: "unreadable", line: 5, record: 2 });
  });

  test("other output after the last block is no part of it", async () => {
    const after = "wlan0  other\n\tfreq: 5180\n\tSSID: not this\n\tDS Parameter set: channel 3\n";
    const result = await read(`# a note\n\tfreq: 2412\n${block("\tfreq: 2437", LEVEL)}${after}`);
    expect(result).toMatchObject({ rowCount: 1, rejectedCount: 0 });
    expect(result.readings[0]).toMatchObject({ channel: 6, ssid: "", line: 3 });
  });

  test("a network may call itself a line of the format", async () => {
    expect(await only("\tfreq: 2437", LEVEL, "\tSSID: BSS 02:00:00:00:00:99(on wlan0)")).toMatchObject({
      ssid: "BSS 02:00:00:00:00:99(on wlan0)",
    });
    expect(await only("\tfreq: 2437", LEVEL, "\tSSID: signal: -10.00 dBm")).toMatchObject({ signalDbm: -60 });
  });

  test("a name from the probe response stands against a hidden one of the beacon", async () => {
    for (const names of [
      ["", "Slipway"],
      ["\\x00\\x00", "Slipway"],
      ["Slipway", ""],
    ])
      expect(await only("\tfreq: 2437", LEVEL, ...names.map((name) => `\tSSID: ${name}`))).toMatchObject({
        ssid: "Slipway",
      });
  });
});

test("cut anywhere, every block before the last reads as in the whole", async () => {
  const text = new TextDecoder().decode(dialect("iw-scan.txt"));
  const whole = facts(await read(text));
  const starts = [...text.matchAll(/^BSS /gm)].map(({ index }) => index);
  for (let length = 1; length < text.length; length += 3) {
    const result = await read(text.slice(0, length));
    expect(accounts(result)).toBe(true);
    const wholeBlocks = starts.filter((start) => start <= length).length - 1;
    const usedBefore = Math.min(wholeBlocks, 4);
    expect(facts(result).slice(0, usedBefore)).toEqual(whole.slice(0, usedBefore));
    for (const { signalDbm } of result.readings) expect([-48.5, -72, -66, -70]).toContain(signalDbm);
  }
});

test("two ages, in either order: the one that counts from the scan", async () => {
  const ages = ["\tlast seen: 77 ms ago", "\tlast seen: 12.345s [boottime]"];
  expect(await only("\tfreq: 2437", LEVEL, ...ages)).toMatchObject({ ageMs: 77 });
  expect(await only(...ages.reverse(), "\tfreq: 2437", LEVEL)).toMatchObject({ ageMs: 77 });
  expect(await only("\tfreq: 2437", LEVEL, ages[0]!)).toMatchObject({ ageMs: null });
});
