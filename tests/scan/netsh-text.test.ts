import { describe, expect, test } from "vitest";
import { accounts, dialect, facts, read } from "./dialects.js";

// The form of `netsh wlan show networks mode=bssid`: from memory. Levels: percent/2 − 100 dBm, common
// practice, no source. Load: N of 255, IEEE 802.11 clause 9.4.2.27.

describe("networks and their radios", () => {
  test("as printed, between a prompt and other output", async () => {
    const result = await read(dialect("netsh-english.txt"), { place: "Foyer" });
    expect(result, JSON.stringify(result.issues)).toMatchObject({
      format: "windows-netsh",
      rowCount: 7,
      rejectedCount: 0,
      outOfBandCount: 2,
      hasAges: false,
    });
    expect(
      result.readings.map(({ bssid, ssid, channel, signalDbm, standard, airtimeRatio, stationCount }) => [
        bssid,
        ssid,
        channel,
        signalDbm,
        standard,
        airtimeRatio,
        stationCount,
      ]),
    ).toEqual([
      ["02:1a:00:00:00:01", "Lantern Guest", 1, -59, "ax", 51 / 255, 7],
      ["02:1a:00:00:00:02", "", 6, -72, "g", null, null],
      ["06:1a:00:00:00:03", 'Bühne: "A" 100%', 11, -66, "n", 0, 0],
      ["02:1a:00:00:00:04", "SSID 9 : 12%", 9, -70, "n", null, null],
      ["0a:1a:00:00:00:06", "Turnstile", 13, -100, "b", null, null],
    ]);
  });

  test.each([
    "netsh-german-utf-16le.txt",
    "netsh-french-code-page.txt",
    "netsh-spanish.txt",
    "netsh-dutch.txt",
    "netsh-italian.txt",
    "netsh-portuguese.txt",
    "netsh-japanese.txt",
    "netsh-japanese-code-page.txt",
    "netsh-english-utf-16le-unmarked.txt",
  ])("%s reads alike", async (name) => {
    const [result, english] = [await read(dialect(name)), await read(dialect("netsh-english.txt"))];
    expect(result).toMatchObject({ rowCount: 7, rejectedCount: 0, outOfBandCount: 2 });
    // The code page's ü is no UTF-8: it is shown as a replacement character. Shift JIS has none.
    const plain = (facts(result) as { ssid: string }[]).map((row) => ({
      ...row,
      ssid: row.ssid.replace(/\ufffd|(?<=^B)\?/, "ü"),
    }));
    expect(plain).toEqual(facts(english));
  });

  test("two adapters, the last radio cut short", async () => {
    const result = await read(dialect("netsh-two-adapters-cut.txt"));
    expect(result).toMatchObject({ rowCount: 7, rejectedCount: 1, outOfBandCount: 2 });
    expect(result.readings.map(({ ssid, channel }) => [ssid, channel])).toEqual([
      ["Lantern Guest", 1],
      ["", 6],
      ["Lantern Guest", 1],
      ["", 6],
    ]);
  });

  test("all blanks in front lost", async () => {
    const text = new TextDecoder().decode(dialect("netsh-english.txt")).replace(/^ +/gm, "");
    expect(facts(await read(text))).toEqual(facts(await read(dialect("netsh-english.txt"))));
  });
});

const radio = (...lines: string[]): string =>
  [
    "SSID 1 : Oak",
    "    BSSID 1                 : 02:1a:00:00:00:01",
    ...lines.map((line) => `         ${line}`),
    "",
  ].join("\n");
const SIGNAL = "Signal             : 70%";
const CHANNEL = "Channel            : 6";
const RATES = "Basic rates (Mbps) : 11";

describe("values speak, not words", () => {
  test.each([
    ["a percent sign in the load is not the signal", [CHANNEL, "Load:", "    Busy: 25 (9 %)"], "signal"],
    ["nor a bare one there", [CHANNEL, "Load:", "    Busy: 9 %"], "signal"],
    ["a single rate is not the channel", [SIGNAL, RATES], "channel"],
    ["a number of stations is not the channel", [SIGNAL, "Load:", "    Stations: 3"], "channel"],
  ])("%s", async (_, lines, column) => {
    const result = await read(radio(...lines));
    expect(result).toMatchObject({ rowCount: 1, rejectedCount: 1 });
    expect(result.issues[0]).toMatchObject({ code: "missing-cell", column, line: 2 });
  });

  test.each([
    ["%70", -65],
    ["70 %", -65],
    ["100%", -50],
    ["0%", -100],
    ["-61", -61],
    ["-61 dBm", -61],
  ])("a signal of %s", async (signal, signalDbm) => {
    const result = await read(radio(`Signal : ${signal}`, CHANNEL));
    expect(result.readings[0]).toMatchObject({ signalDbm, signalAssumed: signal.includes("%") });
  });

  test("a level in dBm stands before the percentage", async () => {
    const result = await read(radio(SIGNAL, "Rssi : -61", CHANNEL));
    expect(result.readings[0]).toMatchObject({ signalDbm: -61, signalAssumed: false });
  });

  test("101 % is no signal", async () => {
    expect((await read(radio("Signal : 101%", CHANNEL))).issues[0]).toMatchObject({
      code: "bad-cell",
      column: "signal",
    });
  });

  test("a channel cut at the end of the file is not believed", async () => {
    const result = await read(radio(SIGNAL, "Channel : 1").trimEnd());
    expect(result).toMatchObject({ rowCount: 1, rejectedCount: 1 });
  });

  test("nothing of one radio is left for the next", async () => {
    const load = ["Load:", "    Stations: 3", "    Busy: 51 (20 %)"];
    const second =
      "    BSSID 2                 : 02:1a:00:00:00:02\n         Signal : 50%\n         Channel : 11\n";
    const result = await read(`${radio("Radio type : 802.11ax", SIGNAL, CHANNEL, ...load)}${second}`);
    expect(result.readings[1]).toMatchObject({
      channel: 11,
      airtimeRatio: null,
      stationCount: null,
      standard: "unknown",
    });
  });

  test("a radio whose network's line is lost is rejected", async () => {
    const lost = "    BSSID 1 : 02:1a:00:00:00:09\n         Signal : 50%\n         Channel : 11\n\n";
    const result = await read(`${lost}${radio(SIGNAL, CHANNEL)}`);
    expect(result).toMatchObject({ rowCount: 2, rejectedCount: 1 });
    expect(result.issues[0]).toMatchObject({ code: "unreadable", line: 1 });
  });

  test("networks without radios: no row, and which command lists them", async () => {
    const result = await read("SSID 1 : Oak\n    Network type : Infrastructure\n\nSSID 2 : Elm\n");
    expect(accounts(result)).toBe(true);
    expect(result.issues.at(-1)!.expected).toContain("mode=bssid");
  });
});
