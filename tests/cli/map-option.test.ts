/** `--map`, and levels joined with the channels that another file lists. */
import { describe, expect, test } from "vitest";
import { scratch } from "./scratch.js";
import { inProcess, SCANS } from "./stillband.js";
import type { ConvertJson } from "./json-types.js";
import type { Reading } from "../../src/scan/index.js";

type Converted = Omit<ConvertJson, "readings"> & { readonly readings: readonly Reading[] };

const { file } = scratch();
const DIALECTS = `${SCANS}/dialects`;

async function converted(args: readonly string[], stdin = ""): Promise<Converted> {
  const { code, out, err } = await inProcess(["convert", "--json", ...args], { stdin });
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out) as Converted;
}

describe("--map names the column of a field", () => {
  const foreign = file("foreign.csv", "Adresse;Kanal;Wert A;Wert B\n02:1a:00:00:00:01;6;-60;-41\n");
  test.each([
    [["--map", "signal_dbm=Wert B"], -41],
    [["--map", 'signal_dbm="Wert B"'], -41],
    [["--map=signal_dbm=wert b"], -41],
    [["--map", "signal_dbm=Wert A", "--map", "bssid=Adresse"], -60],
  ] as const)("%o", async (options, level) => {
    const { readings } = await converted([...options, foreign]);
    expect(readings.map(({ signalDbm }) => signalDbm)).toEqual([level]);
  });
  test("what is missing is said with the headers seen and what to type", async () => {
    const { code, err } = await inProcess(["channel", file("no-level.csv", "Netz;Kanal;Q\nFoyer;6;x\n")]);
    expect(code).toBe(65);
    expect(err).toContain('the headers are "Netz", "Kanal", "Q"');
    expect(err).toContain('--map signal_dbm="Q"');
  });
  test.each(["signal_dbm", "level=Pegel", "signal_dbm=", "=x", ""])("%j is a usage error", async (text) => {
    const { code, err } = await inProcess(["convert", "--map", text, foreign]);
    expect(code).toBe(64);
    expect(err).toMatch(/--map: expected FIELD=HEADER/);
  });
});

describe("levels without channels", () => {
  const levels = `${DIALECTS}/fingerprints-no-channel.csv`;
  const list = `${DIALECTS}/channel-list.csv`;
  test.each([
    ["list last", [levels, list]],
    ["list first", [list, levels]],
  ])("are joined with a list of channels: %s", async (_, files) => {
    const { readings, files: counts } = await converted(files);
    expect(readings.map(({ channel }) => channel)).toEqual([1, 11, 6, 1, 6]);
    expect(counts.map(({ source }) => source)).toEqual(files);
  });
  test("from standard input too", async () => {
    const { readings } = await converted(["-", list], "bssid,rssi\n02:1a:00:00:00:02,-60\n");
    expect(readings).toMatchObject([{ channel: 6, signalDbm: -60 }]);
  });
  test("alone they are an error that says what to add", async () => {
    const { code, err } = await inProcess(["survey", levels]);
    expect(code).toBe(65);
    expect(err).toContain("second file that lists address and channel");
  });
  test("and a list alone is no scan", async () => {
    const { code, err } = await inProcess(["survey", list]);
    expect(code).toBe(65);
    expect(err).toContain("a list of 3 channels without levels");
  });
});
