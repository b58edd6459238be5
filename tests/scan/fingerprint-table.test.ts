/** Tables with one column for each address and one row for each position, and lists of channels. */
import { describe, expect, test } from "vitest";
import { accounts, dialect, read } from "./dialects.js";
import type { ScanImport } from "../../src/scan/scan-import.js";

function heard({ readings }: ScanImport): unknown[] {
  return readings.map(({ place, bssid, channel, signalDbm }) => [
    place,
    bssid?.slice(-2),
    channel,
    signalDbm,
  ]);
}

const A = "02:1a:00:00:00:01";
const B = "02:1a:00:00:00:02";
const C = "06:1a:00:00:00:03";

test("every heard cell is an observation and the unit counted", async () => {
  const result = await read(dialect("fingerprints.csv"));
  expect(heard(result)).toEqual([
    ["Foyer", "01", 1, -48],
    ["Foyer", "03", 11, -66],
    ["Gallery", "02", 6, -71],
    ["Store", "01", 1, -90],
    ["Store", "02", 6, -60],
  ]);
  expect(result).toMatchObject({ rowCount: 6, rejectedCount: 0, outOfBandCount: 1 });
  expect(result.issues).toMatchObject([{ code: "assumed", severity: "note" }]);
  expect(result.issues[0]!.expected).toContain("every heard cell counts as a row");
});

describe("where nothing tells the channels", () => {
  test("the error says what to add", async () => {
    const result = await read(dialect("fingerprints-no-channel.csv"));
    expect(result).toMatchObject({ rowCount: 0, needsChannels: true });
    expect(result.issues[0]).toMatchObject({ code: "missing-column", column: "channel", severity: "error" });
    expect(result.issues[0]!.expected).toMatch(/second file that lists address and channel/);
    expect(accounts(result)).toBe(true);
  });
  test("a list of channels places the cells; coordinates name the places", async () => {
    const list = await read(dialect("channel-list.csv"));
    expect(list).toMatchObject({
      rowCount: 0,
      channels: new Map([
        [A, 1],
        [B, 6],
        [C, 11],
      ]),
    });
    expect(list.issues.at(-1)).toMatchObject({
      code: "no-usable-row",
      value: "a list of 3 channels without levels",
    });
    const result = await read(dialect("fingerprints-no-channel.csv"), { channels: list.channels! });
    expect(heard(result)).toEqual([
      ["x 0.5, y 1", "01", 1, -48],
      ["x 0.5, y 1", "03", 11, -66],
      ["x 2.5, y 1", "02", 6, -71],
      ["x 4.5, y 1", "01", 1, -90],
      ["x 4.5, y 1", "02", 6, -60],
    ]);
    expect(result.issues[0]!.expected).toContain("-110 repeats");
  });
  test("an address that the list hasn't got is rejected, one out of band counted", async () => {
    const channels = new Map([
      [A, 1],
      [B, 40],
    ]);
    const result = await read(dialect("fingerprints-no-channel.csv"), { channels });
    expect(result).toMatchObject({ rowCount: 5, rejectedCount: 1, outOfBandCount: 2 });
  });
  test("the same list serves rows of address and level", async () => {
    const text = `address,level\n${A},-50\n${C},-60\n`;
    expect((await read(text)).needsChannels).toBe(true);
    const result = await read(text, {
      channels: new Map([
        [A, 1],
        [C, 13],
      ]),
    });
    expect(result.readings.map(({ channel }) => channel)).toEqual([1, 13]);
  });
});

test.each([
  [`place,${A},${B}\nfrequency,2412,2437\nx,-50,-60\n`],
  [`place,${A},${B}\n,2412000,2437000\nx,-50,-60\n`],
  [`place,${A}@1,${B}@6\nx,-50,-60\n`],
  [`place,${A} (ch 1),${B} (ch 6)\nx,-50,-60\n`],
  [`place;${A.replaceAll(":", "-")};${B.replaceAll(":", "-")}\nKanal;1;6\nx;-50;-60\n`],
  [`place,${A},${B}\nx,-50,-60\nchannel,1,6\n`],
])("%j: channels are found", async (text) => {
  expect(heard(await read(text))).toEqual([
    ["x", "01", 1, -50],
    ["x", "02", 6, -60],
  ]);
});

test("a cell that is neither level nor fill is rejected, a row of too few cells once", async () => {
  const result = await read(`place,${A},${B}\nchannel,1,6\nx,-50,loud\ny,-50\nz,-3,-60\n`);
  expect(result).toMatchObject({ rowCount: 5, rejectedCount: 3 });
  expect(accounts(result)).toBe(true);
});

test("positions without a name are numbered, unless the file is one place", async () => {
  const text = `${A},${B}\n1,6\n-50,-60\n-51,\n`;
  expect((await read(text)).readings.map(({ place }) => place)).toEqual([
    "position 1",
    "position 1",
    "position 2",
  ]);
  expect((await read(text, { place: "hall" })).readings.map(({ place }) => place)).toEqual([
    "hall",
    "hall",
    "hall",
  ]);
});
