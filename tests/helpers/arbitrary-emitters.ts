import fc from "fast-check";
import { transmitShapes } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";

const AIRTIMES = [0, 1, 0.1, 0.25, 0.5];

/** Airtime 0 and 1 and the assumed figures often, anything between otherwise. */
export const arbitraryAirtime: fc.Arbitrary<number> = fc.oneof(
  fc.constantFrom(...AIRTIMES),
  fc.double({ min: 0, max: 1, noNaN: true }),
);

const draft = fc.record({
  channel: fc.integer({ min: 1, max: 13 }),
  wide: fc.boolean(),
  // Whole decibels: equal levels happen, as they do in real scans.
  levelDbm: fc.integer({ min: -95, max: -30 }),
  airtimeRatio: arbitraryAirtime,
  airtimeAssumed: fc.boolean(),
  alone: fc.integer({ min: 0, max: 9 }).map((draw) => draw === 0),
});

/** Wi-Fi sources on channels 1 … 13, some 40 MHz wide, a few outside every contention group. */
export function arbitraryEmitters(leastCount: number, mostCount: number): fc.Arbitrary<Emitter[]> {
  return fc.array(draft, { minLength: leastCount, maxLength: mostCount }).map((drafts) =>
    drafts.map(({ channel, wide, alone, levelDbm, airtimeRatio, airtimeAssumed }, index) => ({
      id: `source-${String(index).padStart(3, "0")}`,
      centreMhz: 2407 + 5 * channel + (wide ? (channel <= 7 ? 10 : -10) : 0),
      shape: wide ? transmitShapes.ht40 : transmitShapes.ht20,
      levelDbm,
      airtimeRatio,
      airtimeAssumed,
      contentionChannel: alone ? null : channel,
    })),
  );
}
