import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { polarisationLossDb } from "../../src/propagation/index.js";
import type { Antenna, AntennaMount, Vector3 } from "../../src/propagation/index.js";

const rod = (mount: AntennaMount = {}): Antenna => ({ kind: "dipole", ...mount });
const NO_CAP_DB = 400;
const across: Vector3 = { x: 10, y: 0, z: 0 };

/** Two rods across the line of sight (x), one leaning by `angleDeg` within the plane across it. */
const leaning = (angleDeg: number, capDb?: number): number =>
  polarisationLossDb({
    transmitter: rod(),
    receiver: rod({ azimuthDeg: 90, tiltDeg: angleDeg }),
    direction: across,
    capDb,
  });

describe("polarisation loss", () => {
  test("of −20 log cos ψ, textbook values to two decimals", () => {
    const expected = { 0: 0, 10: 0.13, 30: 1.25, 45: 3.01, 60: 6.02, 80: 15.21 };
    for (const [angle, lossDb] of Object.entries(expected))
      expect(Math.abs(leaning(Number(angle), NO_CAP_DB) - lossDb), angle).toBeLessThan(0.0051);
  });
  test("is 3.01 dB from linear to circular and none between circular ones", () => {
    const circular: Antenna = {
      kind: "panel",
      gainDbi: 8,
      azimuthBeamwidthDeg: 70,
      elevationBeamwidthDeg: 70,
      polarisation: "circular",
    };
    for (const other of [rod(), rod({ mounting: "sideways", azimuthDeg: 90 }), rod({ tiltDeg: 33 })]) {
      const pair = { transmitter: circular, receiver: other, direction: across };
      expect(polarisationLossDb(pair)).toBeCloseTo(3.01, 2);
      const back = { transmitter: other, receiver: circular, direction: across };
      expect(polarisationLossDb(back)).toBeCloseTo(3.01, 2);
    }
    expect(polarisationLossDb({ transmitter: circular, receiver: circular, direction: across })).toBe(0);
  });
  test("indoors ends at 10 dB (assumed), or at the cap that is given", () => {
    expect(leaning(90)).toBe(10);
    expect(leaning(80)).toBe(10);
    expect(leaning(60)).toBeCloseTo(6.02, 2);
    expect(leaning(90, 15)).toBe(15);
    expect(leaning(45, 0)).toBe(0);
  });
  test("counts only what is seen along the line of sight: rods leaning along it still agree", () => {
    const along = { transmitter: rod(), receiver: rod({ tiltDeg: 70 }), direction: across };
    expect(polarisationLossDb(along)).toBeCloseTo(0, 9);
    const panel: Antenna = { kind: "panel", gainDbi: 8, azimuthBeamwidthDeg: 70, elevationBeamwidthDeg: 70 };
    expect(polarisationLossDb({ transmitter: panel, receiver: rod(), direction: across })).toBeCloseTo(0, 9);
    const laid: Antenna = { ...panel, mounting: "sideways" };
    expect(polarisationLossDb({ transmitter: laid, receiver: rod(), direction: across })).toBe(10);
  });
  test("is none for an isotropic end, nor where an axis lies along the line", () => {
    const isotropic: Antenna = { kind: "isotropic" };
    const laid = rod({ mounting: "sideways", azimuthDeg: 90 });
    expect(polarisationLossDb({ transmitter: isotropic, receiver: laid, direction: across })).toBe(0);
    const up = { x: 0, y: 0, z: 3 };
    expect(polarisationLossDb({ transmitter: rod(), receiver: laid, direction: up })).toBe(0);
  });
  test("equals the projections written out, is the same both ways and under a common turn", () => {
    const mount = fc.record({
      mounting: fc.constantFrom("upright", "sideways", "hanging" as const),
      azimuthDeg: fc.integer({ min: -180, max: 180 }),
      tiltDeg: fc.integer({ min: -80, max: 80 }),
    });
    const coordinate = fc.integer({ min: 1, max: 20 });
    const direction = fc.record({ x: coordinate, y: coordinate, z: coordinate });
    fc.assert(
      fc.property(
        mount,
        mount,
        direction,
        fc.integer({ min: 0, max: 359 }),
        (one, other, towards, turnDeg) => {
          const pair = { transmitter: rod(one), receiver: rod(other), direction: towards, capDb: 30 };
          const lossDb = polarisationLossDb(pair);
          expect(lossDb).toBeCloseTo(Math.min(30, byProjection(one, other, towards)), 6);
          const back = { x: -towards.x, y: -towards.y, z: -towards.z };
          const swapped = {
            ...pair,
            transmitter: pair.receiver,
            receiver: pair.transmitter,
            direction: back,
          };
          expect(polarisationLossDb(swapped)).toBeCloseTo(lossDb, 6);
          const [c, s] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
          const turned = {
            transmitter: rod({ ...one, azimuthDeg: one.azimuthDeg + turnDeg }),
            receiver: rod({ ...other, azimuthDeg: other.azimuthDeg + turnDeg }),
            direction: { x: c * towards.x - s * towards.y, y: s * towards.x + c * towards.y, z: towards.z },
            capDb: 30,
          };
          expect(polarisationLossDb(turned)).toBeCloseTo(lossDb, 6);
        },
      ),
      { seed: 14, numRuns: 300 },
    );
  });
  test("refuses what it can't be computed with", () => {
    const pair = { transmitter: rod(), receiver: rod(), direction: across };
    for (const [argument, more] of [
      ["direction", { direction: { x: 0, y: 0, z: 0 } }],
      ["direction.z", { direction: { x: 0, y: 0, z: NaN } }],
      ["capDb", { capDb: -1 }],
      ["capDb", { capDb: Infinity }],
      ["tiltDeg", { receiver: rod({ tiltDeg: -90.1 }) }],
      ["mounting", { transmitter: rod({ mounting: "flat" as "upright" }) }],
      ["polarisation", { receiver: { kind: "panel", polarisation: "oval" } as unknown as Antenna }],
    ] as const)
      expect(() => polarisationLossDb({ ...pair, ...more })).toThrow(expect.objectContaining({ argument }));
  });
});

/** Each axis less its part along the line of sight, by components; then the angle's cosine. */
function byProjection(one: AntennaMount, other: AntennaMount, towards: Vector3): number {
  const length = Math.hypot(towards.x, towards.y, towards.z);
  const sight = [towards.x / length, towards.y / length, towards.z / length];
  const seen = [one, other].map((mount) => {
    const lean = { upright: 0, sideways: 90, hanging: 180 }[mount.mounting!] + mount.tiltDeg!;
    const [a, t] = [(mount.azimuthDeg! * Math.PI) / 180, (lean * Math.PI) / 180];
    const axis = [Math.sin(t) * Math.cos(a), Math.sin(t) * Math.sin(a), Math.cos(t)];
    const part = axis.reduce((sum, value, i) => sum + value * sight[i]!, 0);
    return axis.map((value, i) => value - part * sight[i]!);
  });
  const [p, q] = [seen[0]!, seen[1]!];
  const cosine = p.reduce((sum, value, i) => sum + value * q[i]!, 0) / (Math.hypot(...p) * Math.hypot(...q));
  return -20 * Math.log10(Math.abs(cosine));
}
