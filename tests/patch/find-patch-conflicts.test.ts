import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import type { PatchLuminaire, PatchTerms } from "../../src/patch/index.js";
import { findPatchConflicts } from "../../src/patch/index.js";

const systems = [
  { name: "loft", universe: 1 },
  { name: "yard", universe: 2, universeCount: 2 },
];
const at = (name: string, address: number | null, more: Partial<PatchLuminaire> = {}): PatchLuminaire => ({
  ...{ name, room: "loft", system: "loft", footprintSlotCount: 8, universe: 1, address },
  ...more,
});
const told = (luminaires: readonly PatchLuminaire[], more: Partial<PatchTerms> = {}): string[] =>
  findPatchConflicts({ luminaires, systems, ...more }).map(({ kind, luminaires: who, universe, slots }) => {
    const names = who
      .map(({ name, slots: own }) => (own === null ? name : `${name}@${own.firstSlot}-${own.lastSlot}`))
      .join("+");
    return `${kind} ${names} u${universe} ${slots === null ? "-" : `${slots.firstSlot}-${slots.lastSlot}`}`;
  });

describe("findPatchConflicts, each kind by hand", () => {
  it.each<[string, PatchLuminaire[], string[]]>([
    [
      "nothing wrong",
      [at("A", 1), at("B", 9), at("C", 505), at("D", 1, { universe: 3, system: "yard" })],
      [],
    ],
    ["an overlap", [at("A", 1), at("B", 6)], ["overlap A@1-8+B@6-13 u1 6-8"]],
    [
      "one inside another",
      [at("A", 1, { footprintSlotCount: 100 }), at("B", 50)],
      ["overlap A@1-100+B@50-57 u1 50-57"],
    ],
    [
      "the same start with another footprint",
      [at("A", 9), at("B", 9, { footprintSlotCount: 4 })],
      ["overlap B@9-12+A@9-16 u1 9-12"],
    ],
    [
      "the same slots, once for all three",
      [at("A", 9), at("B", 9), at("C", 9)],
      ["duplicate A@9-16+B@9-16+C@9-16 u1 9-16"],
    ],
    ["the same slots of other universes", [at("A", 9), at("B", 9, { universe: 2, system: "yard" })], []],
    ["past the end", [at("A", 506)], ["across-universes A@506-513 u1 513-513"]],
    ["no such address", [at("A", 513)], ["beyond-512 A@513-520 u1 513-520"]],
    ["address 0", [at("A", 0)], ["beyond-512 A@0-7 u1 0-7"]],
    ["no address", [at("A", null, { universe: null })], ["unpatched A unull -"]],
    ["no footprint", [at("A", 5, { footprintSlotCount: null })], ["no-footprint A@5-5 u1 -"]],
    [
      "no footprint, its start taken",
      [at("A", 5, { footprintSlotCount: null }), at("B", 1)],
      ["no-footprint A@5-5 u1 -", "overlap B@1-8+A@5-5 u1 5-5"],
    ],
    ["no such universe", [at("A", 5, { universe: 64_000 })], ["no-such-universe A@5-12 u64000 -"]],
    ["another's universe", [at("A", 5, { universe: 2 })], ["other-universe A@5-12 u2 -"]],
    ["no such system", [at("A", 5, { system: "attic" })], ["no-system A@5-12 u1 -"]],
    [
      "neither system nor universe",
      [at("A", 5, { system: null, universe: null })],
      ["no-system A@5-12 unull -", "no-such-universe A@5-12 unull -"],
    ],
    [
      "an address alone is in the system's first universe",
      [at("A", 1), at("B", 8, { universe: null })],
      ["overlap A@1-8+B@8-15 u1 8-8"],
    ],
    ["one name twice", [at("A", 1), at("A", 9)], ["duplicate-name A@1-8+A@9-16 unull -"]],
    [
      "a receiver of two systems",
      [at("A", 1, { receiver: "R" }), at("B", 1, { receiver: "R", system: "yard", universe: 2 })],
      ["receiver-systems A@1-8+B@1-8 unull -"],
    ],
    [
      "a receiver of two universes",
      [2, 3].map((universe) => at(`A${universe}`, 1, { receiver: "R", system: "yard", universe })),
      ["receiver-universes A2@1-8+A3@1-8 unull -"],
    ],
  ])("%s", (_words, luminaires, expected) => {
    expect(told(luminaires)).toEqual(expected);
  });
  it("reserved slots, in one universe or all", () => {
    const reserved = [
      { universe: null, firstSlot: 8, lastSlot: 9 },
      { universe: 2, firstSlot: 1, lastSlot: 512 },
    ];
    const luminaires = [at("A", 1), at("B", 9), at("C", 17)];
    expect(told(luminaires, { reserved })).toEqual(["reserved A@1-8 u1 8-8", "reserved B@9-16 u1 9-9"]);
  });
  it("a footprint that the mode doesn't have", () => {
    const modes = [{ mode: "9 ch", footprintSlotCount: 9 }];
    expect(told([at("A", 1, { mode: "9 ch" })], { modes })).toEqual(["mode-footprint A@1-8 u1 -"]);
    expect(told([at("A", 1, { mode: "9 ch", footprintSlotCount: null })], { modes })).toEqual([]);
  });
  it("equal slots and a mode's footprint are warnings, all else is an error", () => {
    const list = [at("A", 1), at("B", 1), at("C", 7)];
    const found = findPatchConflicts({ luminaires: list, systems });
    expect(found.map(({ kind, severity }) => [kind, severity])).toEqual([
      ["duplicate", "warning"],
      ["overlap", "error"],
    ]);
    expect(found[1]!.luminaires.map(({ name }) => name)).toEqual(["A", "B", "C"]);
  });
  it("throws for systems that can't be", () => {
    const wrong = [{ name: "x", universe: 0 }];
    expect(() => findPatchConflicts({ luminaires: [], systems: wrong })).toThrow(ArgumentError);
  });
});

describe("findPatchConflicts against slot by slot counting", () => {
  it("names every pair that shares a slot, with these slots, and no other", () => {
    const one = fc.record({
      address: fc.integer({ min: 1, max: 60 }),
      footprintSlotCount: fc.integer({ min: 1, max: 12 }),
      universe: fc.integer({ min: 2, max: 3 }),
    });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 20 }), (list) => {
        const luminaires = list.map((fields, index) => at(`L${index}`, 1, { system: "yard", ...fields }));
        const found = new Set<string>();
        for (const { luminaires: who, universe, slots } of findPatchConflicts({ luminaires, systems }))
          for (const a of who)
            for (const b of who) {
              const first = Math.max(a.slots!.firstSlot, b.slots!.firstSlot);
              const last = Math.min(a.slots!.lastSlot, b.slots!.lastSlot);
              if (a.name >= b.name || first !== slots!.firstSlot || last !== slots!.lastSlot) continue;
              for (let slot = first; slot <= last; slot++)
                found.add(`${a.name} ${b.name} ${universe}.${slot}`);
            }
        const counted = new Set<string>();
        for (const a of luminaires)
          for (const b of luminaires)
            for (let slot = 1; slot <= 80 && a.name < b.name && a.universe === b.universe; slot++)
              if (
                [a, b].every((one) => slot >= one.address! && slot < one.address! + one.footprintSlotCount!)
              )
                counted.add(`${a.name} ${b.name} ${a.universe}.${slot}`);
        expect([...found].sort()).toEqual([...counted].sort());
      }),
      { numRuns: 300 },
    );
  });
  it("2,000 luminaires that all stand at address 1 are one conflict, quickly", () => {
    const luminaires = Array.from({ length: 2000 }, (_, index) => at(`L${index}`, 1));
    const start = performance.now();
    const found = findPatchConflicts({ luminaires, systems });
    expect(performance.now() - start).toBeLessThan(500);
    expect(found.map(({ kind, luminaires: who }) => [kind, who.length])).toEqual([["duplicate", 2000]]);
  });
});
