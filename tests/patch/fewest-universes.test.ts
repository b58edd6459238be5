import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { fewestUniverses } from "../../src/patch/index.js";
import { packUniverses } from "../../src/patch/pack-universes.js";
import { fewestBins, fewestByStarts, taken } from "../helpers/exhaustive-packing.js";

/** No two share a slot, none runs past 512, all start on the raster. */
function expectSound(
  footprintSlotCount: readonly number[],
  places: readonly { universeIndex: number; address: number }[],
  alignSlotCount: number,
  universeCount: number,
): void {
  expect(places.length).toBe(footprintSlotCount.length);
  const seen = new Set<number>();
  const faults = places.filter(({ universeIndex, address }, index) => {
    const end = address + footprintSlotCount[index]!;
    const before = seen.size;
    for (let slot = address; slot < end; slot++) seen.add(universeIndex * 1000 + slot);
    const apart = seen.size === before + footprintSlotCount[index]!;
    const inside = address >= 1 && end <= 513 && universeIndex >= 0 && universeIndex < universeCount;
    return !(apart && inside && (address - 1) % alignSlotCount === 0);
  });
  expect(faults).toEqual([]);
}

describe("fewestUniverses against exhaustive search", () => {
  it("every way to spread up to 9 luminaires", () => {
    const footprint = fc.oneof(fc.integer({ min: 1, max: 512 }), fc.integer({ min: 120, max: 300 }));
    fc.assert(
      fc.property(fc.array(footprint, { maxLength: 9 }), (footprintSlotCount) => {
        const { universeCount, lowerBoundCount, places } = fewestUniverses({ footprintSlotCount });
        expect(universeCount).toBe(fewestBins(footprintSlotCount, 512));
        expect(lowerBoundCount).toBe(universeCount);
        expectSound(footprintSlotCount, places, 1, universeCount);
      }),
      { numRuns: 400 },
    );
  });
  it("footprints that just fill universes, where first fit often fails", () => {
    const cuts = fc.uniqueArray(fc.integer({ min: 1, max: 511 }), { minLength: 1, maxLength: 4 });
    let harder = 0;
    fc.assert(
      fc.property(fc.array(cuts, { minLength: 1, maxLength: 6 }), (at) => {
        const pieces = at.flatMap((one) =>
          [...one, 512].sort((a, b) => a - b).map((cut, index, all) => cut - (all[index - 1] ?? 0)),
        );
        const { universeCount, lowerBoundCount, places } = fewestUniverses({ footprintSlotCount: pieces });
        expect([universeCount, lowerBoundCount]).toEqual([at.length, at.length]);
        expectSound(pieces, places, 1, universeCount);
        if (firstFitDecreasing(pieces) > at.length) harder++;
      }),
      { numRuns: 400 },
    );
    expect(harder).toBeGreaterThan(10);
  });
  it("350 + 60 + 102, 317 + 74 + 84 + 37 and 230 + 157 + 125 fill three universes", () => {
    const footprintSlotCount = [350, 60, 102, 317, 74, 84, 37, 230, 157, 125];
    const { universeCount, lowerBoundCount } = fewestUniverses({ footprintSlotCount });
    expect([universeCount, lowerBoundCount]).toEqual([3, 3]);
  });
  it("every start address, with slots taken and start addresses on a raster", () => {
    const range = fc.tuple(fc.integer({ min: 1, max: 512 }), fc.integer({ min: 1, max: 200 }));
    const universe = fc.array(range, { maxLength: 2 });
    const align = fc.constantFrom(100, 120, 128, 150, 200);
    const footprints = fc.array(fc.integer({ min: 1, max: 260 }), { maxLength: 5 });
    fc.assert(
      fc.property(fc.array(universe, { maxLength: 2 }), footprints, align, (ranges, slotCounts, raster) => {
        const universes = ranges.map(taken);
        const found = packUniverses({
          slotCounts,
          alignSlotCount: raster,
          mostStepCount: 1e6,
          universeAt: (index) => universes[index] ?? taken([]),
        });
        expect(found.universeCount).toBe(fewestByStarts(slotCounts, universes, raster));
        expect(found.lowerBoundCount).toBe(found.universeCount);
        expectSound(slotCounts, found.places, raster, found.universeCount);
        found.places.forEach(({ universeIndex, address }, index) => {
          const end = address + slotCounts[index]!;
          expect(
            (universes[universeIndex] ?? taken([])).subarray(address, end).every((slot) => slot === 0),
          ).toBe(true);
        });
      }),
      { numRuns: 300 },
    );
  });
});

describe("fewestUniverses, published and large cases", () => {
  // The family on which first fit decreasing needs 11 bins where 9 do: sizes ½ + ε, ¼ + 2ε, ¼ + ε, ¼ − 2ε, six of
  // each and twelve of the last. Johnson, Demers, Ullman, Garey, Graham, SIAM J. Comput. 3 (1974), from memory.
  it("the 11 to 9 case of first fit decreasing", () => {
    const footprintSlotCount = [
      [257, 6],
      [130, 6],
      [129, 6],
      [126, 12],
    ].flatMap(([slots, count]) => Array.from({ length: count! }, () => slots!));
    expect(firstFitDecreasing(footprintSlotCount)).toBe(11);
    const { universeCount, lowerBoundCount, places } = fewestUniverses({ footprintSlotCount });
    expect([universeCount, lowerBoundCount]).toEqual([9, 9]);
    expectSound(footprintSlotCount, places, 1, 9);
  });
  it("says so when the steps run out", () => {
    const footprintSlotCount = [
      [257, 6],
      [130, 6],
      [129, 6],
      [126, 12],
    ].flatMap(([slots, count]) => Array.from({ length: count! }, () => slots!));
    const { universeCount, lowerBoundCount } = fewestUniverses({ footprintSlotCount, mostStepCount: 3 });
    expect([universeCount, lowerBoundCount]).toEqual([11, 9]);
  });
  // More than half a universe each: none share one, though the slots alone would fit into ⌈7 · 257 / 512⌉ = 4.
  it("luminaires beyond half a universe lie alone", () => {
    const footprintSlotCount = Array.from({ length: 7 }, () => 257);
    const bounds = { universeCount: 7, lowerBoundCount: 7 };
    expect(fewestUniverses({ footprintSlotCount })).toMatchObject(bounds);
    expect(fewestUniverses({ footprintSlotCount, mostStepCount: 0 })).toMatchObject(bounds);
  });
  // 4 · 300 and 4 · 250: none of the 250 fits beside a 300, two fit together: 4 + 2, though ⌈2200 / 512⌉ = 5.
  it("a bound that looks at sizes, without a step of search", () => {
    const footprintSlotCount = [300, 300, 300, 300, 250, 250, 250, 250];
    const bounds = { universeCount: 6, lowerBoundCount: 6 };
    expect(fewestUniverses({ footprintSlotCount, mostStepCount: 0 })).toMatchObject(bounds);
  });
  // 100 slots free in the first universe; 200 + 156 + 156 = 512 twice fills two more. First fit puts 200 + 200
  // together and then needs a fourth.
  it("a universe too small for the largest still holds its part", () => {
    const universeAt = (index: number): Uint8Array => taken(index === 0 ? [[101, 412]] : []);
    const slotCounts = [200, 200, 156, 156, 156, 156, 100];
    const found = packUniverses({ slotCounts, alignSlotCount: 1, mostStepCount: 1000, universeAt });
    expect(found).toMatchObject({ universeCount: 3, lowerBoundCount: 3 });
    expectSound(slotCounts, found.places, 1, 3);
  });
  // Start addresses 1, 101 … 501: the last block has 12 slots. 12 fit there, 13 don't.
  it("uses the short block at the end of a universe, and only as far as it goes", () => {
    const five = [100, 100, 100, 100, 100];
    const count = (slots: number): number =>
      fewestUniverses({ footprintSlotCount: [slots, ...five], alignSlotCount: 100 }).universeCount;
    expect([count(12), count(13)]).toEqual([1, 2]);
  });
  it("2,000 luminaires of a dozen kinds in no time, proved", () => {
    const kinds = [1, 4, 7, 13, 16, 19, 24, 31, 37, 48, 60, 113];
    const footprintSlotCount = Array.from({ length: 2000 }, (_, index) => kinds[(index * 7) % kinds.length]!);
    const start = performance.now();
    const { universeCount, lowerBoundCount, places } = fewestUniverses({ footprintSlotCount });
    expect(performance.now() - start).toBeLessThan(1000);
    const total = footprintSlotCount.reduce((sum, slots) => sum + slots, 0);
    expect([universeCount, lowerBoundCount]).toEqual([Math.ceil(total / 512), Math.ceil(total / 512)]);
    expectSound(footprintSlotCount, places, 1, universeCount);
  });
  it.each([
    ["footprintSlotCount", { footprintSlotCount: [513] }],
    ["footprintSlotCount", { footprintSlotCount: [1, NaN] }],
    ["footprintSlotCount", { footprintSlotCount: [0] }],
    ["alignSlotCount", { footprintSlotCount: [1], alignSlotCount: 0 }],
    ["mostStepCount", { footprintSlotCount: [1], mostStepCount: -1 }],
  ])("throws for %s: %j", (argument, terms) => {
    expect(() => fewestUniverses(terms)).toThrow(ArgumentError);
    expect(() => fewestUniverses(terms)).toThrow(argument);
  });
});

function firstFitDecreasing(footprints: readonly number[]): number {
  const rooms: number[] = [];
  for (const slots of [...footprints].sort((a, b) => b - a)) {
    const index = rooms.findIndex((room) => room >= slots);
    if (index < 0) rooms.push(512 - slots);
    else rooms[index]! -= slots;
  }
  return rooms.length;
}
