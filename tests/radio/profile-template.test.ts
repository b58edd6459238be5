import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import {
  builtInProfiles,
  figureExpectation,
  figureMeanings,
  findProfile,
  profileTemplate,
  readProfile,
} from "../../src/radio/index.js";
import type { Figure, RadioProfile } from "../../src/radio/index.js";

/** As a general-purpose parser of YAML reads it, then the profile reader. */
const readBack = (text: string) => readProfile(parse(text), "my-radio.yaml");
const figureNames = Object.keys(figureMeanings) as (keyof typeof figureMeanings)[];
const snake = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

describe("a template read back", () => {
  test.each(builtInProfiles.map((profile) => [profile.name, profile] as const))(
    "%s: exactly its figures",
    (_, profile) => {
      const { profile: back, issues } = readBack(profileTemplate(profile));
      expect(issues).toEqual([]);
      expect({ ...back, name: profile.name, title: profile.title }).toEqual(profile);
      expect(back!.name).toBe("my-radio");
    },
  );
  test("of a user's own: name, shapes that are no staircase, uneven channels, words with quotes and all", () => {
    const given = {
      based_on: "hop-79-avoid",
      name: 'our "new" radio: #2',
      channels: [
        { channel: 3, centre_mhz: 2412.25 },
        { channel: 9, centre_mhz: 2439.5 },
        { channel: 4, centre_mhz: 2470 },
      ],
      selectivity: {
        points: [
          [-2, -30],
          [-0.5, 0],
          [0.7, 0],
          [3, -41.5],
        ],
      },
      tx_power_dbm: { value: 17.25, source: 'data sheet: p. 3, "typ."' },
      receivers_follow: "no",
      relink_s: 2.5,
    };
    const mine = readProfile(given, "mine.yaml").profile!;
    const { profile: back, issues } = readBack(profileTemplate(mine));
    expect(issues.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(back).toEqual(mine);
  });
  test.each(["yes", "no", "unknown"])("%s stays a word, whatever a reader of YAML takes it for", (word) => {
    const mine = readProfile({ based_on: "raster-13", receivers_follow: word }, "mine.yaml").profile!;
    const old = parse(profileTemplate(mine), { version: "1.1" }) as object;
    expect(readProfile(old, "old.yaml").profile!.receiversFollow.value).toBe(word);
  });
});

describe("what it tells whoever fills it in", () => {
  const text = profileTemplate(findProfile("raster-13"));
  test("every figure with its meaning, unit, range and status, in lines of 100 columns at most", () => {
    const lines = text.split("\n");
    for (const name of figureNames) {
      const at = lines.indexOf(`${snake(name)}:`);
      expect(at, name).toBeGreaterThan(0);
      const figure = findProfile("raster-13")[name] as Figure<unknown>;
      expect(lines[at + 2]).toBe(`  status: ${figure.status}`);
      const comment = lines.slice(Math.max(0, at - 6), at).filter((line) => line.startsWith("#"));
      const words = comment.map((line) => line.slice(2)).join(" ");
      expect(words).toContain(figureMeanings[name]);
      expect(words).toContain(figureExpectation(name));
    }
    expect(lines.filter((line) => line.startsWith("#") && line.length > 100)).toEqual([]);
    expect(text).toContain("put your data sheet's figure here");
  });
  test("the ranges are those that the reader holds to: below and above is refused", () => {
    let ranges = 0;
    for (const name of figureNames) {
      const [, low, high] = / from (-?[\d.]+) to (-?[\d.]+)$/.exec(figureExpectation(name)) ?? [];
      if (low === undefined || high === undefined) continue;
      ranges++;
      const profileOf = (value: number): RadioProfile | null =>
        readProfile({ based_on: "raster-13", [name]: value }, "mine.yaml").profile;
      for (const kept of [Number(low), Number(high)]) expect(profileOf(kept), name).not.toBeNull();
      for (const refused of [Number(low) - 1, Number(high) + 1]) expect(profileOf(refused), name).toBeNull();
    }
    expect(ranges).toBe(14); // all but two shapes and two words
  });
  test("both forms of a channel list that it shows are read", () => {
    const shown = /^# (channels: \[.*\])$/m.exec(text)?.[1];
    const listed = readProfile({ based_on: "raster-13", ...(parse(shown!) as object) }, "a.yaml").profile!;
    expect(listed.channels.map(({ centreMhz }) => centreMhz)).toEqual([2412, 2439.5]);
    const hopping = /^# (hopping: \{.*\})$/m.exec(text)?.[1];
    const hops = readProfile({ based_on: "raster-13", ...(parse(hopping!) as object) }, "a.yaml").profile!;
    expect(hops.hopping).toMatchObject({ avoids: true, leastHopCount: { value: 15 } });
  });
});

test("universes that don't fit between two frames are warned of; a packet that alone doesn't is, too", () => {
  const warned = (figures: object): string[] =>
    readProfile({ based_on: "raster-13", ...figures }, "mine.yaml").issues.map(({ column }) => column!);
  // 22.7 ms a frame: five packets of 4.5 ms fit, six don't.
  expect(warned({ universes_per_transmitter_count: 5 })).toEqual([]);
  expect(warned({ universes_per_transmitter_count: 6 })).toEqual(["packetMs"]);
  expect(warned({ universes_per_transmitter_count: 3, transmissions_per_frame_count: 2 })).toEqual([
    "packetMs",
  ]);
  expect(warned({ transmissions_per_frame_count: 6 })).toEqual(["packetMs"]);
});
