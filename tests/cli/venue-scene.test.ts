/** A venue's scans by room and crowd: whose row lies where, who counts in which crowd, whose the sources are. */
import { Readable, Writable } from "node:stream";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Io } from "../../src/cli/io.js";
import { loadVenue } from "../../src/cli/load-venue.js";
import { venueScene } from "../../src/cli/venue-scene.js";
import type { VenueScene } from "../../src/cli/venue-scene.js";
import type { SurveyOptions } from "../../src/cli/survey-scans.js";
import { PROJECT } from "../tools/core-program.js";
import { scratch } from "./scratch.js";

const { file } = scratch();
const io: Io = { out: new Writable(), err: new Writable(), stdin: Readable.from([]), env: {} };

async function sceneOf(path: string, options: SurveyOptions = {}): Promise<VenueScene> {
  const loaded = await loadVenue(path, io);
  return venueScene({ io, options, words: [], files: [] }, loaded, loaded.venue.systems[0]!.profile);
}

const HEAD = "time,place,crowd,bssid,ssid,channel,signal_dbm,airtime_ratio\n";
const EMPTY_SCAN = `${HEAD}2026-03-04T14:00:00Z,stalls,empty,02:00:00:00:00:10,House,1,-50,
2026-03-04T14:00:00Z,stalls,empty,02:00:00:00:00:20,House,6,-85,
2026-03-04T14:01:00Z,attic,empty,02:00:00:00:00:30,Next door,11,-55,0.2
2026-03-04T14:02:00Z,the moon,empty,02:00:00:00:00:40,Elsewhere,3,-40,
`;
const FULL_SCAN = `${HEAD}2026-03-07T20:00:00Z,stalls,full,02:00:00:00:00:10,House,1,-48,
2026-03-07T20:00:00Z,stalls,full,0a:11:22:33:44:55,a phone,6,-45,
2026-03-07T20:00:00Z,stalls,full,02:00:00:00:00:60,House too,11,-52,0.7
`;
const house = (more = ""): string =>
  file(
    "venue.yaml",
    `name: Sail loft
units: m
rooms:
  - name: hall
    outline: [[0, 0], [20, 0], [20, 10], [0, 10]]
    height: 8
    places: [stalls]
    people: { empty: 2, part: 50, full: 200 }
  - { name: attic, outline: [[0, 20], [10, 20], [10, 30], [0, 30]], height: 3 }
  - { name: cellar, outline: [[0, 40], [10, 40], [10, 50], [0, 50]], height: 3 }
systems:
  - { name: main, rooms: [hall], profile: raster-13, transmitter: { name: rail, at: [1, 5], height: 4 } }
luminaires:
  - { name: H1, room: hall, x: 15, y: 5, trim_height: 5 }
scans:
  - { file: empty.csv }
  - { file: full.csv, height: 1.4 }
sources:
  - { source: House, owner: building, at: [2, 3], height: 3 }
  - { source: "02:00:00:00:00:60", owner: building }
  - { source: a phone, owner: unknown }
  - { source: Next door, owner: neighbour }
${more}`,
  );
const scanned = async (more = "", options: SurveyOptions = {}): Promise<VenueScene> => {
  file("empty.csv", EMPTY_SCAN);
  file("full.csv", FULL_SCAN);
  return sceneOf(house(more), options);
};

const ids = (scene: VenueScene, crowd: "empty" | "part" | "full", room: string): string[] =>
  (scene.roomsWith(crowd).get(room)?.emitters ?? []).map(({ id }) => id).sort();
const airtime = (scene: VenueScene, crowd: "empty" | "part" | "full", id: string): number =>
  scene
    .roomsWith(crowd)
    .get("hall")!
    .emitters.find((one) => one.id === id)!.airtimeRatio;

describe("a row lies in the room", () => {
  test("that names its place, or is called so; one that no room holds counts for none", async () => {
    const scene = await scanned();
    expect(ids(scene, "empty", "hall")).toEqual(["02:00:00:00:00:10", "02:00:00:00:00:20"]);
    expect(ids(scene, "empty", "attic")).toEqual(["02:00:00:00:00:30"]);
    expect([...scene.roomsWith("full").keys()]).toEqual(["hall", "attic"]);
    expect(scene.roomlessCount).toBe(1);
    expect(scene.survey.observationCount).toBe(7);
  });
  test("of its file, whatever the row says", async () => {
    file("empty.csv", EMPTY_SCAN);
    const path = file(
      "by-file.yaml",
      `name: Sail loft
units: m
rooms: [{ name: hall, outline: [[0, 0], [20, 0], [20, 10], [0, 10]], height: 8 }]
systems: [{ name: main, rooms: [hall], profile: raster-13 }]
scans: [{ file: empty.csv, room: hall }]
`,
    );
    const scene = await sceneOf(path);
    expect(ids(scene, "full", "hall")).toHaveLength(4);
    expect(scene.roomlessCount).toBe(0);
  });
});

describe("a crowd", () => {
  test("takes the scans made with it or fewer people", async () => {
    const scene = await scanned();
    expect(ids(scene, "empty", "hall")).toHaveLength(2);
    expect(ids(scene, "part", "hall")).toHaveLength(2);
    expect(ids(scene, "full", "hall")).toHaveLength(4);
  });
  test("loads the building's sources that reported nothing, whatever their level, and no others", async () => {
    const scene = await scanned();
    // Design section 3: 0.10 empty, 0.25 part, 0.50 full.
    for (const [crowd, ratio] of [
      ["empty", 0.1],
      ["part", 0.25],
      ["full", 0.5],
    ] as const) {
      expect(airtime(scene, crowd, "02:00:00:00:00:10")).toBe(ratio);
      expect(airtime(scene, crowd, "02:00:00:00:00:20")).toBe(ratio); // −85 dBm, but the file says whose
    }
    expect(airtime(scene, "full", "02:00:00:00:00:60")).toBe(0.7); // reported
    expect(airtime(scene, "full", "0a:11:22:33:44:55")).toBe(0.1); // −45 dBm, but nobody's of the building
  });
  test("with other assumed airtimes where the options give them", async () => {
    const scene = await scanned("", { assumeAirtime: "0.05,0.2,0.8" });
    expect(airtime(scene, "full", "02:00:00:00:00:10")).toBe(0.8);
    expect(airtime(scene, "full", "0a:11:22:33:44:55")).toBe(0.05);
  });
  test("is that of the site: heads in the audience, none in an empty house but the crew", async () => {
    const scene = await scanned();
    const heads = (crowd: "empty" | "full"): number =>
      scene.siteWith(crowd).audiences.reduce((sum, { peopleCount }) => sum + peopleCount, 0);
    expect([heads("empty"), heads("full")]).toEqual([2, 200]);
    expect(scene.siteWith("full")).toBe(scene.siteWith("full"));
  });
});

describe("owners", () => {
  test("are the file's; one that nobody knows is not the building's", async () => {
    const scene = await scanned();
    expect([...scene.buildingIds].sort()).toEqual([
      "02:00:00:00:00:10",
      "02:00:00:00:00:20",
      "02:00:00:00:00:40", // −40 dBm and no mark: presumed
      "02:00:00:00:00:60",
    ]);
  });
  test("handsets are on the channels of the sources marked as the building's", async () => {
    expect((await scanned()).siteWith("full").handsetChannels).toEqual([1, 6, 11]);
  });
  test("places come with them, by name and by address", async () => {
    const { sourcePlaces } = await scanned();
    expect([...sourcePlaces]).toEqual([
      ["02:00:00:00:00:10", { x: 2, y: 3, z: 3 }],
      ["02:00:00:00:00:20", { x: 2, y: 3, z: 3 }],
    ]);
  });
});

test("the scanning height is the lowest, and not known where one file doesn't say", async () => {
  const scene = await scanned();
  expect(scene.roomsWith("empty").get("hall")!.scanHeightM).toBeNull();
  expect(scene.roomsWith("full").get("hall")!.scanHeightM).toBeNull();
  const demo = await sceneOf(join(PROJECT, "fixtures/venues/ropewalk/venue.yaml"));
  for (const room of demo.roomsWith("full").values()) expect(room.scanHeightM).toBe(1.4);
});

test("the crew's own radios are left out, a region's rule turns the radio down", async () => {
  const scene = await scanned("", { ignore: ["a phone"], region: "EU" });
  expect(ids(scene, "full", "hall")).not.toContain("0a:11:22:33:44:55");
  expect(scene.survey.ignoredCount).toBe(1);
  expect(scene.venue.region).toBe("EU");
  expect(scene.venue.systems[0]!.profile.txPowerDbm.value).toBeCloseTo(8, 9); // 10 dBm EIRP less 2 dBi
  expect(scene.reviews.size).toBe(1);
  expect(scene.issues.some(({ severity, source }) => severity === "note" && source.startsWith("main"))).toBe(
    true,
  );
});

test("the demo: three rooms, the sweep of the full house in the hall alone", async () => {
  const scene = await sceneOf(join(PROJECT, "fixtures/venues/ropewalk/venue.yaml"));
  expect([...scene.roomsWith("full").keys()]).toEqual(["hall", "foyer", "studio"]);
  const swept = [...scene.roomsWith("full")].filter(([, { sweeps }]) => (sweeps ?? []).length > 0);
  expect(swept.map(([room]) => room)).toEqual(["hall"]);
  expect([...scene.roomsWith("empty").values()].every(({ sweeps }) => (sweeps ?? []).length === 0)).toBe(
    true,
  );
  expect(scene.roomlessCount).toBe(0);
});

test("a venue without scans has no room scanned, and no issue of it", async () => {
  const path = file(
    "bare.yaml",
    `name: Sail loft
units: m
rooms: [{ name: hall, outline: [[0, 0], [20, 0], [20, 10], [0, 10]], height: 8 }]
systems: [{ name: main, rooms: [hall], profile: raster-13 }]
luminaires: [{ name: H1, room: hall, x: 5, y: 5, trim_height: 5 }]
`,
  );
  const scene = await sceneOf(path);
  expect(scene.roomsWith("full").size).toBe(0);
  expect(scene.issues).toEqual([]);
});
