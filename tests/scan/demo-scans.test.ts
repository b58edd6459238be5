import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const GENERATOR = fileURLToPath(new URL("../tools/make-demo-scans.js", import.meta.url));
const SCANS = fileURLToPath(new URL("../../fixtures/scans/", import.meta.url));
const EMPTY = "ropewalk-empty.csv";
const FULL = "ropewalk-full.csv";
const TEXT = "ropewalk-foyer-iw.txt";

type Row = Record<
  "time" | "place" | "crowd" | "bssid" | "ssid" | "channel" | "centre_mhz" | "width_mhz" | "standard",
  string
> &
  Record<"signal_dbm" | "airtime_ratio" | "stations", string>;

const rowsOf = (file: string): Row[] => parse<Row>(readFileSync(join(SCANS, file)), { columns: true });
const inBand = (rows: readonly Row[]): Row[] => rows.filter((row) => Number(row.channel) <= 14);
const lookOf = (row: Row): string => `${row.time} ${row.place}`;
const distinct = <T>(values: Iterable<T>): T[] => [...new Set(values)];
const strongestDbm = (rows: readonly Row[]): number => Math.max(...rows.map((row) => Number(row.signal_dbm)));

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return half % 1 ? sorted[Math.floor(half)]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** May two addresses belong to one radio? (a) local bit and last four bits; (b) first octet's low four bits. */
function addressesMatch(one: string, other: string): boolean {
  const bits = one
    .split(":")
    .map((octet, index) => Number.parseInt(octet, 16) ^ Number.parseInt(other.split(":")[index]!, 16));
  const masks = (allowed: readonly number[]): boolean =>
    bits.every((bit, index) => (bit & ~allowed[index]!) === 0);
  return masks([0x02, 0, 0, 0, 0, 0x0f]) || masks([0x0f, 0, 0, 0, 0, 0]);
}

/** Sources by the merging rule, written anew: names of one channel, matching addresses, levels within 6 dB. */
function sourcesOf(rows: readonly Row[]): Set<string>[] {
  const levels = new Map<string, Map<string, number>>();
  for (const row of rows) {
    const key = `${row.bssid}@${row.channel}`;
    levels.set(key, (levels.get(key) ?? new Map<string, number>()).set(lookOf(row), Number(row.signal_dbm)));
  }
  const isOne = (one: string, other: string): boolean => {
    const [[address, channel], [otherAddress, otherChannel]] = [one.split("@"), other.split("@")];
    if (channel !== otherChannel || !addressesMatch(address!, otherAddress!)) return false;
    const shared = [...levels.get(one)!].filter(([look]) => levels.get(other)!.has(look));
    const apartDb = shared.map(([look, levelDbm]) => Math.abs(levelDbm - levels.get(other)!.get(look)!));
    return apartDb.length > 0 && median(apartDb) <= 6;
  };
  let sources: Set<string>[] = [];
  for (const key of levels.keys()) {
    const joined = sources.filter((source) => [...source].some((each) => isOne(each, key)));
    sources = sources.filter((source) => !joined.includes(source));
    sources.push(new Set([key, ...joined.flatMap((source) => [...source])]));
  }
  return sources;
}

describe("the generator", () => {
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "stillband-demo-"));
    execFileSync(process.execPath, [GENERATOR, folder]);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each([EMPTY, FULL, TEXT])("writes %s again, byte for byte", (file) => {
    expect(readFileSync(join(folder, file)).equals(readFileSync(join(SCANS, file)))).toBe(true);
  });
});

describe.each([
  [EMPTY, "empty"],
  [FULL, "full"],
])("%s", (file, crowd) => {
  const rows = rowsOf(file);
  const heard = inBand(rows);

  it("has the canonical columns and one crowd", () => {
    expect(readFileSync(join(SCANS, file), "utf8").split("\n")[0]).toBe(
      "time,place,crowd,bssid,ssid,channel,centre_mhz,width_mhz,signal_dbm,airtime_ratio,stations,standard",
    );
    expect(distinct(rows.map((row) => row.crowd))).toEqual([crowd]);
  });

  it("covers three rooms, several places in each, three looks at each, over half an hour and more", () => {
    const places = distinct(rows.map((row) => row.place));
    const rooms = places.map((place) => place.split(" ")[0]!);
    expect(distinct(rooms).sort()).toEqual(["foyer", "hall", "studio"]);
    for (const room of distinct(rooms))
      expect(rooms.filter((each) => each === room).length).toBeGreaterThan(1);
    for (const place of places)
      expect(new Set(rows.filter((row) => row.place === place).map((row) => row.time)).size).toBe(3);
    const times = rows.map((row) => Date.parse(row.time));
    expect(Math.max(...times) - Math.min(...times)).toBeGreaterThan(30 * 60_000);
  });

  it("holds 25 or more sources after merging, some of many names", () => {
    const sources = sourcesOf(heard);
    expect(sources.length).toBeGreaterThanOrEqual(25);
    expect(sources.filter((source) => source.size > 1).length).toBeGreaterThanOrEqual(5);
    const booth = sources.find((source) => source.has("02:5e:1c:40:11:30@6"));
    expect([...booth!].sort()).toEqual([0, 1, 2, 3].map((last) => `02:5e:1c:40:11:3${last}@6`));
    const stage = sources.find((source) => source.has("02:5e:1c:40:12:70@1"));
    expect([...stage!].sort()).toEqual(["02", "06", "0a"].map((first) => `${first}:5e:1c:40:12:70@1`));
  });

  it("keeps two radios of neighbouring addresses apart by their levels", () => {
    expect(addressesMatch("0a:41:7e:20:9c:50", "0a:41:7e:20:9c:54")).toBe(true);
    const source = sourcesOf(heard).find((each) => each.has("0a:41:7e:20:9c:50@6"));
    expect([...source!].sort()).toEqual(["0a:41:7e:20:9c:50@6", "0a:41:7e:20:9c:51@6"]);
  });

  it("keeps the names of one source within 6 dB at every look", () => {
    for (const source of sourcesOf(heard)) {
      const looks = new Map<string, number[]>();
      for (const row of heard.filter((each) => source.has(`${each.bssid}@${each.channel}`)))
        looks.set(lookOf(row), [...(looks.get(lookOf(row)) ?? []), Number(row.signal_dbm)]);
      for (const levels of looks.values())
        expect(Math.max(...levels) - Math.min(...levels)).toBeLessThanOrEqual(6);
    }
  });

  // IEEE 802.11 channel numbers, n = 1…13: 2407 + 5n MHz; 40 MHz centres 10 MHz above the primary.
  it("puts every centre where its channel says", () => {
    for (const row of heard.filter((each) => each.centre_mhz !== "")) {
      const above = row.width_mhz === "40" ? 10 : 0;
      expect(Number(row.centre_mhz)).toBe(2407 + 5 * Number(row.channel) + above);
    }
    for (const row of heard) expect(["20", "22", "40"]).toContain(row.width_mhz);
  });

  it("has 40 MHz sources, one of them without its centre, and rows at 5 GHz", () => {
    const wide = heard.filter((row) => row.width_mhz === "40");
    expect(distinct(wide.map((row) => `${row.channel} ${row.centre_mhz}`)).sort()).toEqual(["11 ", "6 2447"]);
    expect(rows.filter((row) => Number(row.centre_mhz) > 5000).length).toBeGreaterThan(20);
  });

  it("has hidden names, odd channels, and every standard from b to ax", () => {
    expect(
      new Set(heard.filter((row) => row.ssid === "").map((row) => row.bssid)).size,
    ).toBeGreaterThanOrEqual(3);
    expect(distinct(heard.map((row) => Number(row.channel)))).toEqual(
      expect.arrayContaining([1, 3, 6, 9, 11, 13]),
    );
    expect(distinct(heard.map((row) => row.standard)).sort()).toEqual(["ax", "b", "g", "n"]);
  });

  it("has names that trip a careless reader", () => {
    const names = distinct(heard.map((row) => row.ssid));
    for (const trait of [/,/, /"/, /\p{Extended_Pictographic}/u, /^=/, /[ä-ü]/])
      expect(names.filter((name) => trait.test(name)).length).toBeGreaterThan(0);
  });

  it("reports BSS Load on some rows, as a share with a station count", () => {
    const loaded = heard.filter((row) => row.airtime_ratio !== "");
    expect(loaded.length).toBeGreaterThan(heard.length / 4);
    expect(loaded.length).toBeLessThan(heard.length);
    for (const row of loaded) {
      expect(Number(row.airtime_ratio)).toBeGreaterThan(0);
      expect(Number(row.airtime_ratio)).toBeLessThan(1);
      expect(row.stations).toMatch(/^\d+$/);
    }
  });

  it("hears the house at −40 to −60 dBm where it is loudest, and neighbours below −65 that come and go", () => {
    const sources = sourcesOf(heard).map((source) =>
      heard.filter((row) => source.has(`${row.bssid}@${row.channel}`)),
    );
    const own = sources.filter((source) => source.some((row) => row.ssid.startsWith("Quillmere")));
    expect(own.length).toBe(8);
    for (const source of own) {
      expect(strongestDbm(source)).toBeLessThanOrEqual(-40);
      expect(strongestDbm(source)).toBeGreaterThanOrEqual(-60);
    }
    const lookCount = new Set(rows.map(lookOf)).size;
    const weak = sources.filter((source) => strongestDbm(source) < -65);
    expect(weak.length).toBeGreaterThanOrEqual(12);
    expect(weak.filter((source) => new Set(source.map(lookOf)).size < lookCount).length).toBeGreaterThan(8);
    for (const row of rows) expect(row.signal_dbm).toMatch(/^-[3-9]\d$/);
  });
});

describe("both visits together", () => {
  const empty = inBand(rowsOf(EMPTY));
  const full = inBand(rowsOf(FULL));

  it("show a full house far busier than an empty one", () => {
    const airtimes = (rows: readonly Row[]): number[] =>
      rows
        .filter((row) => row.ssid.startsWith("Quillmere") && row.airtime_ratio !== "")
        .map((row) => Number(row.airtime_ratio));
    expect(Math.max(...airtimes(empty))).toBeLessThan(0.25);
    expect(Math.min(...airtimes(full))).toBeGreaterThan(0.35);
    expect(Math.max(...airtimes(full))).toBeLessThanOrEqual(0.75);
  });

  it("show phones only in the full house, and one neighbour that changed its channel", () => {
    const known = new Set(empty.map((row) => row.bssid));
    expect(new Set(full.filter((row) => !known.has(row.bssid)).map((row) => row.bssid)).size).toBe(7);
    const channels = (rows: readonly Row[]): string[] =>
      distinct(rows.filter((row) => row.bssid === "f2:ac:39:06:c1:7e").map((row) => row.channel));
    expect([channels(empty), channels(full)]).toEqual([["4"], ["11"]]);
  });

  // IEEE 802: bit 1 of the first octet marks a locally administered address, bit 0 a group address.
  it("use locally administered, individual addresses only, in the text scan too", () => {
    const text = [...readFileSync(join(SCANS, TEXT), "utf8").matchAll(/^BSS ([0-9a-f:]{17})/gm)];
    const addresses = distinct([...rowsOf(EMPTY), ...rowsOf(FULL)].map((row) => row.bssid));
    expect(text.length).toBeGreaterThan(0);
    for (const address of [...addresses, ...text.map((match) => match[1]!)])
      expect(address).toMatch(/^[0-9a-f][26ae](:[0-9a-f]{2}){5}$/);
  });
});

// Field names and forms: iw scan.c output format (Linux nl80211 tool), read.
describe(TEXT, () => {
  const text = readFileSync(join(SCANS, TEXT), "utf8");
  const blocks = text.split(/^(?=BSS )/m);

  it("is about fifteen networks, two or three of them at 5 GHz, tab-indented", () => {
    expect(blocks.length).toBeGreaterThanOrEqual(14);
    expect(blocks.length).toBeLessThanOrEqual(18);
    const fiveGhz = blocks.filter((block) => /^\tfreq: 5\d{3}/m.test(block)).length;
    expect([2, 3]).toContain(fiveGhz);
    for (const line of text.trimEnd().split("\n")) expect(line).toMatch(/^(BSS |\t+\S|\t+ \*)/);
  });

  it("gives every network a frequency, a level, an age and a name line", () => {
    for (const block of blocks)
      for (const field of [
        /^\tfreq: \d{4}\.0$/m,
        /^\tsignal: -\d\d\.00 dBm$/m,
        /^\tlast seen: \d+ ms ago$/m,
        /^\tSSID: /m,
      ])
        expect(block).toMatch(field);
  });

  it("has a 40 MHz network, hidden names in both forms, BSS Load, HE, DSSS, and names as bytes", () => {
    const having = (...fields: RegExp[]): number =>
      blocks.filter((block) => fields.every((field) => field.test(block))).length;
    expect(having(/freq: 2437/, /secondary channel offset: above/, /STA channel width: any/)).toBeGreaterThan(
      0,
    );
    expect(having(/^\tSSID: $/m)).toBeGreaterThan(0);
    expect(having(/^\tSSID: (\\x00)+$/m)).toBeGreaterThan(0);
    expect(
      having(/BSS Load:\n\t\t \* station count: \d+\n\t\t \* channel utilisation: \d+\/255/),
    ).toBeGreaterThan(4);
    expect(having(/HE capabilities:/)).toBeGreaterThan(0);
    expect(having(/Supported rates: 1\.0\* 2\.0\* 5\.5 11\.0 \n/)).toBe(1);
    expect(having(/^\tSSID: \\xf0\\x9f\\x8e\\xba brass practice$/m)).toBe(1); // U+1F3BA in UTF-8
  });

  it("agrees with the lists on names and channels, and on levels to 10 dB", () => {
    const foyer = [...rowsOf(EMPTY), ...rowsOf(FULL)].filter((row) => row.place === "foyer");
    for (const block of blocks) {
      const seen = foyer.filter((row) => block.startsWith(`BSS ${row.bssid}`));
      const levelDbm = Number(/signal: (\S+)/.exec(block)![1]);
      expect(seen.length).toBeGreaterThan(0);
      expect(Math.abs(levelDbm - median(seen.map((row) => Number(row.signal_dbm))))).toBeLessThanOrEqual(10);
      const channel =
        /primary channel: (\d+)/.exec(block)?.[1] ?? /DS Parameter set: channel (\d+)/.exec(block)![1];
      expect(seen[0]!.channel).toBe(channel);
    }
  });
});
