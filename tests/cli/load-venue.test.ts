/** Loading a venue file with what it names: the demo venue, lines of mistakes, limits, hostile text. */
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Readable, Writable } from "node:stream";
import { parse } from "yaml";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { CliError } from "../../src/cli/exit.js";
import type { Io } from "../../src/cli/io.js";
import { loadVenue } from "../../src/cli/load-venue.js";
import type { LoadedVenue } from "../../src/cli/load-venue.js";
import { venueSchema } from "../../src/venue/index.js";
import { PROJECT } from "../tools/core-program.js";
import { scratch } from "./scratch.js";

const DEMO = join(PROJECT, "fixtures/venues/ropewalk/venue.yaml");
const { folder, file } = scratch();
const io = (stdin = ""): Io => ({
  out: new Writable(),
  err: new Writable(),
  stdin: Readable.from([Buffer.from(stdin)]),
  env: {},
});
const load = (path: string): Promise<LoadedVenue> => loadVenue(path, io());
const refusal = async (path: string, stdin?: string): Promise<CliError> => {
  const error: unknown = await loadVenue(path, io(stdin)).catch((caught: unknown) => caught);
  expect(error).toBeInstanceOf(CliError);
  return error as CliError;
};

const HOUSE = `name: Tar House
units: m
rooms:
  - name: hall
    outline: [[0, 0], [20, 0], [20, 10], [0, 10]]
    height: 8
systems:
  - { name: main, rooms: [hall], profile: raster-13 }
luminaires:
  - { name: H1, room: hall, x: 5, y: 5, trim_height: 5 }
`;

describe("the demo venue", () => {
  test("is sound, holds to the schema, and is the house that the brief of the demo asks for", async () => {
    const { venue, issues, scanPaths } = await load(DEMO);
    expect(issues).toEqual([]);
    const satisfies = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(
      venueSchema as object,
    );
    expect(satisfies(parse(readFileSync(DEMO, "utf8"))), JSON.stringify(satisfies.errors)).toBe(true);
    expect(venue.rooms.map(({ name }) => name)).toEqual(["hall", "foyer", "studio"]);
    expect(venue.luminaires.length).toBeGreaterThanOrEqual(12);
    expect(new Set(venue.luminaires.map(({ ceilingHeightM }) => ceilingHeightM)).size).toBeGreaterThan(4);
    const [hall] = venue.systems;
    expect([hall!.transmitter!.name, hall!.candidates.length]).toEqual(["booth", 2]);
    expect(
      venue.luminaires.filter(({ emergency }) => emergency === "unknown").map(({ name }) => name),
    ).toEqual(["F2"]);
    expect(scanPaths.map((path) => path.split("/").at(-1))).toHaveLength(4);
    for (const { watts, weightKg, circuit, footprintSlotCount } of venue.luminaires)
      expect([watts, weightKg, circuit, footprintSlotCount]).not.toContain(null);
  });
  test("stands in no wall: every transmitter, receiver and emitter is within a room, every place of its scans is known", async () => {
    const { venue } = await load(DEMO);
    const places = venue.rooms.flatMap((room) => room.places);
    const rows = readFileSync(join(PROJECT, "fixtures/scans/ropewalk-empty.csv"), "utf8")
      .trim()
      .split("\n")
      .slice(1);
    expect(
      [...new Set(rows.map((row) => row.split(",")[1]!))].filter((place) => !places.includes(place)),
    ).toEqual([]);
    const bounds = venue.rooms.map(({ outline }) => [
      Math.min(...outline.map(({ x }) => x)),
      Math.max(...outline.map(({ x }) => x)),
      Math.min(...outline.map(({ y }) => y)),
      Math.max(...outline.map(({ y }) => y)),
    ]);
    const stands = [
      ...venue.systems.flatMap(({ transmitter, candidates }) => [
        transmitter!.at,
        ...candidates.map(({ at }) => at),
      ]),
      ...venue.receivers.map(({ at }) => at),
      ...venue.emitters.map(({ at }) => at),
      ...venue.sources.flatMap(({ at }) => (at === null ? [] : [at])),
    ];
    for (const { x, y } of stands)
      expect(
        bounds.some(([left, right, front, back]) => x > left! && x < right! && y > front! && y < back!),
      ).toBe(true);
  });
  test("as JSON is the same venue", async () => {
    const data = parse(readFileSync(DEMO, "utf8")) as { scans: { file: string }[]; luminaires: string };
    for (const scan of data.scans) scan.file = join(PROJECT, "fixtures/venues/ropewalk", scan.file);
    data.luminaires = file(
      "luminaires.csv",
      readFileSync(join(PROJECT, "fixtures/venues/ropewalk/luminaires.csv")),
    );
    const again = await load(file("venue.json", JSON.stringify(data)));
    const { venue } = await load(DEMO);
    expect({ ...again.venue, scans: [] }).toEqual({ ...venue, scans: [] });
  });
});

describe("a mistake names its line", () => {
  test("in YAML, in nested flow and in a list", async () => {
    const error = await refusal(
      file(
        "wrong.yaml",
        `${HOUSE.replace("height: 8", "heigth: 8").replace("x: 5", "x: five").replace("[20, 10]", "[20, ten]")}colour: red\n`,
      ),
    );
    expect(error.exitCode).toBe(65);
    expect(error.issues.map(({ line, column }) => [line, column])).toEqual([
      [11, "colour"],
      [6, "rooms[0].heigth"],
      [5, "rooms[0].outline[2]"],
      [4, "rooms[0].height"],
      [10, "luminaires[0].x"],
    ]);
    const told = error.message.split("\n");
    expect(told).toHaveLength(5);
    expect(told[1]).toMatch(
      /wrong\.yaml:6 column "rooms\[0\]\.heigth": expected a known key \(did you mean height\?\), got "heigth" \(stopped\)$/,
    );
    expect(error.next).toMatch(/stillband init/);
  });
  test("in JSON", async () => {
    const text = JSON.stringify({ ...(parse(HOUSE) as object), region: "FR" }, null, 1);
    const error = await refusal(file("wrong.json", text));
    const line = text.split("\n").findIndex((each) => each.includes('"region"')) + 1;
    expect(error.issues).toMatchObject([{ line, column: "region", value: "FR" }]);
  });
  test("in a table of luminaires beside it", async () => {
    const table = "Name,Room,X,Y\nA,hall,1,1\n\nB,hal,2,2\nC,hall,three,1\n";
    file("bad-luminaires.csv", table);
    const text = HOUSE.slice(0, HOUSE.indexOf("luminaires:"));
    const error = await refusal(file("with-table.yaml", `${text}luminaires: bad-luminaires.csv\n`));
    expect(error.issues.map(({ source, line, column, value }) => [source, line, column, value])).toEqual([
      ["bad-luminaires.csv", 5, "X", "three"],
      ["bad-luminaires.csv", 4, "Room", "hal"],
    ]);
  });
  test("in luminaires kept as JSON or YAML", async () => {
    file("luminaires.yaml", "- { name: A, room: hall, x: 1, y: 1 }\n- { name: B, room: hall, x: 1, z: 1 }\n");
    const text = HOUSE.slice(0, HOUSE.indexOf("luminaires:"));
    const error = await refusal(file("with-list.yaml", `${text}luminaires: luminaires.yaml\n`));
    expect(error.issues.map(({ source, line, column }) => [source, line, column])).toEqual([
      ["luminaires.yaml", 2, "[1].z"],
      ["luminaires.yaml", 2, "[1].y"],
    ]);
  });
  test("a key with dots and brackets in it has its own", async () => {
    const error = await refusal(file("dots.yaml", `${HOUSE}"a.b[0]": 1\n"a": 2\n`));
    expect(error.issues.map(({ line, column }) => [line, column])).toEqual([
      [11, "a.b[0]"],
      [12, "a"],
    ]);
  });
});

describe("files that it names", () => {
  test.each([
    ["scans:\n  - { file: gone.csv }\n", 12, "scans[0].file"],
    ["", 8, "systems[0].profile"],
  ])("that aren't there end in 66 with the line: %j", async (more, line, column) => {
    const text = more === "" ? HOUSE.replace("raster-13", "gone.yaml") : HOUSE + more;
    const error = await refusal(file("lacking.yaml", text));
    expect(error.exitCode).toBe(66);
    expect(error.issues).toMatchObject([{ line, column, code: "unreadable" }]);
  });
  test("with other mistakes end in 65, all told", async () => {
    const error = await refusal(
      file("both.yaml", `${HOUSE.replace("height: 8", "height: 0")}scans: [{ file: gone.csv }]\n`),
    );
    expect(error.exitCode).toBe(65);
    expect(error.issues).toHaveLength(2);
  });
  test("count from its own folder", async () => {
    mkdirSync(join(folder, "deep"));
    file("deep/mine.yaml", "based_on: raster-16\nname: mine\n");
    file("deep/a.csv", "x\n");
    const { venue, scanPaths } = await load(
      file("deep/venue.yaml", `${HOUSE.replace("raster-13", "mine.yaml")}scans: [{ file: a.csv }]\n`),
    );
    expect(venue.systems[0]!.profile.name).toBe("mine");
    expect(scanPaths).toEqual([join(folder, "deep/a.csv")]);
  });
  test("a profile file that is none is told with the rest", async () => {
    file("broken.yaml", "a: [1\n");
    const error = await refusal(
      file("uses-broken.yaml", HOUSE.replace("raster-13", "broken.yaml").replace("height: 8", "height: 0")),
    );
    expect(error.exitCode).toBe(65);
    expect(error.issues.map(({ column, source }) => column ?? source)).toEqual([
      "rooms[0].height",
      expect.stringContaining("broken.yaml"),
    ]);
  });
  test("the venue file itself: 66", async () => {
    expect((await refusal(join(folder, "none.yaml"))).exitCode).toBe(66);
  });
  test("standard input is read too", async () => {
    expect((await loadVenue("-", io(HOUSE))).venue.name).toBe("Tar House");
  });
});

describe("what isn't plain data ends in 65", () => {
  const bomb = `a: &a [x, x, x, x, x, x, x, x, x, x]\n${"bcdefgh"
    .split("")
    .map((name, index) => `${name}: &${name} [${Array(10).fill(`*${"abcdefg"[index]}`).join(", ")}]`)
    .join("\n")}\n`;
  test.each([
    ["not YAML", "a: [1, 2\nb: }", /not YAML or JSON/],
    ["a key given twice", `${HOUSE}name: again\n`, /unique/],
    ["aliases that multiply", `${HOUSE}${bomb}`, /aliases/],
    ["nothing", "", /a mapping with/],
    ["a list", "- 1\n", /a mapping with/],
    ["binary", "\u0000\u0001\u0002", /not YAML or JSON|a mapping with/],
  ])("%s", async (_what, text, told) => {
    const startMs = performance.now();
    const error = await refusal(file("odd.yaml", text));
    expect(error.exitCode).toBe(65);
    expect(error.message).toMatch(told);
    expect(performance.now() - startMs).toBeLessThan(3000);
  });
  test("every fault of the YAML is told with its line", async () => {
    const error = await refusal(file("two.yaml", "a: 1\na: 2\nb: 1\nb: 2\n"));
    expect(error.issues.map(({ line }) => line)).toEqual([2, 4]);
  });
});

test("hostile text is shown, never obeyed", async () => {
  const text = HOUSE.replace("name: hall", 'name: "h\\u001b[31mall"').replace(
    "rooms: [hall]",
    'rooms: ["\\u202ehall"]',
  );
  const error = await refusal(file("hostile.yaml", `${text}"\\u001b[2J": 1\n`));
  expect(error.message).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  expect(error.message.split("\n").length).toBe(error.issues.length);
});

test("300 luminaires of a table are loaded within a second", async () => {
  const rows = Array.from(
    { length: 300 },
    (_, index) => `L${index},hall,${0.2 + (index % 60) * 0.33},${1 + Math.floor(index / 60)},5`,
  );
  file("many.csv", `name,room,x,y,trim\n${rows.join("\n")}\n`);
  const text = HOUSE.slice(0, HOUSE.indexOf("luminaires:"));
  const path = file("many.yaml", `${text}luminaires: many.csv\n`);
  await load(path);
  const startMs = performance.now();
  expect((await load(path)).venue.receivers).toHaveLength(300);
  expect(performance.now() - startMs).toBeLessThan(1000);
});
