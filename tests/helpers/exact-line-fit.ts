/** A line by the normal equations in exact rationals: a route that shares nothing with reflections in doubles. */
export interface ExactLineFit {
  readonly intercept: number;
  readonly slope: number;
  readonly variance: number;
  readonly interceptVariance: number;
  readonly slopeVariance: number;
}

/** @param x @param y doubles, each taken as the binary fraction that it is */
export function exactLineFit(x: readonly number[], y: readonly number[]): ExactLineFit {
  const [xs, ys] = [x.map(fraction), y.map(fraction)];
  const sum = (terms: readonly Fraction[]): Fraction => terms.reduce(plus, whole(0n));
  const products = (a: readonly Fraction[], b: readonly Fraction[]): Fraction =>
    sum(a.map((term, index) => times(term, b[index]!)));
  const n = whole(BigInt(x.length));
  const [sx, sy, sxx, sxy, syy] = [sum(xs), sum(ys), products(xs, xs), products(xs, ys), products(ys, ys)];
  const determinant = minus(times(n, sxx), times(sx, sx));
  const slope = over(minus(times(n, sxy), times(sx, sy)), determinant);
  const intercept = over(minus(sy, times(slope, sx)), n);
  // Σe² = Σy² − a·Σy − b·Σxy, exactly.
  const squares = minus(minus(syy, times(intercept, sy)), times(slope, sxy));
  const variance = over(squares, whole(BigInt(x.length - 2)));
  return {
    intercept: value(intercept),
    slope: value(slope),
    variance: value(variance),
    interceptVariance: value(over(times(variance, sxx), determinant)),
    slopeVariance: value(over(times(variance, n), determinant)),
  };
}

interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

function whole(top: bigint): Fraction {
  return { top, bottom: 1n };
}

/** Every finite double is a whole number over a power of two. */
function fraction(double: number): Fraction {
  let [scaled, power] = [double, 0n];
  while (!Number.isInteger(scaled)) [scaled, power] = [scaled * 2, power + 1n];
  return { top: BigInt(scaled), bottom: 1n << power };
}

function plus(a: Fraction, b: Fraction): Fraction {
  return reduced(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
}

function minus(a: Fraction, b: Fraction): Fraction {
  return plus(a, { top: -b.top, bottom: b.bottom });
}

function times(a: Fraction, b: Fraction): Fraction {
  return reduced(a.top * b.top, a.bottom * b.bottom);
}

function over(a: Fraction, b: Fraction): Fraction {
  const sign = b.top < 0n ? -1n : 1n;
  return reduced(sign * a.top * b.bottom, sign * a.bottom * b.top);
}

function reduced(top: bigint, bottom: bigint): Fraction {
  let [a, b] = [top < 0n ? -top : top, bottom];
  while (b > 0n) [a, b] = [b, a % b];
  return a > 1n ? { top: top / a, bottom: bottom / a } : { top, bottom };
}

/** To the nearest double, nearly: 30 decimal digits of the quotient. */
function value({ top, bottom }: Fraction): number {
  const digits = 10n ** 30n;
  return Number((top * digits) / bottom) / 1e30;
}
