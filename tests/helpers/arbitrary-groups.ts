import fc from "fast-check";
import { takeTurns } from "../../src/scorer/index.js";
import type { Contributor } from "../../src/scorer/index.js";
import { arbitraryAirtime } from "./arbitrary-emitters.js";

const member = fc.record({
  // Half decibels: ties within a group and equal sums between groups happen.
  inChannelDbm: fc.oneof(
    fc.integer({ min: -240, max: -80 }).map((value) => value / 2),
    fc.constant(-Infinity),
    fc.double({ min: -120, max: -40, noNaN: true }),
  ),
  airtimeRatio: arbitraryAirtime,
  airtimeAssumed: fc.boolean(),
});

/** Contention groups with their turns, reported and assumed airtimes mixed. */
export function arbitraryGroups(groupCount: number, memberCount: number): fc.Arbitrary<Contributor[][]> {
  return fc
    .array(fc.array(member, { minLength: 1, maxLength: memberCount }), { maxLength: groupCount })
    .map((groups) =>
      groups.map((members, group) =>
        takeTurns(members.map((each, index) => ({ emitter: `${group}-${index}`, ...each }))),
      ),
    );
}
