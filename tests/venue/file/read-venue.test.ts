/** The venue file: what is sound is read, each mistake is told with its path, all of them at once. */
import { describe, expect, test } from "vitest";
import { readVenue, referenceCrowd, venueSchema } from "../../../src/venue/index.js";
import type { Venue } from "../../../src/venue/index.js";
import { Ajv2020 } from "ajv/dist/2020.js";
import type { Plain, Spoil } from "./sample-venue.js";
import { add, all, cut, drop, sampleVenue, set } from "./sample-venue.js";

const read = (data: unknown) => readVenue(data, { source: "venue.yaml", lineOf: (path) => path.length });
const spoilt = (spoil: Spoil): Plain => {
  const venue = sampleVenue();
  spoil(venue);
  return venue;
};
const sound = (data: unknown = sampleVenue()): Venue => {
  const { venue, issues } = read(data);
  expect(issues).toEqual([]);
  return venue!;
};
const satisfies = new Ajv2020({
  allErrors: true,
  strict: true,
  strictRequired: false,
  allowUnionTypes: true,
}).compile(venueSchema as object);

type Case = readonly [what: string, spoil: Spoil, column: string, told: RegExp];

/** Mistakes that a schema can see too: editors and the reader agree on them. */
const STRUCTURAL: readonly Case[] = [
  ["an unknown key", set("rooms[1].heigth", 4), "rooms[1].heigth", /known key \(did you mean height\?\)/],
  ["an unknown key at the top", set("room", []), "room", /did you mean rooms/],
  ["a missing key", drop("rooms[0].outline"), "rooms[0].outline", /this key, outline of the room/],
  ["no units", drop("units"), "units", /this key, unit of every length/],
  ["a word of no list", set("units", "km"), "units", /one of m, ft/],
  ["a text for a number", set("rooms[0].height", "8 m"), "rooms[0].height", /a number above 0, at most 200 m/],
  ["a room of no height", set("rooms[0].height", 0), "rooms[0].height", /above 0/],
  ["a number that isn't one", set("rooms[0].outline[2]", [20, "x"]), "rooms[0].outline[2]", /\[x, y\]/],
  ["two corners", cut("rooms[0].outline", 2), "rooms[0].outline", /a list of 3/],
  ["no rooms", set("rooms", []), "rooms", /a list of 1/],
  ["a mapping where a list is due", set("systems", {}), "systems", /a list/],
  ["a blank name", set("name", "  "), "name", /1 to 200 characters/],
  ["a control character", set("rooms[0].name", "a\u001bb"), "rooms[0].name", /on one line/],
  ["half a slot", set("luminaires[0].footprint", 1.5), "luminaires[0].footprint", /whole number from 1 to 512/],
  ["an unknown material", set("walls[0].material", "brik"), "walls[0].material", /did you mean brick/],
  ["no material at all", all(drop("walls[0].material"), drop("walls[0].thickness_mm")), "walls[0]", /one of material with .*layers, loss_db/],
  ["material and loss", set("walls[0].loss_db", 3), "walls[0]", /one of material/],
  ["an emitter's type", set("emitters[0].type", "microwave"), "emitters[0].type", /did you mean microwave-oven|one of bluetooth/],
  ["an owner", set("sources[0].owner", "bilding"), "sources[0].owner", /did you mean building/],
  ["hardware that nobody knows", set("hang", { body_hight: 1 }), "hang.body_hight", /did you mean body_height/],
  ["hung by string", set("hang", { suspension: "string" }), "hang.suspension", /chain, wire-rope, stem/],
  ["a breaker of no amperes", set("circuits", [{ name: "C1", breaker_a: 0 }]), "circuits[0].breaker_a", /from 0.1 to 1000/],
  ["what controls a circuit", set("circuits", [{ name: "C1", control: "dimer" }]), "circuits[0].control", /did you mean dimmer/],
  ["whether there is earth", set("circuits", [{ name: "C1", earth: "maybe" }]), "circuits[0].earth", /yes, no or unknown/],
  ["a room's trim as text", set("rooms[0].trim_height", "6 m"), "rooms[0].trim_height", /above 0/],
  ["a region", set("region", "FR"), "region", /US, CA, EU/],
  ["a share beyond 1", set("crowd.on_air_ratio", 2), "crowd.on_air_ratio", /from 0 to 1/],
  ["what a luminaire does", set("luminaires[0].on_link_loss", "freeze"), "luminaires[0].on_link_loss", /hold, dark, preset, full, unknown/],
  ["a panel without gain", set("systems[0].transmitter.antenna", { kind: "panel" }), "systems[0].transmitter.antenna.gain_dbi", /panel needs/],
  ["a layer without thickness", all(drop("walls[0].material"), drop("walls[0].thickness_mm"), set("walls[0].layers", [{ material: "air" }])), "walls[0].layers[0].thickness_mm", /one of thickness_mm and thickness_in/],
]; // prettier-ignore

/** Mistakes that show only where one part of the file is held against another. */
const CROSSED: readonly Case[] = [
  ["an outline that crosses itself", set("rooms[0].outline", [[0, 0], [20, 10], [20, 0], [0, 10]]), "rooms[0].outline[0]", /do not cross/],
  ["an outline that is closed", add("rooms[0].outline", [0, 0]), "rooms[0].outline[0]", /not repeated at the end/],
  ["a day that isn't one", set("date", "2026-02-30"), "date", /a day as/],
  ["two rooms of one name", set("rooms[1].name", "hall"), "rooms[1].name", /a name of its own for each room/],
  ["two systems of one name", set("systems[1].name", "main"), "systems[1].name", /each system/],
  ["two luminaires of one name", set("luminaires[3].name", "H1"), "luminaires[3].name", /each luminaire/],
  ["a system's room", set("systems[0].rooms", ["hal"]), "systems[0].rooms[0]", /a room of this file: hall, foyer \(did you mean hall\?\)/],
  ["a luminaire's room", set("luminaires[3].room", "foier"), "luminaires[3].room", /did you mean foyer/],
  ["a luminaire's system", set("luminaires[3].system", "frnt"), "luminaires[3].system", /did you mean front/],
  ["a luminaire's receiver", set("luminaires[1].receiver", "bix"), "luminaires[1].receiver", /did you mean box/],
  ["a receiver's luminaire", set("receivers[0].luminaires", ["H33"]), "receivers[0].luminaires[0]", /did you mean H3/],
  ["a storey", set("rooms[0].storey", "groud"), "rooms[0].storey", /did you mean ground/],
  ["a profile", set("systems[0].profile", "raster13"), "systems[0].profile", /did you mean raster-13/],
  ["a figure of the profile", set("systems[0].set", { tx_power_dbm: "loud" }), "systems[0].set.tx_power_dbm", /power in dBm/],
  ["a figure that no profile has", set("systems[0].set", { tx_powr_dbm: 1 }), "systems[0].set.tx_powr_dbm", /did you mean txPowerDbm/],
  ["a channel of no profile", set("systems[0].channel", 14), "systems[0].channel", /a radio channel of raster-13/],
  ["a channel with a hopping profile", all(set("systems[0].profile", "hop-79"), set("systems[0].channel", 5)), "systems[0].channel", /hops/],
  ["an opening past the wall's end", set("walls[0].openings[0].to", 10.5), "walls[0].openings[0].to", /wall's length, 10 m/],
  ["an opening above the wall", set("walls[0].openings[0].top", 6.5), "walls[0].openings[0].top", /wall's top, 6 m/],
  ["an opening the wrong way round", set("walls[0].openings[0].from", 7), "walls[0].openings[0].to", /more than from/],
  ["openings that overlap", add("walls[0].openings", { from: 5, to: 7, top: 2, open: true }), "walls[0].openings[1]", /do not overlap/],
  ["a wall of no length", all(set("walls[0].to", [20, 0]), set("walls[0].openings", [])), "walls[0].to", /another point/],
  ["a trim above its ceiling", set("luminaires[0].trim_height", 7.6), "luminaires[0].trim_height", /its ceiling height, 7\.5 m/],
  ["a ceiling above the room's", set("luminaires[0].ceiling_height", 8.2), "luminaires[0].ceiling_height", /height of hall, 8 m/],
  ["a transmitter above the ceiling", set("systems[0].transmitter.height", 9), "systems[0].transmitter.height", /ceiling, 8 m/],
  ["a receiver above the ceiling", set("receivers[0].height", 9), "receivers[0].height", /ceiling, 8 m/],
  ["a luminaire that two receivers serve", add("receivers", { name: "other", at: [1, 1], height: 2, luminaires: ["H2"] }), "receivers[1].luminaires[0]", /box does not serve/],
  ["a luminaire that two systems could serve", add("systems[1].rooms", "hall"), "luminaires[0].system", /several serve hall: main, front/],
  ["a room that no system serves", set("systems[1].rooms", ["hall"]), "luminaires[3].system", /none serves foyer/],
  ["a receiver without a place", add("receivers", { name: "spare" }), "receivers[1].at", /serves no luminaire/],
  ["a place in two rooms", set("rooms[1].places", ["hall front"]), "rooms[1].places[0]", /hall has it too/],
  ["fewer people in a full room", set("rooms[0].people", { part: 9, full: 5 }), "rooms[0].people", /grow from empty/],
  ["an antenna's beam", set("systems[0].transmitter.antenna", { kind: "collinear", gain_dbi: 1 }), "systems[0].transmitter.antenna.gain_dbi", /1\.77|20/],
  ["a dipole's gain", set("systems[0].transmitter.antenna", { kind: "dipole", gain_dbi: 2 }), "systems[0].transmitter.antenna.gain_dbi", /no such key with dipole/],
  ["another emitter without figures", set("emitters[0].type", "other"), "emitters[0].eirp_dbm", /type other needs/],
  ["a lowest storey above 0", set("storeys", [{ name: "ground", floor: 1 }]), "storeys[0].floor", /0 for the lowest/],
  ["two storeys of one height", set("storeys", [{ name: "a", floor: 0 }, { name: "b", floor: 0 }]), "storeys[1].floor", /its own for each storey/],
  ["no storey where there are several", set("storeys", [{ name: "a", floor: 0 }, { name: "b", floor: 4 }]), "rooms[0].storey", /the storey, as there are several: a, b/],
  ["a table that isn't there", set("luminaires", "luminaires.csv"), "luminaires", /that is there/],
  ["a time that isn't one", set("scans[0].time", "noon"), "scans[0].time", /ISO 8601/],
]; // prettier-ignore

const WARNED: readonly Case[] = [
  ["a luminaire outside its room", set("luminaires[0].x", 22), "luminaires[0].x", /outside hall/],
  ["a receiver outside its room", set("receivers[0].at", [25, 1]), "receivers[0].at", /outside hall/],
  ["a transmitter in no room", set("systems[0].transmitter.at", [-9, 5]), "systems[0].transmitter.at", /no room holds/],
  ["two luminaires at one point", set("luminaires[2].x", 10), "luminaires[2].x", /H3 hangs at the same point of the plan as H2/],
  ["a system without receivers", cut("luminaires", 3), "systems[1]", /front has no receivers/],
  ["slots beyond 512", set("luminaires[0].address", 506), "luminaires[0].address", /past slot 512 from DMX address 506: at most 505, as it takes 8/],
  ["a universe that isn't carried", set("luminaires[0].universe", 2), "luminaires[0].universe", /main does not carry: it carries 1/],
  ["a scan's place that no room has", set("scans[0].place", "hall frnt"), "scans[0].place", /did you mean hall front/],
]; // prettier-ignore

describe("a mistake is told with path, line, value and what was expected:", () => {
  test.each([...STRUCTURAL, ...CROSSED])("%s", (_what, spoil, column, told) => {
    const { venue, issues } = read(spoilt(spoil));
    expect(venue).toBeNull();
    const issue = issues.find((each) => each.column === column);
    expect(issue, JSON.stringify(issues)).toBeDefined();
    expect(issue).toMatchObject({
      severity: "error",
      source: "venue.yaml",
      line: column.length,
      action: "stopped",
    });
    expect(issue!.expected).toMatch(told);
  });
  test.each(STRUCTURAL)("%s: the schema sees it too", (_what, spoil) => {
    expect(satisfies(sampleVenue())).toBe(true);
    expect(satisfies(spoilt(spoil))).toBe(false);
  });
  const SEEN_BY_PATTERN = /beam/;
  test.each(CROSSED.filter(([what]) => !SEEN_BY_PATTERN.test(what)))(
    "%s: the schema alone would let it pass",
    (_what, spoil) => {
      expect(satisfies(spoilt(spoil)), JSON.stringify(satisfies.errors)).toBe(true);
    },
  );
  test.each(WARNED)("%s is a warning", (_what, spoil, column, told) => {
    const { venue, issues } = read(spoilt(spoil));
    expect(venue).not.toBeNull();
    expect(issues.map((issue) => issue.column)).toEqual([column]);
    expect(issues[0]).toMatchObject({ severity: "warning", action: "stated" });
    expect(issues[0]!.expected).toMatch(told);
  });
  test("all at once, and none for what refers to a faulty part", () => {
    const { issues } = read(
      spoilt(
        all(
          ...STRUCTURAL.filter(([what]) =>
            /^an unknown key$|owner|half a slot|unknown material/.test(what),
          ).map(([, spoil]) => spoil),
          set("rooms[0].height", "tall"),
          set("luminaires[3].system", "frnt"),
        ),
      ),
    );
    expect(new Set(issues.map(({ column }) => column))).toEqual(
      new Set([
        "rooms[0].height",
        "rooms[1].heigth",
        "walls[0].material",
        "luminaires[0].footprint",
        "luminaires[3].system",
        "sources[0].owner",
      ]),
    );
  });
  test.each([null, undefined, 3, "x", [], new Map()])("%j is no venue", (data) => {
    expect(read(data).venue).toBeNull();
    expect(read(data).issues.length).toBeGreaterThan(0);
  });
  test("a key such as __proto__ or constructor is unknown, not obeyed", () => {
    const data = JSON.parse('{"__proto__": {"name": "x"}, "constructor": 1}') as object;
    expect(read(data).issues.map(({ column }) => column)).toEqual(
      expect.arrayContaining(["__proto__", "constructor", "name"]),
    );
  });
});

describe("what luminaires hang by and are fed from", () => {
  test("numbers are in the file's unit, texts carry their own; true and false are yes and no", () => {
    const venue = sound(spoilt(set("hang", { link_pitch: "35 mm", body_height: 0.4, suspension: "chain", cord_weight: 0.12, box_listed: true, slope: null }))); // prettier-ignore
    expect(venue.hang).toEqual({ stepM: 0.035, bodyHeightM: 0.4, suspension: "chain", cordKgPerM: 0.12, boxListed: "yes" }); // prettier-ignore
    const feet = sound(spoilt(all(set("units", "ft"), drop("walls"), set("hang", { body_height: 1.5, box_rated: 50 })))); // prettier-ignore
    // 1.5 ft and 50 lb, exact since 1959
    expect(feet.hang.bodyHeightM).toBeCloseTo(0.4572, 12);
    expect(feet.hang.boxRatedKg).toBeCloseTo(22.6796185, 12);
  });
  test("a rating of nothing and a weight that isn't one stop it, by line", () => {
    for (const [key, value] of [
      ["box_rated", 0],
      ["cord_weight", "heavy"],
      ["link_pitch", -1],
    ] as const) {
      // prettier-ignore
      const { venue, issues } = read(spoilt(set("hang", { [key]: value })));
      expect([venue, issues.map(({ column }) => column)]).toEqual([null, [`hang.${key}`]]);
    }
  });
  test("circuits, with what is left out unknown; one that feeds nobody is told, one told twice stops it", () => {
    const circuit = { name: "C1", supply_v: 230, breaker_a: 16, control: "dimmer", feed: "through-fed", earth: true, shared_neutral: "no", upstream_drop_v: 1.5, drivers_allowed: 12 }; // prettier-ignore
    const venue = sound(spoilt(all(set("luminaires[0].circuit", "C1"), set("circuits", [circuit]))));
    expect(venue.circuits).toEqual([
      { circuit: "C1", supplyV: 230, breakerA: 16, control: "dimmer", feed: "through-fed", earth: "yes", sharedNeutral: "no", upstreamDropV: 1.5, mostDriversCount: 12 }, // prettier-ignore
    ]);
    const idle = read(spoilt(set("circuits", [{ name: "C9" }])));
    expect(idle.venue?.circuits).toEqual([{ circuit: "C9" }]);
    expect(idle.issues.map(({ severity, expected }) => [severity, expected])).toEqual([
      ["warning", "no luminaire is on circuit C9"],
    ]);
    expect(read(spoilt(set("circuits", [circuit, circuit]))).venue).toBeNull();
    expect(sound()).toMatchObject({ hang: {}, circuits: [] });
  });
  test("a room's trim is that of its luminaires that state none, below their ceilings", () => {
    const venue = sound(spoilt(all(set("rooms[1].trim_height", 2.5), set("rooms[1].laser_line", 1.2))));
    expect(venue.luminaires.map(({ name, trimHeightM }) => [name, trimHeightM])).toContainEqual(["F1", 2.5]);
    expect(venue.luminaires[0]!.trimHeightM).toBe(5);
    expect(venue.receivers.find(({ name }) => name === "F1")!.heightM).toBe(2.5);
    expect(venue.rooms.map(({ laserLineM }) => laserLineM)).toEqual([null, 1.2]);
    expect(read(spoilt(set("rooms[1].trim_height", 4.5))).issues.map(({ column }) => column)).toContain(
      "rooms[1].trim_height",
    );
  });
});

describe("a sound file", () => {
  test("fills in what it leaves out", () => {
    const venue = sound();
    expect(venue.storeys).toEqual([{ name: "ground", floorM: 0, floorLossDb: null }]);
    expect(venue.rooms[0]).toMatchObject({
      storey: "ground",
      places: ["hall", "hall front"],
      people: { empty: 0, part: 100, full: 200 },
      handsetHeightM: 1.2,
    });
    expect(venue).toMatchObject({
      eventMinutes: 90,
      building: "commercial",
      region: null,
      allEquipmentListed: false,
    });
    expect(venue.crowd).toEqual({ ...referenceCrowd, carriedRatio: 0.5 });
    expect(venue.systems.map(({ profile }) => profile.name)).toEqual(["raster-13", "raster-13"]);
    expect(venue.systems[1]!.candidates[0]).toMatchObject({ name: "candidate 1", room: "foyer" });
  });
  test("gives each luminaire its receiver: one of its own, or the one that it shares", () => {
    const { receivers } = sound();
    expect(receivers.map(({ name, luminaires, heightM }) => [name, luminaires, heightM])).toEqual([
      ["H1", ["H1"], 5],
      ["F1", ["F1"], 4],
      ["box", ["H2", "H3"], 5],
    ]);
    expect(receivers[2]!.at).toEqual({ x: 10, y: 5, z: 5 });
  });
  test("a key left blank counts as left out", () => {
    expect(sound({ ...sampleVenue(), region: null, walls: null, date: null }).walls).toEqual([]);
  });
  test("a wall's build: material, layers, loss, an opening that stands open", () => {
    const venue = sound(
      spoilt(
        add(
          "walls",
          {
            from: [0, 0],
            to: [1, 0],
            layers: [
              { material: "plasterboard", thickness_mm: 12.5 },
              { material: "air", thickness_in: 3 },
            ],
          },
          { from: [0, 0], to: [0, 3], loss_db: 6, openings: [{ from: 1, to: 2, top: 2, open: true }] },
        ),
      ),
    );
    expect(venue.walls.map(({ build }) => build)).toEqual([
      { material: "brick", thicknessM: 0.215 },
      {
        layers: [
          { material: "plasterboard", thicknessM: 0.0125 },
          { material: "air", thicknessM: expect.closeTo(0.0762, 12) as number }, // 3 × 25.4 mm
        ],
      },
      { lossDb: 6 },
    ]);
    expect(venue.walls[2]).toMatchObject({
      name: "wall 3",
      openings: [{ build: { lossDb: 0 }, bottomM: 0 }],
    });
  });
  test("storeys: z counts from the lowest floor, by the room's storey", () => {
    const venue = sound(
      spoilt(
        all(
          set("storeys", [
            { name: "up", floor: 4.5, floor_loss_db: 12 },
            { name: "down", floor: 0 },
          ]),
          set("rooms[0].storey", "up"),
          set("rooms[1].storey", "down"),
          set("walls[0].storey", "up"),
        ),
      ),
    );
    expect(venue.storeys.map(({ name }) => name)).toEqual(["down", "up"]);
    expect(venue.systems[0]!.transmitter).toMatchObject({ heightM: 3, at: { z: 7.5 }, room: "hall" });
    expect(venue.receivers[0]!.at.z).toBe(9.5);
    expect(venue.emitters[0]!.at.z).toBe(1);
  });
  test("in feet is the same house in metres: 1 ft = 0.3048 m", () => {
    const scaled = (value: unknown): unknown => {
      if (typeof value === "number") return value / 0.3048;
      if (Array.isArray(value)) return value.map(scaled);
      return value;
    };
    const LENGTHS = [
      "outline",
      "height",
      "from",
      "to",
      "top",
      "at",
      "x",
      "y",
      "ceiling_height",
      "trim_height",
    ];
    const inFeet = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(inFeet);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value).map(([key, each]) => [
          key,
          LENGTHS.includes(key) ? scaled(each) : inFeet(each),
        ]),
      );
    };
    const metres = sound();
    const feet = sound({ ...(inFeet(sampleVenue()) as Plain), units: "ft" });
    const rounded = (venue: Venue): string =>
      JSON.stringify({ ...venue, units: "m" }, (_key, value: unknown) =>
        typeof value === "number" ? Math.round(value * 1e9) / 1e9 : value,
      );
    expect(rounded(feet)).toBe(rounded(metres));
  });
  test("a profile file and own figures come together; the own ones win", () => {
    const { venue, issues } = readVenue(
      spoilt(all(set("systems[0].profile", "mine.yaml"), set("systems[0].set", { tx_power_dbm: 12, enclosure: "antenna-outside" }))),
      { source: "v", profileOf: (file) => (file === "mine.yaml" ? { based_on: "raster-16", tx_power_dbm: 3, enclosure_loss_db: 9 } : undefined) },
    ); // prettier-ignore
    expect(issues).toEqual([]);
    const { profile } = venue!.systems[0]!;
    expect([profile.txPowerDbm.value, profile.enclosureLossDb.value, profile.channels.length]).toEqual([
      12, 0, 16,
    ]);
  });
  test("300 luminaires are read in a blink", () => {
    const more = Array.from({ length: 300 }, (_, index) => ({
      name: `X${index}`,
      room: "hall",
      x: 0.1 + (index % 60) * 0.33,
      y: 0.5 + Math.floor(index / 60),
      trim_height: 4,
    }));
    const venue = spoilt(add("luminaires", ...more));
    const startMs = performance.now();
    expect(sound(venue).receivers).toHaveLength(303);
    expect(performance.now() - startMs).toBeLessThan(500);
  });
});
