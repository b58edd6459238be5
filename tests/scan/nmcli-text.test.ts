import { describe, expect, test } from "vitest";
import { terseCells } from "../../src/scan/nmcli-terse.js";
import { accounts, dialect, read } from "./dialects.js";

// Forms of `nmcli device wifi list`: from memory. Levels: percent/2 − 100 dBm, common practice, no source.

/** The five radios at 2.4 GHz of the nmcli fixtures; a sixth is at 5 GHz. */
const RADIOS = [
  ["02:1a:00:00:00:01", "Lantern Guest", 1, -59],
  ["02:1a:00:00:00:02", "", 6, -72],
  ["06:1a:00:00:00:03", 'Bühne: "A" \\ left', 11, -66],
  ["02:1a:00:00:00:04", "Slipway 🎭🪢", 9, -70],
  ["0a:1a:00:00:00:06", "6  130 Mbit/s", 13, -100],
] as const;

async function radiosOf(input: string | Uint8Array): Promise<unknown[]> {
  const result = await read(input);
  expect(accounts(result)).toBe(true);
  expect(result, JSON.stringify(result.issues)).toMatchObject({
    rowCount: 6,
    rejectedCount: 0,
    outOfBandCount: 1,
  });
  for (const reading of result.readings)
    expect(reading).toMatchObject({
      widthMhz: 20,
      centreMhz: 2407 + 5 * reading.channel,
      signalAssumed: true,
    });
  expect(result.issues).toMatchObject([{ code: "assumed", severity: "note", action: "stated" }]);
  return result.readings.map(({ bssid, ssid, channel, signalDbm }) => [bssid, ssid, channel, signalDbm]);
}

const withDoubleBlank = RADIOS.map(([bssid, name, channel, dbm]) => [
  bssid,
  name.replace("\\ left", "\\  left"),
  channel,
  dbm,
]);

describe("terse", () => {
  test("default fields, between a prompt and other output", async () => {
    expect(await radiosOf(dialect("nmcli-terse.txt"))).toEqual(RADIOS);
    expect((await read(dialect("nmcli-terse.txt"))).format).toBe("linux-nmcli-terse");
  });

  test("without addresses, in another order", async () => {
    const radios = RADIOS.map(([, ...rest]) => [null, ...rest]);
    expect(await radiosOf(dialect("nmcli-terse-no-address.txt"))).toEqual(radios);
  });

  test("with a frequency in place of the channel, colons left as they are, CR LF", async () => {
    const radios = RADIOS.map(([bssid, name, ...rest]) => [bssid, name.replace(":", ""), ...rest]);
    expect(await radiosOf(dialect("nmcli-terse-frequency-unescaped.txt"))).toEqual(radios);
  });

  test.each([
    ["CHAN before SIGNAL", "Oak:3:9\nElm:11:70\n", [3, -95.5]],
    ["SIGNAL before CHAN", "Oak:9:3\nElm:70:11\n", [3, -95.5]],
    ["a single row", "Oak:6:70\n", [6, -65]],
    ["FREQ beside two numbers", "2412 MHz:Oak:1:1\n2437 MHz:Elm:7:6\n", [1, -99.5]],
    ["SSID-HEX alone", "4C616E7465726E:6:70\n436166C3A9:11:55\n", [6, -65]],
    [
      "every field",
      "AP[1]:Oak:4F616B:02\\:1A\\:00\\:00\\:00\\:01:Infra:6:2437 MHz:130 Mbit/s:40 MHz:70:▂▄▆_:WPA2:(none):pair_ccmp group_ccmp psk:wlan0:yes:*:/org/freedesktop/NetworkManager/AccessPoint/7\n",
      [6, -65],
    ],
  ])("%s", async (_, text, [channel, signalDbm]) => {
    const result = await read(text);
    expect(result).toMatchObject({ format: "linux-nmcli-terse", rejectedCount: 0 });
    expect(result.readings[0], JSON.stringify(result)).toMatchObject({ channel, signalDbm });
    expect(["Oak", "Lantern"]).toContain(result.readings[0]!.ssid);
  });

  test("a bandwidth of 40 MHz: the side of the secondary channel is assumed", async () => {
    const result = await read("02\\:1A\\:00\\:00\\:00\\:01:Oak:6:2437 MHz:40 MHz:70\n");
    // Primaries 1 to 7 have their secondary above: the centre 10 MHz up (802.11-2020 19.3.15, from memory).
    expect(result.readings[0]).toMatchObject({ widthMhz: 40, centreMhz: 2447, centreAssumed: true });
  });

  test("a row with a field too few, or one that can't be, is rejected", async () => {
    const row = (tail: string): string => `02\\:1A\\:00\\:00\\:00\\:0${tail}\n`;
    const text =
      row("1:Oak:6:70") + row("2:Elm:6") + row("3:Ash:6:101") + row("4:Yew:0:50") + row("5:Fir:x:50");
    const result = await read(`${text}${row("6:Box:11:60")}`);
    expect(result).toMatchObject({ rowCount: 6, rejectedCount: 4 });
    expect(result.issues.slice(0, 4).map(({ code, column, line }) => [code, column, line])).toEqual([
      ["ragged-row", undefined, 2],
      ["bad-cell", "signal", 3],
      ["bad-cell", "channel", 4],
      ["bad-cell", "channel", 5],
    ]);
  });

  test("a channel that contradicts its frequency is rejected", async () => {
    const result = await read(
      "Oak:1:2412 MHz:70\nElm:6:2437 MHz:70\nAsh:13:2472 MHz:60\nFir:11:2457 MHz:60\nBay:2:2417 MHz:44\n",
    );
    expect(result).toMatchObject({ rowCount: 5, rejectedCount: 1 });
    expect(result.issues[0]).toMatchObject({ code: "contradiction", column: "frequency", line: 4 });
  });

  test("without a signal it says which fields to ask for", async () => {
    const result = await read("02\\:1A\\:00\\:00\\:00\\:01:Oak:6\n02\\:1A\\:00\\:00\\:00\\:02:Elm:11\n");
    expect(result).toMatchObject({ rowCount: 2, rejectedCount: 2 });
    expect(result.issues[0]).toMatchObject({ code: "missing-column", column: "SIGNAL" });
    expect(result.issues[0]!.expected).toContain("nmcli -f BSSID,SSID,CHAN,FREQ,SIGNAL");
  });

  test.each([
    ["a\\:b:c\\\\:", ["a:b", "c\\", ""]],
    [":x", ["", "x"]],
    ["Oak:02:1A:00:00:00:01:6", ["Oak", "02:1A:00:00:00:01", "6"]],
    ["Oak\\", ["Oak\\"]],
  ])("fields of %s", (text, cells) => {
    expect(terseCells(text)).toEqual(cells);
  });
});

describe("table", () => {
  test.each([
    ["nmcli-table.txt", "between a prompt and another command's table"],
    ["nmcli-table-german-shifted.txt", "headings in another language, columns shifted by a wide name"],
  ])("%s: %s", async (name) => {
    expect(await radiosOf(dialect(name))).toEqual(withDoubleBlank);
    expect((await read(dialect(name))).format).toBe("linux-nmcli-table");
  });

  test("without addresses, bars as stars, the weakest blank", async () => {
    const radios = withDoubleBlank.map(([, ...rest]) => [null, ...rest]);
    expect(await radiosOf(dialect("nmcli-table-no-address.txt"))).toEqual(radios);
  });

  test("other columns by their headings, a second list with others", async () => {
    const text =
      "SSID     SIGNAL  CHAN  FREQ      BANDWIDTH\n" +
      "Oak      9       3     2422 MHz  20 MHz   \n" +
      "\n" +
      "CHAN  SIGNAL  SSID  \n" +
      "9     3       Elm   \n";
    const result = await read(text);
    expect(result).toMatchObject({ rowCount: 2, rejectedCount: 0 });
    expect(result.readings.map(({ ssid, channel, signalDbm }) => [ssid, channel, signalDbm])).toEqual([
      ["Oak", 3, -95.5],
      ["Elm", 9, -98.5],
    ]);
  });

  test("names in single quotes, a rate in MB/s, as older versions print them", async () => {
    const text =
      "SSID          BSSID              MODE   FREQ      RATE     SIGNAL  SECURITY  ACTIVE\n" +
      "'Oak'         02:1A:00:00:00:01  Infra  2437 MHz  54 MB/s  70      WPA2      yes   \n" +
      "'Rope''s end' 02:1A:00:00:00:02  Infra  2462 MHz  54 MB/s  60      --        no    \n".replace(
        "' 02",
        "'  02",
      );
    const result = await read(text);
    expect(result.readings.map(({ ssid, channel }) => [ssid, channel])).toEqual([
      ["Oak", 6],
      ["Rope''s end", 11],
    ]);
  });
});

test("multiline: a field a line", async () => {
  expect(await radiosOf(dialect("nmcli-multiline.txt"))).toEqual(withDoubleBlank);
  expect((await read(dialect("nmcli-multiline.txt"))).format).toBe("linux-nmcli-multiline");
});

test.each([
  ["keys in another language", "nmcli-multiline-german.txt"],
  ["as a device's details, each key behind its number", "nmcli-device-show.txt"],
])("multiline: %s", async (_, name) => {
  expect(await radiosOf(dialect(name))).toEqual(withDoubleBlank);
});

describe("colours", () => {
  test("are no part of the cells", async () => {
    expect(await radiosOf(dialect("nmcli-table-colours.txt"))).toEqual(withDoubleBlank);
  });
  test("of a whole line", async () => {
    const text = new TextDecoder().decode(dialect("nmcli-table.txt"));
    const coloured = text.replace(/^[ *].*(?=\n)/gm, "\u001b[32m$&\u001b[0m");
    expect(coloured).not.toBe(text);
    expect(await radiosOf(coloured)).toEqual(withDoubleBlank);
  });
  test("of a name alone are the name's own", async () => {
    const text = new TextDecoder().decode(dialect("nmcli-terse.txt"));
    const { readings } = await read(text.replace("Lantern Guest", "\u001b[31mLantern\u001b[0m"));
    expect(readings[0]!.ssid).toBe("\u001b[31mLantern\u001b[0m");
  });
});

test("the command as it was typed, its fields between commas, is no table's header", async () => {
  const rows =
    "yes:Oak:02\\:1A\\:00\\:00\\:00\\:01:2412 MHz:70\nno:Elm:02\\:1A\\:00\\:00\\:00\\:02:2462 MHz:40\n";
  const result = await read(`$ nmcli -t -f active,ssid,bssid,freq,signal dev wifi\n${rows}`);
  expect(result).toMatchObject({ format: "linux-nmcli-terse", rowCount: 2, rejectedCount: 0 });
  expect(result.readings.map(({ ssid, channel }) => [ssid, channel])).toEqual([
    ["Oak", 1],
    ["Elm", 11],
  ]);
});
