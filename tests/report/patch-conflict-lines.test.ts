/** Every clash and fault of a patch names who is in it and the slots; expected words are the fault's own terms. */
import { describe, expect, test } from "vitest";
import { SWITCH_VALUES, addressSwitches } from "../../src/patch/index.js";
import { conflictLines } from "../../src/report/patch-conflict-lines.js";
import { modeLetter } from "../../src/report/patch-mode-table.js";
import { switchPicture } from "../../src/report/patch-words.js";
import { planPatch } from "../../src/venue/index.js";
import type { Luminaire, PatchPlan, PlanPatchOptions } from "../../src/venue/index.js";
import { system, venue } from "../helpers/venues.js";

const luminaire = (name: string, more: Partial<Luminaire> = {}): Luminaire => ({
  ...{ name, room: "hall", x: 1, y: 1, ceilingHeightM: null, trimHeightM: null, system: "A", receiver: null },
  ...{ mode: null, footprintSlotCount: 8, universe: null, address: null, watts: null, weightKg: null },
  ...{ circuit: null, group: null, emergency: "no", onLinkLoss: "hold", further: {} },
  ...more,
});
const patchOf = (luminaires: readonly Luminaire[], options: PlanPatchOptions = {}): PatchPlan =>
  planPatch(venue({ luminaires, systems: [system()] }), options);
const told = (luminaires: readonly Luminaire[], options: PlanPatchOptions = {}): string[] =>
  conflictLines(patchOf(luminaires, options));

describe("a fault in words", () => {
  const reserved = [{ universe: 1, firstSlot: 100, lastSlot: 110 }];
  test.each([
    ["overlap", [luminaire("a", { address: 1 }), luminaire("b", { address: 7 })], /^ERROR: slots 7 to 8 of universe 1 taken twice: a \(slots 1 to 8\), b \(slots 7 to 14\)/],
    ["duplicate", [luminaire("a", { address: 9 }), luminaire("b", { address: 9 })], /^look: slots 9 to 16 of universe 1 are the same for a, b/],
    ["across the end", [luminaire("a", { address: 508 })], /^ERROR: a runs across the end of universe 1: a \(slots 508 to 515\)/],
    ["no address", [luminaire("a", { address: 600 })], /^ERROR: a: DMX addresses are 1 to 512, not 600/],
    ["no footprint", [luminaire("a", { footprintSlotCount: null })], /^ERROR: a: its footprint is not known/],
    ["other universe", [luminaire("a", { universe: 4 })], /^ERROR: a: universe 4 is not carried by A, which carries universe 1/],
    ["no such universe", [luminaire("a", { universe: 64_000 })], /^ERROR: a: universes are 1 to 63999, not 64000/],
    ["no system", [luminaire("a", { system: "gone" })], /^ERROR: a: no system serves it/],
    ["reserved", [luminaire("a", { address: 98 })], /^ERROR: slots 100 to 105 of universe 1 reserved, but taken by a \(slots 98 to 105\)/],
    ["one name twice", [luminaire("a"), luminaire("a")], /^ERROR: 2 luminaires are called a/],
  ])("%s", (_what, luminaires, words) => {
    const lines = told(luminaires, { reserved });
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(words);
  }); // prettier-ignore
  test("a mode's footprint", () => {
    const lines = told([luminaire("a", { mode: "wide" })], {
      modes: [{ mode: "wide", footprintSlotCount: 9 }],
    });
    expect(lines).toEqual(["look: a: its 8 slots are not the 9 of mode wide."]);
  });
  test("no run: reserved slots leave none as long", () => {
    const holes = [100, 200, 300, 400, 500].map((slot) => ({
      universe: null,
      firstSlot: slot,
      lastSlot: slot,
    }));
    const lines = told([luminaire("a", { footprintSlotCount: 150 })], { reserved: holes });
    expect(lines).toEqual([
      "ERROR: a: no DMX address: reserved slots leave no universe a run as long as its footprint.",
    ]);
  });
  test("an overflow is told as such, not once more as a fault of each", () => {
    const luminaires = Array.from({ length: 70 }, (_, index) => luminaire(`n${index}`));
    expect(told(luminaires)).toEqual([]);
  });
  test("errors come before what is to be looked at; strangers' names are shown, never obeyed", () => {
    const lines = told([
      luminaire("a\u001b[2J", { address: 9 }),
      luminaire("b", { address: 9 }),
      luminaire("c", { address: 12 }),
    ]);
    expect(lines.map((line) => line.split(":")[0])).toEqual(["ERROR", "look"]);
    expect(lines.join("")).toContain("a\\u001b[2J");
    expect(lines.join("")).not.toContain("\u001b");
  });
});

test("the picture of the switches: the digits that are on, added by their values, are the address", () => {
  for (let address = 1; address < 512; address++) {
    const digits = switchPicture(addressSwitches(address).fromOne!);
    expect(digits).toHaveLength(9);
    const sum = [...digits].reduce(
      (total, digit) => total + (digit === "." ? 0 : 2 ** (Number(digit) - 1)),
      0,
    );
    expect(sum).toBe(address);
  }
  expect(SWITCH_VALUES).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256]);
});

test("letters of modes go on behind Z as a spreadsheet's columns do", () => {
  const luminaires = Array.from({ length: 53 }, (_, index) => luminaire(`n${index}`, { mode: `m${index}`, footprintSlotCount: 1 })); // prettier-ignore
  const patch = patchOf(luminaires);
  expect([0, 25, 26, 27, 51, 52].map((index) => modeLetter(patch, `m${index}`))).toEqual([
    ...["A", "Z", "AA", "AB", "AZ", "BA"],
  ]);
});
