/** Folders and patterns in place of file names: survey takes them, as a process. */
import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { scanCsv } from "./scan-rows.js";
import { schemaFaults } from "./schemas.js";
import { scratch } from "./scratch.js";
import { stillband } from "./stillband.js";
import type { SurveyCommandJson } from "./json-types.js";

const { folder } = scratch();
const scan = (last: number, place = ""): string =>
  scanCsv([{ place, bssid: `02:10:20:30:${last}0:01`, ssid: `net ${last}`, channel: last, signal: -60 }]);
const visit = join(folder, "visit");

beforeAll(() => {
  for (const name of [
    "visit",
    "visit/inner",
    "empty",
    "only-hidden",
    "notes",
    "rooms",
    "rooms/hall",
    "rooms/foyer",
  ])
    mkdirSync(join(folder, name));
  const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
  write("visit/b.csv", scan(2));
  write("visit/a.csv", scan(1));
  write("visit/inner/c.csv", scan(3));
  write("visit/.hidden.csv", scan(4));
  write("visit/readme.txt", "Scans of the hall, before the show.\n");
  symlinkSync(join(folder, "visit/inner/c.csv"), join(folder, "visit/z-link.csv"));
  write("only-hidden/.scan.csv", scan(5));
  write("notes/one.txt", "nothing\n");
  write("notes/two.txt", "nothing at all\n");
  write("rooms/hall/scan-1.csv", scan(6));
  write("rooms/hall/scan-2.csv", scan(7));
  write("rooms/foyer/scan-1.csv", scan(8));
  write("odd[1]*.csv", scan(9));
});

async function heard(args: readonly string[]): Promise<{ channels: number[]; value: SurveyCommandJson }> {
  const { code, out } = await stillband(["survey", "--json", ...args], { cwd: folder });
  expect(code).toBe(0);
  const value = JSON.parse(out) as SurveyCommandJson;
  expect(schemaFaults("survey", value)).toEqual([]);
  return { channels: value.emitters.map(({ channel }) => channel), value };
}

describe("a folder", () => {
  test("every regular file in it, not hidden, one level deep; links to files too", async () => {
    const { channels, value } = await heard(["visit"]);
    expect(channels).toEqual([1, 2, 3]);
    const told = value.issues.filter(({ code }) => code === "no-usable-row");
    expect(told.map(({ source, severity }) => [source, severity])).toEqual([["visit/readme.txt", "warning"]]);
  });
  test("the text warns of the file that is no scan, by name, once", async () => {
    const { code, err, out } = await stillband(["survey", visit]);
    expect(code).toBe(0);
    expect(out).toMatch(/3 radio sources/);
    expect(err.match(/readme\.txt/g)).toHaveLength(1);
    expect(err).toMatch(/^warning: .*readme\.txt: left out/m);
    expect(err).not.toMatch(/^error/m);
  });
  test("fills reach the files of the folder named after them, not those of the next", async () => {
    const { value } = await heard(["--place", "hall", "rooms/hall", "--place", "foyer", "rooms/foyer"]);
    expect(value.emitters.map(({ channel, places }) => [channel, places[0]!.place])).toEqual([
      [6, "hall"],
      [7, "hall"],
      [8, "foyer"],
    ]);
  });
  test("a file that is also named counts once, as named", async () => {
    for (const args of [
      ["--place", "hall", "./visit/a.csv", "--place", "", "visit"],
      ["visit", "visit/", "--place", "hall", "./visit/a.csv"],
    ]) {
      const { value } = await heard(args);
      expect(value.survey.observationCount).toBe(3);
      expect(value.emitters[0]!.places.map(({ place }) => place)).toEqual(["hall"]);
    }
  });
  test("a file that is named is no less wrong for the folder beside it", async () => {
    const { code, err } = await stillband(["survey", "visit", "notes/one.txt"], { cwd: folder });
    expect(code).toBe(65);
    expect(err).toMatch(/notes\/one\.txt/);
    expect(err).not.toMatch(/readme/);
  });
  test("none of its files a scan: exit 65, all named", async () => {
    const { code, err } = await stillband(["survey", "notes"], { cwd: folder });
    expect(code).toBe(65);
    expect(err).toMatch(/notes\/one\.txt[^]*notes\/two\.txt/);
  });
  test("--strict does not count the file that is no scan as a rejected row", async () => {
    expect((await stillband(["survey", "--strict", "visit"], { cwd: folder })).code).toBe(0);
  });
});

describe("a quoted pattern", () => {
  test.each([
    ["*", "rooms/hall/*.csv", [6, 7]],
    ["?", "visit/?.csv", [1, 2]],
    ["in the folder's name", "rooms/*/scan-1.csv", [6, 8]],
    ["that matches folders: the files in them", "rooms/*", [6, 7, 8]],
    ["that is a file's own name", "odd[1]*.csv", [9]],
    ["with a bracket, which is no wildcard", "odd[1]?.csv", [9]],
  ] as const)("%s", async (_, pattern, channels) => {
    expect((await heard([pattern])).channels).toEqual(channels);
  });
  test("never a hidden file, unless the dot is named", async () => {
    expect((await heard(["only-hidden/.*.csv"])).channels).toEqual([5]);
    expect((await stillband(["survey", "only-hidden/*"], { cwd: folder })).code).toBe(66);
  });
  test("an absolute one", async () => {
    expect((await heard([join(visit, "*.csv")])).channels).toEqual([1, 2, 3]);
  });
});

describe("nothing there: exit 66 and why", () => {
  test.each([
    ["an empty folder", "empty", /empty: .*without files/],
    ["a folder of hidden files", "only-hidden", /only-hidden: .*without files/],
    ["a folder of folders", "rooms", /rooms: .*only folders/],
    ["a pattern without match", "visit/*.xyz", /visit\/\*\.xyz: no file matches/],
    ["a pattern in a missing folder", "nowhere/*", /nowhere\/\*: no file matches/],
    ["a missing file", "nowhere.csv", /no such file/],
  ] as const)("%s", async (_, word, told) => {
    for (const json of [[], ["--json"]]) {
      const { code, out, err } = await stillband(["survey", ...json, word], { cwd: folder });
      expect(code).toBe(66);
      expect(err).toMatch(told);
      expect(err).toMatch(/\nTry: /);
      if (json.length > 0) expect(schemaFaults("refused", JSON.parse(out))).toEqual([]);
    }
  });
  test.each(["channel", "convert", "link"])(
    "%s takes no folder, and says which command does",
    async (command) => {
      const { code, err } = await stillband([command, visit]);
      expect(code).toBe(66);
      expect(err).toMatch(/directory[^]*survey takes folders/);
    },
  );
});
