import { describe, expect, it } from "vitest";
import type { Reading } from "../../src/scan/index.js";
import { gradeEvidence } from "../../src/scan/evidence.js";
import type { FiledReading } from "../../src/scan/survey-source.js";
import { minute, reading } from "../helpers/readings.js";

const filed = (file: number, given: Partial<Reading>): FiledReading => ({
  fileIndex: file,
  reading: reading(given),
});
const grade = (looks: readonly FiledReading[], beyondWifi = true): string =>
  gradeEvidence(looks, beyondWifi).grade;

/** Three looks over just half an hour, one in a full room, two places: enough in every respect. */
const ENOUGH = [
  filed(0, { timeMs: minute(0), place: "hall", crowd: "empty" }),
  filed(0, { timeMs: minute(15), place: "foyer", crowd: "empty" }),
  filed(1, { timeMs: minute(30), place: "hall", crowd: "full" }),
];
const changed = (index: number, given: Partial<Reading>): FiledReading[] =>
  ENOUGH.map((look, at) => (at === index ? { ...look, reading: { ...look.reading, ...given } } : look));

describe("gradeEvidence, solid", () => {
  it("asks for three looks over 30 minutes, a full room, two places and more than Wi-Fi", () => {
    expect(grade(ENOUGH)).toBe("solid");
  });

  it.each([
    ["two looks", ENOUGH.slice(1)],
    ["a millisecond less than 30 minutes", changed(2, { timeMs: minute(30) - 1 })],
    ["no full room", changed(2, { crowd: "part" })],
    ["a blank crowd, which counts for nothing", changed(2, { crowd: null })],
    ["one place", changed(1, { place: "hall" })],
    ["a time stamp twice in one file: one look", changed(1, { timeMs: minute(0) })],
  ])("falls to partial with %s", (_, looks) => {
    expect(grade(looks)).toBe("partial");
  });

  it("falls to partial when only Wi-Fi was looked for", () => {
    expect(grade(ENOUGH, false)).toBe("partial");
  });

  it("counts one time stamp in two files as two looks", () => {
    const looks = [
      filed(0, { timeMs: minute(0) }),
      filed(1, { timeMs: minute(0), place: "foyer" }),
      filed(1, { timeMs: minute(30), crowd: "full" }),
    ];
    expect(grade(looks)).toBe("solid");
  });
});

describe("gradeEvidence, partial and one-look", () => {
  it.each([
    [
      "two looks in an empty room",
      [filed(0, { timeMs: minute(0) }), filed(0, { timeMs: minute(1) })],
      "partial",
    ],
    ["one look in a part-full room", [filed(0, { crowd: "part" })], "partial"],
    ["one look in a full room", [filed(0, { crowd: "full" })], "partial"],
    ["one look in an empty room", [filed(0, { crowd: "empty" })], "one-look"],
    ["one look with a blank crowd", [filed(0, { crowd: null })], "one-look"],
    ["many rows and places of one look", [filed(0, {}), filed(0, { place: "foyer" })], "one-look"],
    ["a file without times", [filed(0, { timeMs: null }), filed(0, { timeMs: null })], "one-look"],
    ["two files without times", [filed(0, { timeMs: null }), filed(1, { timeMs: null })], "partial"],
    ["nothing", [], "one-look"],
  ] as const)("%s", (_, looks, expected) => {
    expect(grade(looks)).toBe(expected);
  });
});

describe("gradeEvidence, words", () => {
  it("says that a beacon list is blind to other equipment, unless more was looked for", () => {
    expect(gradeEvidence(ENOUGH, false).reasons.join("\n")).toMatch(
      /microphones, intercoms, cameras, hearing assistance and video links/,
    );
    expect(gradeEvidence(ENOUGH, true).reasons.join("\n")).not.toMatch(/microphones/);
  });

  it("names the one next look that would help most", () => {
    expect(gradeEvidence([filed(0, {})], false).next).toMatch(/room full/);
    expect(gradeEvidence(ENOUGH, false).next).toMatch(/sweep/);
    expect(gradeEvidence(changed(1, { place: "hall" }), true).next).toMatch(/second place/);
    expect(gradeEvidence(ENOUGH.slice(1), true).next).toMatch(/half an hour/);
    expect(gradeEvidence([], true).next).toMatch(/scan the room/);
    expect(gradeEvidence(ENOUGH, true).next).toMatch(/hand-over.*first full event/);
  });

  it("fits the next look after the grade in 80 columns, whatever is wanted", () => {
    for (const looks of [[], [filed(0, {})], ENOUGH, ENOUGH.slice(1), changed(1, { place: "hall" })])
      for (const beyondWifi of [false, true]) {
        const { grade: word, next } = gradeEvidence(looks, beyondWifi);
        expect(`Trust     ${word}; next look: ${next}`.length).toBeLessThanOrEqual(80);
      }
  });
});
