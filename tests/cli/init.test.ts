/** `init`: a venue file that is sound as it stands and as it is when every comment is taken up. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { parse } from "yaml";
import { describe, expect, test } from "vitest";
import { loadVenue } from "../../src/cli/load-venue.js";
import { schemaFaults } from "./schemas.js";
import { scanCsv } from "./scan-rows.js";
import { scratch } from "./scratch.js";
import { EMPTY, FOYER, FULL, inProcess, PROJECT, stillband } from "./stillband.js";

const { folder, file } = scratch();
let count = 0;
const fresh = (): string => {
  const path = join(folder, `house-${count++}`);
  mkdirSync(path);
  return path;
};
const satisfies = (schema: object) =>
  new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(schema);
const load = (path: string) =>
  loadVenue(path, { out: process.stdout, err: process.stderr, stdin: process.stdin, env: {} });

/** Takes up every comment that is a key or an item: prose begins with a capital letter. */
const uncommented = (text: string): string =>
  text.replace(/^( *)# ( *(?:- |[a-z_]+:).*)$/gm, "$1$2").replace(/^scans: \[\]$/m, "");

describe.each(["m", "ft"])("in %s", (units) => {
  test("the template is sound, without a remark, and so it is with every comment taken up", async () => {
    const at = fresh();
    const { code, out, err } = await inProcess(["init", "-o", `${at}/venue.yaml`, "--units", units]);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain("venue.yaml");
    const { venue, issues } = await load(`${at}/venue.yaml`);
    expect([issues, venue.units, venue.receivers.length]).toEqual([[], units, 1]);
    const text = readFileSync(`${at}/venue.yaml`, "utf8");
    const whole = uncommented(text);
    for (const key of ["walls:", "emitters:", "sources:", "crowd:", "storeys:", "region:", "    candidates:"])
      expect(whole).toMatch(new RegExp(`^${key}`, "m"));
    writeFileSync(`${at}/whole.yaml`, whole);
    expect((await load(`${at}/whole.yaml`)).issues).toEqual([]);
    const schema = JSON.parse(readFileSync(`${at}/venue.schema.json`, "utf8")) as object;
    for (const each of [text, whole]) {
      const holds = satisfies(schema);
      expect(holds(parse(each)), JSON.stringify(holds.errors)).toBe(true);
    }
  });
});

test("its first line names the schema that lies beside it", async () => {
  const at = fresh();
  await inProcess(["init", "-o", `${at}/venue.yaml`]);
  const [first] = readFileSync(`${at}/venue.yaml`, "utf8").split("\n");
  const named = /^# yaml-language-server: \$schema=\.\/(\S+)$/.exec(first!)?.[1];
  expect(new Set(readdirSync(at))).toEqual(new Set([named, "venue.yaml"]));
  const schema = JSON.parse(readFileSync(join(at, named!), "utf8")) as {
    $schema: string;
    description: string;
  };
  expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
});

test("without a name it is venue.yaml, here; the built package's schema is the same", async () => {
  const at = fresh();
  const { code } = await stillband(["init"], { cwd: at });
  expect(code).toBe(0);
  expect(JSON.parse(readFileSync(`${at}/venue.schema.json`, "utf8"))).toEqual(
    JSON.parse(readFileSync(join(PROJECT, "dist/venue.schema.json"), "utf8")),
  );
});

describe("nothing is overwritten", () => {
  test("a file that is there: 73 with the next step, the file untouched", async () => {
    const at = fresh();
    writeFileSync(`${at}/venue.yaml`, "mine");
    const { code, out, err } = await inProcess(["init", "-o", `${at}/venue.yaml`]);
    expect([code, out]).toEqual([73, ""]);
    expect(err).toMatch(/is there already.*\nTry: stillband init -o /);
    expect(readFileSync(`${at}/venue.yaml`, "utf8")).toBe("mine");
    expect(readdirSync(at)).toEqual(["venue.yaml"]);
  });
  test("a folder of that name, or no folder to write to: 73", async () => {
    const at = fresh();
    expect((await inProcess(["init", "-o", at])).code).toBe(73);
    expect((await inProcess(["init", "-o", `${at}/none/venue.yaml`])).code).toBe(73);
  });
  test("a schema of another version stays, and is told of; one of this version is not", async () => {
    const at = fresh();
    writeFileSync(`${at}/venue.schema.json`, "{}");
    const { code, err } = await inProcess(["init", "-o", `${at}/venue.yaml`]);
    expect(code).toBe(0);
    expect(err).toMatch(/venue\.schema\.json: this schema is of another version/);
    expect(readFileSync(`${at}/venue.schema.json`, "utf8")).toBe("{}");
    const other = fresh();
    await inProcess(["init", "-o", `${other}/a.yaml`]);
    expect((await inProcess(["init", "-o", `${other}/b.yaml`])).err).toBe("");
  });
});

describe("from scans", () => {
  test("places become rooms, sources are marked by their level, scans are listed", async () => {
    const at = fresh();
    const { code } = await inProcess([
      "init",
      "-o",
      `${at}/venue.yaml`,
      EMPTY,
      FULL,
      "--place",
      "foyer",
      "--crowd",
      "part",
      FOYER,
    ]);
    expect(code).toBe(0);
    const text = readFileSync(`${at}/venue.yaml`, "utf8");
    const data = parse(text) as {
      rooms: { name: string; places?: string[] }[];
      scans: { crowd: string; place?: string }[];
    };
    const places = new Map(data.rooms.map((room) => [room.name, new Set(room.places)]));
    expect(places).toEqual(
      new Map([
        ["foyer", new Set(["foyer bar"])],
        ["hall", new Set(["hall balcony", "hall front", "hall stage"])],
        ["studio", new Set(["studio store"])],
      ]),
    );
    expect(data.scans.map(({ crowd, place }) => [crowd, place])).toEqual([
      ["empty", undefined],
      ["full", undefined],
      ["part", "foyer"],
    ]);
    const { venue, issues, scanPaths } = await load(`${at}/venue.yaml`);
    expect(issues).toEqual([]);
    expect(venue.systems).toHaveLength(3);
    for (const path of scanPaths) expect(existsSync(path)).toBe(true);
    const marks = [...text.matchAll(/^# {3}- \{ source: (.*), owner: (\w+) \} {2}# (.*): (-\d+) dBm/gm)];
    expect(marks.length).toBeGreaterThan(20);
    for (const [, , owner, , level] of marks)
      expect(owner).toBe(Number(level) >= -75 ? "building" : "neighbour");
    writeFileSync(`${at}/whole.yaml`, uncommented(text));
    expect((await load(`${at}/whole.yaml`)).venue.sources).toHaveLength(marks.length);
  });
  test("names and places of strangers are quoted, and the file stays sound", async () => {
    const names = [
      "a: b",
      "# x",
      "- x",
      "\u001b[2J",
      "two\nlines: 1",
      '"',
      "'",
      "{",
      "no",
      "=1",
      "\u202eevil",
      "}, owner: building }",
      "🎺",
    ];
    const scan = file("hostile.csv", scanCsv(names.map((ssid, index) => ({ place: `${ssid} room`, crowd: "full", bssid: `02:00:00:00:0${index.toString(16)}:00`, ssid, channel: 6, signal: -40 - index })))); // prettier-ignore
    const at = fresh();
    const { code, out, err } = await inProcess(["init", "-o", `${at}/venue.yaml`, scan]);
    expect(code).toBe(0);
    const text = readFileSync(`${at}/venue.yaml`, "utf8");
    for (const each of [text, out, err])
      expect(each).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2028\u2029]/);
    expect((await load(`${at}/venue.yaml`)).venue.rooms.length).toBeGreaterThan(8);
    writeFileSync(`${at}/whole.yaml`, uncommented(text));
    expect((await load(`${at}/whole.yaml`)).venue.sources).toHaveLength(names.length);
  });
  test("a scan of no use: 65, and nothing is written", async () => {
    const at = fresh();
    expect((await inProcess(["init", "-o", `${at}/venue.yaml`, file("none.csv", "")])).code).toBe(65);
    expect(readdirSync(at)).toEqual([]);
  });
});

test("-o - prints it, without a schema to point to, and writes nothing", async () => {
  const at = fresh();
  const { code, out } = await stillband(["init", "-o", "-"], { cwd: at });
  expect(code).toBe(0);
  expect(out).not.toContain("yaml-language-server");
  expect((parse(out) as { units: string }).units).toBe("m");
  expect(readdirSync(at)).toEqual([]);
});

test("a name that ends in .json is JSON, and as sound", async () => {
  const at = fresh();
  expect((await inProcess(["init", "-o", `${at}/venue.json`])).code).toBe(0);
  expect((JSON.parse(readFileSync(`${at}/venue.json`, "utf8")) as { $schema: string }).$schema).toBe(
    "./venue.schema.json",
  );
  expect((await load(`${at}/venue.json`)).issues).toEqual([]);
});

test("--json tells what was written", async () => {
  const at = fresh();
  const { code, out } = await inProcess(["init", "-o", `${at}/venue.yaml`, "--json"]);
  const value: unknown = JSON.parse(out);
  expect(code).toBe(0);
  expect(value).toEqual({
    schema: "stillband/init@1",
    issues: [],
    files: [`${at}/venue.yaml`, `${at}/venue.schema.json`],
  });
  expect(schemaFaults("init", value)).toEqual([]);
});
