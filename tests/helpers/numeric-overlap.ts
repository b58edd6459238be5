import type { Shape } from "../../src/band/index.js";

/** Level of a shape at an offset, dB; at a step the right-hand value; -Infinity outside. */
export function levelAt({ points }: Shape, offsetMhz: number): number {
  for (let index = points.length - 1; index > 0; index--) {
    const [startMhz, startDb] = points[index - 1]!;
    const [endMhz, endDb] = points[index]!;
    if (offsetMhz >= startMhz && offsetMhz < endMhz)
      return startDb + ((endDb - startDb) * (offsetMhz - startMhz)) / (endMhz - startMhz);
  }
  return -Infinity;
}

/** ∫ 10^(L/10) by the midpoint rule, each stretch between the given cuts divided into `steps`. */
export function midpointIntegral(
  levelDbAt: (frequencyMhz: number) => number,
  cutsMhz: readonly number[],
  steps: number,
): number {
  const cuts = [...cutsMhz].sort((a, b) => a - b);
  let total = 0;
  for (let index = 1; index < cuts.length; index++) {
    const stepMhz = (cuts[index]! - cuts[index - 1]!) / steps;
    for (let step = 0; step < steps; step++)
      total += 10 ** (levelDbAt(cuts[index - 1]! + (step + 0.5) * stepMhz) / 10) * stepMhz;
  }
  return total;
}

/** Share of the emitter's power that the receiver takes in, by the midpoint rule between all breakpoints. */
export function numericOverlapRatio(
  emitter: Shape,
  receiver: Shape,
  offsetMhz: number,
  steps: number,
): number {
  const emitterCuts = emitter.points.map(([mhz]) => mhz);
  const cuts = [...emitterCuts, ...receiver.points.map(([mhz]) => mhz + offsetMhz)];
  const product = (mhz: number): number => levelAt(emitter, mhz) + levelAt(receiver, mhz - offsetMhz);
  return (
    midpointIntegral(product, cuts, steps) /
    midpointIntegral((mhz) => levelAt(emitter, mhz), emitterCuts, steps)
  );
}
