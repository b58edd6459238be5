/** `hang`: the demo venue and venues made by hand, as riggers, electrician, office, crew and booth read them. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { CHECK_READING_COLUMNS } from "../../src/install/index.js";
import { readReadings } from "../../src/commissioning/index.js";
import { tooWide } from "./columns.js";
import { schemaFaults } from "./schemas.js";
import { scratch } from "./scratch.js";
import { firstBlock, inProcess, stillband } from "./stillband.js";
import type { Ended } from "./stillband.js";

const DEMO = "fixtures/venues/ropewalk/venue.yaml";
const SHEETS = ["hang", "circuits", "order", "checks", "trouble"] as const;
const { folder, file } = scratch();

/** A venue of one hall, its luminaires these rows under these headings. */
function venueOf(name: string, heads: string, rows: readonly string[], more = ""): string {
  file(
    `${name}.csv`,
    `Name,Room,X,Y,Ceiling height,Trim,Weight,Watts,Circuit,Emergency,${heads}\n${rows.join("\n")}\n`,
  );
  return file(
    `${name}.yaml`,
    `name: Tar House\nunits: m\nrooms:\n  - { name: hall, outline: [[0, 0], [99, 0], [99, 50], [0, 50]], height: 8 }\n` +
      `systems:\n  - { name: main, rooms: [hall], channel: 3 }\nluminaires: ${name}.csv\n${more}`,
  );
}
const SOUND_HANG =
  "hang: { link_pitch: 30 mm, suspension_weight: 0.5, cord_weight: 0.1, receiver_weight: 0.4, weave_share: 10 %, slope: 0, canopy_height: 0, top_hook: 0, bottom_hook: 0, eye_bolt: 0, hardware_weight: 0 }\n";
const SOUND_CIRCUIT =
  "circuits:\n  - { name: C1, supply_v: 230, breaker_a: 16, control: none, feed: own-box, earth: yes, shared_neutral: no, drivers_allowed: 9 }\n";
const RATED = "Body height,Box rated,Hook rated,Suspension rated,Safety rated";
/** 8 − 6 − 0.5 = 1.5 m: 50 links of 30 mm. */
const sound = venueOf(
  "sound",
  RATED,
  ["P1,hall,1,1,8,6,9,100,C1,no,0.5,25,40,60,60"],
  SOUND_HANG + SOUND_CIRCUIT,
);
const bare = venueOf("bare", "Old chain", [
  "P1,hall,1,1,8,6,9,100,C1,unknown,rusty",
  "P2,hall,2,1,,,,,,unknown,",
]);

interface HangJson {
  readonly hang: {
    readonly rows: readonly {
      readonly name: string;
      readonly stepCount: number | null;
      readonly suspensionM: number | null;
      readonly gap: string | null;
      readonly flags: readonly string[];
      readonly cordToCut: { readonly lengthM: number | null; readonly from: string | null };
    }[];
    readonly doNotHang: readonly string[];
  };
  readonly circuits: {
    readonly rows: readonly { readonly circuit: string; readonly flags: readonly string[] }[];
  };
  readonly order: { readonly lines: readonly { readonly item: string }[] };
  readonly checks: { readonly rows: readonly { readonly words: string }[] };
  readonly issues: readonly { readonly severity: string; readonly value?: string }[];
}

async function json(path: string, ...args: readonly string[]): Promise<HangJson> {
  const { code, out } = await inProcess(["hang", path, "--json", ...args]);
  expect(code).toBe(0);
  const value: unknown = JSON.parse(out);
  expect(schemaFaults("hang", value)).toEqual([]);
  return value as HangJson;
}
const text = async (path: string, ...args: readonly string[]): Promise<Ended> =>
  await inProcess(["hang", path, ...args]);
const flowing = ({ out }: Ended): string => out.replace(/\s+/g, " ");

describe("the demo venue, as a process", () => {
  test("text: 80 columns, an opening block of whole numbers whose first word is what stays down", async () => {
    const { code, out, err } = await stillband(["hang", DEMO]);
    expect([code, err, tooWide(out, 80)]).toEqual([0, "", []]);
    const block = firstBlock(out);
    expect(block.length).toBeLessThanOrEqual(8);
    expect(block.filter((line) => line.endsWith("…") || /\d\.\d/.test(line))).toEqual([]);
    expect(block[0]).toBe("STOP      RATING NOT GIVEN: DO NOT HANG H6");
    expect(block[1]).toMatch(/^STOP +DO NOT HANG H10: beyond its rating$/);
    expect(block.join("\n")).toMatch(/DIMMER OUT HA, HD/);
    expect(block.join("\n")).toMatch(/Emergency NOT KNOWN for F2/);
  });
  test("five sheets, each says whom it is for, names the unknown exit light and certifies nothing", async () => {
    const titles = [
      "for the riggers",
      "for the licensed electrician",
      "for the office",
      "for the crew",
      "for the booth",
    ];
    const whole = flowing(await text(DEMO));
    for (const [index, sheet] of SHEETS.entries()) {
      const alone = flowing(await text(DEMO, "--sheet", sheet));
      for (const words of [titles[index]!, "NOT KNOWN whether it counts: F2", "It certifies nothing"])
        expect(alone).toContain(words);
      expect(titles.filter((title) => alone.includes(title))).toEqual([titles[index]]);
      expect(whole).toContain(titles[index]);
    }
    expect(whole.split("NOT KNOWN whether it counts: F2")).toHaveLength(6);
  });
  test("the booth's card fits a page of 66 lines", async () => {
    const card = (await text(DEMO, "--sheet", "trouble", "--channel", "hall=6", "--fallback", "hall=11")).out;
    expect(card.trimEnd().split("\n").length).toBeLessThanOrEqual(66);
    expect(card).toMatch(/hall: from radio ch 6 \(2437 MHz\) to radio ch 11 \(2462 MHz\)/);
  });
  test("one row a luminaire on the lift: links, chain, cord, safety cable, worked by hand", async () => {
    const { out } = await text(DEMO, "--sheet", "hang");
    // H1: 10.2 − 6.8 − (0.06 + 0.04 + 0.04 + 0.025) − 0.43 = 2.805: 80 links of 35 mm are 2.8 m;
    // cord 2.8 · 1.1 + 0.165 + 0.3 + 0.35; safety cable hypot(2.965, 0.25) + 0.3.
    expect(out).toMatch(/^ +80 +2\.800 +3\.895 +3\.276 {2}H1$/m);
    // H10 hangs 5.69 m from H9, which feeds it: 4.404 + hypot(5.5, 1.45) + 5.251.
    expect(out).toMatch(/^ +123 +4\.305 +15\.342 +4\.777 {2}H10 +DO NOT HANG, cord from H9$/m);
    for (const { name } of (await json(DEMO)).hang.rows)
      expect(out.split("\n").filter((line) => line.includes(`  ${name} `) || line.endsWith(`  ${name}`)).length).toBeGreaterThan(0); // prettier-ignore
  });
  test("in feet and inches every length is the metric one to a sixteenth of an inch", async () => {
    const lengths = async (unit: string): Promise<number[]> => {
      const { out } = await text(DEMO, "--sheet", "hang", "--units", unit);
      const table = /Cut and hang.*?\n\n/s.exec(out)![0];
      const rows = table.split("\n").filter((line) => /^ +\d+ {2}/.test(line));
      expect(rows).toHaveLength(22);
      return rows.flatMap((line) => {
        if (unit === "m") return [...line.matchAll(/\d+\.\d{3}/g)].map(([found]) => Number(found));
        const found = [...line.matchAll(/(\d+)' (\d+)(?: (\d+)\/(\d+))?"/g)];
        return found.map(([, feet, inches, over = "0", under = "1"]) => (Number(feet) * 12 + Number(inches) + Number(over) / Number(under)) * 0.0254); // prettier-ignore
      });
    };
    const [metres, feet] = [await lengths("m"), await lengths("ft")];
    expect(metres).toHaveLength(66);
    feet.forEach((lengthM, index) =>
      expect(Math.abs(lengthM - metres[index]!)).toBeLessThanOrEqual(0.0254 / 16 + 0.0005 + 1e-9),
    );
    const [inM, inFt] = [await json(DEMO, "--units", "m"), await json(DEMO, "--units", "ft")];
    expect(inFt.hang.rows).toEqual(inM.hang.rows);
  });
  test("the circuits: what comes out, what is asked, the cord each of them needs", async () => {
    const out = flowing(await text(DEMO, "--sheet", "circuits"));
    expect(out).toMatch(/HA, HD: ON A DIMMER: take the dimmer out before install/);
    expect(out).toMatch(/SA: breaker not given/);
    expect(out).toMatch(/SA open ASK own box ____/);
    // 660 W / (230 V · 0.9) = 3.19 A; own box: 16 AWG = 1.31 mm², so 1.5; fed through: 14 AWG = 2.08 mm², so 2.5.
    expect(out).toMatch(/HA within 1\.5 mm² own box 16 A 3\.2 A 3\.2 A 660 W/);
    expect(out).toMatch(/HC within 2\.5 mm² through 16 A 2\.6 A/);
    const us = flowing(
      await text(DEMO, "--sheet", "circuits", "--sizes", "awg", "--continuous-factor", "1.25"),
    );
    // 16 A: 16 AWG carries 13 A, 14 AWG 18 A with two loaded conductors; 3.19 · 1.25 = 3.99 A.
    expect(us).toMatch(/HA within 14 AWG own box 16 A 4\.0 A 3\.2 A/);
  });
  test("the order: whole spools of which every piece is cut whole, and each line says for whom", async () => {
    const out = flowing(await text(DEMO, "--sheet", "order", "--spool", "50m", "--spare-share", "0.2"));
    // 21 receivers: 4.2, so 5 spare.
    expect(out).toMatch(/26 receiver: 21 needed, 5 spare for H1, H2, .* bar box/);
    expect(out).toMatch(/2 x 50\.0 m cord with earth, 1\.5 mm²: 49\.634 m in 13 pieces; 54\.6 m with waste/);
    expect(out).toMatch(/SIZE NOT DECIDED.*for S1, S2, S3, S4/);
    expect(out).toMatch(/chain, link pitch 35 mm/);
  });
  test("a room or a system alone keeps its rows", async () => {
    const whole = await json(DEMO);
    const foyer = await json(DEMO, "--room", "foyer");
    expect(foyer.hang.rows).toEqual(whole.hang.rows.filter(({ name }) => name.startsWith("F")));
    expect((await json(DEMO, "--system", "studio")).circuits.rows.map(({ circuit }) => circuit)).toEqual([
      "SA",
    ]);
    expect(flowing(await text(DEMO, "--room", "foyer"))).not.toContain("DO NOT HANG");
  });
});

describe("where nothing is known", () => {
  test("nothing is safe: every luminaire stays down, each length says what is missing", async () => {
    const { hang, circuits } = await json(bare);
    expect(hang.doNotHang).toEqual(["P1", "P2"]);
    expect(hang.rows.map(({ gap, suspensionM }) => [gap, suspensionM])).toEqual([
      ["body-height", null],
      ["ceiling-height", null],
    ]);
    expect(circuits.rows[0]!.flags).toEqual(
      expect.arrayContaining(["control-unknown", "ask-breaker", "ask-earth"]),
    );
    const ended = await text(bare);
    expect(tooWide(ended.out, 80)).toEqual([]);
    expect(firstBlock(ended.out)[0]).toMatch(/RATING NOT GIVEN: DO NOT HANG P1, P2/);
    expect(flowing(ended)).toMatch(/No circuit given, ask what feeds them: P2/);
    expect(flowing(ended)).toMatch(/NOT KNOWN whether they count: P1, P2/);
  });
  test("figures for all by --set and --pitch: the rating is said, the weight still isn't", async () => {
    const set = ["body_height=500mm", "box_rated=25", "hook_rated=40", "suspension_rated=60"];
    const args = [...set.flatMap((word) => ["--set", word]), "--pitch", "30mm"];
    const [first] = (await json(bare, ...args)).hang.rows;
    expect(first).toMatchObject({ name: "P1", stepCount: 50, gap: null });
    expect(first!.flags).not.toContain("rating-not-given");
    expect(first!.flags).toContain("weight-not-given");
  });
});

describe("--check", () => {
  test.each([
    ["all given and within", sound, [], 0],
    ["a rating missing", DEMO, [], 1],
    ["the foyer, whose controls are work to do", DEMO, ["--room", "foyer"], 0],
    [
      "a load within its breaker even tenfold: 100 / (230 · 0.9) = 0.48 A",
      sound,
      ["--continuous-factor", "10"],
      0,
    ],
    ["a length that can't be", sound, ["--set", "canopy_height=5m"], 1],
    ["nothing known", bare, [], 1],
  ] as const)("%s", async (_, path, args, code) => {
    const ended = await text(path, "--check", ...args);
    expect(ended.code).toBe(code);
    expect(ended.out).toMatch(/HANG SHEET/);
  });
  test("the sound one says so in its opening block, and has nothing in the way", async () => {
    const ended = await text(sound);
    expect(firstBlock(ended.out).join("\n")).not.toMatch(/STOP/);
    expect(flowing(ended)).toMatch(/Nothing stands in the way/);
    expect(flowing(ended)).not.toMatch(/\bsafe\b(?! (?:the safety|to))(?<!never safe|not safe)/);
  });
  test("hardware that nobody measured is loud: what it adds isn't counted", async () => {
    const ended = await text(venueOf("loose", RATED, ["P1,hall,1,1,8,6,9,100,C1,no,0.5,25,40,60,60"], ""));
    expect(flowing(ended)).toMatch(/HARDWARE HEIGHT NOT GIVEN .* every luminaire/);
    expect(flowing(ended)).toMatch(/HARDWARE WEIGHT NOT GIVEN, so not counted/);
    expect(flowing(await text(sound))).not.toMatch(/HARDWARE/);
  });
  test("a breaker that the load is beyond", async () => {
    const rows = ["P1,hall,1,1,8,6,9,5000,C1,no,0.5,25,40,60,60"];
    const beyond = venueOf("beyond", RATED, rows, SOUND_HANG + SOUND_CIRCUIT);
    expect((await text(beyond, "--check")).code).toBe(1);
    // 5000 / (230 · 0.9) = 24.2 A
    expect(flowing(await text(beyond))).toMatch(/C1 BEYOND 1\.5 mm² own box 16 A 24\.2 A 24\.2 A 5000 W/);
  });
});

describe("tables", () => {
  test("the checks are a readings file: typed in, only the links at trim are read", async () => {
    const { out, code } = await text(DEMO, "--sheet", "checks", "--csv");
    expect(code).toBe(0);
    const [head, ...rows]: string[][] = parse(out);
    for (const column of CHECK_READING_COLUMNS) expect(head).toContain(column);
    const level = head!.indexOf("received_dbm");
    const receiver = head!.indexOf("receiver");
    const typed = rows.map((cells) => cells.map((cell, index) => (index === level && cells[receiver] !== "" ? "-61.5" : cell))); // prettier-ignore
    const cut = [head!, ...typed].map((cells, index) => ({ line: index + 1, cells }));
    const { readings, issues } = readReadings(cut, { source: "readings.csv" });
    expect(issues.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(readings).toHaveLength(21);
    expect(readings.every(({ receivedDbm, stage }) => receivedDbm === -61.5 && stage === "lift")).toBe(true);
    expect(readings.map(({ receiver: name, transmitter }) => `${name} ${transmitter}`)).toContain(
      "bar box foyer",
    );
  });
  test("the hang sheet: a row a luminaire, DO NOT HANG beside those that stay down", async () => {
    const rows = parse<Record<string, string>>((await text(DEMO, "--sheet", "hang", "--csv")).out, { columns: true }); // prettier-ignore
    expect(rows).toHaveLength(22);
    expect(rows.filter((row) => row["do_not_hang"] !== "").map((row) => row["luminaire"])).toEqual([
      "H6",
      "H10",
    ]);
    expect(rows[0]).toMatchObject({
      step_count: "80",
      suspension_m: "2.8",
      cord_m: "3.895",
      weight_kg: "11.2674",
    });
  });
  test("circuits by luminaire, the order by line, the card by step", async () => {
    const table = async (sheet: string): Promise<Record<string, string>[]> =>
      parse((await text(DEMO, "--sheet", sheet, "--csv")).out, { columns: true });
    expect(await table("circuits")).toHaveLength(22);
    const order = await table("order");
    expect(order.map((row) => row["item"])).toEqual((await json(DEMO)).order.lines.map(({ item }) => item));
    expect((await table("trouble")).length).toBeGreaterThan(15);
  });
  test("-o FILE.csv writes one; five sheets are no table", async () => {
    const path = join(folder, "hang-out.csv");
    expect(await text(DEMO, "--sheet", "order", "-o", path)).toMatchObject({ code: 0, out: "" });
    expect(readFileSync(path, "utf8")).toMatch(/^item,words,/);
    const refused = await text(DEMO, "-o", join(folder, "all.csv"));
    expect([refused.code, existsSync(join(folder, "all.csv"))]).toEqual([64, false]);
    expect(refused.err).toMatch(/one sheet for a table.*Try: --sheet hang/s);
  });
});

describe("what can't be is said with the next step", () => {
  test.each([
    [
      ["--sheet", "hung"],
      64,
      /--sheet: expected hang, circuits, order, checks, trouble or all.*--sheet hang/s,
    ],
    [["--room", "haul"], 64, /a room of the venue file \(hall, foyer, studio\).*--room "hall"/s],
    [["--system", "x"], 64, /a system of the venue file/],
    [["--pitch", "0"], 64, /--pitch: expected a length.*--pitch 35mm/s],
    [["--pitch", "35 kg"], 64, /--pitch/],
    [["--waste-share", "-0.1"], 64, /--waste-share: expected a number from 0 to 10/],
    [["--continuous-factor", "0.8"], 64, /from 1 to 10/],
    [["--set", "body_hight=1"], 64, /a figure such as body_height/],
    [["--set", "suspension=string"], 64, /suspension to be chain, wire-rope, stem/],
    [["--set", "feed_length=3"], 64, /FIGURE=VALUE/],
    [["--set", "box_rated=0"], 64, /box_rated to be a weight/],
    [["--sizes", "swg"], 64, /awg or mm2/],
    [["--loaded", "4"], 64, /2 or 3/],
    [["--channel", "hall=14"], 64, /a radio channel of hall, 1 to 13/],
    [["--fallback", "haul=3"], 64, /a system of the venue file/],
    [["--fallback", "hall"], 64, /SYSTEM=NUMBER/],
    [["--units", "yd"], 64, /m or ft/],
  ] as const)("%j", async (args, code, told) => {
    const ended = await text(DEMO, ...args);
    expect(ended.code).toBe(code);
    expect(ended.out).toBe("");
    expect(ended.err).toMatch(told);
  });
  test("a venue without luminaires is bad data, none at all is usage, one that isn't there no input", async () => {
    const none = file("none.yaml", readFileSync(sound, "utf8").replace(/luminaires: .*\n[^]*/, ""));
    expect((await text(none)).code).toBe(65);
    expect((await inProcess(["hang"])).code).toBe(64);
    expect((await text(join(folder, "nowhere.yaml"))).code).toBe(66);
  });
  test("a crew's cell that can't be is a warning, its figure left open", async () => {
    const odd = venueOf(
      "odd",
      RATED,
      ["P1,hall,1,1,8,6,9,100,C1,no,0.5,strong,40,60,60"],
      SOUND_HANG + SOUND_CIRCUIT,
    );
    const ended = await text(odd);
    expect(ended.err).toMatch(
      /luminaire P1 column "Box rated": expected a weight.*got "strong" \(value ignored\)/,
    );
    expect(firstBlock(ended.out)[0]).toMatch(/RATING NOT GIVEN: DO NOT HANG P1/);
    expect((await text(odd, "--quiet")).err).toBe("");
    const { issues } = await json(odd);
    expect(issues.map(({ value }) => value)).toEqual(["strong"]);
  });
});

describe("names are shown, never obeyed", () => {
  const hostile = venueOf(
    "hostile",
    RATED,
    [
      `=cmd|x,hall,1,1,8,6,9,100,"@SUM(1)",unknown,0.5,,40,60,60`,
      `${"W".repeat(150)},hall,2,1,8,6,9,100,${"漢".repeat(60)},yes,0.5,25,40,60,60`,
      `"\u202ego\u200b",hall,3,1,8,6,9,100,C1,unknown,0.5,25,40,60,60`,
    ],
    SOUND_HANG,
  );
  test("80 columns, no control or bidi character, at most eight lines to open", async () => {
    for (const unit of ["m", "ft"]) {
      const { code, out, err } = await text(hostile, "--units", unit);
      expect([code, tooWide(out, 80)]).toEqual([0, []]);
      expect(`${out}${err}`).not.toMatch(
        /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e]/u,
      );
      expect(firstBlock(out).length).toBeLessThanOrEqual(8);
      expect(out.split("\n").filter((line) => /\s$/.test(line))).toEqual([]);
    }
  });
  test.each(SHEETS)("no cell of the %s table that a spreadsheet would run", async (sheet) => {
    const table: string[][] = parse((await text(hostile, "--sheet", sheet, "--csv")).out);
    const cells = table.flat();
    expect(cells.filter((cell) => /^[=+@\t\r]|^-(?![\d.]+$)/.test(cell))).toEqual([]);
  });
});
