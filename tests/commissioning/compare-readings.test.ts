import { describe, expect, test } from "vitest";
import { compareReadings, LOOSE_DB, ROOM_BIAS_DB, SUSPECT_DB } from "../../src/commissioning/index.js";
import type { ReceiverPrediction, ReceiverReading } from "../../src/commissioning/index.js";
import { ArgumentError } from "../../src/issues/index.js";

/** A room of eight receivers on a line, 3 m apart, each expected at −60 ± 12 dBm with 14 dB to spare. */
const hall: ReceiverPrediction[] = Array.from({ length: 8 }, (_, index) => ({
  receiver: `P${index + 1}`,
  room: "hall",
  predictedDbm: -60,
  intervalDbm: [-72, -48] as const,
  workingMarginDb: 14,
  at: { x: 3 * index, y: 0, z: 6 },
}));
/** Ordinary scatter about the plan, dB, sum 0. */
const SCATTER_DB = [1, -2, 3, 0, -3, 2, -1, 0];

const reading = (
  receiver: string,
  receivedDbm: number | null,
  floorDbm: number | null = null,
): ReceiverReading => ({
  receiver,
  receivedDbm,
  floorDbm,
});
const walked = (offDb = 0): ReceiverReading[] =>
  hall.map(({ receiver }, index) => reading(receiver, -60 + SCATTER_DB[index]! + offDb));

describe("scenarios after install", () => {
  test("all good", () => {
    const { verdict, findings, receivers, rooms } = compareReadings(hall, walked());
    expect([verdict, findings]).toEqual(["as-planned", []]);
    expect(receivers.map(({ differenceDb }) => differenceDb)).toEqual(SCATTER_DB);
    expect(receivers.every(({ isWithinInterval }) => isWithinInterval)).toBe(true);
    expect(rooms[0]).toMatchObject({ biasDb: 0, verdict: "as-planned", receiverCount: 8 });
    // s² = 28 / 7 = 4, t(7) = 2.364624 (printed tables): 0 ± 2.364624 · 2 / √8.
    expect(rooms[0]!.biasIntervalDb![1]).toBeCloseTo((2.364624 * 2) / Math.sqrt(8), 5);
  });
  test("one loose antenna: that receiver, and not the room", () => {
    const readings = walked();
    readings[4] = reading("P5", -90);
    const { verdict, findings, receivers, rooms } = compareReadings(hall, readings);
    expect(verdict).toBe("fails");
    expect(findings.filter(({ code }) => code !== "margin-fails")).toEqual([
      { code: "antenna-suspect", severity: "failure", room: "hall", receiver: "P5" },
    ]);
    expect(receivers[4]!.suspicion!.causes).toEqual(["loose-antenna", "null"]);
    expect([rooms[0]!.verdict, rooms[0]!.receiverCount]).toEqual(["as-planned", 7]);
  });
  test("one in a null: 10 to 20 dB below its neighbours, even within its own interval", () => {
    const readings = walked();
    readings[2] = reading("P3", -71.9);
    const { findings, receivers } = compareReadings(hall, readings);
    expect(findings.map(({ code, receiver }) => [code, receiver])).toEqual([["antenna-suspect", "P3"]]);
    expect(receivers[2]!.isWithinInterval).toBe(true);
    expect(receivers[2]!.suspicion!.causes).toEqual(["null", "loose-antenna"]);
  });
  test("the whole room 8 dB low: the room, and nobody's antenna, though each lies within its interval", () => {
    const { verdict, findings, receivers, rooms } = compareReadings(hall, walked(-8));
    expect(verdict).toBe("fails");
    expect(findings).toEqual([{ code: "room-low", severity: "failure", room: "hall", receiver: null }]);
    expect(rooms[0]!.biasDb).toBeCloseTo(-8, 12);
    expect(receivers.every(({ isWithinInterval }) => isWithinInterval)).toBe(true);
    expect(receivers[0]!.measuredMarginDb).toBeCloseTo(14 + 1 - 8, 12);
  });
  test("a room that is high is told and fails nothing", () => {
    const { verdict, rooms } = compareReadings(hall, walked(8));
    expect([verdict, rooms[0]!.verdict]).toEqual(["as-planned", "high"]);
  });
  test("one not heard: named, and suspect by its floor where its neighbours are good", () => {
    const readings = walked();
    readings[1] = reading("P2", null, -95);
    const { findings, receivers } = compareReadings(hall, readings);
    expect(findings).toEqual([
      { code: "antenna-suspect", severity: "failure", room: "hall", receiver: "P2" },
    ]);
    expect(receivers[1]).toMatchObject({ measuredDbm: null, differenceDb: null, differenceAtMostDb: -35 });
    readings[1] = reading("P2", null, null);
    expect(compareReadings(hall, readings).findings[0]).toMatchObject({ code: "not-heard", receiver: "P2" });
  });
  test("no margin left is a failure of its own", () => {
    const thin = hall.map((each) => ({ ...each, workingMarginDb: 2 }));
    const { findings } = compareReadings(thin, walked());
    expect(findings.map(({ code, receiver }) => [code, receiver])).toEqual([["margin-fails", "P5"]]);
  });
  test("one that was not read is a warning; none read is its own verdict", () => {
    const { verdict, findings } = compareReadings(hall, walked().slice(0, 7));
    expect(verdict).toBe("as-planned");
    expect(findings).toEqual([{ code: "not-read", severity: "warning", room: "hall", receiver: "P8" }]);
    expect(compareReadings(hall, []).verdict).toBe("not-read");
  });
});

describe("details", () => {
  test("several readings count as their median, those not heard below all levels", () => {
    const of = (...levels: (number | null)[]) =>
      compareReadings(
        hall.slice(0, 1),
        levels.map((each) => reading("p1 ", each, -95)),
      ).receivers[0]!;
    expect(of(-58, -66, -61).measuredDbm).toBe(-61);
    expect(of(-58, null, -61).measuredDbm).toBe(-61);
    expect(of(-58, -66, -61, null).measuredDbm).toBe(-63.5);
    expect(of(-58, null).measuredDbm).toBeNull();
    expect(of(-58, null, null)).toMatchObject({ measuredDbm: null, notHeardCount: 2, verdict: "not-heard" });
  });
  test("not heard is as planned where the interval reaches below the floor", () => {
    const weak = [{ ...hall[0]!, predictedDbm: -90, intervalDbm: [-102, -78] as const }];
    expect(compareReadings(weak, [reading("P1", null, -95)]).receivers[0]!.verdict).toBe("as-planned");
    expect(compareReadings(weak, [reading("P1", null, -103)]).receivers[0]!.verdict).toBe("not-heard");
  });
  test("neighbours are the nearest of the room: a far end that is low as a whole names nobody", () => {
    const long = Array.from({ length: 20 }, (_, index) => ({
      ...hall[0]!,
      receiver: `L${index}`,
      intervalDbm: [-90, -30] as const,
      at: { x: 4 * index, y: 0, z: 0 },
    }));
    const readings = long.map(({ receiver }, index) => reading(receiver, index < 12 ? -60 : -74));
    expect(compareReadings(long, readings).receivers.filter(({ suspicion }) => suspicion !== null)).toEqual(
      [],
    );
    const nowhere = long.map((each) => ({ ...each, at: null }));
    expect(
      compareReadings(nowhere, readings).receivers.filter(({ suspicion }) => suspicion !== null).length,
    ).toBe(8);
  });
  test("neighbours that disagree, or a single one, accuse nobody", () => {
    const wild = [0, 25, -14, 30, -30, 14, -25, 0].map((off, index) => reading(`P${index + 1}`, -60 + off));
    expect(compareReadings(hall, wild).receivers.every(({ suspicion }) => suspicion === null)).toBe(true);
    const two = compareReadings(hall.slice(0, 2), [reading("P1", -60), reading("P2", -90)]);
    expect(two.receivers[1]!.verdict).toBe("low");
    expect(two.rooms[0]!.receiverCount).toBe(2);
  });
  test("a room with receivers not heard has a mean below that of those heard, and no less sure an interval", () => {
    const far = hall.map((each) => ({ ...each, predictedDbm: -88, intervalDbm: [-100, -76] as const }));
    const some = far.map(({ receiver }, index) =>
      index % 2 === 0 ? reading(receiver, -88 + SCATTER_DB[index]!) : reading(receiver, null, -91),
    );
    const [room] = compareReadings(far, some).rooms;
    expect(room!.biasDb!).toBeLessThan(0); // heard alone: 1 + 3 − 3 − 1 = 0
    expect(room!.biasDb!).toBeGreaterThan(-5);
  });
  test("the thresholds hold where they are reached", () => {
    const of = (offDb: number) => {
      const flat = hall.map(({ receiver }) => reading(receiver, -60));
      flat[3] = reading("P4", -60 - offDb);
      return compareReadings(hall, flat).receivers[3]!.suspicion?.causes[0] ?? null;
    };
    expect([of(SUSPECT_DB - 0.01), of(SUSPECT_DB), of(LOOSE_DB - 0.01), of(LOOSE_DB)]).toEqual([
      null,
      "null",
      "null",
      "loose-antenna",
    ]);
    const room = (offDb: number) => compareReadings(hall, walked(offDb)).rooms[0]!.verdict;
    expect([room(-ROOM_BIAS_DB + 0.01), room(-ROOM_BIAS_DB)]).toEqual(["as-planned", "low"]);
  });
  test("a room whose readings scatter too much to tell is not called low", () => {
    const [room] = compareReadings(
      hall.slice(0, 3),
      [-54, -69, -69].map((dbm, i) => reading(`P${i + 1}`, dbm)),
    ).rooms;
    expect([room!.biasDb, room!.verdict]).toEqual([-4, "as-planned"]);
  });
  test("readings of strangers are kept apart", () => {
    const { strangers } = compareReadings(hall, [
      ...walked(),
      reading("Q1", -50),
      { ...reading("", -50), receiver: null },
    ]);
    expect(strangers.map(({ receiver }) => receiver)).toEqual(["Q1", null]);
  });
  test("a caller's mistakes throw", () => {
    expect(() => compareReadings([hall[0]!, { ...hall[0]!, receiver: " p1" }], [])).toThrow(ArgumentError);
    expect(() => compareReadings([{ ...hall[0]!, predictedDbm: NaN }], [])).toThrow(ArgumentError);
    expect(() => compareReadings([{ ...hall[0]!, intervalDbm: [-50, -40] }], [])).toThrow(ArgumentError);
    expect(() => compareReadings([{ ...hall[0]!, workingMarginDb: Infinity }], [])).toThrow(ArgumentError);
    expect(() => compareReadings(hall, [reading("P1", NaN)])).toThrow(ArgumentError);
    expect(() => compareReadings(hall, [], { confidenceRatio: 2 })).toThrow(ArgumentError);
  });
});
