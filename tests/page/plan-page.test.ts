import { beforeAll, describe, expect, test } from "vitest";
import { planPage } from "../../src/page/index.js";
import { planJson } from "../../src/report/index.js";
import type { PlanReport } from "../../src/report/index.js";
import { figureFaults } from "./figure-faults.js";
import { figuresOf, sha256Base64, tagsOf, textOf } from "./page-html.js";
import { plannedVenue } from "./planned-venue.js";

const PICTURE = {
  name: "band-hall",
  title: "The band <in> the hall",
  description: "Figures & words",
  svg: '<svg role="img" viewBox="0 0 1 1"></svg>',
};

let report: PlanReport;
let json: object;
let html: string;

beforeAll(async () => {
  report = await plannedVenue("fixtures/venues/ropewalk/venue.yaml", {
    madeAt: "2026-03-09T10:15:00Z",
    revision: "C",
  });
  json = planJson(report);
  html = planPage(report, json, [PICTURE], sha256Base64);
}, 240_000);

describe("every figure", () => {
  test("is a number of the plan file, and its text that number rounded", () => {
    expect(figuresOf(html).length).toBeGreaterThan(1000);
    expect(figureFaults(html, JSON.parse(JSON.stringify(json)))).toEqual([]);
  });
  test("of length or weight is there in both systems of units", () => {
    const both = figuresOf(html).filter(({ unit }) => unit !== null);
    expect(both.length).toBeGreaterThan(100);
    for (const { texts } of both) expect(texts).toHaveLength(2);
  });
  test("that the plan file lacks is an error, not a guess", () => {
    const rest = Object.fromEntries(Object.entries(json).filter(([key]) => key !== "links"));
    expect(() => planPage(report, rest, [], sha256Base64)).toThrow(/nothing at \/links\//);
  });
  test("behind a verdict says how it came about, to those who can't hover, too", () => {
    const { receiver, judged } = report.links.systems[0]!.receivers[0]!;
    const said = new RegExp(
      `title="received (-?[\\d.]+) dBm = power ${judged.budget.txPowerDbm.toFixed(1)} dBm`,
    );
    expect(Number(said.exec(html)?.[1])).toBeCloseTo(judged.budget.receivedDbm, 1);
    expect(html).toContain("<summary>How these figures came about</summary>");
    expect(textOf(html)).toContain(`${receiver.name}: received ${judged.budget.receivedDbm.toFixed(1)} dBm`);
  });
  test("of a budget adds up to what is received", () => {
    const figures = new Map(figuresOf(html).map(({ value, from }) => [from, Number(value)]));
    const of = (key: string): number => figures.get(`/links/systems/0/receivers/0/budget/${key}`)!;
    const gains = of("txPowerDbm") + of("txGainDbi") + of("rxGainDbi");
    const losses = ["txFeederLossDb", "pathLossDb", "wallLossDb", "enclosureLossDb", "crowdLossDb"];
    const lost = [...losses, "polarisationLossDb"].reduce((sum, key) => sum + of(key), 0);
    expect(gains - lost).toBeCloseTo(of("receivedDbm"), 9);
  });
});

describe("the policy", () => {
  test("lets run the page's own style and script and nothing else", () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)![1]!;
    const [style, script] = ["style", "script"].map((tag) =>
      sha256Base64(new RegExp(`<${tag}>([^]*?)</${tag}>`).exec(html)![1]!),
    );
    expect(policy).toBe(
      `default-src 'none'; style-src 'sha256-${style}'; script-src 'sha256-${script}'; img-src data:; base-uri 'none'; form-action 'none'`,
    );
  });
  test("has nothing to refuse: no handler, style attribute or address of another host", () => {
    const tags = tagsOf(html);
    expect(tags.length).toBeGreaterThan(2000);
    const keys = new Set(tags.flatMap(({ attributes }) => [...attributes.keys()]));
    expect([...keys].filter((key) => /^on/i.test(key) || key === "style" || key === "src")).toEqual([]);
    const links = tags.flatMap(({ attributes }) => attributes.get("href") ?? []);
    expect(links.length).toBeGreaterThan(5);
    expect(links.filter((link) => !link.startsWith("#"))).toEqual([]);
    expect(tags.filter(({ name }) => ["script", "style"].includes(name))).toHaveLength(2);
  });
});

describe("the sheets", () => {
  const SHEETS: readonly (readonly [id: string, whom: string])[] = [
    ["answer", "the client"],
    ["network", "the building's network staff"],
    ["radio", "the lighting integrator"],
    ["circuits", "the licensed electrician"],
    ["hang", "the riggers"],
    ["addresses", "the operator"],
    ["checks", "the install crew"],
    ["trouble", "the booth"],
    ["office", "the office"],
  ];
  const partsOf = (page: string): string[] => page.split('<section class="sheet" ').slice(1);

  test("each say whom they are for, where, when and which revision", () => {
    const heads = partsOf(html).map((sheet) => textOf(/<dl class="head">([^]*?)<\/dl>/.exec(sheet)![1]!));
    expect(heads.map((head) => head.trim().split(/\n/))).toEqual(
      SHEETS.map(([, whom]) => [
        `For${whom}`,
        "VenueThe Quillmere Ropewalk",
        "Date2026-03-09 10:15 UTC",
        "RevisionC",
      ]),
    );
  });
  test("say so where there is no date and no revision", () => {
    const undated = { ...report, revision: null, record: { ...report.record, madeAt: null } };
    const page = textOf(planPage(undated, planJson(undated), [], sha256Base64));
    expect(page).toContain("Dateno date given");
    expect(page).toContain("Revisionnone named");
  });
  test("open with the answer of every room, before any picture or table", () => {
    const [first] = partsOf(html);
    expect(first!.startsWith('id="answer"')).toBe(true);
    const before = textOf(first!.slice(0, first!.search(/<figure|<table/)));
    for (const { room, joint } of report.rooms.rooms) {
      expect(before).toContain(`${room}: `);
      expect(before).toContain(`to spare at ${joint!.receiver}`);
    }
  });
  test("carry their cautions", () => {
    const plain = textOf(html).replace(/\s+/g, " ");
    const all = [...Object.values(report.hang!.cautions).flat(), ...report.patch!.cautions];
    expect(all.length).toBeGreaterThan(20);
    for (const { text } of all) expect(plain).toContain(text);
    for (const id of ["circuits", "hang", "checks", "trouble", "addresses"]) {
      const sheet = partsOf(html).find((part) => part.startsWith(`id="${id}"`))!;
      expect(textOf(sheet)).toContain("No emergency or exit lighting may depend on the radio link.");
    }
    expect(plain).toContain("NOT KNOWN whether emergency or exit lighting: F2.");
  });
  test("hold a label for each luminaire, with its own address", () => {
    const labels = html.split(/<div class="label"[^>]*>/).slice(1);
    expect(labels).toHaveLength(report.rooms.venue.luminaires.length);
    const { name, address } = report.patch!.patch.labels[3]!;
    expect(textOf(labels[3]!)).toMatch(new RegExp(`^\\s*${name}\\s[^]*DMX address ${address} to `));
  });
  test("place a picture once, its title as text", () => {
    expect(html.split(PICTURE.svg)).toHaveLength(2);
    expect(html).toContain("<figcaption>The band &lt;in&gt; the hall</figcaption>");
  });
});

describe("other people's names and addresses", () => {
  const strangers = (): readonly string[] => {
    const sources = report.surveys.flatMap(({ survey }) => survey.emitters);
    const own = new Set(sources.filter(({ ownerMarked, owner }) => ownerMarked && owner === "building"));
    return [...new Set(sources.filter((source) => !own.has(source)).flatMap(({ names }) => names))];
  };

  test("are left out", () => {
    expect(strangers().length).toBeGreaterThan(8);
    const plain = textOf(html);
    expect(strangers().filter((name) => plain.includes(name))).toEqual([]);
    const neighbours = report.surveys
      .flatMap(({ survey }) => survey.emitters)
      .filter(({ owner }) => owner !== "building")
      .flatMap(({ bssids }) => bssids);
    expect(neighbours.length).toBeGreaterThan(8);
    expect(neighbours.filter((address) => html.includes(address))).toEqual([]);
    expect(plain).toContain("neighbour 1 (…");
  });
  test("are there where they are asked for", () => {
    const named = { ...report, showsNames: true };
    const plain = textOf(planPage(named, json, [], sha256Base64));
    const shown = strangers().filter((name) => plain.includes(name));
    expect(shown.length).toBeGreaterThan(8);
  });
  test("are not those of the building, which the staff must find", () => {
    expect(textOf(html)).toContain('"Quillmere Guest"');
    expect(html).toContain("02:5e:1c:40:12:70");
  });
});

describe("for those who read it with other means", () => {
  test("headings descend a step at a time from the one at the top", () => {
    const levels = tagsOf(html).flatMap(({ name }) => (/^h[1-6]$/.test(name) ? Number(name[1]) : []));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels[0]).toBe(1);
    expect(levels.filter((level, index) => index > 0 && level > levels[index - 1]! + 1)).toEqual([]);
  });
  test("ids are unique, and what names another by its id finds it", () => {
    const tags = tagsOf(html);
    const ids = tags.flatMap(({ attributes }) => attributes.get("id") ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const named = tags.flatMap(({ attributes }) => [
      ...(attributes.get("aria-labelledby")?.split(" ") ?? []),
      ...(attributes.get("href")?.slice(1).split(" ") ?? []),
    ]);
    expect(named.length).toBeGreaterThan(30);
    expect(named.filter((id) => !ids.includes(id))).toEqual([]);
  });
  test("tables have a caption, heads with their scope, and a box that the keyboard reaches", () => {
    const tables = html.split("<table").slice(1);
    expect(tables.length).toBeGreaterThan(20);
    for (const table of tables) expect(table).toMatch(/^[^>]*>\s*<caption id="[^"]+">[^<]/);
    const heads = tagsOf(html).filter(({ name }) => name === "th");
    expect(heads.every(({ attributes }) => ["col", "row"].includes(attributes.get("scope") ?? ""))).toBe(
      true,
    );
    const boxes = tagsOf(html).filter(({ attributes }) => attributes.get("class")?.startsWith("scroll"));
    expect(boxes.every(({ attributes }) => attributes.get("tabindex") === "0")).toBe(true);
  });
});

test("the same plan gives the same bytes, and a small page", () => {
  expect(planPage(report, json, [PICTURE], sha256Base64)).toBe(html);
  expect(Buffer.byteLength(html)).toBeLessThan(600_000);
});
