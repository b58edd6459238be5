/**
 * A discrete distribution of powers: `valueMw[i]` rises strictly, `shareRatio[i]` is its share of time.
 * Shares need not sum to one: what is missing has been accounted for elsewhere.
 */
export interface Sums {
  readonly valueMw: Float64Array;
  readonly shareRatio: Float64Array;
}

/** Nothing at all, all of the time. */
export const NOTHING: Sums = { valueMw: Float64Array.of(0), shareRatio: Float64Array.of(1) };

/** Two sums nearer than this, relative to the larger, are one: the noise of adding doubles in another order. */
const SAME_RATIO = 1e-13;

/**
 * The sum of two independent powers, every pair of states kept; equal sums become one.
 * @param aboveMw sums at or below it are left out
 * @param uptoMw sums above it are left out
 */
export function addIndependent(sums: Sums, states: Sums, aboveMw = -Infinity, uptoMw = Infinity): Sums {
  const whole = aboveMw === -Infinity && uptoMw === Infinity;
  if (whole && sums === NOTHING) return states;
  let total: Sums = EMPTY;
  for (let index = 0; index < states.valueMw.length; index++) {
    const offsetMw = states.valueMw[index]!;
    const start = countAtOrBelow(sums.valueMw, aboveMw - offsetMw);
    const end = countAtOrBelow(sums.valueMw, uptoMw - offsetMw);
    if (end > start) total = merged(total, sums, start, end, offsetMw, states.shareRatio[index]!);
  }
  return total;
}

const EMPTY: Sums = { valueMw: new Float64Array(0), shareRatio: new Float64Array(0) };

/** `total` and a shifted, weighted stretch of `sums`, merged in rising order. */
function merged(
  total: Sums,
  sums: Sums,
  start: number,
  end: number,
  offsetMw: number,
  shareRatio: number,
): Sums {
  const valueMw = new Float64Array(total.valueMw.length + end - start);
  const shares = new Float64Array(valueMw.length);
  let count = 0;
  let left = 0;
  let right = start;
  while (left < total.valueMw.length || right < end) {
    const leftMw = left < total.valueMw.length ? total.valueMw[left]! : Infinity;
    const rightMw = right < end ? sums.valueMw[right]! + offsetMw : Infinity;
    const fromLeft = leftMw <= rightMw;
    const nextMw = fromLeft ? leftMw : rightMw;
    const share = fromLeft ? total.shareRatio[left++]! : shareRatio * sums.shareRatio[right++]!;
    if (count > 0 && nextMw - valueMw[count - 1]! <= SAME_RATIO * nextMw) count--;
    valueMw[count] = nextMw;
    shares[count] = shares[count]! + share;
    count++;
  }
  return { valueMw: valueMw.subarray(0, count), shareRatio: shares.subarray(0, count) };
}

/**
 * Neighbouring states merged upwards: every value is moved up by at most `stepMw` + `stepRatio` of itself.
 */
export function mergedUpwards(sums: Sums, stepMw: number, stepRatio: number): Sums {
  const valueMw = new Float64Array(sums.valueMw.length);
  const shareRatio = new Float64Array(sums.valueMw.length);
  let count = 0;
  let lowestMw = -Infinity;
  for (let index = 0; index < sums.valueMw.length; index++) {
    const nextMw = sums.valueMw[index]!;
    const joins = nextMw - lowestMw <= stepMw + stepRatio * lowestMw; // the first never does
    if (!joins) lowestMw = nextMw;
    const at = joins ? count - 1 : count++;
    valueMw[at] = nextMw;
    shareRatio[at] = shareRatio[at]! + sums.shareRatio[index]!;
  }
  return { valueMw: valueMw.subarray(0, count), shareRatio: shareRatio.subarray(0, count) };
}

/** @returns how many of the rising values are ≤ `limitMw` */
export function countAtOrBelow(valueMw: Float64Array, limitMw: number): number {
  let low = 0;
  let high = valueMw.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (valueMw[middle]! <= limitMw) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** `cumulative[k]` is the share of the first k values; length = count + 1. */
export function cumulativeShares({ shareRatio }: Sums): Float64Array {
  const cumulative = new Float64Array(shareRatio.length + 1);
  for (let index = 0; index < shareRatio.length; index++)
    cumulative[index + 1] = cumulative[index]! + shareRatio[index]!;
  return cumulative;
}
