import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Reading } from "../../src/scan/index.js";
import { mergeNames } from "../../src/scan/merge-names.js";
import { announcedSources } from "../../src/scan/survey-source.js";
import { minute, reading } from "../helpers/readings.js";
import { shuffled } from "../helpers/shuffled.js";

/** The radios as sorted lists of address@channel, sorted. */
function radios(readings: readonly Reading[]): string[][] {
  return partition(mergeNames(announcedSources(readings.map((each) => ({ fileIndex: 0, reading: each })))));
}

function partition(merged: ReturnType<typeof mergeNames>): string[][] {
  return merged
    .map((radio) => radio.map(({ key, channel }) => `${key}@${channel}`).sort())
    .sort((a, b) => (a[0]! < b[0]! ? -1 : 1));
}

const at = (bssid: string, signalDbm: number, more: Partial<Reading> = {}): Reading =>
  reading({ bssid, signalDbm, ...more });
const BASE = "02:00:5e:10:00:01";

describe("mergeNames, addresses", () => {
  it.each([
    ["(a) low four bits of the last octet", "02:00:5e:10:00:0f"],
    ["(a) locally-administered bit of the first octet", "00:00:5e:10:00:01"],
    ["(a) both", "00:00:5e:10:00:0e"],
    ["(b) low four bits of the first octet", "0e:00:5e:10:00:01"],
    ["(b) its odd values too", "0b:00:5e:10:00:01"],
  ])("joins %s", (_, other) => {
    expect(radios([at(BASE, -60), at(other, -60)])).toHaveLength(1);
  });

  it.each([
    ["the high four bits of the last octet", "02:00:5e:10:00:11"],
    ["the high four bits of the first octet", "12:00:5e:10:00:01"],
    ["an octet between", "02:00:5e:11:00:01"],
    ["the fifth octet", "02:00:5e:10:01:01"],
    ["first octet's low bits and the last octet together: neither rule", "06:00:5e:10:00:02"],
  ])("keeps apart what differs in %s", (_, other) => {
    expect(radios([at(BASE, -60), at(other, -60)])).toHaveLength(2);
  });

  it("keeps channels apart", () => {
    expect(radios([at(BASE, -60), at("02:00:5e:10:00:02", -60, { channel: 11 })])).toHaveLength(2);
  });

  it("never joins names without addresses", () => {
    const nameless = [
      at("", -60, { bssid: null, ssid: "lantern" }),
      at("", -60, { bssid: null, ssid: "rope" }),
    ];
    expect(radios(nameless)).toHaveLength(2);
  });

  // 02:…:01 and 02:…:02 by (a), 02:…:02 and 06:…:02 by (b); 02:…:01 and 06:…:02 by neither.
  it("closes the relation transitively over both rules", () => {
    const chain = ["02:00:5e:10:00:01", "02:00:5e:10:00:02", "06:00:5e:10:00:02"].map((bssid) =>
      at(bssid, -60),
    );
    expect(radios(chain)).toHaveLength(1);
    expect(radios([chain[0]!, chain[2]!])).toHaveLength(2);
  });

  it("chains levels too: ends 10 dB apart are one radio by the one between", () => {
    const chain = [at("02:00:5e:10:00:01", -50), at("02:00:5e:10:00:02", -55), at("02:00:5e:10:00:03", -60)];
    expect(radios(chain)).toHaveLength(1);
    expect(radios([chain[0]!, chain[2]!])).toHaveLength(2);
  });
});

describe("mergeNames, levels", () => {
  const OTHER = "02:00:5e:10:00:02";
  const pairs = (differencesDb: readonly number[]): Reading[] =>
    differencesDb.flatMap((differenceDb, index) => [
      at(BASE, -60, { timeMs: minute(index) }),
      at(OTHER, -60 - differenceDb, { timeMs: minute(index) }),
    ]);

  it("joins at a median difference of 6 dB, not above", () => {
    expect(radios(pairs([6]))).toHaveLength(1);
    expect(radios(pairs([6.001]))).toHaveLength(2);
    expect(radios(pairs([-6]))).toHaveLength(1);
    expect(radios(pairs([-6.001]))).toHaveLength(2);
  });

  it("takes the median of absolute differences, not their mean", () => {
    expect(radios(pairs([1, 6, 40]))).toHaveLength(1);
    expect(radios(pairs([0, 0, 0, 7, 7, 7, 7]))).toHaveLength(2);
    // A mean of signed differences would be 0 here.
    expect(radios(pairs([9, -9]))).toHaveLength(2);
    // Even count: the mean of the middle two, (5 + 7) / 2 = 6 and (5 + 7.5) / 2 = 6.25.
    expect(radios(pairs([5, 7]))).toHaveLength(1);
    expect(radios(pairs([5, 7.5]))).toHaveLength(2);
  });

  it("joins nothing that was never heard at one instant", () => {
    expect(radios([at(BASE, -60), at(OTHER, -60, { timeMs: minute(1) })])).toHaveLength(2);
    expect(radios([at(BASE, -60), at(OTHER, -60, { place: "foyer" })])).toHaveLength(2);
  });

  it("counts only the instants at which both were heard", () => {
    const lonely = [at(BASE, -90, { timeMs: minute(50) }), at(OTHER, -30, { timeMs: minute(51) })];
    expect(radios([...pairs([2]), ...lonely])).toHaveLength(1);
  });

  it("takes the highest of several rows in one instant", () => {
    // −60 and −70 of one instant are −60: 2 dB from −62; a mean would be 3, the lowest 8 dB away.
    expect(radios([at(BASE, -60), at(BASE, -70), at(OTHER, -62), at(OTHER, -90)])).toHaveLength(1);
    expect(radios([at(BASE, -60), at(BASE, -70), at(OTHER, -70)])).toHaveLength(2);
  });

  it("pairs the k-th highest with the k-th highest where the time is blank", () => {
    const untimed = { timeMs: null };
    // Sorted: −50, −70 and −52, −71: differences 2 and 1. In row order they'd be 21 and 18.
    const rows = [
      at(BASE, -50, untimed),
      at(BASE, -70, untimed),
      at(OTHER, -71, untimed),
      at(OTHER, -52, untimed),
    ];
    expect(radios(rows)).toHaveLength(1);
    // The second reading of the first has no partner: only −50 against −57 counts, 7 dB.
    expect(radios([at(BASE, -50, untimed), at(BASE, -58, untimed), at(OTHER, -57, untimed)])).toHaveLength(2);
  });

  it("doesn't pair across files: an instant is one file × time × place", () => {
    const filed = [
      { fileIndex: 0, reading: at(BASE, -60) },
      { fileIndex: 1, reading: at(OTHER, -60) },
    ];
    expect(mergeNames(announcedSources(filed))).toHaveLength(2);
  });
});

const arbitraryReading = fc
  .record({
    first: fc.constantFrom("02", "06", "0a", "0e"),
    last: fc.integer({ min: 0, max: 35 }),
    signalDbm: fc.integer({ min: -80, max: -50 }),
    minutes: fc.option(fc.integer({ min: 0, max: 2 })),
    channel: fc.constantFrom(1, 6),
    place: fc.constantFrom("hall", "foyer"),
  })
  .map(({ first, last, signalDbm, minutes, channel, place }) =>
    at(`${first}:00:5e:10:00:${last.toString(16).padStart(2, "0")}`, signalDbm, {
      timeMs: minutes === null ? null : minute(minutes),
      channel,
      centreMhz: 2407 + 5 * channel,
      place,
    }),
  );
const arbitraryReadings = fc.array(arbitraryReading, { minLength: 1, maxLength: 25 });

/** The merging rule written anew: pairs by bits, then joined until nothing changes. */
function radiosByDefinition(readings: readonly Reading[]): string[][] {
  const levels = new Map<string, Map<string, number>>();
  const untimed = new Map<string, Reading[]>();
  const put = (row: Reading, instant: string): void => {
    const key = `${row.bssid}@${row.channel}`;
    const own = levels.get(key) ?? new Map<string, number>();
    levels.set(key, own.set(instant, Math.max(own.get(instant) ?? -Infinity, row.signalDbm)));
  };
  for (const row of readings)
    if (row.timeMs !== null) put(row, `${row.place} at ${row.timeMs}`);
    else {
      const key = `${row.bssid} ${row.place}`;
      untimed.set(key, [...(untimed.get(key) ?? []), row]);
    }
  for (const rows of untimed.values())
    [...rows]
      .sort((a, b) => b.signalDbm - a.signalDbm || a.channel - b.channel)
      .forEach((row, k) => put(row, `${row.place} number ${k}`));
  const keys = [...levels.keys()];
  const octets = (key: string): number[] =>
    key
      .slice(0, 17)
      .split(":")
      .map((octet) => parseInt(octet, 16));
  const isOne = (a: string, b: string): boolean => {
    if (a.slice(18) !== b.slice(18)) return false;
    const bits = octets(a).map((octet, index) => octet ^ octets(b)[index]!);
    const within = (allowed: readonly number[]): boolean =>
      bits.every((bit, i) => (bit & ~allowed[i]!) === 0);
    if (!within([2, 0, 0, 0, 0, 15]) && !within([15, 0, 0, 0, 0, 0])) return false;
    const apart = [...levels.get(a)!]
      .filter(([instant]) => levels.get(b)!.has(instant))
      .map(([instant, levelDbm]) => Math.abs(levelDbm - levels.get(b)!.get(instant)!))
      .sort((x, y) => x - y);
    const half = (apart.length - 1) / 2;
    return apart.length > 0 && (apart[Math.floor(half)]! + apart[Math.ceil(half)]!) / 2 <= 6;
  };
  const label = new Map(keys.map((key) => [key, key]));
  for (let changed = true; changed;) {
    changed = false;
    for (const a of keys)
      for (const b of keys)
        if (label.get(a)! < label.get(b)! && isOne(a, b)) {
          label.set(b, label.get(a)!);
          changed = true;
        } else if (label.get(a)! > label.get(b)! && isOne(a, b)) {
          label.set(a, label.get(b)!);
          changed = true;
        }
  }
  return [...new Set(label.values())]
    .sort()
    .map((root) => keys.filter((key) => label.get(key) === root).sort());
}

describe("mergeNames, invariants", () => {
  it("is the rule's own transitive closure, whatever the readings", () => {
    fc.assert(
      fc.property(arbitraryReadings, (readings) => {
        expect(radios(readings)).toEqual(radiosByDefinition(readings));
      }),
      { numRuns: 200 },
    );
  });

  it("doesn't depend on the order of rows", () => {
    fc.assert(
      fc.property(arbitraryReadings, fc.nat(), (readings, seed) => {
        expect(radios(shuffled(readings, seed))).toEqual(radios(readings));
      }),
    );
  });

  it("merged again, stays as it is; every source stands in one radio", () => {
    fc.assert(
      fc.property(arbitraryReadings, fc.nat(), (readings, seed) => {
        const sources = announcedSources(readings.map((each) => ({ fileIndex: 0, reading: each })));
        const once = mergeNames(sources);
        expect(once.flat()).toHaveLength(sources.length);
        expect(new Set(once.flat())).toEqual(new Set(sources));
        expect(partition(mergeNames(shuffled(once.flat(), seed)))).toEqual(partition(once));
      }),
    );
  });
});
