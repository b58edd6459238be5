import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { brickWall, spectralOverlapDb, totalPower, transmitShapes } from "../../src/band/index.js";
import type { Shape, ShapePoint } from "../../src/band/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { arbitraryShape, symmetricShape } from "../helpers/arbitrary-shape.js";
import { midpointIntegral, numericOverlapRatio } from "../helpers/numeric-overlap.js";
import { referenceCsv } from "../helpers/reference-csv.js";

const toDb = (ratio: number): number => 10 * Math.log10(ratio);
const triangle: Shape = {
  points: [
    [-10, -20],
    [0, 0],
    [10, -20],
  ],
};
const offsets = fc.integer({ min: -500, max: 500 }).map((value) => value / 10);

describe("spectralOverlapDb, by hand", () => {
  it("puts a tenth of a flat 20 MHz into 2 MHz", () => {
    expect(spectralOverlapDb(brickWall(20), brickWall(2), 0)).toBeCloseTo(-10, 12);
    expect(spectralOverlapDb(brickWall(20), brickWall(2), 9)).toBeCloseTo(-10, 12);
  });

  it("puts half of it there where the edge cuts the receiver in two", () => {
    expect(spectralOverlapDb(brickWall(20), brickWall(2), 10)).toBeCloseTo(toDb(1 / 20), 12);
  });

  it("takes all of a narrow emitter into a wide receiver", () => {
    expect(spectralOverlapDb(brickWall(2), brickWall(20), 5)).toBeCloseTo(0, 12);
  });

  it("is no power at all where the two don't meet", () => {
    expect(spectralOverlapDb(brickWall(20), brickWall(2), 11)).toBe(-Infinity);
    expect(spectralOverlapDb(brickWall(20), brickWall(2), -50)).toBe(-Infinity);
  });

  // A triangle of 2 dB/MHz: ∫ from 0 to x of 10^(−0.2·f) df = (1 − 10^(−0.2·x)) / (0.2·ln 10).
  it("integrates a triangular shape in closed form", () => {
    const upTo = (mhz: number): number => (1 - 10 ** (-0.2 * mhz)) / (0.2 * Math.LN10);
    expect(totalPower(triangle)).toBeCloseTo(2 * upTo(10), 12);
    expect(spectralOverlapDb(triangle, brickWall(4), 0)).toBeCloseTo(toDb(upTo(2) / upTo(10)), 12);
    const right = (upTo(6) - upTo(4)) / (2 * upTo(10));
    expect(spectralOverlapDb(triangle, brickWall(2), 5)).toBeCloseTo(toDb(right), 12);
    expect(spectralOverlapDb(triangle, brickWall(2), -5)).toBeCloseTo(toDb(right), 12);
  });

  // ∫ of 10^(d·f/10) over one MHz = (e^a − 1)/a with a = d·ln 10/10, which expm1 gives to the last digits.
  it.each([1e-9, 1e-4, 5e-4, 8e-4, 1e-3, 0.01, 1, 8.6, 8.7, 40])("integrates a rise of %s dB", (riseDb) => {
    const a = (riseDb * Math.LN10) / 10;
    for (const sign of [1, -1]) {
      const exact = Math.expm1(sign * a) / (sign * a);
      const points = [
        [0, 0],
        [1, sign * riseDb],
      ] as const;
      expect(totalPower({ points }) / exact).toBeCloseTo(1, 12);
    }
  });

  // The product of two triangles falls at 4 dB/MHz on both sides.
  it("multiplies two triangles", () => {
    const product = (1 - 10 ** (-0.4 * 10)) / (0.4 * Math.LN10);
    const alone = (1 - 10 ** (-0.2 * 10)) / (0.2 * Math.LN10);
    expect(spectralOverlapDb(triangle, triangle, 0)).toBeCloseTo(toDb(product / alone), 12);
  });

  // DSSS: 22 MHz flat, 22 MHz at −30, 156 MHz at −50 dBr: 22 + 0.022 + 0.00156 = 22.02356 MHz.
  it("adds up the DSSS steps", () => {
    expect(totalPower(transmitShapes.dsss22)).toBeCloseTo(22.02356, 12);
    expect(spectralOverlapDb(transmitShapes.dsss22, brickWall(1), 15)).toBeCloseTo(toDb(1e-3 / 22.02356), 10);
    expect(spectralOverlapDb(transmitShapes.dsss22, brickWall(1), -60)).toBeCloseTo(
      toDb(1e-5 / 22.02356),
      10,
    );
  });
});

describe("spectralOverlapDb against numeric integration", () => {
  // Midpoint rule, 4000 steps between breakpoints. Its relative error on e^(k·f) is (k·h)²/24: with at most
  // 60 dB over a stretch k·(stretch) ≤ 13.8, so (13.8/4000)²/24 = 5e-7 = 2.2e-6 dB.
  it("agrees for random shapes to 1e-5 dB", () => {
    fc.assert(
      fc.property(arbitraryShape, arbitraryShape, offsets, (emitter, receiver, offsetMhz) => {
        const expected = toDb(numericOverlapRatio(emitter, receiver, offsetMhz, 4000));
        const overlapDb = spectralOverlapDb(emitter, receiver, offsetMhz);
        if (expected === -Infinity) expect(overlapDb).toBe(-Infinity);
        else expect(Math.abs(overlapDb - expected)).toBeLessThan(1e-5);
      }),
      { numRuns: 60 },
    );
  });
});

describe("spectralOverlapDb, invariants", () => {
  it("gives all of its power to a receiver that lets all pass", () => {
    fc.assert(
      fc.property(arbitraryShape, (emitter) => {
        expect(Math.abs(spectralOverlapDb(emitter, brickWall(200), 0))).toBeLessThan(1e-9);
      }),
    );
  });

  it("is symmetric in the offset for symmetric shapes", () => {
    fc.assert(
      fc.property(symmetricShape, symmetricShape, offsets, (emitter, receiver, offsetMhz) => {
        const right = spectralOverlapDb(emitter, receiver, offsetMhz);
        const left = spectralOverlapDb(emitter, receiver, -offsetMhz);
        if (right === -Infinity) expect(left).toBe(-Infinity);
        else expect(left).toBeCloseTo(right, 9);
      }),
    );
  });

  it("doesn't change when a piece is split at its midpoint", () => {
    const split = ({ points }: Shape): Shape => ({
      points: points.flatMap(([mhz, dbr], index): ShapePoint[] => {
        const next = points[index + 1];
        return next === undefined
          ? [[mhz, dbr]]
          : [
              [mhz, dbr],
              [(mhz + next[0]) / 2, (dbr + next[1]) / 2],
            ];
      }),
    });
    fc.assert(
      fc.property(arbitraryShape, arbitraryShape, offsets, (emitter, receiver, offsetMhz) => {
        const whole = spectralOverlapDb(emitter, receiver, offsetMhz);
        for (const [e, r] of [
          [split(emitter), receiver],
          [emitter, split(receiver)],
        ] as const) {
          const parts = spectralOverlapDb(e, r, offsetMhz);
          if (whole === -Infinity) expect(parts).toBe(-Infinity);
          else expect(parts).toBeCloseTo(whole, 9);
        }
      }),
    );
  });

  it("never takes in less when the receiver is wider", () => {
    const widths = fc.tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 400 }));
    fc.assert(
      fc.property(arbitraryShape, widths, offsets, (emitter, [narrow, more], offsetMhz) => {
        const narrowDb = spectralOverlapDb(emitter, brickWall(narrow / 10), offsetMhz);
        const wideDb = spectralOverlapDb(emitter, brickWall((narrow + more) / 10), offsetMhz);
        expect(wideDb).toBeGreaterThanOrEqual(narrowDb - 1e-9);
      }),
    );
  });

  it("doesn't depend on the emitter's reference level, however far down or however steep", () => {
    const lowered = (byDb: number): Shape => ({
      points: triangle.points.map(([mhz, dbr]): ShapePoint => [mhz, dbr - byDb]),
    });
    const overlapDb = spectralOverlapDb(triangle, brickWall(4), 0);
    for (const byDb of [10, 300, 5000])
      expect(spectralOverlapDb(lowered(byDb), brickWall(4), 0)).toBeCloseTo(overlapDb, 9);
  });

  it("gives no NaN for a shape that falls to 'nothing' written as −9999 dB", () => {
    const steep: Shape = {
      points: [
        [-2, -9999],
        [-1, 0],
        [1, 0],
        [2, -9999],
      ],
    };
    // The flanks hold ∫ 10^(−999.9·f) df = 1/(999.9·ln 10) MHz each.
    expect(totalPower(steep)).toBeCloseTo(2 + 2 / (999.9 * Math.LN10), 9);
  });
});

/**
 * ns-3's shapes as fixtures/reference/README.md states them: flat part and nulls in MHz, then the corners of the skirt.
 */
interface SimulatedShape {
  readonly ours: Shape;
  readonly flatMhz: number;
  readonly binMhz: number;
  /** Null carriers at −20 dBr: centre and width. */
  readonly nulls: readonly (readonly [centreMhz: number, widthMhz: number])[];
  readonly channelMhz: number;
  readonly shoulderMhz: number;
  readonly floorDbr: number;
}

const BIN_MHZ = 0.3125;
const SIMULATED: Record<string, SimulatedShape> = {
  ofdm20: {
    ours: transmitShapes.erpOfdm20,
    flatMhz: 52 * BIN_MHZ,
    binMhz: BIN_MHZ,
    nulls: [[0, BIN_MHZ]],
    channelMhz: 20,
    shoulderMhz: 11,
    floorDbr: -40,
  },
  ht20_floor45: {
    ours: transmitShapes.ht20,
    flatMhz: 56 * BIN_MHZ,
    binMhz: BIN_MHZ,
    nulls: [[0, BIN_MHZ]],
    channelMhz: 20,
    shoulderMhz: 11,
    floorDbr: -45,
  },
  ht40_floor45: {
    ours: transmitShapes.ht40,
    flatMhz: 112 * BIN_MHZ,
    binMhz: BIN_MHZ,
    nulls: [
      [-10, BIN_MHZ],
      [0, 7 * BIN_MHZ],
      [10, BIN_MHZ],
    ],
    channelMhz: 40,
    shoulderMhz: 21,
    floorDbr: -45,
  },
  he20: {
    ours: transmitShapes.he20,
    flatMhz: 242 * 0.078125,
    binMhz: 0.078125,
    nulls: [[0, 3 * 0.078125]],
    channelMhz: 20,
    shoulderMhz: 10.25,
    floorDbr: -40,
  },
};

const ROWS = referenceCsv("overlap.csv").map((row) => ({
  shape: row["shape"]!,
  victimMhz: Number(row["victim_bw_mhz"]),
  offsetMhz: Number(row["offset_mhz"]),
  ratioDb: row["fraction_db"] === "-inf" ? -Infinity : Number(row["fraction_db"]),
}));

/** Half of what the flat part and the null carriers in it span. */
function flatEdgeMhz({ flatMhz, nulls }: SimulatedShape): number {
  return (flatMhz + nulls.reduce((sum, [, widthMhz]) => sum + widthMhz, 0)) / 2;
}

/** Total power of ns-3's shape in units of 0 dBr · MHz. */
function simulatedTotal(shape: SimulatedShape): number {
  const { shoulderMhz, channelMhz, floorDbr, flatMhz, binMhz, nulls } = shape;
  // From the outermost carrier six bins down to −20 dBr: five of them lie between.
  const edge = [1, 2, 3, 4, 5].reduce((sum, bin) => sum + binMhz * 10 ** ((-20 * bin) / 6 / 10), 0);
  const corners: ShapePoint[] = [
    [flatEdgeMhz(shape) + 5 * binMhz, -20],
    [shoulderMhz, -20],
    [channelMhz, -28],
    [1.5 * channelMhz, floorDbr],
  ];
  const skirt = corners.slice(1).reduce((sum, [endMhz, endDb], index) => {
    const [startMhz, startDb] = corners[index]!;
    const levelDbAt = (mhz: number): number =>
      startDb + ((endDb - startDb) * (mhz - startMhz)) / (endMhz - startMhz);
    return sum + midpointIntegral(levelDbAt, [startMhz, endMhz], 1000);
  }, 0);
  return flatMhz + 2 * (edge + skirt) + nulls.reduce((sum, [, widthMhz]) => sum + widthMhz / 100, 0);
}

/** What ns-3's null carriers take out of a window of the flat part, as a ratio of the window. */
function filledRatio(nulls: SimulatedShape["nulls"], lowMhz: number, highMhz: number): number {
  const missingMhz = nulls.reduce((sum, [centreMhz, widthMhz]) => {
    const inside = Math.min(highMhz, centreMhz + widthMhz / 2) - Math.max(lowMhz, centreMhz - widthMhz / 2);
    return sum + Math.max(0, inside) * 0.99;
  }, 0);
  return 1 - missingMhz / (highMhz - lowMhz);
}

describe.each(Object.entries(SIMULATED))("spectralOverlapDb against ns-3: %s", (name, shape) => {
  const rows = ROWS.filter((row) => row.shape === name);
  const normalisationDb = toDb(simulatedTotal(shape) / totalPower(shape.ours));
  const differenceDb = ({ victimMhz, offsetMhz, ratioDb }: (typeof ROWS)[number]): number =>
    spectralOverlapDb(shape.ours, brickWall(victimMhz), offsetMhz) - ratioDb;

  // Both flat here, so the difference is the ratio of total powers and what ns-3's null carriers lack. 0.02 dB: the
  // five bins of ns-3's shoulder count 0.4 MHz a side; half a bin of doubt there at −10 dBr (0.016 MHz of 17) is
  // 0.004 dB a side, at each end of the shoulder.
  it.each([1, 2, 5])("agrees inside the flat part at %d MHz to 0.02 dB", (windowMhz) => {
    const half = windowMhz / 2;
    const inside = rows.filter(
      ({ victimMhz, offsetMhz }) =>
        victimMhz === windowMhz &&
        Math.abs(offsetMhz) + half <= Math.min(flatEdgeMhz(shape), shape.channelMhz / 2 - 1),
    );
    expect(inside.length).toBeGreaterThanOrEqual(5);
    for (const row of inside) {
      const filledDb = toDb(filledRatio(shape.nulls, row.offsetMhz - half, row.offsetMhz + half));
      expect(Math.abs(differenceDb(row) - (normalisationDb - filledDb))).toBeLessThan(0.02);
    }
  });

  // The two masks are the same line here. 0.05 dB: ns-3's density is constant in a bin and its slope starts at a
  // bin's edge, so its line lies up to half a bin (0.156 MHz) off ours; 0.9–1.7 dB/MHz on part of the window.
  // A narrower window is cut through a bin at either edge: half a bin off on at most a bin's share of the window,
  // 0.27 dB · 0.31 of 1 MHz at each edge makes 0.15 dB, half of it and the 0.05 above 0.1 dB for 2 MHz.
  it.each([
    [1, 0.15],
    [2, 0.1],
    [5, 0.05],
  ])("agrees in the skirt at %d MHz to %d dB beside the ratio of total powers", (windowMhz, toleranceDb) => {
    const skirt = rows.filter(
      ({ victimMhz, offsetMhz }) =>
        victimMhz === windowMhz &&
        Math.abs(offsetMhz) - windowMhz / 2 >= shape.shoulderMhz + BIN_MHZ &&
        Math.abs(offsetMhz) + windowMhz / 2 <= 1.5 * shape.channelMhz - BIN_MHZ,
    );
    expect(skirt.length).toBeGreaterThanOrEqual(14);
    for (const row of skirt) expect(Math.abs(differenceDb(row) - normalisationDb)).toBeLessThan(toleranceDb);
  });

  // Each takes in between half and all of the power: with the same power outside the window the two differ by less
  // than by their total powers, and by the nulls that ns-3 has in the window.
  it("agrees at 20 MHz while the victim covers at least half of a 20 MHz transmitter", () => {
    const covering = rows.filter(
      ({ victimMhz, offsetMhz }) => victimMhz === 20 && Math.abs(offsetMhz) <= shape.channelMhz / 2 - 10 + 10,
    );
    const nullsMhz = shape.nulls.reduce((sum, [, widthMhz]) => sum + widthMhz, 0);
    const boundDb = Math.abs(normalisationDb) + (shape.channelMhz === 20 ? 0.02 : -toDb(1 - nullsMhz / 20));
    expect(covering.length).toBeGreaterThanOrEqual(11);
    for (const row of covering) expect(Math.abs(differenceDb(row))).toBeLessThan(boundDb);
  });
});

describe("spectralOverlapDb against ns-3: dsss", () => {
  // ns-3's block is 70 bins = 21.875 MHz flat with nothing outside; ours adds the mask's skirts to 22.02356 MHz.
  const normalisationDb = toDb(21.875 / 22.02356);

  it.each([1, 2, 5])("agrees in-band at %d MHz to 1e-6 dB beside the ratio of total powers", (windowMhz) => {
    const inside = ROWS.filter(
      ({ shape, victimMhz, offsetMhz }) =>
        shape === "dsss" &&
        victimMhz === windowMhz &&
        offsetMhz - windowMhz / 2 >= -11.09 &&
        offsetMhz + windowMhz / 2 <= 10.78,
    );
    expect(inside.length).toBeGreaterThanOrEqual(9);
    for (const { offsetMhz, ratioDb } of inside) {
      const overlapDb = spectralOverlapDb(transmitShapes.dsss22, brickWall(windowMhz), offsetMhz);
      expect(overlapDb - ratioDb).toBeCloseTo(normalisationDb, 6);
    }
  });

  it("has power where ns-3 has none: the mask's own skirt", () => {
    const outside = ROWS.filter(
      ({ shape, victimMhz, ratioDb }) => shape === "dsss" && victimMhz === 5 && ratioDb === -Infinity,
    );
    expect(outside.length).toBeGreaterThan(20);
    for (const { offsetMhz } of outside)
      expect(spectralOverlapDb(transmitShapes.dsss22, brickWall(5), offsetMhz)).toBeGreaterThan(-60);
  });
});

describe("spectralOverlapDb and totalPower, mistakes", () => {
  it.each([Number.NaN, Infinity, -Infinity])("throws for an offset of %s MHz", (offsetMhz) => {
    expect(() => spectralOverlapDb(brickWall(20), brickWall(2), offsetMhz)).toThrow(ArgumentError);
  });

  it("throws for a shape without width on either side", () => {
    const flat: Shape = { points: [[0, 0]] };
    expect(() => spectralOverlapDb(flat, brickWall(2), 0)).toThrow(ArgumentError);
    expect(() => spectralOverlapDb(brickWall(2), flat, 0)).toThrow(ArgumentError);
  });
});
