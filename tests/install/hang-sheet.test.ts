import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ArgumentError,
  BOX_LIMIT_KG,
  feetInchesText,
  HANG_FLAG_WORDS,
  hangSheet,
  RATING_NOT_GIVEN,
} from "../../src/index.js";
import type { HangFigures, HangOptions, HangPoint, HangRow } from "../../src/index.js";

const inch = (inches: number): number => inches * 0.0254; // exact: international inch of 1959
const foot = (feet: number, inches = 0): number => inch(12 * feet + inches);
const text = (lengthM: number | null): string => feetInchesText(lengthM!, 16);

const point = (name: string, ceilingHeightM: number | null, more: Partial<HangPoint> = {}): HangPoint => ({
  ...{ name, room: "rope walk", ceilingHeightM, trimHeightM: null, weightKg: 9, emergency: "no" },
  ...more,
});

/** Common practice figures: a chain of 1 1/4 in links, six inches of hardware, a body of a foot and a half. */
const imperial: Partial<HangFigures> = {
  ...{ stepM: inch(1.25), canopyM: inch(2), topHookM: inch(1.5), bottomHookM: inch(1.5), eyeBoltM: inch(1) },
  ...{ bodyHeightM: inch(18), boxMakeUpM: inch(12), inletReachM: inch(8), safetySlackM: inch(12) },
};
const ceilings = [foot(26), foot(27, 4), foot(28, 7.5), foot(29, 10), foot(31)];
const room21: HangOptions = {
  points: ceilings.map((ceilingHeightM, index) => point(`R${index + 1}`, ceilingHeightM)),
  rooms: [{ room: "rope walk", trimHeightM: foot(21), laserLineM: foot(5) }],
  figures: imperial,
};

describe("a room trimmed at 21 ft under ceilings of 26 to 31 ft, by hand in inches", () => {
  const { rows, levels, suspensions, cord, safety, datums } = hangSheet(room21);
  const each = (read: (row: HangRow) => number | null): string[] => rows.map((row) => text(read(row)));

  test("drop = ceiling − trim − 6 in of hardware − 18 in of body", () => {
    // 60 − 24, 76 − 24, 91.5 − 24, 106 − 24, 120 − 24
    expect(each(({ dropM }) => dropM)).toEqual([`3' 0"`, `4' 4"`, `5' 7 1/2"`, `6' 10"`, `8' 0"`]);
  });
  test("links: 28.8, 41.6, 54, 65.6 and 76.8 rounded down; the 54 gives one up for the level", () => {
    expect(rows.map(({ stepCount }) => stepCount)).toEqual([28, 41, 53, 65, 76]);
    expect(each(({ suspensionM }) => suspensionM)).toEqual([
      ...[`2' 11"`, `4' 3 1/4"`, `5' 6 1/4"`, `6' 9 1/4"`, `7' 11"`],
    ]);
    expect(each(({ trimErrorM }) => trimErrorM)).toEqual([
      ...[`0' 1"`, `0' 0 3/4"`, `0' 1 1/4"`, `0' 0 3/4"`, `0' 1"`],
    ]);
    expect(levels).toHaveLength(1);
    // 1 1/4 − 3/4 = 1/2 in; without the level it would be 1 in.
    expect(text(levels[0]!.spreadM)).toBe(`0' 0 1/2"`);
    expect(levels[0]!.uneven).toEqual([]);
  });
  test("cord = chain + 6 + 10 % weave + 12 + 8 in, and the sum with a tenth on top", () => {
    expect(each((row) => row.cord!.lengthM)).toEqual([
      ...[`5' 4 1/2"`, `6' 10 3/8"`, `8' 2 7/8"`, `9' 7 3/8"`, `10' 10 1/2"`],
    ]);
    // 64.5 + 82.375 + 98.875 + 115.375 + 130.5 = 491.625 in
    expect(text(cord.lengthM)).toBe(`40' 11 5/8"`);
    expect(cord.orderM / 0.0254).toBeCloseTo(540.7875, 9);
    expect(cord.spoolCount).toBeNull();
  });
  test("safety cable = chain + 6 + 12 in straight down; links in sum; 16 ft above the laser line", () => {
    expect(text(rows[0]!.safetyM)).toBe(`4' 5"`);
    expect(safety.pieceCount).toBe(5);
    expect(suspensions).toHaveLength(1);
    // 28 + 41 + 53 + 65 + 76 = 263 links of 1 1/4 in
    expect(suspensions[0]).toMatchObject({ suspension: "chain", stepCount: 263 });
    expect(suspensions[0]!.order.lengthM / 0.0254).toBeCloseTo(328.75, 9);
    expect(rows.map(({ trimAboveLineM }) => text(trimAboveLineM))).toEqual(Array(5).fill(`16' 0"`));
    expect(datums).toEqual([{ room: "rope walk", laserLineM: foot(5) }]);
  });
  test("the same venue typed in metres agrees: the decimal metres of the same lengths", () => {
    const metric = hangSheet({
      points: [7.9248, 8.3312, 8.7249, 9.0932, 9.4488].map((heightM, i) => point(`R${i + 1}`, heightM)),
      rooms: [{ room: "rope walk", trimHeightM: 6.4008, laserLineM: 1.524 }],
      figures: {
        ...{ stepM: 0.03175, canopyM: 0.0508, topHookM: 0.0381, bottomHookM: 0.0381, eyeBoltM: 0.0254 },
        ...{ bodyHeightM: 0.4572, boxMakeUpM: 0.3048, inletReachM: 0.2032, safetySlackM: 0.3048 },
      },
    });
    metric.rows.forEach((row, index) => {
      const other = rows[index]!;
      expect(row.stepCount).toBe(other.stepCount);
      for (const key of ["dropM", "suspensionM", "trimErrorM", "safetyM", "trimAboveLineM"] as const)
        expect(row[key]).toBeCloseTo(other[key]!, 9);
      expect(row.cord!.lengthM).toBeCloseTo(other.cord!.lengthM, 9);
      expect(row.flags).toEqual(other.flags);
    });
  });
});

describe("a room trimmed at 6.4 m, by hand in millimetres", () => {
  const figures: Partial<HangFigures> = {
    ...{ stepM: 0.03, canopyM: 0.05, topHookM: 0.04, bottomHookM: 0.04, eyeBoltM: 0.02, bodyHeightM: 0.45 },
    ...{ weaveRatio: 0.1, boxMakeUpM: 0.3, inletReachM: 0.25, safetySlackM: 0.2 },
  };
  const sheet = (points: readonly HangPoint[], more: Partial<HangOptions> = {}) =>
    hangSheet({ points, figures, rooms: [{ room: "rope walk", trimHeightM: 6.4 }], ...more });
  const mm = (lengthM: number | null): number => Math.round(lengthM! * 1e6) / 1e3;

  test("8000 − 6400 − 150 − 450 = 1000 mm: 33 links, 10 mm high; 1350 mm: 45 links, to the millimetre", () => {
    const { rows } = sheet([point("A", 8), point("B", 8.35)]);
    expect(rows.map((row) => [mm(row.dropM), row.stepCount, mm(row.trimErrorM)])).toEqual([
      [1000, 33, 10],
      [1350, 45, 0],
    ]);
    // 990 + 150 + 99 + 300 + 250
    expect(mm(rows[0]!.cord!.lengthM)).toBe(1789);
  });
  test("a rope is cut to the drop, a safety cable reaches its own anchor: 40 and 9 make 41", () => {
    const rope = { suspension: "wire-rope", safetyOffsetM: 0.225 } as const;
    const [row] = sheet([point("A", 7.85, rope)]).rows;
    // 7850 − 6400 − 600 = 850; 850 + 150 = 1000; hypot(1000, 225) = 1025; + 200
    expect([row!.stepCount, mm(row!.suspensionM), row!.trimErrorM, mm(row!.safetyM)]).toEqual([
      ...[null, 850, 0, 1225],
    ]);
  });
  test("a rope has no links, whoever gave a pitch", () => {
    const rope = { suspension: "wire-rope", stepM: 0.3 } as const;
    const own = sheet([point("A", 7.85, rope)]).rows[0]!;
    expect([own.stepM, own.stepCount, mm(own.suspensionM)]).toEqual([null, null, 850]);
  });
  test("a stem of any length, or in steps of its own; the chain's pitch is not its", () => {
    const { rows } = sheet([
      point("A", 8, { suspension: "stem" }),
      point("B", 8, { suspension: "stem", stepM: 0.15 }),
    ]);
    expect(rows.map((row) => [row.stepCount, mm(row.suspensionM)])).toEqual([
      [null, 1000],
      [6, 900],
    ]);
  });
  test("trim is from the datum; from the local floor only where told; ceilings are above the floor under them", () => {
    const { rows } = sheet([
      point("A", 8),
      point("B", 7.4, { floorOffsetM: 0.6 }),
      point("C", 7.4, { floorOffsetM: 0.6, trimHeightM: 5.8, trimFrom: "local-floor" }),
    ]);
    for (const row of rows)
      expect([mm(row.ceilingHeightM), mm(row.trimHeightM), mm(row.dropM)]).toEqual([8000, 6400, 1000]);
  });
  test("a ceiling too low, or a height that nobody gave, leaves lengths open and says which", () => {
    const { rows, cord } = sheet([
      point("low", 6.9),
      point("no ceiling", null),
      point("no trim", 8, { room: "yard" }),
      point("no body", 8, { bodyHeightM: null }),
      point("just", 7),
    ]);
    expect(rows.map(({ name, gap }) => [name, gap])).toEqual([
      ["low", "no-room"],
      ["no ceiling", "ceiling-height"],
      ["no body", null], // the sheet's figure stands in
      ["just", null],
      ["no trim", "trim-height"],
    ]);
    expect(rows.find(({ name }) => name === "just")).toMatchObject({ stepCount: 0, suspensionM: 0 });
    expect(rows[0]).toMatchObject({ suspensionM: null, cord: null, safetyM: null, trimErrorM: null });
    expect(cord.pieceCount).toBe(2);
    const bare = hangSheet({
      points: [point("A", 8, { trimHeightM: 6 }), point("B", 8, { trimHeightM: 6, bodyHeightM: 0.5 })],
    });
    expect(bare.rows.map(({ gap }) => gap)).toEqual(["body-height", "step"]);
    expect(bare.rows[0]!.assumed).toContain("canopyM");
    expect(rows[0]!.assumed).not.toContain("canopyM");
  });
  test("who comes out uneven is flagged: a coarse chain beside a rope", () => {
    const coarse = { stepM: 0.1 };
    const { rows, levels } = sheet([
      point("A", 8, { suspension: "wire-rope" }),
      point("B", 8, { suspension: "wire-rope" }),
      point("C", 8.06, coarse),
    ]);
    // C: 1060 mm in links of 100: 60 mm high
    expect(levels[0]).toMatchObject({ uneven: ["C"] });
    expect(mm(rows[2]!.unevenM)).toBe(60);
    expect(rows[2]!.flags).toContain("uneven");
    expect(rows[0]!.flags).not.toContain("uneven");
    const below = sheet([point("C", 8.06, coarse)], { mayHangBelowTrim: true }).rows[0]!;
    expect([mm(below.trimErrorM), below.flags.includes("below-trim")]).toEqual([-40, true]);
  });
  test("order of hanging: given places first, then as listed, rooms and rows together", () => {
    const at = (name: string, room: string, group: string, hangIndex: number | null = null) =>
      point(name, 8, { room, group, hangIndex, trimHeightM: 6 });
    const { rows } = sheet([
      at("a1", "loft", "front"),
      at("b1", "yard", "front"),
      at("a2", "loft", "rear"),
      at("a3", "loft", "front"),
      at("b2", "yard", "front", 1),
    ]);
    expect(rows.map(({ name }) => name)).toEqual(["b2", "b1", "a1", "a3", "a2"]);
    expect(rows.map(({ hangRank }) => hangRank)).toEqual([1, 2, 3, 4, 5]);
  });
  test("a room is finished before the next, though its second row was listed later", () => {
    const at = (name: string, room: string, group: string) => point(name, 8, { room, group, trimHeightM: 6 });
    const { rows } = sheet([at("a1", "loft", "front"), at("b1", "yard", "front"), at("a2", "loft", "rear")]);
    expect(rows.map(({ name }) => name)).toEqual(["a1", "a2", "b1"]);
  });
  test("each row is level for itself", () => {
    // 1001 and 1024 mm in links of 25 mm: 1 and 24 mm high alone; in one row the first loses a link
    const drop = (name: string, dropM: number, group: string) => point(name, 7 + dropM, { group });
    const counts = (groups: readonly [string, string]) =>
      sheet([drop("A", 1.001, groups[0]), drop("B", 1.024, groups[1])], {
        figures: { ...figures, stepM: 0.025 },
      }).rows.map(({ stepCount }) => stepCount);
    expect(counts(["front", "front"])).toEqual([39, 40]);
    expect(counts(["front", "rear"])).toEqual([40, 40]);
  });
  test("spools: each piece whole, and the waste", () => {
    // Cords of 1789 mm: two from a spool of 4 m, so four spools for seven, though 7·1.789·1.1 = 13.8 m
    const points = Array.from({ length: 7 }, (_, index) => point(`P${index}`, 8));
    expect(sheet(points, { cordSpoolM: 4 }).cord).toMatchObject({ spoolCount: 4, tooLongCount: 0 });
    expect(sheet(points, { cordSpoolM: 1.7 }).cord).toMatchObject({ spoolCount: 0, tooLongCount: 7 });
    // 13.775 m with waste: three spools of 5 m, where packing whole pieces needs four (two each)
    expect(sheet(points, { cordSpoolM: 5 }).cord.spoolCount).toBe(4);
    expect(sheet(points, { cordSpoolM: 12.6 }).cord.spoolCount).toBe(2); // all fit in one, the waste doesn't
  });
});

describe("weight against what was typed in", () => {
  const rated: Partial<HangFigures> = {
    ...{
      stepM: 0.025,
      bodyHeightM: 0.5,
      suspensionKgPerM: 0.4,
      cordKgPerM: 0.2,
      receiverKg: 0.3,
      hardwareKg: 0.5,
    },
    ...{ weaveRatio: 0, boxMakeUpM: 0.25, inletReachM: 0.25, slopeDeg: 0 },
    ...{ suspensionRatedKg: 30, hookRatedKg: 30, boxRatedKg: 22 },
  };
  const one = (more: Partial<HangPoint>) =>
    hangSheet({ points: [point("P", 8, { trimHeightM: 6.5, ...more })], figures: rated });

  test("fixture + chain + cord + receiver + hardware, by hand: 9 + 0.4 + 0.3 + 0.3 + 0.5 = 10.5 kg", () => {
    const { rows, doNotHang } = one({});
    // drop 1 m: 40 links; cord 1 + 0.5 m
    expect(rows[0]!.load.totalKg).toBeCloseTo(10.5, 12);
    expect(rows[0]!.load.checks.map(({ part, verdict }) => `${part} ${verdict}`)).toEqual([
      ...["suspension within", "hook within", "box within", "safety rating-not-given"],
    ]);
    expect([rows[0]!.flags, doNotHang]).toEqual([[], []]);
  });
  test("a rating that nobody gave: DO NOT HANG", () => {
    for (const key of ["suspensionRatedKg", "hookRatedKg", "boxRatedKg"] as const) {
      const figures = { ...rated, [key]: null };
      const { rows, doNotHang } = hangSheet({ points: [point("P", 8, { trimHeightM: 6.5 })], figures });
      expect(rows[0]!.flags).toEqual(["rating-not-given"]);
      expect(doNotHang).toEqual(["P"]);
    }
    expect(HANG_FLAG_WORDS["rating-not-given"]).toBe(RATING_NOT_GIVEN);
    expect(RATING_NOT_GIVEN).toBe("RATING NOT GIVEN: DO NOT HANG");
  });
  test("beyond one is beyond, whatever else is unknown; a weight not given is no weight of zero", () => {
    expect(one({ weightKg: 21 }).rows[0]!.flags).toEqual(["beyond-rating"]); // 22.5 > 22
    expect(one({ weightKg: 20.5 }).rows[0]!.flags).toEqual([]); // 22.0: within, to the gram
    expect(one({ weightKg: 0, safetyRatedKg: 1 }).rows[0]!.flags).toEqual([
      "beyond-rating",
      "weight-not-given",
    ]);
    const unweighed = one({ weightKg: null });
    expect(unweighed.rows[0]!.load).toMatchObject({ totalKg: null, missing: ["luminaire"] });
    expect(unweighed.doNotHang).toEqual(["P"]);
    expect(unweighed.rows[0]!.load.checks[0]!.verdict).toBe("weight-not-given");
  });
  test("above 50 lb not from the box unless listed (NEC 314.27, from memory)", () => {
    expect(BOX_LIMIT_KG).toBeCloseTo(22.6796185, 9);
    const heavy = { weightKg: 24, boxRatedKg: 30 };
    expect(one(heavy).rows[0]!.flags).toEqual(["beyond-box-limit"]);
    expect(one({ ...heavy, boxListed: "yes" }).rows[0]!.load.boxLimit).toBe("listed");
    expect(one({ ...heavy, hangsFrom: "structure" }).rows[0]).toMatchObject({
      flags: [],
      load: { boxLimit: "not-from-box" },
    });
    expect(one({ ...heavy, hangsFrom: "structure" }).rows[0]!.load.checks[2]!.part).toBe("support");
    expect(one({ weightKg: 22.6796 - 1.5, boxRatedKg: 30 }).rows[0]!.load.boxLimit).toBe("within");
    expect(one({ weightKg: 22.6797 - 1.5, boxRatedKg: 30 }).rows[0]!.load.boxLimit).toBe("beyond");
  });
  test("a slope over 5° needs a swivel canopy; emergency lighting is told, unknown too", () => {
    expect(one({ slopeDeg: 5 }).rows[0]!.swivelCanopy).toBe("not-needed");
    expect(one({ slopeDeg: 5.1 }).rows[0]!.flags).toEqual(["swivel-canopy"]);
    const { emergency } = hangSheet({
      points: [
        point("A", 8, { emergency: "yes" }),
        { name: "B", room: "x", ceilingHeightM: 8, trimHeightM: 6, weightKg: 1 },
      ],
    });
    expect(emergency).toEqual({ names: ["A"], unknownNames: ["B"] });
  });
});

describe("any sheet", () => {
  const arbitraryPoint = fc.record({
    room: fc.constantFrom("loft", "yard"),
    group: fc.constantFrom(null, "front", "rear"),
    ceilingHeightM: fc.oneof(
      fc.constant(null),
      fc.integer({ min: 3000, max: 12000 }).map((mm) => mm / 1000),
    ),
    trimHeightM: fc.constantFrom(null, 3, 5.5),
    weightKg: fc.constantFrom(null, 4, 30),
    suspension: fc.constantFrom("chain", "wire-rope", "stem"),
    boxRatedKg: fc.constantFrom(null, 20),
    hangIndex: fc.constantFrom(null, 1, 2),
  });
  const arbitrarySheet = fc.array(arbitraryPoint, { maxLength: 25 }).map((list) => ({
    points: list.map((fields, index) => ({ name: `L${index}`, ...fields })),
    rooms: [{ room: "loft", trimHeightM: 4.2 }],
    figures: { stepM: 0.025, bodyHeightM: 0.4, cordKgPerM: 0.1, suspensionKgPerM: 0.3, receiverKg: 0.2 },
  }));

  test("holds each point once, none below trim, and its sums are its rows'", () => {
    fc.assert(
      fc.property(arbitrarySheet, (options) => {
        const { rows, cord, safety, suspensions, doNotHang, levels } = hangSheet(options);
        expect(rows.map(({ name }) => name).sort()).toEqual(options.points.map(({ name }) => name).sort());
        const sum = (read: (row: HangRow) => number | null): number =>
          rows.reduce((total, row) => total + (read(row) ?? 0), 0);
        for (const row of rows) {
          if (row.suspensionM === null) expect(row.gap).not.toBeNull();
          else {
            expect(row.trimErrorM).toBeGreaterThanOrEqual(0);
            const { suspensionM, hardwareM, weaveM, boxMakeUpM, inletReachM, lengthM } = row.cord!;
            expect(lengthM).toBeCloseTo(suspensionM + hardwareM + weaveM + boxMakeUpM + inletReachM, 12);
            // What hangs fills what there is: ceiling to trim.
            const filledM = row.hardwareM + row.suspensionM + row.bodyHeightM! + row.trimErrorM!;
            expect(filledM).toBeCloseTo(row.ceilingHeightM! - row.trimHeightM!, 9);
          }
        }
        expect(cord.lengthM).toBeCloseTo(
          sum((row) => row.cord?.lengthM ?? null),
          9,
        );
        expect(safety.lengthM).toBeCloseTo(
          sum(({ safetyM }) => safetyM),
          9,
        );
        const suspensionM = suspensions.reduce((total, { order }) => total + order.lengthM, 0);
        expect(suspensionM).toBeCloseTo(
          sum((row) => row.suspensionM),
          9,
        );
        expect(levels.flatMap(({ names }) => names).length).toBe(
          rows.filter(({ gap }) => gap === null).length,
        );
        for (const { name, boxRatedKg } of options.points)
          if (boxRatedKg === null) expect(doNotHang).toContain(name);
      }),
      { numRuns: 200 },
    );
  });
  test("refuses two of one name, a length that is none, a negative tolerance", () => {
    expect(() => hangSheet({ points: [point("A", 8), point("A", 9)] })).toThrow(ArgumentError);
    expect(() => hangSheet({ points: [point("A", NaN)] })).toThrow(ArgumentError);
    expect(() => hangSheet({ points: [], figures: { stepM: 0 } })).toThrow(ArgumentError);
    expect(() => hangSheet({ points: [], eyeToleranceM: -1 })).toThrow(ArgumentError);
    expect(() => hangSheet({ points: [point("A", 8)], cordSpoolM: 0 })).toThrow(ArgumentError);
    expect(hangSheet({ points: [] }).rows).toEqual([]);
  });
});
