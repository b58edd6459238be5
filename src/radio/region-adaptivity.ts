import type { AdaptivityRule } from "./regulation.js";

/**
 * EN 300 328: below 10 dBm EIRP nothing is asked; from there on a radio adapts to what it hears, or its
 * medium utilisation stays at 10 % and its pauses at least as long as its packets.
 */
export const etsiAdaptivity: AdaptivityRule = {
  note: {
    words:
      "Adaptive: listens, keeps 15 hop frequencies. Not adaptive: hopping radios send at most 5 ms at a time with 5 ms between, fixed channels 3.5 to 10 ms with a gap as long",
    source: "EN 300 328 V1.8.1, pages 16 to 24",
    reading: "read",
  },
  fromEirpDbm: {
    value: 10,
    status: "standard",
    source: "EN 300 328 V1.8.1 and V2.2.2",
    reading: "read, second-hand",
  },
  mostMediumUseRatio: {
    value: 0.1,
    status: "standard",
    source: "EN 300 328 cl. 4.3.1.5.2 and 4.3.2.4.3",
    reading: "from memory",
  },
};

/** 47 CFR 15.247 asks for no listening. */
export const usAdaptivity: AdaptivityRule = {
  note: {
    words:
      "None asked. A hopping radio may keep off busy frequencies by itself; several may not plan their hops together",
    source: "47 CFR 15.247, university digest",
    reading: "read, second-hand",
  },
  fromEirpDbm: null,
  mostMediumUseRatio: null,
};

/** @returns that nothing is known of a region */
export function noneRead(region: string): AdaptivityRule {
  const note = {
    words: "No adaptivity rule was read; ask",
    source: `not read for ${region}`,
    reading: "assumed",
  } as const;
  return { note, fromEirpDbm: null, mostMediumUseRatio: null };
}
