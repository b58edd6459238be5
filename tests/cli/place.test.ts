/** `place`: in a venue of free space and silence by hand; in the demo venue its own figures against each other. */
import { describe, expect, test } from "vitest";
import { columnsOf } from "../../src/report/text-layout.js";
import { schemaFaults } from "./schemas.js";
import { scratch } from "./scratch.js";
import { firstBlock, inProcess, stillband } from "./stillband.js";

const DEMO = "fixtures/venues/ropewalk/venue.yaml";
const { file } = scratch();

interface PlaceJson {
  readonly schema: string;
  readonly systems: readonly {
    readonly system: string;
    readonly channel: number | null;
    readonly places: readonly PlaceEntry[];
    readonly choice: { readonly from: string; readonly name: string } | null;
    readonly grid: { readonly triedCount: number; readonly keptOutCount: number } | null;
    readonly fields: readonly {
      readonly fromXM: number;
      readonly fromYM: number;
      readonly stepM: number;
      readonly columnCount: number;
      readonly rowCount: number;
      readonly leastMarginDb: readonly (number | null)[];
    }[];
    readonly pair: { readonly workingMarginDb: number } | null;
    readonly joint: { readonly halves: readonly string[]; readonly systems: readonly object[] } | null;
    readonly reason: string | null;
  }[];
}

interface PlaceEntry {
  readonly from: string;
  readonly name: string;
  readonly xM: number;
  readonly yM: number;
  readonly heightM: number;
  readonly workingMarginDb: number;
  readonly weakest: string;
  readonly givesUpDb: number;
  readonly breaks: readonly string[];
  readonly receivers: readonly { readonly receiver: string; readonly workingMarginDb: number }[];
}

async function json(args: readonly string[]): Promise<PlaceJson> {
  const { code, out, err } = await inProcess(["place", ...args, "--json"]);
  expect([code, err]).toEqual([0, ""]);
  const value = JSON.parse(out) as PlaceJson;
  expect(schemaFaults("place", value)).toEqual([]);
  return value;
}

/** Free space, nobody in, nothing scanned: Friis and the receiver's own noise. */
const house = (more = "", powerDbm = 0): string => `name: Tar House
units: m
rooms:
  - name: hall
    outline: [[0, 0], [20, 0], [20, 12], [0, 12]]
    height: 8
    path_model: { kind: free-space }
systems:
  - name: main
    rooms: [hall]
    channel: 6
    set: { tx_power_dbm: ${powerDbm} }
    transmitter: { name: end, at: [1, 6], height: 3.5, in_sight: true }
    candidates:
      - { name: middle, at: [10, 6], height: 3.5, in_sight: true }
luminaires:
  - { name: H1, room: hall, system: main, x: 3, y: 6, trim_height: 6 }
  - { name: H2, room: hall, system: main, x: 17, y: 6, trim_height: 6 }
${more}`;

/** ITU-R P.525 at 2437 MHz: 20·log10(4·π·d·f/c). */
const freeSpaceDb = (distanceM: number): number =>
  20 * Math.log10((4 * Math.PI * distanceM * 2437e6) / 299_792_458);

describe("a house of free space", () => {
  test("gives each place the margin of its weakest receiver", async () => {
    const path = file("house.yaml", house());
    const [main] = (await json([path, "--crowd", "empty", "--candidates-only"])).systems;
    expect(main!.places.map(({ name, from, weakest }) => [name, from, weakest])).toEqual([
      ["middle", "candidate", expect.stringMatching(/^H[12]$/) as string],
      ["end", "planned", "H2"],
    ]);
    const [middle, end] = main!.places;
    // 0 dBm + 2 dBi + 2 dBi - 10 dB of canopy; -90 dBm needed, as kTB in 1 MHz + 10 dB + 14 dB is; fading comes off alike.
    const fades = [middle, end].map((one) => {
      const farthestM = Math.max(...[3, 17].map((x) => Math.hypot(x - one!.xM, 6 - 3.5)));
      return 0 + 2 + 2 - 10 - freeSpaceDb(farthestM) + 90 - one!.workingMarginDb;
    });
    expect(fades[0]).toBeCloseTo(fades[1]!, 1);
    // Rician, K = 6 dB, 99 %: between no fading and Rayleigh's 19.98 dB.
    expect(fades[0]).toBeGreaterThan(5);
    expect(fades[0]).toBeLessThan(19.97);
    expect(end!.givesUpDb).toBeCloseTo(20 * Math.log10(Math.hypot(16, 2.5) / Math.hypot(7, 2.5)), 6);
    expect(main!.choice!.name).toBe("middle");
  });

  test("keeps its grid off heads, radios, other transmitters and fixtures, and says how many points that cost", async () => {
    const text = house().replace(
      "luminaires:",
      `  - name: other
    rooms: [hall]
    transmitter: { name: stage, at: [10, 10], height: 3 }
luminaires:`,
    );
    const [main] = (await json([file("keep.yaml", text), "--crowd", "empty", "--grid", "--step", "1m"]))
      .systems;
    // 20 x 12 points; those nearer than 2 m to (10, 10) on the same height. No point lies within 0.5 m of a fixture.
    const points = Array.from({ length: 240 }, (_, i) => ({
      x: (i % 20) + 0.5,
      y: Math.floor(i / 20) + 0.5,
    }));
    const near = points.filter(({ x, y }) => Math.hypot(x - 10, y - 10) < 2);
    expect(near.length).toBeGreaterThan(8);
    expect(main!.grid).toMatchObject({ triedCount: 240 - near.length, keptOutCount: near.length });
    const grid = main!.places.filter(({ from }) => from === "grid");
    expect(grid).toHaveLength(3);
    for (const { xM, yM, heightM } of grid) {
      expect(heightM).toBe(3);
      expect(Math.hypot(xM - 10, yM - 10)).toBeGreaterThanOrEqual(2);
    }
  });

  test("shares out what one transmitter can't serve, and plans the channels again", async () => {
    const text = house("", -24).replace("channel: 6", "channel: 6");
    const { systems } = await json([file("faint.yaml", text), "--crowd", "empty"]);
    const [main] = systems;
    expect(main!.places[0]!.workingMarginDb).toBeLessThan(0);
    expect(main!.pair!.workingMarginDb).toBeGreaterThan(main!.places[0]!.workingMarginDb);
    expect(main!.joint!.halves).toEqual(["main", "main 2"]);
    expect(main!.joint!.systems).toHaveLength(2);
    expect(main!.joint!.systems[0]).toMatchObject({ name: "main", oneChannel: 6, twoChannel: 6 });
    expect(main!.joint!.systems[1]).toMatchObject({ name: "main 2", oneChannel: null });
    const { out } = await inProcess(["place", file("faint.yaml", text), "--crowd", "empty"]);
    expect(out).toMatch(/two transmitters, each with a channel of its own\n- P at .*H[12]/);
  });

  test("the region counts the antenna that the options bring: 6 dB more gain, 6 dB less power", async () => {
    const text = house().replace(/\n {4}set: .*/, "");
    const path = file("region.yaml", text);
    const planned = async (...args: readonly string[]): Promise<number> => {
      const { code, out } = await inProcess([
        "place",
        path,
        "--crowd",
        "empty",
        "--json",
        "--region",
        "EU",
        ...args,
      ]);
      expect(code).toBe(0);
      const { systems } = JSON.parse(out) as PlaceJson;
      return systems[0]!.places.find(({ from }) => from === "planned")!.workingMarginDb;
    };
    // The profile's gain is 2 dBi, the panel's 8: held to the same EIRP, the planned transmitter loses the difference.
    const gainDb = (await planned()) - (await planned("--antenna", "panel:8:75:65"));
    expect(gainDb).toBeCloseTo(6, 6);
  });

  test("a system without receivers is told, not judged", async () => {
    const text = house().replace("luminaires:", "  - { name: spare, rooms: [hall] }\nluminaires:");
    const { systems } = await json([file("spare.yaml", text), "--crowd", "empty", "--candidates-only"]);
    expect(systems.map(({ system, reason }) => [system, reason])).toEqual([
      ["main", null],
      ["spare", expect.stringContaining("no receiver")],
    ]);
  });
});

describe("the demo venue", () => {
  test("every place of the table is what the venue's own walls and crowd make of it, best first", async () => {
    const { systems } = await json([DEMO]);
    expect(systems.map(({ system }) => system)).toEqual(["hall", "foyer", "studio"]);
    for (const { places, fields } of systems) {
      const margins = places.map(({ workingMarginDb }) => workingMarginDb);
      expect(margins).toEqual([...margins].sort((a, b) => b - a));
      for (const one of places) {
        expect(one.workingMarginDb).toBe(Math.min(...one.receivers.map((box) => box.workingMarginDb)));
        expect(one.givesUpDb).toBeCloseTo(margins[0]! - one.workingMarginDb, 9);
        if (one.from === "grid") expect(one.breaks).toEqual([]);
      }
      // The field is the same judgement: a grid point's margin is that of the cells round it.
      const [best] = places.filter(({ from }) => from === "grid");
      const [field] = fields;
      const column = Math.floor((best!.xM - field!.fromXM) / field!.stepM);
      const row = Math.floor((best!.yM - field!.fromYM) / field!.stepM);
      const here = field!.leastMarginDb[row * field!.columnCount + column]!;
      expect(Math.abs(here - best!.workingMarginDb)).toBeLessThan(1.5);
      expect(field!.leastMarginDb).toHaveLength(field!.columnCount * field!.rowCount);
    }
    // The booth is 2.1 m from the access point at (2, 15).
    const booth = systems[0]!.places.find(({ from }) => from === "planned")!;
    expect([booth.name, booth.breaks]).toEqual(["booth", ["near-access-point"]]);
  });

  test("a crowd costs margin, its figures count, and each is named", async () => {
    const leastOf = async (...args: readonly string[]): Promise<number> =>
      (await json([DEMO, "--system", "hall", "--candidates-only", ...args])).systems[0]!.places[0]!
        .workingMarginDb;
    const [empty, full, quiet] = [
      await leastOf("--crowd", "empty"),
      await leastOf(),
      await leastOf("--carried-share", "0"),
    ];
    expect(full).toBeLessThan(empty);
    expect(quiet).toBeGreaterThan(full);
  });

  test("text opens with a block for each system and fits 80 columns, in metres and feet, as a process", async () => {
    for (const units of ["m", "ft"]) {
      const { code, out } = await stillband(["place", DEMO, "--units", units]);
      expect(code).toBe(0);
      for (const line of out.split("\n")) expect(columnsOf(line), line).toBeLessThanOrEqual(80);
      const block = firstBlock(out);
      expect(block.length).toBeLessThanOrEqual(8);
      expect(block[0]).toMatch(/^System {4}hall: 13 receivers, full house, on radio ch \d+ \(\d{4} MHz\)$/);
      expect(block[1]).toMatch(/^Place {5}.*: [x!o*] (?:fails|thin|sound|ample)/);
      expect(out).toMatch(new RegExp(`grid point at [\\d., -]+ ${units}, \\d+\\.\\d ${units} up: [x!o*] `));
    }
  });
});

describe("what is asked wrongly", () => {
  const path = file("wrong.yaml", house());
  test.each([
    [["--system", "mian"], '--system: expected a system of the venue file (main), got "mian"'],
    [["--candidates-only", "--grid"], "--candidates-only and --grid exclude each other"],
    [["--step", "0"], "--step: expected a length > 0"],
    [["--height", "up"], "--height: expected a length > 0"],
    [["--antenna", "dish"], "--antenna: expected"],
    [["--crowd", "packed"], "--crowd: expected empty, part or full"],
  ])("%j is a usage error", async (args, words) => {
    const { code, out, err } = await inProcess(["place", path, ...args]);
    expect([code, out]).toEqual([64, ""]);
    expect(err).toContain(words);
  });

  test("a step that makes too many points is one, too; a venue that isn't there is exit 66", async () => {
    const fine = await inProcess(["place", path, "--step", "0.001"]);
    expect([fine.code, fine.err]).toEqual([64, expect.stringContaining("--step") as string]);
    expect((await inProcess(["place", `${path}x`])).code).toBe(66);
  });
});
