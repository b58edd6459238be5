import fc from "fast-check";
import type { AllocationTerms, PatchLuminaire, PatchSystem } from "../../src/patch/index.js";

const ROOMS = ["loft", "dye house", "yard"];

const settled = fc.oneof(
  { weight: 6, arbitrary: fc.constant({}) },
  { weight: 1, arbitrary: fc.record({ universe: fc.integer({ min: 1, max: 3 }) }) },
  {
    weight: 1,
    arbitrary: fc.record({
      universe: fc.integer({ min: 1, max: 3 }),
      address: fc.integer({ min: 1, max: 512 }),
    }),
  },
);

/** Luminaires L0, L1 … of some rooms, groups and footprints, a few with a universe or an address settled. */
export function arbitraryLuminaires(
  systems: readonly PatchSystem[],
  mostCount: number,
): fc.Arbitrary<PatchLuminaire[]> {
  const one = fc.tuple(
    fc.record({
      room: fc.constantFrom(...ROOMS),
      group: fc.constantFrom(null, "front", "rear"),
      system: fc.constantFrom(...systems.map(({ name }) => name)),
      footprintSlotCount: fc.oneof(
        fc.constantFrom(8, 16),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 512 }),
      ),
    }),
    settled,
  );
  return fc
    .array(one, { maxLength: mostCount })
    .map((list) => list.map(([fields, more], index) => ({ name: `L${index}`, ...fields, ...more })));
}

/** A whole patch to be made: systems that share universes, overlap or stand alone, reserved slots, a raster. */
export function arbitraryAllocation(mostCount = 40): fc.Arbitrary<AllocationTerms> {
  const systems = fc.constantFrom<PatchSystem[]>(
    [{ name: "a", universe: 1 }],
    [
      { name: "a", universe: 1, universeCount: 2 },
      { name: "b", universe: 3 },
    ],
    [
      { name: "a", universe: 2, universeCount: 2 },
      { name: "b", universe: 2, universeCount: 2 },
      { name: "c", universe: 3 },
    ],
  );
  const reserved = fc.array(
    fc
      .tuple(fc.constantFrom(null, 1, 2), fc.integer({ min: 1, max: 512 }), fc.integer({ min: 0, max: 100 }))
      .map(([universe, firstSlot, more]) => ({
        universe,
        firstSlot,
        lastSlot: Math.min(512, firstSlot + more),
      })),
    { maxLength: 3 },
  );
  return systems.chain((list) =>
    fc.record({
      systems: fc.constant(list),
      luminaires: arbitraryLuminaires(list, mostCount),
      reserved,
      spareSlotCount: fc.constantFrom(0, 0, 4, 16),
      alignSlotCount: fc.constantFrom(1, 1, 8, 10),
      mostStepCount: fc.constant(2000),
    }),
  );
}
