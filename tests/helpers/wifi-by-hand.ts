import { spectralOverlapDb } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";
import type { RadioProfile } from "../../src/radio/index.js";

/** A Wi-Fi source set by hand on a channel, as wide as it is: 40 MHz above 1 and 6, below 11. */
export function setBy(emitter: Emitter, channel: 1 | 6 | 11): Emitter {
  const isForty = Math.abs(emitter.centreMhz - (2407 + 5 * emitter.contentionChannel!)) === 10;
  const sideMhz = { 1: 10, 6: 10, 11: -10 }[channel];
  return {
    ...emitter,
    contentionChannel: channel,
    centreMhz: { 1: 2412, 6: 2437, 11: 2462 }[channel] + (isForty ? sideMhz : 0),
  };
}

/** The same on the one of 1, 6, 11 at which the radio channel takes in most of it, tried one by one. */
export function worstByHand(emitter: Emitter, profile: RadioProfile, centreMhz: number): Emitter {
  const tried = ([1, 6, 11] as const).map((channel) => setBy(emitter, channel));
  const taken = tried.map((one) =>
    spectralOverlapDb(one.shape, profile.selectivity.value, centreMhz - one.centreMhz),
  );
  const most = Math.max(...taken);
  return tried[taken.findIndex((overlapDb) => overlapDb >= most - 1e-9)]!;
}
