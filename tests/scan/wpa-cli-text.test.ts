import { expect, test } from "vitest";
import { decodeWpaCliSsid } from "../../src/scan/wpa-cli-ssid.js";
import { dialect, facts, read } from "./dialects.js";

// The form of `wpa_cli scan_results` and the escapes of its names: from memory.

test("rows between a heading and other output", async () => {
  const result = await read(dialect("wpa-cli.txt"), { crowd: "full" });
  expect(result).toMatchObject({
    format: "linux-wpa-cli",
    rowCount: 6,
    rejectedCount: 0,
    outOfBandCount: 1,
    issues: [],
  });
  expect(
    result.readings.map(({ bssid, ssid, channel, signalDbm, signalAssumed }) => [
      bssid,
      ssid,
      channel,
      signalDbm,
      signalAssumed,
    ]),
  ).toEqual([
    ["02:1a:00:00:00:01", "Lantern Guest", 1, -59, false],
    ["02:1a:00:00:00:02", "", 6, -72, false],
    ["06:1a:00:00:00:03", 'Bühne: "A" \\ left', 11, -66, false],
    ["02:1a:00:00:00:04", "Slipway", 9, -70, false],
    ["0a:1a:00:00:00:06", "", 13, -100, false],
  ]);
});

test("blanks in place of tabs read alike", async () => {
  const text = new TextDecoder().decode(dialect("wpa-cli.txt")).replaceAll("\t", "     ");
  expect(facts(await read(text))).toEqual(facts(await read(dialect("wpa-cli.txt"))));
});

test.each([
  ["02:1a:00:00:00:0g\t2437\t-60\t[ESS]\tOak", "address"],
  ["02:1a:00:00:00:01\t24x7\t-60\t[ESS]\tOak", "frequency"],
  ["02:1a:00:00:00:01\t2414\t-60\t[ESS]\tOak", "channel"],
  ["02:1a:00:00:00:01\t2437\t60\t[ESS]\tOak", "signal"],
  ["02:1a:00:00:00:01\t2437", "signal"],
])("%j is rejected for its %s", async (row, column) => {
  const result = await read(`${row}\n02:1a:00:00:00:02\t2437\t-60\t[ESS]\tElm\n`);
  expect(result).toMatchObject({ rowCount: 2, rejectedCount: 1 });
  expect(result.issues[0]).toMatchObject({ column, line: 1, record: 1 });
});

test.each([
  ["Caf\\xc3\\xa9", "Café"],
  ["\\\\x41", "\\x41"],
  ['\\"\\e\\n\\t\\r', '"\u001b\n\t\r'],
  ["\\x00\\x00", ""],
  ["--", ""],
])("the name %s", (printed, name) => {
  expect(decodeWpaCliSsid(printed)).toBe(name);
});
