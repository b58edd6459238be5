import { describe, expect, test } from "vitest";
import { WALK_COLUMNS } from "../../src/commissioning/index.js";
import {
  cautionsFor,
  CHECK_READING_COLUMNS,
  installChecks,
  SCAN_DRILL,
  surveyForm,
  troubleCard,
} from "../../src/index.js";
import type { CautionKind, InstallCheck, InstallTerms } from "../../src/index.js";

const luminaire = { footprintSlotCount: 8, mode: "six colours", trimHeightM: 6.4, universe: 1 } as const;
const terms: InstallTerms = {
  systems: [
    {
      ...{
        name: "hall",
        channel: { channel: 6, centreMhz: 2437 },
        fallback: { channel: 13, centreMhz: 2472 },
      },
      ...{ receiversFollow: "no", relinkS: 20 },
    },
    { name: "studio", channel: null, fallback: null, receiversFollow: "unknown", relinkS: null },
  ],
  receivers: [
    { name: "R1", system: "hall", luminaires: ["H1", "H2"], predictedDbm: -58.26 },
    { name: "R2", system: "studio", luminaires: ["S1"], predictedDbm: null },
  ],
  luminaires: [
    { ...luminaire, name: "H1", room: "hall", address: 1, emergency: "no", onLinkLoss: "hold" },
    { ...luminaire, name: "H2", room: "hall", address: 9, emergency: "unknown", onLinkLoss: "unknown" },
    { ...luminaire, name: "S1", room: "studio", address: null, emergency: "yes", onLinkLoss: "dark" },
  ],
  circuits: [
    { circuit: "HA", control: "dimmer", luminaires: ["H1", "H2"] },
    { circuit: "SA", control: "none", luminaires: ["S1"] },
  ],
  doNotHang: ["H2"],
};
const checks = installChecks(terms);
const words = ({ parts }: InstallCheck): string =>
  parts.map((part) => (typeof part === "string" ? part : `${part.lengthM} m`)).join("");
const of = (code: string): InstallCheck[] => checks.filter((check) => check.code === code);

describe("the checklist", () => {
  test("goes by the order of the work, and holds each kind that install day needs", () => {
    const stages = ["before", "ground", "lift", "room", "handover"];
    const ranks = checks.map(({ stage }) => stages.indexOf(stage));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(new Set(checks.map(({ code }) => code)).size).toBe(18);
  });
  test("names this venue's circuits, channels, addresses and heights", () => {
    expect(of("dead-and-locked").map(({ subject }) => subject)).toEqual(["HA", "SA"]);
    expect(of("control-out").map(words)).toEqual([expect.stringMatching(/HA.*dimmer out/)]);
    expect(of("channel-set").map(words)).toEqual([
      "Transmitter of hall: radio ch 6 (2437 MHz), fallback radio ch 13 (2472 MHz).",
      "Transmitter of studio: radio ch ____, fallback radio ch ____.",
    ]);
    expect(of("address-set").map(words)).toEqual([
      "H1: universe 1, DMX address 1, 8 slots, mode six colours.",
      "H2: universe 1, DMX address 9, 8 slots, mode six colours.",
      expect.stringContaining("no address yet"),
    ]);
    expect(words(of("linked-on-ground")[0]!)).toContain("transmitters of studio off");
    expect(words(of("terminated")[0]!)).toMatch(/H2, is terminated with 120 Ω/);
    expect(of("link-at-trim").map(words)).toEqual([
      "R1: link seen at trim, 6.4 m; the plan expects -58.3 dBm.",
      "R2: link seen at trim, 6.4 m.",
    ]);
    expect(words(of("power-cut")[0]!)).toContain("20 s");
    expect(words(of("transmitter-off")[0]!)).toContain("H1 hold, H2 unknown");
    expect(words(of("transmitter-off")[1]!)).toContain("S1 dark");
    expect(of("label-written").map(words)[0]).toMatch(/planned radio ch 6 .* fallback radio ch 13/);
  });
  test("goes luminaire by luminaire, each receiver at the last of its own, those without one at the end", () => {
    const idle = { name: "R3", system: "hall", luminaires: [], predictedDbm: null };
    const up = installChecks({ ...terms, receivers: [idle, ...terms.receivers] });
    const lift = up.filter(({ stage }) => stage === "lift").map(({ code, subject }) => `${subject} ${code}`);
    expect(lift).toEqual([
      ...["H1 power-made-up", "H2 power-made-up", "R1 terminated", "R1 link-at-trim"],
      ...["S1 power-made-up", "R2 terminated", "R2 link-at-trim", "R3 link-at-trim"],
    ]);
  });
  test("a system that hops has no channel to set", () => {
    const [hop] = installChecks({ ...terms, systems: [{ ...terms.systems[1]!, hops: true }] }).filter(
      ({ code }) => code === "channel-set",
    );
    expect(words(hop!)).toBe("Transmitter of studio: it hops: no radio channel to set.");
  });
  test("keeps on the ground what has no rating, and asks what is unknown", () => {
    expect(of("rating-settled").map(({ subject }) => subject)).toEqual(["H2"]);
    expect(of("emergency-settled").map(({ subject }) => subject)).toEqual(["H2", "S1"]);
    expect(words(of("loss-behaviour-set")[1]!)).toContain("Decide");
  });
  test("its blanks for readings are columns that a readings file has, the same row for every receiver", () => {
    for (const column of CHECK_READING_COLUMNS) expect(WALK_COLUMNS).toContain(column);
    const reading = checks.filter(({ blanks }) => blanks.some(({ kind }) => kind === "reading"));
    expect(reading.map(({ code, subject }) => [code, subject])).toEqual([
      ["link-at-trim", "R1"],
      ["link-at-trim", "R2"],
    ]);
    for (const { blanks } of reading) {
      expect(blanks.map(({ column }) => column)).toEqual([...CHECK_READING_COLUMNS]);
      expect(blanks.filter(({ filled }) => filled !== null)).toHaveLength(2);
    }
    expect(reading[0]!.blanks.slice(0, 2).map(({ filled }) => filled)).toEqual(["R1", "hall"]);
  });
});

describe("the trouble card", () => {
  test("has the seven troubles, with this venue's fallbacks", () => {
    const card = troubleCard(terms);
    expect(card.map(({ code }) => code)).toEqual([
      ...["one-frozen", "room-frozen", "only-when-full", "flicker", "wrong-one-moves", "after-power-cut"],
      "last-seen-good",
    ]);
    expect(card[1]!.steps.join(" ")).toMatch(
      /hall: from radio ch 6 .* to radio ch 13 .*EVERY RECEIVER NEEDS A VISIT/,
    );
    expect(card[1]!.steps.join(" ")).toContain("no fallback chosen");
    expect(card[3]!.steps[0]).toContain("HA");
    expect(card[4]!.steps[0]).toContain("2 of 3");
    expect(card[5]!.steps.join(" ")).toContain("hall: wait 20 s");
    for (const { steps } of card) expect(steps.length).toBeGreaterThan(0);
  });
});

describe("cautions", () => {
  const all: CautionKind[] = ["emergency", "radio", "control", "mains", "drilling", "lift", "overhead"];
  test("are short lines, each kind once, in a fixed order, and the sheet certifies nothing", () => {
    const lines = cautionsFor([...all, ...all]);
    expect(lines).toEqual(cautionsFor([...all].reverse()));
    expect(lines.filter(({ text }) => text.length > 76)).toEqual([]);
    expect(new Set(lines.map(({ text }) => text)).size).toBe(lines.length);
    expect(lines.at(-1)!.text).toContain("certifies nothing");
    expect(cautionsFor([]).map(({ kind }) => kind)).toEqual(["sheet"]);
  });
  test.each([
    ["mains", /licensed electrician/],
    ["mains", /locked off/],
    ["overhead", /structure's own engineer/],
    ["overhead", /rated safety cable/],
    ["lift", /never alone/i],
    ["lift", /rated load/],
    ["lift", /lower it/],
    ["lift", /closed, tools tethered/],
    ["lift", /floor rated/],
    ["drilling", /tested before/],
    ["control", /dimmer/],
    ["radio", /EIRP by the region's rule/],
    ["emergency", /authority having jurisdiction/],
  ] as const)("%s says %s", (kind, text) => {
    expect(
      cautionsFor([kind])
        .map((line) => line.text)
        .join(" "),
    ).toMatch(text);
  });
});

describe("the survey form", () => {
  test("asks in columns whose names differ within a table, and in snake case", () => {
    for (const { fields } of surveyForm()) {
      const columns = fields.map(({ column }) => column);
      expect(new Set(columns).size).toBe(columns.length);
      expect(columns.filter((column) => !/^[a-z]+(_[a-z]+)*$/.test(column))).toEqual([]);
      for (const { answer } of fields)
        if (answer.kind === "choice") expect(answer.choices.length).toBeGreaterThan(1);
    }
  });
  test("asks per ceiling point and per room for all that the crew needs", () => {
    const columns = (each: string) =>
      surveyForm()
        .find((section) => section.each === each)!
        .fields.map((f) => f.column);
    expect(columns("ceiling point")).toEqual(
      expect.arrayContaining([
        ...["ceiling_height", "trim_height", "box_type", "box_rated", "circuit", "control", "earth"],
        ...["cord_condition", "canopy_condition", "slope", "weight", "watts"],
      ]),
    );
    expect(columns("room")).toEqual(
      expect.arrayContaining([
        ...["way_in", "floor_load", "fixed_seating", "suspect_materials", "console", "transmitter_power"],
      ]),
    );
    expect(columns("venue")).toEqual(expect.arrayContaining(["event_times", "network_contact"]));
    expect(SCAN_DRILL.join(" ")).toMatch(/hotspot.*five looks.*trim height.*empty.*full/is);
  });
});
