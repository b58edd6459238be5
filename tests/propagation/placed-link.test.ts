import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { placedLink, placedLinkFrom } from "../../src/propagation/index.js";
import type { Antenna, LinkEnd, PlacedLinkQuery } from "../../src/propagation/index.js";

const bare = (gainDbi: number): LinkEnd => ({ antenna: null, gainDbi });
const of = (antenna: Antenna): LinkEnd => ({ antenna, gainDbi: NaN });
const DIPOLE = of({ kind: "dipole" });

/** C. A. Balanis, Antenna Theory, section 4.6: D = 1.6409, field cos(π/2·cos θ)/sin θ (from memory). */
function dipoleDbi(thetaRad: number): number {
  const field = Math.cos((Math.PI / 2) * Math.cos(thetaRad)) / Math.sin(thetaRad);
  return 10 * Math.log10(1.6409) + 20 * Math.log10(field);
}

describe("placedLink", () => {
  test("a dipole 4 m under the receiver and 3 m aside: 5 m, and the textbook's gain at that angle", () => {
    const link = placedLink({
      transmitter: DIPOLE,
      receiver: bare(2),
      transmitterAtM: { x: 1, y: 1, z: 2 },
      receiverAtM: { x: 4, y: 1, z: 6 },
      crossings: [{ lossDb: 3 }, { lossDb: 4.5 }],
    });
    expect(link.distanceM).toBeCloseTo(5, 12);
    expect(link.txGainDbi).toBeCloseTo(dipoleDbi(Math.atan2(3, 4)), 3);
    expect([link.rxGainDbi, link.polarisationLossDb, link.wallLossDb]).toEqual([2, 0, 7.5]);
    expect(link.walls.crossings.map(({ lossDb }) => lossDb)).toEqual([3, 4.5]);
    expect([link.txNull, link.rxNull]).toEqual([false, false]);
  });

  // The textbook's pattern: 30° off the axis 7.6 dB below broadside, 15° off 13.7 dB: past the 10 dB of a null.
  test.each([
    [4 * Math.tan(Math.PI / 6), false],
    [4 * Math.tan(Math.PI / 12), true],
    [0.8, true],
    [0, true],
  ])("%d m aside of straight under by 4 m: within a null %s", (asideM, isNull) => {
    const link = placedLink({
      transmitter: DIPOLE,
      receiver: bare(0),
      transmitterAtM: { x: 0, y: 0, z: 0 },
      receiverAtM: { x: asideM, y: 0, z: 4 },
    });
    expect(link.txNull).toBe(isNull);
    if (asideM === 0) expect(link.txGainDbi).toBe(-Infinity);
    else expect(link.txGainDbi).toBeCloseTo(dipoleDbi(Math.atan2(asideM, 4)), 3);
  });

  const place = fc.record({
    x: fc.double({ min: -30, max: 30, noNaN: true }),
    y: fc.double({ min: -30, max: 30, noNaN: true }),
    z: fc.double({ min: 0.1, max: 12, noNaN: true }),
  });
  const end = fc.constantFrom<LinkEnd>(
    DIPOLE,
    bare(3),
    of({ kind: "collinear", gainDbi: 6, tiltDeg: 5 }),
    of({ kind: "panel", gainDbi: 8, azimuthBeamwidthDeg: 70, elevationBeamwidthDeg: 60, azimuthDeg: 30 }),
    of({ kind: "dipole", mounting: "sideways", azimuthDeg: 70 }),
  );
  test("is the same seen from either end (reciprocity), and with antennas worked out once", () => {
    fc.assert(
      fc.property(end, end, place, place, (transmitter, receiver, transmitterAtM, receiverAtM) => {
        fc.pre(Math.hypot(transmitterAtM.x - receiverAtM.x, transmitterAtM.y - receiverAtM.y) > 0.1);
        const query: PlacedLinkQuery = { transmitter, receiver, transmitterAtM, receiverAtM };
        const there = placedLink(query);
        const back = placedLink({
          transmitter: receiver,
          receiver: transmitter,
          transmitterAtM: receiverAtM,
          receiverAtM: transmitterAtM,
        });
        expect(back.distanceM).toBeCloseTo(there.distanceM, 9);
        expect(back.polarisationLossDb).toBeCloseTo(there.polarisationLossDb, 9);
        expect([back.txGainDbi, back.rxGainDbi]).toEqual([there.rxGainDbi, there.txGainDbi]);
        const elsewhere = { ...query, transmitterAtM: { x: 99, y: 0, z: 0 } };
        expect(placedLinkFrom(elsewhere)(transmitterAtM)).toEqual(there);
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  test("refuses two ends at one place and a wall that is none", () => {
    const at = { x: 0, y: 0, z: 1 };
    const query = { transmitter: bare(0), receiver: bare(0), transmitterAtM: at, receiverAtM: at };
    expect(() => placedLink(query)).toThrow(ArgumentError);
    const apart = { ...query, receiverAtM: { x: 1, y: 0, z: 1 }, crossings: [{ lossDb: -1 }] };
    expect(() => placedLink(apart)).toThrow(ArgumentError);
  });
});
