import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { allocateAddresses, orderOfHanging } from "../../src/patch/index.js";
import { arbitraryAllocation } from "../helpers/arbitrary-patch.js";

describe("orderOfHanging", () => {
  it("holds each luminaire once, and a list in that order has its free addresses rise within a universe", () => {
    fc.assert(
      fc.property(arbitraryAllocation(), (terms) => {
        const order = orderOfHanging(terms);
        expect([...order].sort((a, b) => a - b)).toEqual(terms.luminaires.map((_, index) => index));
        const luminaires = order.map((index) => terms.luminaires[index]!);
        const { rows } = allocateAddresses({ ...terms, luminaires, order: "hanging" });
        const last = new Map<string, number>();
        for (const [index, { fixed, system, universe, address }] of rows.entries()) {
          // One whose universe alone is settled is placed before the rest.
          if (fixed || address === null || (luminaires[index]!.universe ?? null) !== null) continue;
          const key = JSON.stringify([system, universe]);
          expect(address).toBeGreaterThan(last.get(key) ?? 0);
          last.set(key, address);
        }
      }),
    );
  });
  it("puts those without a system last", () => {
    const at = (name: string, system: string) => ({ name, room: "loft", system, footprintSlotCount: 1 });
    const luminaires = [at("a", "none"), at("b", "yard"), at("c", "loft")];
    const systems = [
      { name: "loft", universe: 1 },
      { name: "yard", universe: 2 },
    ];
    expect(orderOfHanging({ luminaires, systems })).toEqual([2, 1, 0]);
  });
  it("refuses systems that can't be", () => {
    const systems = [{ name: "a", universe: 0 }];
    expect(() => orderOfHanging({ luminaires: [], systems })).toThrow(ArgumentError);
  });
});
