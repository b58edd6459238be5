/** @returns the middle of some numbers, the mean of the two middle ones where they are even in number */
export function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return (sorted[Math.ceil(half) - 1] + sorted[Math.floor(half)]) / 2;
}

/** Numbers in 0..1 from a seed: a linear congruential generator modulo 2³² (a = 1664525, c = 1013904223, Knuth). */
export function seeded(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
