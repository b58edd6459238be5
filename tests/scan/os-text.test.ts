import { describe, expect, test } from "vitest";
import { parseOsAddress } from "../../src/scan/os-text-address.js";
import { visibleName } from "../../src/scan/os-text-name.js";
import { accounts, dialect, read } from "./dialects.js";

describe("masked addresses are none", () => {
  test.each([
    ["02:1a:xx:xx:xx:xx", null],
    ["XX-XX-XX-00-00-01", null],
    ["02:1a:00:00:00:**", null],
    ["02:1a:00:00:00:", null],
    ["02:1a:", null],
    ["02:1A:00:00:00:01:", "02:1a:00:00:00:01"],
    ["02-1A-00-00-00-01", "02:1a:00:00:00:01"],
  ])("%s", (text, bssid) => {
    expect(parseOsAddress(text)).toEqual({ bssid });
  });
  test.each(["", "02", "02:1a:00:00:00", "02:1a:00:00:00:0g", "00:00:00:00:00:00", "Oak Hall"])(
    "%j is no address",
    (text) => {
      expect(parseOsAddress(text)).toBeNull();
    },
  );

  test("in iw's text: told apart by name and channel, and said", async () => {
    const result = await read(dialect("iw-scan-masked.txt"));
    expect(result).toMatchObject({
      format: "linux-iw-scan",
      rowCount: 7,
      rejectedCount: 1,
      outOfBandCount: 2,
    });
    expect(result.readings.map(({ bssid, channel }) => [bssid, channel])).toEqual([
      [null, 1],
      [null, 6],
      [null, 11],
      [null, 9],
    ]);
    expect(result.issues[0]).toMatchObject({ code: "assumed", severity: "note", action: "stated", line: 1 });
    expect(result.issues[0]!.expected).toMatch(/masked.* 4 rows .*name and channel/);
  });

  test.each([
    "02\\:1A\\:xx\\:xx\\:xx\\:xx:Oak:6:70\n02\\:1A\\:xx\\:xx\\:xx\\:xx:Elm:11:60\n",
    "02:1a:xx:xx:xx:xx\t2437\t-60\t[ESS]\tOak\n02:1a:xx:xx:xx:xx\t2462\t-60\t[ESS]\tElm\n",
    "SSID 1 : Oak\n    BSSID 1 : 02:1a:00:00:00:\n         Signal : 70%\n         Channel : 6\n" +
      "SSID 2 : Elm\n    BSSID 1 : 02:1a:00:00:00:\n         Signal : 70%\n         Channel : 11\n",
    "BSSID              SSID  CHAN  SIGNAL\n02:1A:00:xx:xx:xx  Oak   6     70    \n02:1A:00:xx:xx:xx  Elm   11    70    \n",
  ])("in %j", async (text) => {
    const result = await read(text);
    expect(result.readings.map(({ bssid, ssid }) => [bssid, ssid])).toEqual([
      [null, "Oak"],
      [null, "Elm"],
    ]);
    expect(result.issues.some(({ expected }) => /masked.* 2 rows/.test(expected))).toBe(true);
  });
});

test.each(["", "  ", "--", "\0\0\0", "\\x00\\x00"])("%j is a hidden name", (text) => {
  expect(visibleName(text)).toBe("");
});

describe("one text, one command", () => {
  test("lines of two commands are a clear error", async () => {
    const result = await read(dialect("mixed-commands.txt"));
    expect(result).toMatchObject({ format: "unknown", rowCount: 0 });
    expect(accounts(result)).toBe(true);
    expect(result.issues).toMatchObject([{ code: "no-usable-row", severity: "error" }]);
    expect(result.issues[0]!.value).toMatch(/nmcli.*iw dev|iw dev.*nmcli/);
    expect(result.issues[0]!.expected).toMatch(/scan CSV.*iw dev.*nmcli.*wpa_cli.*netsh/);
  });

  test("the names of fields in a command line are no table's header", async () => {
    const result = await read(
      "crew@laptop:~$ nmcli -t -f CHAN,BSSID,SSID,SIGNAL dev wifi\n6:02\\:1A\\:00\\:00\\:00\\:01:Oak:70\n",
    );
    expect(result).toMatchObject({ format: "linux-nmcli-terse", rowCount: 1, rejectedCount: 0 });
  });

  test("a network's name can't pass for another command's line", async () => {
    const iw = (name: string): string =>
      `BSS 02:1a:00:00:00:01(on wlan0)\n\tfreq: 2437\n\tsignal: -60.00 dBm\n\tSSID: ${name}\n`;
    for (const name of ["6  130 Mbit/s  70", "SSID 1 : x", "02\\:1A\\:00\\:00\\:00\\:01:x:6:70"])
      expect((await read(iw(name))).readings).toMatchObject([{ ssid: name, channel: 6 }]);
    const netsh =
      "SSID 1 : ssid, 6  130 Mbit/s\n    BSSID 1 : 02:1a:00:00:00:01\n         Signal : 70%\n         Channel : 6\n";
    expect((await read(netsh)).readings).toMatchObject([{ ssid: "ssid, 6  130 Mbit/s" }]);
  });

  test.each(["12:30:45 start\n12:30:46 stop\n", "a: b\nc: d\n", "one  two  three\n1  2  3\n", "x:1:y\n"])(
    "%j is no scan",
    async (text) => {
      expect(await read(text)).toMatchObject({ format: "unknown", rowCount: 0 });
    },
  );
});

test("a few lines of another command are passed over, and said", async () => {
  const address = (index: number): string => `02:1a:00:00:00:0${index}`;
  const rows = [1, 2, 3, 4, 5, 6].map((index) => `${address(index)}\t2437\t-60\t[ESS]\tOak\n`).join("");
  const result = await read(`${rows}BSS ${address(7)}(on wlan0)\n\tfreq: 2437\n\tsignal: -50.00 dBm\n`);
  expect(result).toMatchObject({ format: "linux-wpa-cli", rowCount: 6, rejectedCount: 0 });
  expect(result.issues).toMatchObject([
    { code: "ignored", severity: "note", value: "iw dev <interface> scan", action: "value ignored" },
  ]);
});
