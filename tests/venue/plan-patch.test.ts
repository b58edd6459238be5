/** A venue's luminaires as a patch: expected addresses counted by hand, slots and times by ANSI E1.11. */
import { describe, expect, test } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { modeUses, narrowPatch, planPatch } from "../../src/venue/index.js";
import type { Luminaire, PatchPlan, Venue } from "../../src/venue/index.js";
import { receiver, rectangle, room, system, venue } from "../helpers/venues.js";

const luminaire = (name: string, more: Partial<Luminaire> = {}): Luminaire => ({
  ...{ name, room: "hall", x: 1, y: 1, ceilingHeightM: null, trimHeightM: null, system: "A", receiver: null },
  ...{ mode: null, footprintSlotCount: 8, universe: null, address: null, watts: null, weightKg: null },
  ...{ circuit: null, group: null, emergency: "no", onLinkLoss: "hold", further: {} },
  ...more,
});
const row = (count: number, more: Partial<Luminaire> = {}): Luminaire[] =>
  Array.from({ length: count }, (_, index) => luminaire(`${more.room ?? "hall"} ${index + 1}`, more));
const house = (luminaires: readonly Luminaire[], more: Partial<Venue> = {}): Venue =>
  venue({ luminaires, ...more });
const placed = ({ addresses }: PatchPlan): (string | number | null)[][] =>
  addresses.rows.map(({ name, universe, address }) => [name, universe, address]);

const TWO_ROOMS = {
  rooms: [room("hall", rectangle(0, 0, 20, 12)), room("foyer", rectangle(20, 0, 30, 12))],
  systems: [system(), system({ name: "B", rooms: ["foyer"], universe: 5, channel: null })],
};

describe("rows stand in the order of hanging", () => {
  test("systems as the file has them, rooms and groups kept together", () => {
    const mixed = [
      luminaire("F1", { room: "foyer", system: "B" }),
      luminaire("H1", { group: "ridge" }),
      luminaire("H2", { group: "aisle" }),
      luminaire("H3", { group: "ridge" }),
    ];
    expect(placed(planPatch(house(mixed, TWO_ROOMS)))).toEqual([
      ["H1", 1, 1],
      ["H3", 1, 9],
      ["H2", 1, 17],
      ["F1", 5, 1],
    ]);
  });
  test("settled addresses stay where they are, others step round them", () => {
    const all = row(3);
    all[2] = luminaire("last", { address: 5 });
    expect(placed(planPatch(house(all))).map(([, , address]) => address)).toEqual([13, 21, 5]);
  });
});

describe("modes", () => {
  test("a luminaire that states none takes the slots that all others of its mode have", () => {
    const all = [luminaire("a", { mode: "wide", footprintSlotCount: 14 }), luminaire("b", { mode: "wide", footprintSlotCount: null })]; // prettier-ignore
    const plan = planPatch(house(all));
    expect(plan.addresses.rows.map(({ address, lastSlot }) => [address, lastSlot])).toEqual([
      [1, 14],
      [15, 28],
    ]);
    expect(plan.modes).toMatchObject([{ mode: "wide", footprintSlotCount: 14, given: false, filled: ["b"] }]);
  });
  test("nothing is guessed where they disagree, and a footprint that was looked up settles it", () => {
    const all = [14, 9, null].map((footprintSlotCount, index) => luminaire(`${index}`, { mode: "wide", footprintSlotCount })); // prettier-ignore
    expect(modeUses(all)).toMatchObject([{ footprintSlotCount: null, statedSlotCounts: [9, 14] }]);
    expect(planPatch(house(all)).addresses.rows[2]).toMatchObject({ address: null, reason: "no-footprint" });
    const given = planPatch(house(all), { modes: [{ mode: "wide", footprintSlotCount: 14 }] });
    expect(given.addresses.rows.map(({ address }) => address)).toEqual([1, 15, 24]);
    expect(given.addresses.conflicts).toMatchObject([
      { kind: "mode-footprint", severity: "warning", luminaires: [{ name: "1" }] },
    ]);
  });
});

describe("receivers", () => {
  const served = (names: readonly string[]): Partial<Venue> => ({
    receivers: [
      receiver("own", { x: 0, y: 0, z: 5 }, { name: "a", luminaires: ["a"] }),
      receiver("box", { x: 0, y: 0, z: 5 }, { luminaires: names }),
    ],
  });
  test("one that its own list gives its luminaires is theirs; one of its own is none", () => {
    const { addresses } = planPatch(
      house([luminaire("a"), luminaire("b"), luminaire("c")], served(["b", "c"])),
    );
    expect(addresses.rows.map((one) => one.receiver)).toEqual([null, "box", "box"]);
  });
  test("one that would have to give out two universes is told", () => {
    const profile = { ...findProfile("raster-13"), universesPerTransmitterCount: { value: 2, status: "yours", source: "" } as const }; // prettier-ignore
    const all = [luminaire("b", { universe: 1 }), luminaire("c", { universe: 2 })];
    const { addresses } = planPatch(house(all, { systems: [system({ profile })], ...served(["b", "c"]) }));
    expect(addresses.conflicts.map(({ kind }) => kind)).toEqual(["receiver-universes"]);
  });
});

describe("an overflow", () => {
  // 64 · 8 = 512: the 65th has no room; twelve universes on, 13 is the first that nobody carries.
  const plan = planPatch(
    house([...row(66), luminaire("F1", { room: "foyer", system: "B", universe: 12 })], {
      ...TWO_ROOMS,
      systems: [system(), { ...TWO_ROOMS.systems[1]!, universe: 12 }],
    }),
  );
  test("names who needs a further system, on the next free universe", () => {
    expect(plan.overflows).toMatchObject([
      { system: "A", luminaires: ["hall 65", "hall 66"], slotCount: 16, furtherSystemCount: 1, firstFurtherUniverse: 13, fitsInFreeOrder: false }, // prettier-ignore
    ]);
  });
  // Design, section 6: a packet of 4.5 ms, one a frame, 44 frames a second.
  test("says how long one more transmitter is on the air: 0.0045 s · 44 /s", () => {
    expect(plan.overflows[0]!.airtimeRatio).toBeCloseTo(0.198, 12);
  });
  test("has no universe left behind 63999", () => {
    const { overflows } = planPatch(house(row(65), { systems: [system({ universe: 63_999 })] }));
    expect(overflows).toMatchObject([{ firstFurtherUniverse: null }]);
  });
});

test("a transmitter carries no universe beyond 63999", () => {
  const profile = { ...findProfile("raster-13"), universesPerTransmitterCount: { value: 4, status: "yours", source: "" } as const }; // prettier-ignore
  const plan = planPatch(house(row(1), { systems: [system({ profile, universe: 63_998 })] }));
  expect(plan.systems).toMatchObject([{ universeCount: 2 }]);
});

/** ANSI E1.11: break 92 µs + mark 12 µs + (1 + slots) · 44 µs, at least 1204 µs from break to break. */
describe("refresh", () => {
  const { refresh } = planPatch(house(row(10)));
  test("of 512 slots: 92 + 12 + 513 · 44 = 22 676 µs; with a break of 176 µs 22 760 µs", () => {
    expect([refresh.full.frameUs, refresh.fullUsualBreak.frameUs]).toEqual([22_676, 22_760]);
    expect(refresh.full.rateHz).toBeCloseTo(44.0995, 4);
  });
  test("of 80 slots in use: 104 + 81 · 44 = 3668 µs", () => {
    expect(refresh.universes).toMatchObject([{ universe: 1, sentSlotCount: 80, frame: { frameUs: 3668 } }]);
  });
});

describe("labels", () => {
  test("name the radio channel that the file settles, with its MHz, and leave the rest open", () => {
    const all = [luminaire("H1"), luminaire("F1", { room: "foyer", system: "B" })];
    const { labels } = planPatch(house(all, TWO_ROOMS));
    expect(labels.map(({ channel, fallback }) => [channel, fallback])).toEqual([
      [{ channel: 6, centreMhz: 2437 }, null],
      [null, null],
    ]);
  });
  test("a hopping radio has no channel to set, whatever number the file holds", () => {
    const plan = planPatch(house(row(1), { systems: [system({ profile: findProfile("hop-79"), channel: 6 })] })); // prettier-ignore
    expect([plan.systems[0]!.hops, plan.labels[0]!.channel]).toEqual([true, null]);
  });
});

describe("a part of a patch", () => {
  const all = [
    luminaire("H1", { emergency: "unknown", mode: "wide" }),
    luminaire("H2", { address: 4 }),
    luminaire("F1", { room: "foyer", system: "B", emergency: "unknown" }),
    luminaire("F2", { room: "foyer", system: "B", emergency: "yes", address: 3, footprintSlotCount: 2 }),
    luminaire("F3", { room: "foyer", system: "B", address: 4, footprintSlotCount: 2 }),
  ];
  const whole = planPatch(house(all, TWO_ROOMS));
  test("keeps the addresses of the whole, with its own clashes, universes and unknowns alone", () => {
    const foyer = narrowPatch(whole, { room: "foyer" });
    expect(placed(foyer)).toEqual(placed(whole).slice(2));
    expect(foyer.labels.map(({ name, address }) => [name, address])).toEqual(
      foyer.addresses.rows.map(({ name, address }) => [name, address]),
    );
    expect(foyer.addresses.universes.map(({ universe }) => universe)).toEqual([5]);
    expect(foyer.addresses.conflicts).toMatchObject([
      { kind: "overlap", slots: { firstSlot: 4, lastSlot: 4 } },
    ]);
    expect(foyer.emergency).toEqual({ names: ["F2"], unknownNames: ["F1"] });
    expect(foyer.modes).toEqual([]);
    const hall = narrowPatch(whole, { system: "A" });
    expect(hall.addresses.rows.map(({ name }) => name)).toEqual(["H1", "H2"]);
    expect([hall.addresses.conflicts, hall.emergency.unknownNames]).toEqual([[], ["H1"]]);
  });
  test("is the whole where nothing is asked for", () => {
    expect(narrowPatch(whole, {})).toBe(whole);
  });
});
