import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { distanceToOutlineM, isInsideOutline, outlineFault } from "../../src/venue/index.js";
import { rectangle } from "../helpers/venues.js";

const point = fc.record({
  x: fc.double({ min: -20, max: 20, noNaN: true }),
  y: fc.double({ min: -20, max: 20, noNaN: true }),
});
const triangle = fc
  .tuple(point, point, point)
  .filter(([a, b, c]) => Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) > 1e-3);

describe("an outline", () => {
  it("holds the points whose barycentric coordinates are all positive", () => {
    fc.assert(
      fc.property(triangle, point, ([a, b, c], at) => {
        const area = (p: typeof at, q: typeof at, r: typeof at): number =>
          (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
        const shares = [area(at, b, c), area(a, at, c), area(a, b, at)].map((one) => one / area(a, b, c));
        if (shares.some((share) => Math.abs(share) < 1e-6)) return;
        expect(isInsideOutline([a, b, c], at)).toBe(shares.every((share) => share > 0));
      }),
      { numRuns: 1000 },
    );
  });
  it("is as far as its nearest edge, from within and without", () => {
    const square = rectangle(0, 0, 4, 4);
    expect(distanceToOutlineM(square, { x: 1, y: 2 })).toBe(1);
    expect(distanceToOutlineM(square, { x: 7, y: 8 })).toBe(5);
    expect(distanceToOutlineM(square, { x: 2, y: 4 })).toBe(0);
    expect(distanceToOutlineM([], { x: 2, y: 4 })).toBe(Infinity);
  });
  it("may bend inwards, and then holds what lies within alone", () => {
    const ell = [...rectangle(0, 0, 8, 8).slice(0, 3), { x: 4, y: 8 }, { x: 4, y: 4 }, { x: 0, y: 4 }];
    expect([isInsideOutline(ell, { x: 2, y: 2 }), isInsideOutline(ell, { x: 2, y: 6 })]).toEqual([
      true,
      false,
    ]);
    expect(outlineFault(ell)).toBeNull();
  });
  it("is faulty when it has too few corners, repeats one, crosses or touches itself", () => {
    const code = (outline: readonly (readonly [number, number])[]): string | null =>
      outlineFault(outline.map(([x, y]) => ({ x, y })))?.code ?? null;
    expect(
      code([
        [0, 0],
        [1, 0],
      ]),
    ).toBe("too-few-corners");
    expect(
      code([
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 0],
      ]),
    ).toBe("repeated-corner");
    expect(
      code([
        [0, 0],
        [1, 0],
        [1, 0],
        [0, 1],
      ]),
    ).toBe("repeated-corner");
    expect(
      code([
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ]),
    ).toBe("edges-meet");
    expect(
      code([
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ]),
    ).toBe("edges-meet"); // a corner on an edge
    expect(
      code([
        [0, 0],
        [4, 0],
        [2, 0],
      ]),
    ).toBe("edges-meet"); // folds back
    expect(
      code([
        [0, 0],
        [4, 0],
        [8, 0],
        [8, 3],
      ]),
    ).toBeNull(); // a corner in a straight edge
  });
  it("without a fault stays so whichever corner comes first and whichever way round", () => {
    fc.assert(
      fc.property(triangle, fc.nat(2), ([a, b, c], turn) => {
        const corners = [a, b, c];
        const turned = [...corners.slice(turn), ...corners.slice(0, turn)];
        expect([outlineFault(corners), outlineFault(turned), outlineFault(turned.reverse())]).toEqual([
          null,
          null,
          null,
        ]);
      }),
    );
  });
});
