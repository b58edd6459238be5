/** `plan`: the folder whole or not at all, the same bytes each time, its parts what their own commands print. */
import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, test } from "vitest";
import { readPlanRecord } from "../../src/commissioning/index.js";
import { tooWide } from "./columns.js";
import { schemaFaults } from "./schemas.js";
import { scratch } from "./scratch.js";
import { firstBlock, PROJECT, stillband } from "./stillband.js";
import type { Ended } from "./stillband.js";

const DEMO = "fixtures/venues/ropewalk/venue.yaml";
const FILES = ["circuits.csv", "hang.csv", "links.csv", "order.csv", "patch.csv", "plan.json", "report.html"];
const { folder, file } = scratch();
const first = join(folder, "first");
let ended: Ended;
let plan: PlanJson;

interface PlanJson {
  readonly madeAt: string | null;
  readonly inputs: readonly { readonly name: string; readonly kind: string; readonly digest: string }[];
  readonly systems: readonly { readonly system: string; readonly channel: number | null }[];
  readonly receivers: readonly { readonly receiver: string }[];
  readonly rooms: object;
  readonly links: object;
  readonly place: { readonly systems: readonly PlacesJson[] };
  readonly surveys: readonly object[];
  readonly patch: { readonly rows: readonly LabelledRow[] };
  readonly hang: object;
}

interface PlacesJson {
  readonly system: string;
  readonly channel: number | null;
  readonly places: unknown;
  readonly choice: unknown;
  readonly pair: unknown;
}

interface LabelledRow {
  readonly channel: { readonly channel: number } | null;
  readonly fallback: { readonly channel: number } | null;
}

beforeAll(async () => {
  ended = await stillband(["plan", DEMO, "-o", first, "--date", "2026-03-07", "--revision", "B"]);
  plan = JSON.parse(readFileSync(join(first, "plan.json"), "utf8")) as PlanJson;
}, 120_000);

/** The demo's venue with the plan's channels written into it, its files named from the project's folder. */
function settledVenue(): string {
  let text = readFileSync(join(PROJECT, DEMO), "utf8");
  for (const { system, channel } of plan.systems)
    text = text.replace(`  - name: ${system}\n    rooms: [${system}]`, `$&\n    channel: ${channel}`);
  return text
    .replaceAll("../../scans/", `${join(PROJECT, "fixtures/scans")}/`)
    .replace(
      "luminaires: luminaires.csv",
      `luminaires: ${join(PROJECT, "fixtures/venues/ropewalk/luminaires.csv")}`,
    );
}

const bytesOf = (path: string): string => readFileSync(path, "utf8");
const jsonOf = async (words: readonly string[]): Promise<Record<string, unknown>> =>
  JSON.parse((await stillband([...words, "--json"])).out) as Record<string, unknown>;
const part = (value: Record<string, unknown>): object =>
  Object.fromEntries(Object.entries(value).filter(([key]) => key !== "schema" && key !== "issues"));

describe("the folder", () => {
  test("holds the page, the plan file and the crew's tables; the answer is printed first", () => {
    expect([ended.code, readdirSync(first).sort()]).toEqual([0, FILES]);
    expect(firstBlock(ended.out).length).toBeLessThanOrEqual(8);
    expect(firstBlock(ended.out)[1]).toMatch(/^Use +least bad: hall radio ch \d+/);
    expect(tooWide(ended.out, 80)).toEqual([]);
    for (const name of FILES) expect(ended.out).toContain(name);
    expect(ended.out).toMatch(/Cautions/);
  });
  test("has the same bytes for the same input, and no trace of a draft", async () => {
    const second = join(folder, "second");
    await stillband(["plan", DEMO, "-o", second, "--date", "2026-03-07", "--revision", "B"]);
    for (const name of FILES) expect(bytesOf(join(second, name)), name).toBe(bytesOf(join(first, name)));
    expect(readdirSync(folder).filter((name) => /part|old/.test(name))).toEqual([]);
  }, 120_000);
  test("stands by the date given, or by none", async () => {
    expect(plan.madeAt).toBe("2026-03-07");
    const undated = await jsonOf(["plan", DEMO]);
    expect(undated["madeAt"]).toBeNull();
  }, 120_000);
});

describe("what stands there", () => {
  const there = (): string => {
    const path = join(
      folder,
      `there-${Math.max(0, ...readdirSync(folder).map((name) => Number(/\d+$/.exec(name)?.[0] ?? 0))) + 1}`,
    );
    mkdirSync(path);
    return path;
  };
  test("stays without --force, and is not even worked for", async () => {
    const path = there();
    writeFileSync(join(path, "plan.json"), "mine");
    const refused = await stillband(["plan", DEMO, "-o", path]);
    expect([refused.code, refused.out]).toEqual([73, ""]);
    expect(refused.err).toMatch(/is there already\nTry: name another with -o, or --force/);
    expect(bytesOf(join(path, "plan.json"))).toBe("mine");
  });
  test("goes with --force where an earlier plan wrote it", async () => {
    const path = there();
    cpSync(first, path, { recursive: true });
    writeFileSync(join(path, "plan.json"), "old");
    const forced = await stillband(["plan", DEMO, "-o", path, "--force"]);
    expect([forced.code, readdirSync(path).sort()]).toEqual([0, FILES]);
    expect(bytesOf(join(path, "plan.json"))).not.toBe("old");
  }, 60_000);
  test("stays all the same where it holds anything else, or is no folder", async () => {
    const path = there();
    writeFileSync(join(path, "accounts.ods"), "mine");
    const refused = await stillband(["plan", DEMO, "-o", path, "--force"]);
    expect([refused.code, readdirSync(path)]).toEqual([73, ["accounts.ods"]]);
    expect(refused.err).toContain("accounts.ods, which no plan wrote");
    const plain = file("plain", "text");
    expect((await stillband(["plan", DEMO, "-o", plain, "--force"])).code).toBe(73);
    expect(statSync(plain).isFile()).toBe(true);
  });
  test("is filled where it is empty; a folder that isn't there is no place", async () => {
    const path = there();
    expect((await stillband(["plan", DEMO, "-o", path])).code).toBe(0);
    const nowhere = await stillband(["plan", DEMO, "-o", join(folder, "no", "where")]);
    expect([nowhere.code, existsSync(join(folder, "no"))]).toEqual([73, false]);
  }, 120_000);
});

describe("the plan file", () => {
  test("is what --json prints, and then no folder is written", async () => {
    const printed = await stillband(
      ["plan", join(PROJECT, DEMO), "--date", "2026-03-07", "--revision", "B", "--json"],
      { cwd: folder },
    );
    expect([printed.code, existsSync(join(folder, "venue-plan"))]).toEqual([0, false]);
    const value = JSON.parse(printed.out) as PlanJson;
    expect(value.rooms).toEqual(plan.rooms);
    expect(schemaFaults("plan", value)).toEqual([]);
  }, 60_000);
  test("names every file that went in by the digest of its bytes", () => {
    const digest = (path: string): string =>
      `sha256:${createHash("sha256")
        .update(readFileSync(join(PROJECT, path)))
        .digest("hex")}`;
    expect(plan.inputs).toHaveLength(6);
    const by = new Map(plan.inputs.map((input) => [input.name, input]));
    expect(by.get("venue.yaml")).toMatchObject({ kind: "venue", digest: digest(DEMO) });
    expect(by.get("../../scans/ropewalk-full.csv")).toMatchObject({
      kind: "scan",
      digest: digest("fixtures/scans/ropewalk-full.csv"),
    });
    expect(by.get("luminaires.csv")).toMatchObject({ kind: "luminaires" });
  });
  test("is a record that a later check can read", () => {
    const { plan: record, issues } = readPlanRecord(plan, { source: "plan.json" });
    expect(issues).toEqual([]);
    expect(record!.receivers.map(({ receiver }) => receiver)).toHaveLength(21);
  });
  test("has parts that are what rooms prints, and place with those channels settled", async () => {
    const rooms = await jsonOf(["rooms", DEMO]);
    const assumed = rooms["assumed"] as { timeLimitS: number | null };
    // The plan's search has no clock.
    expect(part({ ...rooms, assumed: { ...assumed, timeLimitS: null } })).toEqual(plan.rooms);
    const place = await jsonOf(["place", file("settled.yaml", settledVenue())]);
    const chosen = ({ systems }: { systems: readonly PlacesJson[] }): unknown =>
      systems.map(({ system, channel, places, choice, pair }) => ({ system, channel, places, choice, pair }));
    expect(chosen(plan.place)).toEqual(chosen(place as never));
  }, 60_000);
  test("has parts that keep their commands' promises", () => {
    for (const [name, schema] of [
      ["rooms", "rooms"],
      ["links", "link-venue"],
      ["place", "place"],
      ["patch", "patch"],
      ["hang", "hang"],
    ] as const) {
      const value = {
        schema: `stillband/${schema === "link-venue" ? "link" : schema}@1`,
        issues: [],
        ...plan[name],
      };
      const faults = schemaFaults(schema, value).filter((fault) => !fault.startsWith("/assumed/timeLimitS"));
      expect(faults, name).toEqual([]);
    }
    for (const survey of plan.surveys)
      expect(schemaFaults("survey", { schema: "stillband/survey@1", issues: [], ...survey })).toEqual([]);
  });
  test("puts the planned channel on every label", () => {
    const channels = new Map(plan.systems.map(({ system, channel }) => [system, channel]));
    expect(channels.size).toBe(3);
    const labelled = plan.patch.rows.filter(({ channel }) => channel !== null);
    expect(labelled.length).toBe(plan.patch.rows.length);
    expect(new Set(labelled.map(({ channel }) => channel!.channel))).toEqual(new Set(channels.values()));
    expect(labelled.every(({ fallback }) => fallback !== null)).toBe(true);
  });
});

test("the tables have a row for each receiver and luminaire", () => {
  const rowsOf = (name: string): Record<string, string>[] =>
    parse(bytesOf(join(first, name)), { columns: true });
  expect(rowsOf("links.csv")).toHaveLength(21);
  expect(rowsOf("patch.csv")).toHaveLength(plan.patch.rows.length);
  expect(rowsOf("hang.csv")).toHaveLength(plan.patch.rows.length);
  const [weakest] = rowsOf("links.csv");
  expect([weakest!["system"], weakest!["verdict"]]).toEqual(["hall", "fails"]);
});

describe("--check", () => {
  test("fails where a receiver has no margin", async () => {
    const checked = await stillband(["plan", DEMO, "--check", "--json"]);
    expect(checked.code).toBe(1);
  }, 60_000);
  test("passes where everything has", async () => {
    const path = file(
      "quiet.yaml",
      `name: shed
units: m
rooms: [{ name: shed, outline: [[0, 0], [8, 0], [8, 6], [0, 6]], height: 4 }]
systems: [{ name: S, rooms: [shed], universe: 1, transmitter: { name: shelf, at: [1, 1], height: 2, antenna: { kind: dipole } } }]
receivers: [{ name: R1, room: shed, at: [5, 4], height: 3, enclosure: antenna-outside }]
`,
    );
    const checked = await stillband(["plan", path, "--check", "-o", join(folder, "quiet-plan")]);
    expect(checked.code).toBe(0);
    expect(readdirSync(join(folder, "quiet-plan")).sort()).toEqual(["links.csv", "plan.json", "report.html"]);
  });
});

describe("usage", () => {
  test.each([
    [["--date", "7th of March"], "--date: expected a date as ISO 8601 writes it"],
    [["-o", "-"], "--output: expected a folder's name"],
    [["-o", " "], "--output: expected a folder's name"],
    [["--svg", ""], "--svg: expected a folder's name"],
  ])("%j is refused", async (words, message) => {
    const refused = await stillband(["plan", DEMO, ...words]);
    expect([refused.code, refused.out]).toEqual([64, ""]);
    expect(refused.err).toContain(message);
  });
  test("a venue without a system can't be planned", async () => {
    const path = file(
      "empty.yaml",
      "name: nothing\nunits: m\nrooms: [{ name: hall, outline: [[0, 0], [9, 0], [9, 9]], height: 4 }]\n",
    );
    const refused = await stillband(["plan", path, "-o", join(folder, "nothing")]);
    expect([refused.code, existsSync(join(folder, "nothing"))]).toEqual([65, false]);
    expect((await stillband(["plan", join(folder, "none.yaml")])).code).toBe(66);
  });
});
