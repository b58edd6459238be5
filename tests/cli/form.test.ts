/** `form`: what is printed can be typed in under its own headings, and prints within its page. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { CREW_COLUMNS, crewFigures } from "../../src/install/index.js";
import { readLuminaires, venueSchema } from "../../src/venue/index.js";
import { tooWide } from "./columns.js";
import { scratch } from "./scratch.js";
import { schemaFaults } from "./schemas.js";
import { inProcess, PROJECT } from "./stillband.js";

const { file, folder } = scratch();
const VENUE = "fixtures/venues/ropewalk/venue.yaml";

interface Field {
  readonly column: string;
  readonly heading: string;
  readonly filed: boolean;
  readonly kind: string;
  readonly choices: readonly string[];
}
interface FormJson {
  readonly units: string;
  readonly rooms: readonly { readonly name: string | null; readonly points: readonly (string | null)[] }[];
  readonly sections: readonly { readonly each: string; readonly fields: readonly Field[] }[];
  readonly drill: readonly string[];
}

async function printed(args: readonly string[]): Promise<string> {
  const { code, out, err } = await inProcess(["form", ...args]);
  expect([code, err]).toEqual([0, ""]);
  return out;
}

async function json(args: readonly string[]): Promise<FormJson> {
  const value = JSON.parse(await printed([...args, "--json"])) as FormJson;
  expect(schemaFaults("form", value)).toEqual([]);
  return value;
}

/** Names of the demo venue's luminaires, from the file itself. */
const LUMINAIRES = readFileSync(join(PROJECT, "fixtures/venues/ropewalk/luminaires.csv"), "utf8")
  .trim()
  .split("\n")
  .slice(1)
  .map((line) => line.split(",")[0]!);

describe("typed in line by line", () => {
  /** Something that each kind of blank may be filled with. */
  const filled = ({ kind, choices, column }: Field): string =>
    kind === "choice" ? choices[0]! : kind === "text" ? (column === "room" ? "hall" : "as seen") : "4";
  test.each(["m", "ft"])(
    "ceiling points in %s are rows of luminaires.csv under the printed headings",
    async (units) => {
      const { sections } = await json(["--units", units]);
      const { fields } = sections.find(({ each }) => each === "ceiling point")!;
      const text = await printed(["--units", units]);
      for (const { heading } of fields) expect(text).toContain(`${heading}`);
      const rows = [
        { line: 1, cells: fields.map(({ heading }) => heading) },
        { line: 2, cells: fields.map(filled) },
      ];
      const source = "luminaires.csv";
      const read = readLuminaires(rows, { source, units: units as "m" | "ft" });
      expect(read.issues.filter(({ severity }) => severity === "error")).toEqual([]);
      const [luminaire] = read.luminaires;
      const own = fields.filter(({ filed }) => !filed);
      expect(Object.keys(luminaire!.further)).toEqual(own.map(({ heading }) => heading));
      // Exact: the international foot and pound.
      expect(luminaire!.trimHeightM).toBeCloseTo(units === "m" ? 4 : 4 * 0.3048, 12);
      expect(luminaire!.weightKg).toBeCloseTo(units === "m" ? 4 : 4 * 0.45359237, 12);
      const { faults, hang } = crewFigures(luminaire!.further, units as "m" | "ft");
      expect(faults).toEqual([]);
      expect(hang.hookRatedKg).toBeCloseTo(units === "m" ? 4 : 4 * 0.45359237, 12);
      expect(hang.slopeDeg).toBe(4);
      // Read by a person, not by the sheets.
      const words = own.map(({ column }) => column).filter((column) => !Object.hasOwn(CREW_COLUMNS, column));
      expect(words).toEqual(["box_type", "cord_condition", "canopy_condition"]);
    },
  );
  test("the rest are the venue file's own keys", async () => {
    const { sections } = await json([]);
    const keys = JSON.stringify(venueSchema);
    const filed = sections
      .filter(({ each }) => each !== "ceiling point")
      .flatMap(({ fields }) => fields.filter((field) => field.filed));
    expect(filed.length).toBeGreaterThan(20);
    for (const { column, choices } of filed) {
      expect(keys).toContain(`"${column}":`);
      for (const word of choices) if (!["true", "false"].includes(word)) expect(keys).toContain(`"${word}"`);
    }
  });
});

describe("as text", () => {
  test.each([
    ["blank", []],
    ["blank, in feet, three rooms", ["--rooms", "3", "--points", "2", "--units", "ft"]],
    ["of the demo venue", [VENUE]],
  ])("%s: 80 columns, no page of it cut", async (_, args) => {
    const text = await printed(args);
    expect(tooWide(text, 80)).toEqual([]);
    expect(text).not.toMatch(/…|[^\S\n]$/m);
  });
  test("asks what the survey must bring home", async () => {
    const text = (await printed([])).replace(/\s+/g, " ");
    for (const words of [
      ...[
        "ceiling_height (m)",
        "trim_height (m)",
        "box_type",
        "box_rated (kg)",
        "circuit",
        "control",
        "earth",
      ],
      ...["cord_condition", "canopy_condition", "slope (deg)", "way_in", "floor_load", "fixed_seating"],
      ...["suspect_materials", "console", "transmitter_power", "event_times", "network_contact"],
      ...["dimmer, wall-switch, sensor, time-clock, transfer-switch", "hotspot", "five looks", "trim height"],
      ...["room empty, then again in a full house", "No emergency or exit lighting", "certifies nothing"],
    ])
      expect(text).toContain(words);
  });
  test("with a venue names its rooms and every luminaire once", async () => {
    const text = await printed([VENUE]);
    for (const name of LUMINAIRES) expect(text.split(`  name: ${name} `)).toHaveLength(2);
    const { rooms } = await json([VENUE]);
    expect(rooms.map(({ name }) => name)).toEqual(["hall", "foyer", "studio"]);
    expect(new Set(rooms.flatMap(({ points }) => points))).toEqual(new Set(LUMINAIRES));
  });
  test("--rooms and --points count blanks, beside a venue's own too", async () => {
    const blank = await json(["--rooms", "2", "--points", "3"]);
    expect(blank.rooms.map(({ name, points }) => [name, points.length])).toEqual([
      [null, 3],
      [null, 3],
    ]);
    const more = await json([VENUE, "--rooms", "1", "--points", "2"]);
    expect(more.rooms).toHaveLength(4);
    expect(more.rooms.flatMap(({ points }) => points)).toHaveLength(LUMINAIRES.length + 4 * 2);
  });
  test.each([
    ["--rooms", "51"],
    ["--points", "1.5"],
    ["--points", "-1"],
  ])("%s %s is refused", async (flag, word) => {
    const { code, err } = await inProcess(["form", flag, word]);
    expect(code).toBe(64);
    expect(err).toMatch(/whole number[^]*Try: /);
  });
  test("a venue that isn't there ends in 66", async () => {
    expect((await inProcess(["form", join(folder, "nowhere.yaml")])).code).toBe(66);
  });
});

describe("as HTML", () => {
  /** Tags that don't close in turn, and signs in the text that only markup may have. */
  const faults = (html: string): string[] => {
    const found: string[] = [];
    const open: string[] = [];
    const body = html.replace(/^<!doctype html>/, "").replace(/<style>[^]*?<\/style>/, "");
    const rest = body.replace(
      /<(\/?)([a-z]+\d?)(?: [a-z-]+="[^"<>]*")*>/g,
      (tag, slash: string, name: string) => {
        if (slash === "" && name !== "meta") open.push(name);
        if (slash !== "" && open.pop() !== name) found.push(tag);
        return "";
      },
    );
    return [...found, ...open, ...(rest.match(/[<>"]|&(?!amp;|lt;|gt;|quot;|#39;)/g) ?? [])];
  };
  test("the check of its markup can fail", () => {
    for (const bad of ["<p>a", "<p></b></p>", "<p>a < b</p>", "<p>a & b</p>", "<p onload=x></p>"])
      expect(faults(bad)).not.toEqual([]);
    expect(faults('<p class="a">a &lt; b</p>')).toEqual([]);
  });
  test("is sound, whole in itself, without script, and starts a page a room", async () => {
    const html = await printed([VENUE, "--html"]);
    expect(faults(html)).toEqual([]);
    expect(html).not.toMatch(/<script|<link|<img|<iframe|@import|url\(|\s(?:src|href|on\w+)=/i);
    expect(html).toContain("default-src 'none'");
    expect(html.match(/<section class="page">\n<h2>Room/g)).toHaveLength(3);
    expect(html).toMatch(/\.page \{ break-before: page \}/);
    expect(html).toMatch(/color: #000; background: #fff/);
    for (const name of LUMINAIRES) expect(html).toContain(`<span class="known">${name}</span>`);
  });
  test("what a venue is called is text, never markup, and no terminal obeys it", async () => {
    const text = readFileSync(join(PROJECT, VENUE), "utf8").replaceAll(
      "../../scans",
      join(PROJECT, "fixtures/scans"),
    );
    file("luminaires.csv", readFileSync(join(PROJECT, "fixtures/venues/ropewalk/luminaires.csv"), "utf8"));
    const hostile = `<script>alert("1")</script>`;
    const path = file("hostile.yaml", text.replace("name: The Quillmere Ropewalk", `name: '${hostile}'`));
    const html = await printed([path, "--html"]);
    expect(faults(html)).toEqual([]);
    expect(html).not.toContain("<script");
    expect(html).toContain("&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;");
  });
  test("-o FILE.html writes it without being asked twice", async () => {
    const path = join(folder, "form.html");
    expect(await printed(["--points", "1", "-o", path])).toBe("");
    expect(readFileSync(path, "utf8")).toMatch(/^<!doctype html>/);
  });
});
