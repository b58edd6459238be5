/** `patch`: the demo venue and patches made by hand, as the crew, a spreadsheet and a program read them. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { tooWide } from "./columns.js";
import { schemaFaults } from "./schemas.js";
import { scratch } from "./scratch.js";
import { firstBlock, inProcess, stillband } from "./stillband.js";
import type { Ended } from "./stillband.js";

const DEMO = "fixtures/venues/ropewalk/venue.yaml";
const { folder, file } = scratch();

const HEAD = "Name,Room,X,Y,Trim,Mode,Footprint,Universe,Address,Group,Emergency\n";
/** A venue of one hall whose luminaires are these rows. */
function venueOf(name: string, rows: readonly string[], system = "channel: 3"): string {
  file(`${name}.csv`, HEAD + rows.join("\n"));
  return file(
    `${name}.yaml`,
    `name: Tar House\nunits: m\nrooms:\n  - { name: hall, outline: [[0, 0], [99, 0], [99, 50], [0, 50]], height: 8 }\n` +
      `systems:\n  - { name: main, rooms: [hall], ${system} }\nluminaires: ${name}.csv\n`,
  );
}
const lamp = (name: string, place: number, cells: string): string => `${name},hall,${place},1,5,${cells}`;

/** A and B share slots 7 and 8, C runs past 512, D lies in a universe that nobody carries, E has no footprint. */
const clashing = venueOf("clashing", [
  lamp("A", 1, "wide,8,1,1,,no"),
  lamp("B", 2, "wide,8,,7,,yes"),
  lamp("C", 3, ",16,,505,,unknown"),
  lamp("D", 4, ",4,9,,,no"),
  lamp("E", 5, "odd,,,,,no"),
  lamp("=1+1", 6, ",1,,30,,no"),
]);
// 64 · 8 = 512: P65 to P70 find no room.
const full = venueOf("full", Array.from({ length: 70 }, (_, index) => lamp(`P${index + 1}`, index + 1, ",8,,,,no"))); // prettier-ignore

interface Row {
  readonly name: string;
  readonly universe: number | null;
  readonly address: number | null;
  readonly lastSlot: number | null;
  readonly footprintSlotCount: number | null;
  readonly reason: string | null;
}
interface PatchJson {
  readonly rows: readonly Row[];
  readonly universes: readonly { readonly universe: number; readonly usedSlotCount: number }[];
  readonly conflicts: readonly {
    readonly kind: string;
    readonly luminaires: readonly { readonly name: string }[];
  }[];
  readonly overflows: readonly { readonly luminaires: readonly string[] }[];
  readonly fewest: readonly { readonly universeCount: number; readonly proved: boolean }[];
  readonly issues: readonly { readonly severity: string }[];
}

async function json(path: string, ...args: readonly string[]): Promise<PatchJson> {
  const { code, out, err } = await inProcess(["patch", path, "--json", ...args]);
  expect([code, err]).toEqual([0, ""]);
  const value: unknown = JSON.parse(out);
  expect(schemaFaults("patch", value)).toEqual([]);
  return value as PatchJson;
}
const text = async (path: string, ...args: readonly string[]): Promise<Ended> =>
  await inProcess(["patch", path, ...args]);
const flowing = ({ out }: Ended): string => out.replace(/\s+/g, " ");

describe("the demo venue, as a process", () => {
  test("has no clash: what its file settles and what is added share no slot, and --check holds", async () => {
    const { code, out, err } = await stillband(["patch", DEMO, "--json", "--check"]);
    expect([code, err]).toEqual([0, ""]);
    const { rows, conflicts, overflows } = JSON.parse(out) as PatchJson;
    expect([rows.length, conflicts, overflows]).toEqual([22, [], []]);
    const slots = rows.flatMap(({ universe, address, lastSlot }) =>
      Array.from({ length: lastSlot! - address! + 1 }, (_, index) => `${universe}/${address! + index}`),
    );
    expect(new Set(slots).size).toBe(slots.length);
    // By the file: 8 · 8 + 3 · 14 + 2 · 2 slots in the hall, 5 · 1 in the foyer, 4 · 2 in the studio.
    expect(slots).toHaveLength(110 + 5 + 8);
    expect(rows.filter(({ name }) => name === "H1" || name === "H2").map(({ address }) => address)).toEqual([
      1, 9,
    ]);
  });
  test("text: 80 columns, an opening block of whole numbers, one row a luminaire, the unknown exit light", async () => {
    const ended = await text(DEMO);
    expect([ended.code, ended.err, tooWide(ended.out, 80)]).toEqual([0, "", []]);
    const block = firstBlock(ended.out);
    expect(block.length).toBeLessThanOrEqual(8);
    expect(block.filter((line) => line.endsWith("…") || /\d\.\d/.test(line))).toEqual([]);
    expect(block.join("\n")).toMatch(/Emergency NOT KNOWN for F2/);
    for (const { name, address } of (await json(DEMO)).rows)
      expect(ended.out).toMatch(new RegExp(`^ +${address} .* ${name} `, "m"));
    expect(flowing(ended)).toMatch(/NOT KNOWN whether it counts: F2/);
    expect(flowing(ended)).toMatch(/certifies nothing/);
  });
  test("spare, raster and reserved slots: counted by hand", async () => {
    const { rows } = await json(DEMO, "--spare", "4", "--align", "5", "--reserve", "hall:1:20-30");
    // Balcony 1–16, then 4 spare and 20–30 reserved: the south aisle from 31, 8 slots each on a raster of 5.
    expect(rows.slice(2, 5).map(({ name, address }) => [name, address])).toEqual([
      ["H3", 31],
      ["H6", 41],
      ["H9", 51],
    ]);
    // 51–58 and 4 spare: the ridge from 66.
    expect(rows[5]).toMatchObject({ name: "H4", address: 66 });
  });
  test("a room shown alone keeps its addresses", async () => {
    const [whole, foyer] = [await json(DEMO), await json(DEMO, "--room", "foyer")];
    expect(foyer.rows).toEqual(whole.rows.filter(({ name }) => name.startsWith("F")));
    expect((await json(DEMO, "--system", "studio")).rows).toHaveLength(4);
  });
});

describe("a patch made by hand", () => {
  test("has each clash named with its slots, and nothing stops it", async () => {
    const { conflicts, rows } = await json(clashing);
    const named = conflicts.map(({ kind, luminaires }) => [kind, ...luminaires.map(({ name }) => name)]);
    expect(named).toEqual(
      expect.arrayContaining([
        ["overlap", "A", "B"],
        ["across-universes", "C"],
        ["other-universe", "D"],
        ["no-footprint", "E"],
      ]),
    );
    expect(rows.filter(({ address }) => address === null).map(({ name }) => name)).toEqual(["E"]);
    const told = flowing(await text(clashing, "--quiet"));
    expect(told).toContain("slots 7 to 8 of universe 1 taken twice: A (slots 1 to 8), B (slots 7 to 14)");
    expect(told).toMatch(/1 WITHOUT address/);
    expect(told).toMatch(/C runs across the end of universe 1/);
  });
  test("exits 0, with --check 1", async () => {
    expect((await text(clashing)).code).toBe(0);
    expect((await text(clashing, "--check")).code).toBe(1);
    expect((await text(full, "--check")).code).toBe(1);
    expect((await text(clashing, "--check", "--csv")).code).toBe(1);
  });
  test("a footprint that --mode gives fills the gap", async () => {
    const { rows } = await json(clashing, "--mode", "odd=3");
    expect(rows.find(({ name }) => name === "E")).toMatchObject({ footprintSlotCount: 3, reason: null });
  });
});

describe("an overflow", () => {
  test("names who needs a second system and what that costs in the band", async () => {
    const { overflows } = await json(full);
    expect(overflows.map(({ luminaires }) => luminaires)).toEqual([
      ["P65", "P66", "P67", "P68", "P69", "P70"],
    ]);
    const told = flowing(await text(full));
    expect(told).toContain("main has no room for 6 luminaires, 48 slots: P65, P66, P67, P68, P69, P70.");
    // 4.5 ms · 44 /s = 19.8 %.
    expect(told).toMatch(/second transmitter, on a radio channel of its own, on the air 20 % of the time/);
    expect(told).toMatch(/universe 2 is free.*stillband rooms/);
    expect(told).toMatch(/No other order makes them fit: that is proved/);
  });
  // 300 + 300 + 212 + 212 in two universes of 512 fit in a free order, not one after the other.
  test("that a free order mends is told so, and --order fewest proves it", async () => {
    const path = venueOf(
      "mendable",
      [300, 300, 212, 212].map((slots, index) => lamp(`Q${index}`, index + 1, `,${slots},,,,no`)),
      "set: { universes_per_transmitter_count: 2 }",
    );
    expect(flowing(await text(path))).toMatch(/fit if the order is free: --order fewest/);
    const { overflows, fewest } = await json(path, "--order", "fewest");
    expect([overflows, fewest]).toMatchObject([[], [{ universeCount: 2, proved: true }]]);
    expect(flowing(await text(path, "--order", "fewest"))).toMatch(/2 universes, proved/);
  });
});

describe("labels", () => {
  test("one each: switches that are on add up to the address, in both countings; blanks to fill", async () => {
    const { out } = await text(DEMO, "--labels");
    expect(tooWide(out, 80)).toEqual([]);
    const labels = out.split(/^(?:- )+-$/m).slice(1, -1);
    expect(labels).toHaveLength(22);
    for (const label of labels) {
      const address = Number(/DMX address (\d+)/.exec(label)![1]);
      const sum = (head: string): number => {
        const cells = new RegExp(`^${head} +((?:ON|-)(?: +(?:ON|-)){8})$`, "m").exec(label)![1]!.split(/ +/);
        return cells.reduce((total, cell, index) => total + (cell === "ON" ? 2 ** index : 0), 0);
      };
      expect([sum(`value ${address}`), sum(`from zero ${address - 1}`)]).toEqual([address, address - 1]);
      expect(label).toMatch(/radio ch _+ {3}fallback _+/);
    }
    expect(labels.filter((label) => /EMERGENCY OR EXIT LIGHTING\? NOT KNOWN/.test(label))).toHaveLength(1);
  });
  test("name a settled radio channel with its MHz", async () => {
    // Radio ch 3 of raster-13: 2412 + 2 · 5 MHz.
    expect((await text(clashing, "--labels")).out).toMatch(/radio ch 3 \(2422 MHz\) {3}fallback _+/);
  });
});

describe("CSV", () => {
  const rowsOf = (csv: string) => parse<Record<string, string>>(csv, { columns: true });
  test("agrees with the JSON, and what a spreadsheet would run is defused", async () => {
    const { rows } = await json(clashing);
    const table = rowsOf((await text(clashing, "--csv")).out);
    expect(table.map((row) => [row["universe"], row["dmx_address"], row["last_slot"]])).toEqual(
      rows.map(({ universe, address, lastSlot }) =>
        [universe, address, lastSlot].map((value) => String(value ?? "")),
      ),
    );
    expect(table.map((row) => row["luminaire"])).toContain("'=1+1");
    expect(table.map((row) => row["emergency"])).toEqual(["no", "yes", "unknown", "no", "no", "no"]);
    expect(table[1]).toMatchObject({ faults: "overlap", switches_on: "1 2 4", switches_on_from_zero: "2 4" });
  });
  test("is what a file called so gets, whole", async () => {
    const path = join(folder, "out.csv");
    expect((await text(DEMO, "-o", path)).out).toBe("");
    expect(readFileSync(path, "utf8")).toBe((await text(DEMO, "--csv")).out);
    const nowhere = join(folder, "none/out.csv");
    expect((await text(DEMO, "-o", nowhere)).code).toBe(73);
    expect(existsSync(nowhere)).toBe(false);
  });
});

describe("ends", () => {
  test.each([
    [["patch"], 64, /patch: expected a venue file/],
    [["patch", DEMO, "--order", "random"], 64, /--order: expected hanging or fewest/],
    [["patch", DEMO, "--align", "0"], 64, /--align.*1 to 512/],
    [["patch", DEMO, "--spare", "1.5"], 64, /--spare.*0 to 512/],
    [["patch", DEMO, "--reserve", "1-20"], 64, /--reserve.*SYSTEM:UNIVERSE:FROM-TO/],
    [["patch", DEMO, "--reserve", "hall:1:500-513"], 64, /slots 1 to 512/],
    [["patch", DEMO, "--reserve", "hal:1:1-2"], 64, /hall, foyer, studio.*"hal"\nTry: .*hall/],
    [["patch", DEMO, "--reserve", "hall:2:1-2"], 64, /a universe that hall carries, 1/],
    [
      ["patch", DEMO, "--room", "halll"],
      64,
      /--room: expected a room of the venue file \(hall, foyer, studio\)/,
    ],
    [["patch", DEMO, "--system", "fojer"], 64, /Try: --system "foyer"/],
    [["patch", DEMO, "--mode", "six=8"], 64, /--mode: expected a mode of the venue file/],
    [["patch", DEMO, "--mode", "warm white 8 bit=0"], 64, /--mode.*NAME=SLOTS/],
    [["patch", "no-such.yaml"], 66, /no-such\.yaml/],
  ] as const)("%j: %i", async (args, code, told) => {
    const ended = await inProcess(args);
    expect([ended.code, ended.out]).toEqual([code, ""]);
    expect(ended.err).toMatch(told);
    expect(ended.err).toMatch(/\nTry: \S/);
  });
  test("a venue without luminaires: 65", async () => {
    const path = file(
      "bare.yaml",
      "name: Bare\nunits: m\nrooms:\n  - { name: hall, outline: [[0, 0], [9, 0], [9, 9]], height: 8 }\nsystems:\n  - { name: main, rooms: [hall] }\n",
    );
    const { code, err } = await text(path);
    expect(code).toBe(65);
    expect(err).toMatch(/lists no luminaires/);
  });
});

test("hostile names and long ones are shown within 80 columns, never obeyed", async () => {
  const path = venueOf("hostile", [
    lamp('"\u001b[31mred\u202e"', 1, ",8,,1,,unknown"),
    lamp(`"${"long ".repeat(30)}"`, 2, `"${"mode ".repeat(30)}",8,,5,"${"group ".repeat(30)}",yes`),
    lamp("舞台の照明器具その一二三四五六七八", 3, ",8,,40,,no"),
  ]);
  for (const more of [[], ["--labels"], ["--csv"]]) {
    const { out, err } = await text(path, ...more);
    expect(`${out}${err}`).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
    if (more[0] !== "--csv") expect(tooWide(out, 80)).toEqual([]);
  }
  expect(firstBlock((await text(path)).out).length).toBeLessThanOrEqual(8);
});

test("2,000 luminaires take less than two seconds", async () => {
  const rows = Array.from({ length: 2000 }, (_, index) =>
    `N${index},hall,${(index % 98) + 0.5},${Math.floor(index / 98) + 1},5,,${1 + (index % 30)},,,g${index % 40},no`); // prettier-ignore
  const path = venueOf("many", rows, "set: { universes_per_transmitter_count: 80 }");
  const startMs = performance.now();
  expect((await text(path)).code).toBe(0);
  expect(performance.now() - startMs).toBeLessThan(2000);
});
