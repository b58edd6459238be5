import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import type { AddressRow, AllocationTerms, PatchLuminaire } from "../../src/patch/index.js";
import { allocateAddresses } from "../../src/patch/index.js";
import { arbitraryAllocation } from "../helpers/arbitrary-patch.js";
import { fewestBins } from "../helpers/exhaustive-packing.js";

const lamps = (room: string, count: number, footprintSlotCount: number, more: Partial<PatchLuminaire> = {}) =>
  Array.from({ length: count }, (_, index) => ({
    name: `${room} ${index + 1}`,
    room,
    footprintSlotCount,
    ...more,
  }));
const loft = [{ name: "loft", universe: 7 }];
const addresses = (terms: Omit<AllocationTerms, "systems"> & Partial<AllocationTerms>): (number | null)[] =>
  allocateAddresses({ systems: loft, ...terms }).rows.map(({ address }) => address);

describe("allocateAddresses in the order of hanging, by hand", () => {
  it("one after the other: 1, 9, 17 …", () => {
    const { rows, universes, overflows, fewest, conflicts } = allocateAddresses({
      luminaires: lamps("loft", 4, 8),
      systems: loft,
    });
    expect(rows.map(({ universe, address, lastSlot }) => [universe, address, lastSlot])).toEqual([
      [7, 1, 8],
      [7, 9, 16],
      [7, 17, 24],
      [7, 25, 32],
    ]);
    expect(universes).toEqual([
      {
        universe: 7,
        systems: ["loft"],
        usedSlotCount: 32,
        spareSlotCount: 0,
        reservedSlotCount: 0,
        freeSlotCount: 480,
        lastUsedSlot: 32,
      },
    ]);
    expect([overflows, fewest, conflicts]).toEqual([[], [], []]);
  });
  it("rooms stay together though the list mixes them, and so do groups within a room", () => {
    const [a, b] = [lamps("loft", 3, 10), lamps("yard", 2, 10)];
    expect(addresses({ luminaires: [a[0]!, b[0]!, a[1]!, b[1]!, a[2]!] })).toEqual([1, 31, 11, 41, 21]);
    const groups = ["front", "rear", "front"].map((group, index) => ({ ...a[index]!, group }));
    expect(addresses({ luminaires: groups })).toEqual([1, 21, 11]);
  });
  it("the place in the order of hanging goes before the list's order", () => {
    const luminaires = lamps("loft", 3, 10).map((one, index) => ({ ...one, hangIndex: 3 - index }));
    expect(addresses({ luminaires })).toEqual([21, 11, 1]);
    expect(addresses({ luminaires: [...lamps("yard", 1, 10), ...luminaires] })).toEqual([31, 21, 11, 1]);
  });
  it("spare slots follow each group, and an address raster holds", () => {
    const luminaires = [...lamps("loft", 2, 6), ...lamps("yard", 2, 6)];
    expect(addresses({ luminaires, spareSlotCount: 5 })).toEqual([1, 7, 18, 24]);
    expect(addresses({ luminaires, alignSlotCount: 10 })).toEqual([1, 11, 21, 31]);
    expect(addresses({ luminaires, spareSlotCount: 5, alignSlotCount: 10 })).toEqual([1, 11, 31, 41]);
  });
  it("settled addresses and reserved slots are stepped over", () => {
    const luminaires = lamps("loft", 4, 10);
    luminaires[2] = { ...luminaires[2]!, address: 15 };
    expect(addresses({ luminaires })).toEqual([1, 25, 15, 35]);
    const reserved = [
      { universe: 7, firstSlot: 5, lastSlot: 5 },
      { universe: null, firstSlot: 30, lastSlot: 40 },
      { universe: 8, firstSlot: 1, lastSlot: 512 },
    ];
    expect(addresses({ luminaires: lamps("loft", 4, 10), reserved })).toEqual([6, 16, 41, 51]);
  });
  // 512 = 51 · 10 + 2: the 52nd would run from 511 to 520.
  it("none lies across the end of a universe", () => {
    const systems = [{ name: "loft", universe: 63_998, universeCount: 2 }];
    const { rows } = allocateAddresses({ luminaires: lamps("loft", 53, 10), systems });
    expect(rows.slice(50).map(({ universe, address }) => [universe, address])).toEqual([
      [63_998, 501],
      [63_999, 1],
      [63_999, 11],
    ]);
  });
  it("a mode gives the footprint; without either there is no address", () => {
    const modes = [{ mode: "9 ch", footprintSlotCount: 9 }];
    const luminaires = [
      { name: "A", room: "loft", mode: "9 ch", footprintSlotCount: null },
      { name: "B", room: "loft", mode: "20 ch", footprintSlotCount: null },
      { name: "C", room: "loft", mode: "9 ch", footprintSlotCount: 12 },
      { name: "D", room: "loft", footprintSlotCount: 600 },
    ];
    const { rows, conflicts } = allocateAddresses({ luminaires, systems: loft, modes });
    expect(rows.map(({ address, reason }) => [address, reason])).toEqual([
      [1, null],
      [null, "no-footprint"],
      [10, null],
      [null, "no-footprint"],
    ]);
    expect(conflicts.map(({ kind, luminaires: [who] }) => [kind, who!.name])).toEqual([
      ["no-footprint", "B"],
      ["unpatched", "B"],
      ["mode-footprint", "C"],
      ["no-footprint", "D"],
      ["unpatched", "D"],
    ]);
  });
  it("systems with the same universe share its slots; others have their own", () => {
    const systems = [
      { name: "a", universe: 1 },
      { name: "b", universe: 1 },
      { name: "c", universe: 2 },
    ];
    const luminaires = ["c", "b", "a"].flatMap((system) => lamps(system, 2, 10, { system }));
    const { rows, conflicts } = allocateAddresses({ luminaires, systems });
    expect(rows.map(({ universe, address }) => [universe, address])).toEqual([
      ...[
        [2, 1],
        [2, 11],
      ],
      ...[
        [1, 21],
        [1, 31],
      ],
      ...[
        [1, 1],
        [1, 11],
      ],
    ]);
    expect(conflicts).toEqual([]);
  });
  it("says why a luminaire has no address", () => {
    const systems = [
      { name: "a", universe: 1, universeCount: 2 },
      { name: "b", universe: 3 },
    ];
    const reserved = [{ universe: null, firstSlot: 200, lastSlot: 200 }];
    const one = (name: string, more: Partial<PatchLuminaire>) => ({
      ...{ name, room: "loft", footprintSlotCount: 300, system: "a" },
      ...more,
    });
    const luminaires = [
      one("1", { system: null }),
      one("2", { system: "attic" }),
      one("3", { footprintSlotCount: 400 }),
      one("4", { universe: 0 }),
      one("5", { universe: 2 }),
      one("6", { universe: 2 }),
      one("7", { system: "b" }),
      one("8", { system: "b" }),
    ];
    const { rows, overflows } = allocateAddresses({ luminaires, systems, reserved });
    expect(rows.map(({ address, reason }) => address ?? reason)).toEqual([
      ...["no-system", "no-system", "no-run", "no-such-universe", 201, "universe-full", 201, "overflow"],
    ]);
    expect(overflows.map(({ system, luminaires: names }) => [system, names])).toEqual([["b", ["8"]]]);
  });
});

describe("allocateAddresses, overflow", () => {
  // 60 of 16 slots: 32 fill a universe, 28 are left.
  it("names who needs a second system, from the first that finds no room", () => {
    const { rows, overflows } = allocateAddresses({ luminaires: lamps("loft", 60, 16), systems: loft });
    expect(rows.filter(({ reason }) => reason === "overflow").map(({ name }) => name)).toEqual(
      Array.from({ length: 28 }, (_, index) => `loft ${index + 33}`),
    );
    expect(overflows).toEqual([
      {
        system: "loft",
        luminaires: rows.slice(32).map(({ name }) => name),
        slotCount: 28 * 16,
        furtherUniverseCount: 1,
        furtherSystemCount: 1,
        fitsInFreeOrder: false,
      },
    ]);
  });
  it("counts further systems by the universes that one carries", () => {
    const systems = [{ name: "loft", universe: 1, universeCount: 2 }];
    const { overflows } = allocateAddresses({ luminaires: lamps("loft", 5, 300), systems });
    expect(overflows).toMatchObject([
      { furtherUniverseCount: 3, furtherSystemCount: 2, fitsInFreeOrder: false },
    ]);
  });
  // As they hang: 300 | 300 + 212 | 212, three universes; paired 300 + 212 twice, two.
  it("says where a free order would do", () => {
    const systems = [{ name: "loft", universe: 1, universeCount: 2 }];
    const luminaires = [300, 300, 212, 212].map((footprintSlotCount, index) => ({
      ...{ name: `L${index}`, room: "loft", footprintSlotCount },
    }));
    const hanging = allocateAddresses({ luminaires, systems });
    expect(hanging.overflows).toMatchObject([{ luminaires: ["L3"], fitsInFreeOrder: true }]);
    const free = allocateAddresses({ luminaires, systems, order: "fewest" });
    expect(free.overflows).toEqual([]);
    expect(free.fewest).toEqual([{ systems: ["loft"], universeCount: 2, lowerBoundCount: 2, proved: true }]);
  });
});

describe("allocateAddresses in free order", () => {
  const free = (luminaires: readonly PatchLuminaire[], more: Partial<AllocationTerms> = {}) =>
    allocateAddresses({
      ...{ luminaires, systems: [{ name: "loft", universe: 1, universeCount: 3 }] },
      ...{ order: "fewest", ...more },
    });
  // 2 · 250 = 500; each room's spare 20 makes 540.
  it("spare slots of each group are kept behind its last", () => {
    const luminaires = [...lamps("loft", 1, 250), ...lamps("yard", 1, 250)];
    expect(free(luminaires).fewest[0]!.universeCount).toBe(1);
    const { fewest, universes } = free(luminaires, { spareSlotCount: 20 });
    expect(fewest[0]!.universeCount).toBe(2);
    expect(universes.map(({ usedSlotCount, spareSlotCount }) => [usedSlotCount, spareSlotCount])).toEqual([
      [250, 20],
      [250, 20],
    ]);
    const whole = free(lamps("loft", 1, 500), { spareSlotCount: 20 }); // 520: no universe holds both
    expect(whole.universes).toMatchObject([{ usedSlotCount: 500, spareSlotCount: 0 }]);
  });
  it("a settled address counts its universe, and its slots to the last of the universe", () => {
    const settled = lamps("yard", 1, 8, { universe: 2, address: 505 });
    expect(free([...settled, ...lamps("loft", 1, 512)]).fewest).toMatchObject([
      { universeCount: 2, lowerBoundCount: 2, proved: true },
    ]);
    const two = [{ name: "loft", universe: 2 }];
    for (const order of ["fewest", "hanging"] as const)
      expect(free([...settled, ...lamps("loft", 8, 63)], { systems: two, order }).overflows).toEqual([]);
    const full = free([...settled, ...lamps("loft", 1, 504), ...lamps("attic", 1, 1)], { systems: two });
    expect(full.overflows).toMatchObject([{ luminaires: ["attic 1"] }]);
    const { overflows } = free([...settled, ...lamps("loft", 1, 505)], { systems: two });
    expect(overflows).toMatchObject([{ luminaires: ["loft 1"], fitsInFreeOrder: null }]);
  });
  // Free in universe 1: slots 1–19 and 506–512. The one that asks for it takes 1–7, which leaves no 19 in a row;
  // at 506–512 it would have left them.
  it("claims no proof where one has a settled universe among several", () => {
    const settled = lamps("yard", 1, 486, { universe: 1, address: 20 });
    const luminaires = [...settled, ...lamps("attic", 1, 7, { universe: 1 }), ...lamps("loft", 1, 19)];
    expect(free(luminaires).fewest).toMatchObject([{ universeCount: 2, lowerBoundCount: 1, proved: false }]);
  });
  it("claims no proof where another system carries some of the universes", () => {
    const systems = [
      { name: "a", universe: 1, universeCount: 2 },
      { name: "b", universe: 2 },
    ];
    const { fewest } = free(lamps("loft", 2, 300, { system: "a" }), { systems });
    expect(fewest).toEqual([
      { systems: ["a"], universeCount: 2, lowerBoundCount: 0, proved: false },
      { systems: ["b"], universeCount: 1, lowerBoundCount: 0, proved: false },
    ]);
  });
});

const orders = fc.constantFrom("hanging" as const, "fewest" as const);
const place = ({ universe, address }: AddressRow): number => (universe ?? 0) * 1000 + (address ?? 0);

describe("allocateAddresses, properties", () => {
  it("what it places overlaps nothing, ends by 512, stays on its universes, off reserved slots, on the raster", () => {
    fc.assert(
      fc.property(arbitraryAllocation(), orders, (terms, order) => {
        const { rows } = allocateAddresses({ ...terms, order });
        const taken = new Map<number, number>();
        for (const row of rows.filter(({ address }) => address !== null))
          for (let slot = row.address!; slot <= Math.min(512, row.lastSlot!); slot++)
            taken.set(row.universe! * 1000 + slot, (taken.get(row.universe! * 1000 + slot) ?? 0) + 1);
        const faults = rows.filter((row, index) => {
          if (row.fixed || row.address === null) return false;
          const { universe: asked } = terms.luminaires[index]!;
          const system = terms.systems.find(({ name }) => name === row.system);
          const { universe: first, universeCount = 1 } = system!;
          const carried = row.universe! >= first && row.universe! < first + universeCount;
          let clear = row.lastSlot! === row.address + row.footprintSlotCount! - 1 && row.lastSlot <= 512;
          for (let slot = row.address; slot <= row.lastSlot!; slot++) {
            clear &&= taken.get(row.universe! * 1000 + slot) === 1;
            clear &&= !terms.reserved!.some(
              ({ universe, firstSlot, lastSlot }) =>
                (universe ?? row.universe) === row.universe && slot >= firstSlot && slot <= lastSlot,
            );
          }
          const aligned = (row.address - 1) % terms.alignSlotCount! === 0;
          return !(clear && aligned && (asked === undefined ? carried : row.universe === asked));
        });
        expect(faults).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });
  it("settled addresses stay, and every luminaire has an address or a reason", () => {
    fc.assert(
      fc.property(arbitraryAllocation(), orders, (terms, order) => {
        const { rows, overflows } = allocateAddresses({ ...terms, order });
        expect(rows.map(({ name }) => name)).toEqual(terms.luminaires.map(({ name }) => name));
        rows.forEach((row, index) => {
          const { universe, address } = terms.luminaires[index]!;
          expect(row.fixed).toBe(address !== undefined);
          if (row.fixed) expect([row.universe, row.address]).toEqual([universe, address]);
          expect(row.address === null).toBe(row.reason !== null);
        });
        expect(overflows.flatMap(({ luminaires }) => luminaires).sort()).toEqual(
          rows
            .filter(({ reason }) => reason === "overflow")
            .map(({ name }) => name)
            .sort(),
        );
      }),
    );
  });
  it("in the order of hanging addresses rise through each group, and groups and rooms don't mix", () => {
    fc.assert(
      fc.property(arbitraryAllocation(), (terms) => {
        const { rows } = allocateAddresses(terms);
        const free = rows.filter(({ address }, index) => address !== null && isFree(terms, index));
        for (const system of terms.systems) {
          const own = free.filter((row) => row.system === system.name);
          const key = (row: AddressRow): string => `${row.room}/${row.group}`;
          for (const group of new Set(own.map(key))) {
            const places = own.filter((row) => key(row) === group).map(place);
            expect(places).toEqual([...places].sort((a, b) => a - b));
          }
          const byPlace = [...own].sort((a, b) => place(a) - place(b));
          expect(runs(byPlace.map(key))).toBe(new Set(own.map(key)).size);
          expect(runs(byPlace.map(({ room }) => room))).toBe(new Set(own.map(({ room }) => room)).size);
        }
      }),
      { numRuns: 300 },
    );
  });
  it("nothing in the way, no gap: each starts where the one before it ends", () => {
    const footprints = fc.array(fc.integer({ min: 1, max: 512 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(footprints, (slotCounts) => {
        const luminaires = slotCounts.map((footprintSlotCount, index) => ({
          ...{ name: `L${index}`, room: "loft", footprintSlotCount },
        }));
        const systems = [{ name: "loft", universe: 1, universeCount: 60 }];
        let [universe, next] = [1, 1];
        const expected = slotCounts.map((slotCount) => {
          if (next + slotCount > 513) [universe, next] = [universe + 1, 1];
          next += slotCount;
          return [universe, next - slotCount];
        });
        const { rows } = allocateAddresses({ luminaires, systems });
        expect(rows.map((row) => [row.universe, row.address])).toEqual(expected);
      }),
    );
  });
  it("in free order the list's order changes nothing", () => {
    const shuffled = arbitraryAllocation().chain((terms) =>
      fc.tuple(
        fc.constant(terms),
        fc.shuffledSubarray([...terms.luminaires], {
          minLength: terms.luminaires.length,
          maxLength: terms.luminaires.length,
        }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([terms, luminaires]) => {
        const byName = (rows: readonly AddressRow[]): AddressRow[] =>
          [...rows].sort((a, b) => (a.name < b.name ? -1 : 1));
        const here = allocateAddresses({ ...terms, order: "fewest" });
        const there = allocateAddresses({ ...terms, luminaires, order: "fewest" });
        expect(byName(there.rows)).toEqual(byName(here.rows));
        expect([there.universes, there.fewest]).toEqual([here.universes, here.fewest]);
      }),
      { numRuns: 200 },
    );
  });
  it("the fewest universes are those of an exhaustive search, and never more than in the order of hanging", () => {
    const footprints = fc.array(fc.integer({ min: 100, max: 400 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(footprints, (slotCounts) => {
        const luminaires = slotCounts.map((footprintSlotCount, index) => ({
          ...{ name: `L${index}`, room: "loft", footprintSlotCount },
        }));
        const systems = [{ name: "loft", universe: 1, universeCount: 8 }];
        const { fewest, universes } = allocateAddresses({ luminaires, systems, order: "fewest" });
        const count = fewestBins(slotCounts, 512);
        expect(fewest).toEqual([
          { systems: ["loft"], universeCount: count, lowerBoundCount: count, proved: true },
        ]);
        expect(universes.length).toBe(count);
        expect(allocateAddresses({ luminaires, systems }).universes.length).toBeGreaterThanOrEqual(count);
      }),
      { numRuns: 150 },
    );
  });
  it("what it makes has no clash but among what was settled, reserved or left over", () => {
    fc.assert(
      fc.property(arbitraryAllocation(), orders, (terms, order) => {
        const { rows, conflicts } = allocateAddresses({ ...terms, order });
        const settled = new Set(
          rows.filter(({ fixed, reason }) => fixed || reason !== null).map(({ name }) => name),
        );
        const pinned = new Set(
          terms.luminaires.filter(({ universe }) => universe !== undefined).map(({ name }) => name),
        );
        const faults = conflicts.filter(
          ({ kind, luminaires }) =>
            !luminaires.every(({ name }) => settled.has(name)) &&
            !(kind === "other-universe" && pinned.has(luminaires[0]!.name)),
        );
        expect(faults).toEqual([]);
      }),
    );
  });
  it.each(["hanging", "fewest"] as const)("2,000 luminaires are quick (%s)", (order) => {
    const luminaires = Array.from({ length: 2000 }, (_, index) => ({
      name: `L${index}`,
      room: `room ${index % 9}`,
      footprintSlotCount: [6, 9, 16, 22, 37][index % 5]!,
    }));
    const systems = [{ name: "all", universe: 1, universeCount: 100 }];
    const start = performance.now();
    const plan = allocateAddresses({ luminaires, systems, order, spareSlotCount: 4 });
    expect(performance.now() - start).toBeLessThan(1500);
    expect(plan.rows.every(({ reason }) => reason === null)).toBe(true);
    // 400 · (6 + 9 + 16 + 22 + 37) = 36,000 slots, 70.3 universes; nine groups' spare 36 more
    expect(plan.universes.reduce((sum, { usedSlotCount }) => sum + usedSlotCount, 0)).toBe(36_000);
    if (order === "fewest") expect(plan.fewest).toMatchObject([{ universeCount: 71, proved: true }]);
  });
});

function isFree(terms: AllocationTerms, index: number): boolean {
  return terms.luminaires[index]!.universe === undefined;
}

function runs(values: readonly string[]): number {
  return values.filter((value, index) => index === 0 || value !== values[index - 1]).length;
}

describe("allocateAddresses, mistakes", () => {
  const systems = [{ name: "a", universe: 1 }];
  it.each<[string, Partial<AllocationTerms>]>([
    ["spareSlotCount", { spareSlotCount: -1 }],
    ["alignSlotCount", { alignSlotCount: 0 }],
    ["alignSlotCount", { alignSlotCount: NaN }],
    ["mostStepCount", { mostStepCount: 0.5 }],
    ["systems[0].universe", { systems: [{ name: "a", universe: 64_000 }] }],
    ["systems[0].universeCount", { systems: [{ name: "a", universe: 63_999, universeCount: 2 }] }],
    ["systems", { systems: [...systems, ...systems] }],
    ["reserved[0].firstSlot", { reserved: [{ universe: null, firstSlot: 0, lastSlot: 5 }] }],
    ["reserved[0].lastSlot", { reserved: [{ universe: 1, firstSlot: 6, lastSlot: 5 }] }],
    ["reserved[0].universe", { reserved: [{ universe: 0, firstSlot: 6, lastSlot: 7 }] }],
    ["modes[0].footprintSlotCount", { modes: [{ mode: "x", footprintSlotCount: 513 }] }],
    ["modes", { modes: [1, 2].map((footprintSlotCount) => ({ mode: "x", footprintSlotCount })) }],
  ])("throws for %s: %j", (argument, wrong) => {
    const call = (): unknown => allocateAddresses({ luminaires: [], systems, ...wrong });
    expect(call).toThrow(ArgumentError);
    expect(call).toThrow(argument);
  });
});
