import { ArgumentError, requireNonNegative } from "../issues/index.js";

/**
 * Poisson distribution, probability of exactly `eventCount` events: m^k·e^(−m)/k!.
 * Written as e^(−δ(k) − D(k, m))/√(2πk), with δ the error of Stirling's formula and D the deviance
 * k·ln(k/m) + m − k, so that no digits cancel however large the two are.
 * @param eventCount whole number ≥ 0
 * @param meanCount ≥ 0
 * @throws {ArgumentError} when eventCount is no whole number ≥ 0 or meanCount not finite and ≥ 0
 * @source C. Loader, Fast and Accurate Computation of Binomial Probabilities (2000), the method
 * @example poissonMass(0, 0); // => 1
 */
export function poissonMass(eventCount: number, meanCount: number): number {
  if (!Number.isInteger(eventCount) || eventCount < 0)
    throw new ArgumentError("eventCount", "a whole number ≥ 0", eventCount);
  requireNonNegative("meanCount", meanCount);
  if (eventCount === 0) return Math.exp(-meanCount);
  if (meanCount === 0) return 0;
  if (eventCount <= DIRECT_UP_TO && meanCount <= DIRECT_UP_TO) return direct(eventCount, meanCount);
  return (
    Math.exp(-stirlingError(eventCount) - deviance(eventCount, meanCount)) /
    Math.sqrt(2 * Math.PI * eventCount)
  );
}

const DIRECT_UP_TO = 20;

function direct(count: number, mean: number): number {
  let mass = Math.exp(-mean);
  for (let k = 1; k <= count; k++) mass *= mean / k;
  return mass;
}

/** ln k! − (k + ½)·ln k + k − ½·ln 2π: Stirling's series, exact sums below 16. */
function stirlingError(count: number): number {
  if (count < 16) {
    let factorial = 1;
    for (let k = 2; k <= count; k++) factorial *= k;
    return Math.log(factorial) - (count + 0.5) * Math.log(count) + count - 0.5 * Math.log(2 * Math.PI);
  }
  const square = count * count;
  return (
    (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / square) / square) / square) / square) / count
  );
}

/** k·ln(k/m) + m − k; near k = m by the series in v = (k − m)/(k + m). */
function deviance(count: number, mean: number): number {
  const difference = count - mean;
  if (Math.abs(difference) > 0.1 * (count + mean)) return count * Math.log(count / mean) - difference;
  const v = difference / (count + mean);
  let sum = difference * v;
  let power = 2 * count * v;
  for (let odd = 3; odd < 40; odd += 2) {
    power *= v * v;
    sum += power / odd;
  }
  return sum;
}
