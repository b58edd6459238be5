/** A venue's sheets for the crew: lengths, loads and cords worked out by hand, in both systems of units. */
import { describe, expect, test } from "vitest";
import { feetInchesText } from "../../src/units/index.js";
import { findProfile } from "../../src/radio/index.js";
import { narrowHang, planHang } from "../../src/venue/index.js";
import type { HangPlan, Luminaire, PlanHangOptions, Venue } from "../../src/venue/index.js";
import { receiver, rectangle, room, system, venue } from "../helpers/venues.js";

const inch = (inches: number): number => inches * 0.0254; // exact: international inch of 1959
const KG_PER_LB = 0.45359237; // exact: international pound of 1959

const luminaire = (name: string, more: Partial<Luminaire> = {}): Luminaire => ({
  ...{ name, room: "hall", x: 1, y: 1, ceilingHeightM: 8, trimHeightM: 6, system: "A", receiver: null },
  ...{ mode: null, footprintSlotCount: 8, universe: null, address: null, watts: null, weightKg: 9 },
  ...{ circuit: null, group: null, emergency: "no", onLinkLoss: "hold", further: {} },
  ...more,
});
const own = ({ name, room: inRoom, x, y }: Luminaire) =>
  receiver(name, { x, y, z: 6 }, { room: inRoom, luminaires: [name] });
const house = (luminaires: readonly Luminaire[], more: Partial<Venue> = {}): Venue =>
  venue({ luminaires, receivers: luminaires.map(own), ...more });
const rowOf = (plan: HangPlan, name: string) => plan.hang.rows.find((row) => row.name === name)!;
const circuitOf = (plan: HangPlan, name: string) => plan.circuits.rows.find((row) => row.circuit === name)!;
const wordsOf = ({ parts }: HangPlan["checks"][number]): string =>
  parts.map((part) => (typeof part === "string" ? part : `${part.lengthM} m`)).join("");
const mm = (lengthM: number | null | undefined): number | null =>
  lengthM === null || lengthM === undefined ? null : Math.round(lengthM * 1e6) / 1e3;

describe("a hall trimmed at 21 ft, typed by a crew in feet, and the same in metres", () => {
  const imperial = house(
    [26 * 12, 27 * 12 + 4, 28 * 12 + 7.5].map((inches, index) =>
      luminaire(`R${index + 1}`, {
        ...{ x: index, ceilingHeightM: inch(inches), trimHeightM: inch(21 * 12), weightKg: 20 * KG_PER_LB },
        further: {
          ...{ "Body height": "18 in", "Box rated": "50", "Hook rated": "60 lb", Slope: "0" },
          ...{ "Suspension rated (lb)": "80", "Old chain": "rusty" },
        },
      }),
    ),
    {
      units: "ft",
      hang: {
        ...{ stepM: inch(1.25), canopyM: inch(2), topHookM: inch(1.5), bottomHookM: inch(1.5) },
        ...{ eyeBoltM: inch(1), boxMakeUpM: inch(12), inletReachM: inch(8), safetySlackM: inch(12) },
        ...{ suspensionKgPerM: 0.4, cordKgPerM: 0.1, receiverKg: 0.5 },
      },
    },
  );
  const plan = planHang(imperial);
  const text = (lengthM: number | null | undefined): string => feetInchesText(lengthM!, 8);

  test("links 28, 41 and 53: 28.8, 41.6 and 54, the last one up for the level", () => {
    expect(plan.hang.rows.map(({ stepCount }) => stepCount)).toEqual([28, 41, 53]);
    expect(plan.hang.rows.map(({ trimErrorM }) => text(trimErrorM))).toEqual([
      `0' 1"`,
      `0' 0 3/4"`,
      `0' 1 1/4"`,
    ]);
  });
  test("cord = chain + 6 + 10 % + 12 + 8 in; safety = chain + 6 + 12 in", () => {
    expect(plan.hang.rows.map(({ cord }) => text(cord?.lengthM))).toEqual([
      ...[`5' 4 1/2"`, `6' 10 3/8"`, `8' 2 7/8"`],
    ]);
    expect(text(plan.hang.rows[0]!.safetyM)).toBe(`4' 5"`);
    expect(plan.hang.doNotHang).toEqual([]);
    expect(plan.issues).toEqual([]);
  });
  test("weight: luminaire, chain, cord, receiver", () => {
    // 20 lb = 9.0718474 kg; 35 in = 0.889 m of chain; 64.5 in = 1.6383 m of cord
    expect(rowOf(plan, "R1").load.totalKg).toBeCloseTo(9.0718474 + 0.3556 + 0.16383 + 0.5, 9);
  });
  test("typed in metres and kilograms, every length and verdict is the same", () => {
    const metric = planHang({
      ...imperial,
      units: "m",
      luminaires: imperial.luminaires.map((one) => ({
        ...one,
        further: {
          ...{ body_height: "457.2 mm", "Box rated (kg)": "22.6796185", "hook rated": "27.2155422" },
          ...{ "suspension rated": "36.2873896", slope: "0°" },
        },
      })),
    });
    expect(metric.hang.rows.map(({ stepCount, flags }) => [stepCount, flags])).toEqual(
      plan.hang.rows.map(({ stepCount, flags }) => [stepCount, flags]),
    );
    metric.hang.rows.forEach((row, index) => {
      expect(row.cord!.lengthM).toBeCloseTo(plan.hang.rows[index]!.cord!.lengthM, 9);
      expect(row.load.totalKg).toBeCloseTo(plan.hang.rows[index]!.load.totalKg!, 9);
    });
    expect([plan.sizes, metric.sizes]).toEqual(["awg", "mm2"]);
  });
});

describe("whose figure holds", () => {
  const all = [luminaire("row", { further: { body_height: "0.5" } }), luminaire("other", { x: 2 })];
  const rope: PlanHangOptions = { figures: { suspension: "wire-rope", bodyHeightM: 0.6 } };
  test("the row's own, then the option's, then the venue file's", () => {
    const { hang } = planHang(house(all, { hang: { bodyHeightM: 0.7, canopyM: 0.1 } }), rope);
    // 8 − 6 − 0.1 − body
    expect(hang.rows.map(({ dropM }) => mm(dropM))).toEqual([1400, 1300]);
  });
  test("a rating is never taken from nowhere, and a cell that can't be one leaves it open and is told", () => {
    const further = { "Box rated": "strong", "Hook rated": "40", "Suspension rated": "60" };
    const { hang, issues } = planHang(house([luminaire("P", { further })]), rope);
    expect(hang.doNotHang).toEqual(["P"]);
    expect(hang.rows[0]!.flags).toContain("rating-not-given");
    expect(hang.rows[0]!.load.checks.map(({ part, verdict }) => [part, verdict])).toContainEqual([
      ...["box", "rating-not-given"],
    ]);
    expect(issues).toMatchObject([{ source: "luminaire P", column: "Box rated", value: "strong", severity: "warning" }]); // prettier-ignore
  });
  test("trim from the local floor only where its row says so; the floor may lie lower", () => {
    const further = { floor_offset: "-600 mm", body_height: "0.5" };
    const { hang } = planHang(
      house([
        luminaire("datum", { ceilingHeightM: 8.6, further }),
        luminaire("local", { x: 2, ceilingHeightM: 8.6, further: { ...further, trim_from: "local floor" } }),
      ]),
      rope,
    );
    // Both ceilings are 8 m above the datum; trims 6 and 5.4.
    expect(hang.rows.map(({ dropM }) => mm(dropM))).toEqual([1500, 2100]);
  });
  test("a room's laser line is its own, or the one for all", () => {
    const rooms = [room("hall", rectangle(0, 0, 20, 12), { laserLineM: 1.5 }), room("foyer", rectangle(20, 0, 30, 12))]; // prettier-ignore
    const both = [luminaire("H"), luminaire("F", { room: "foyer", x: 21 })];
    const lines = (options: PlanHangOptions) =>
      planHang(house(both, { rooms }), options).hang.datums.map(({ laserLineM }) => laserLineM);
    expect([lines({}), lines({ laserLineM: 1.2 })]).toEqual([
      [1.5, null],
      [1.5, 1.2],
    ]);
  });
  test("hang_order in the rows goes before the order of the file", () => {
    const later = [luminaire("a", { further: { hang_order: "2" } }), luminaire("b", { x: 2, further: { "Hang order": "1" } })]; // prettier-ignore
    expect(planHang(house(later)).hang.rows.map(({ name }) => name)).toEqual(["b", "a"]);
  });
});

describe("a receiver weighs where it hangs", () => {
  const pair = [luminaire("P1"), luminaire("P2", { x: 3 })];
  const weights = (at: { x: number; y: number; z: number }): (number | null)[] => {
    const receivers = [receiver("box", at, { luminaires: ["P1", "P2"] })];
    const plan = planHang(house(pair, { receivers, hang: { receiverKg: 0.4 } }));
    return plan.hang.rows.map(({ load }) => load.receiverKg);
  };
  test("at its own luminaire; shared, at the first of them or at none", () => {
    expect(planHang(house(pair, { hang: { receiverKg: 0.4 } })).hang.rows.map(({ load }) => load.receiverKg)).toEqual([0.4, 0.4]); // prettier-ignore
    expect(weights({ x: 1, y: 1, z: 6 })).toEqual([0.4, 0]);
    expect(weights({ x: 2, y: 1, z: 7 })).toEqual([0, 0]);
  });
});

/** Ropes of any length without hardware: 8 − 6 − 0.5 = 1.5 m and 12 − 6 − 0.5 = 5.5 m; no weave, 0.3 and 0.2 m more. */
const run = [
  luminaire("A", { x: 0, watts: 230, circuit: "C1", further: { power_factor: "1" } }),
  luminaire("B", { x: 3, ceilingHeightM: 12, watts: 230, circuit: "C1", further: { power_factor: "100 %" } }),
];
const ropes: PlanHangOptions = {
  figures: { suspension: "wire-rope", bodyHeightM: 0.5, weaveRatio: 0, boxMakeUpM: 0.3, inletReachM: 0.2 },
};

describe("cords", () => {
  const fed = (feed: "own-box" | "through-fed" | "unknown", more: readonly Luminaire[] = run): HangPlan =>
    planHang(house(more, { circuits: [{ circuit: "C1", supplyV: 230, breakerA: 16, feed }] }), ropes);
  const feeds = (plan: HangPlan) => circuitOf(plan, "C1").feedsM.map(mm);

  test("from its own box as the hang sheet has it; nobody knows the feed: not said", () => {
    expect(feeds(fed("own-box"))).toEqual([2000, 6000]);
    expect(feeds(fed("unknown"))).toEqual([null, null]);
    expect(circuitOf(fed("unknown"), "C1").flags).toContain("ask-feed");
  });
  test("fed through: up 1.7 m, 3 m across and 4 m up the ceiling make 5, down 5.7 m", () => {
    const plan = fed("through-fed");
    expect(feeds(plan)).toEqual([2000, 12_400]);
    // Both 1 A. IEC 60228 class 5: 7.98 Ω/km at 20 °C, at 75 °C by 1 + 0.00393 · 55 = 1.21615.
    const ohmPerM = 0.00798 * 1.21615;
    const { choice, drops } = circuitOf(plan, "C1");
    expect(choice.conductor!.name).toBe("2.5 mm²");
    expect(drops[0]!.dropV).toBeCloseTo(2 * ohmPerM * 2 * 2, 9);
    expect(drops[1]!.dropV).toBeCloseTo(2 * ohmPerM * (2 * 2 + 12.4), 9);
  });
  test("and that is what the order cuts; 10 % on top", () => {
    const cord = fed("through-fed").order.lines.find(({ item }) => item === "cord")!;
    expect(
      cord.kind === "lengths" && [cord.conductor, mm(cord.order.lengthM), mm(cord.order.orderM)],
    ).toEqual([...["2.5 mm²", 14_400, 15_840]]);
  });
  test("a length that was measured holds", () => {
    const measured = [run[0]!, { ...run[1]!, further: { "Feed length (m)": "4.5" } }];
    expect(feeds(fed("through-fed", measured))).toEqual([2000, 4500]);
  });
  test("between storeys the floor counts: 3 m across, 5 m up from 8 to 13", () => {
    const storeys = [
      { name: "ground", floorM: 0, floorLossDb: null },
      { name: "upper", floorM: 5, floorLossDb: null },
    ];
    const rooms = [
      room("hall", rectangle(0, 0, 20, 12)),
      room("loft", rectangle(0, 0, 20, 12), { storey: "upper" }),
    ];
    const both = [run[0]!, { ...run[1]!, ceilingHeightM: 8, room: "loft" }];
    const circuits = [{ circuit: "C1", feed: "through-fed" as const }];
    const plan = planHang(house(both, { storeys, rooms, circuits }), ropes);
    expect(circuitOf(plan, "C1").feedsM[1]).toBeCloseTo(1.7 + Math.hypot(3, 5) + 1.7, 9);
  });
});

describe("circuits", () => {
  const on = (circuit: string, further: Record<string, string>, name = circuit): Luminaire =>
    luminaire(name, { x: name.length, circuit, watts: 100, further });

  test("the venue file's list goes before the rows, the rows before what holds for all", () => {
    const rows = [on("C1", { Control: "dimmer", "Breaker (A)": "10" }), on("C2", { supply: "110 V" })];
    const circuits = [{ circuit: "C1", breakerA: 20, control: "unknown" as const }];
    const plan = planHang(house(rows, { circuits }), { circuit: { supplyV: 230, breakerA: 16 } });
    expect(plan.circuits.rows.map((row) => [row.circuit, row.control, row.breakerA, row.supplyV])).toEqual([
      ["C1", "dimmer", 20, 230],
      ["C2", "unknown", 16, 110],
    ]);
    expect(plan.issues).toMatchObject([{ code: "contradiction", source: "circuit C1", value: "10" }]);
  });
  test("rows that contradict each other leave it open, and are told", () => {
    const rows = [on("C1", { breaker: "16" }, "a"), on("C1", { breaker: "20" }, "bb"), on("C1", { breaker: "16" }, "ccc")]; // prettier-ignore
    const plan = planHang(house(rows));
    expect(circuitOf(plan, "C1")).toMatchObject({ breakerA: null, watts: 300 });
    expect(circuitOf(plan, "C1").flags).toContain("ask-breaker");
    expect(plan.issues.map(({ expected }) => expected)).toEqual([
      expect.stringContaining("bb contradicts it"),
    ]);
  });
  test("a continuous load counts 125 % in the United States and Canada, in AWG; elsewhere nothing is taken", () => {
    const counted = (region: Venue["region"]) => {
      const plan = planHang(
        house([on("C1", { supply: "120", power_factor: "1", breaker: "20" })], { region }),
      );
      return [plan.sizes, circuitOf(plan, "C1").countedA];
    };
    // 100 / 120 = 0.8333; · 1.25 = 1.041667
    expect(counted("US")).toEqual(["awg", expect.closeTo(1.041667, 6)]);
    expect(counted("CA")).toEqual(["awg", expect.closeTo(1.041667, 6)]);
    expect(counted("EU")).toEqual(["mm2", expect.closeTo(0.833333, 6)]);
  });
});

describe("install day", () => {
  const systems = [
    system({ channel: null }),
    system({ name: "B", rooms: ["foyer"], universe: 2, channel: 3 }),
    system({ name: "H", rooms: ["loft"], universe: 3, channel: null, profile: findProfile("hop-79") }),
  ];
  const plan = planHang(house([luminaire("P")], { systems }), { channels: [{ system: "A", channel: 6, fallbackChannel: 13 }] }); // prettier-ignore
  test("has the channels that were chosen, or the file's; 2412 MHz and 5 MHz a step", () => {
    expect(
      plan.terms.systems.map(({ name, channel, fallback, hops }) => [name, channel, fallback, hops]),
    ).toEqual([
      ["A", { channel: 6, centreMhz: 2437 }, { channel: 13, centreMhz: 2472 }, false],
      ["B", { channel: 3, centreMhz: 2422 }, null, false],
      ["H", null, null, true],
    ]);
    const told = plan.checks.filter(({ code }) => code === "channel-set").map(wordsOf);
    expect(told).toEqual([
      "Transmitter of A: radio ch 6 (2437 MHz), fallback radio ch 13 (2472 MHz).",
      "Transmitter of B: radio ch 3 (2422 MHz), fallback radio ch ____.",
      "Transmitter of H: it hops: no radio channel to set.",
    ]);
  });
  test("has the addresses of the patch", () => {
    expect(plan.terms.luminaires[0]).toMatchObject({ universe: 1, address: 1, footprintSlotCount: 8 });
  });
});

describe("a part of the venue", () => {
  const rooms = [room("hall", rectangle(0, 0, 20, 12)), room("foyer", rectangle(20, 0, 30, 12))];
  const systems = [system(), system({ name: "B", rooms: ["foyer"], universe: 2 })];
  const all = [
    luminaire("H1", { watts: 100, circuit: "C1", emergency: "unknown" }),
    luminaire("H2", { x: 2, watts: 100, circuit: "C2" }),
    luminaire("F1", { x: 22, room: "foyer", system: "B", watts: 50, circuit: "C1" }),
  ];
  const receivers = all.map((one) => ({ ...own(one), system: one.system! }));
  const place = house(all, { rooms, systems, receivers });
  const whole = planHang(place, ropes);
  const foyer = narrowHang(whole, place, { room: "foyer" }, ropes);

  test("keeps each row as it is, and the whole load of a circuit that it shares", () => {
    expect(foyer.hang.rows).toEqual([rowOf(whole, "F1")]);
    expect(foyer.circuits.rows).toEqual([circuitOf(whole, "C1")]);
    expect(circuitOf(foyer, "C1").watts).toBe(150);
  });
  test("totals, order and notices are the part's", () => {
    // 1.5 m of rope, 10 % on top
    expect(foyer.hang.suspensions.map(({ order }) => mm(order.orderM))).toEqual([1650]);
    const counts = foyer.order.lines.flatMap((line) =>
      line.kind === "pieces" ? [[line.item, line.neededCount]] : [],
    );
    expect(counts).toContainEqual(["receiver", 1]);
    expect(counts).toContainEqual(["transmitter", 1]);
    expect([whole.hang.emergency.unknownNames, foyer.hang.emergency.unknownNames]).toEqual([["H1"], []]);
    expect([whole.hang.doNotHang.length, foyer.hang.doNotHang]).toEqual([3, ["F1"]]);
  });
  test("its checks name its own things, and the other transmitters that are to be off", () => {
    const subjects = new Set(foyer.checks.map(({ subject }) => subject));
    expect(subjects).toEqual(new Set(["B", "C1", "F1", null]));
    const link = foyer.checks.find(({ code }) => code === "linked-on-ground")!;
    expect(wordsOf(link)).toContain("transmitters of A off");
    expect(narrowHang(whole, place, { system: "B" }, ropes).checks).toEqual(foyer.checks);
    expect(narrowHang(whole, place, {}, ropes)).toBe(whole);
  });
});
