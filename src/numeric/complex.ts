/** A complex number, re + j·im. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** @returns the complex number a real one is */
export function real(re: number): Complex {
  return { re, im: 0 };
}

/** @example complexSum({ re: 1, im: 2 }, { re: 3, im: -5 }); // => { re: 4, im: -3 } */
export function complexSum(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

/** @example complexProduct({ re: 1, im: 2 }, { re: 3, im: -5 }); // => { re: 13, im: 1 } */
export function complexProduct(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/**
 * a / b; NaN where b is 0.
 * @example complexQuotient({ re: 13, im: 1 }, { re: 3, im: -5 }); // => { re: 1, im: 2 }
 */
export function complexQuotient(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

/**
 * The root with a real part ≥ 0; below the negative real axis it lies in the fourth quadrant.
 * @source the half-angle formulas, in the form that doesn't cancel
 * @example complexSqrt({ re: 3, im: -4 }); // => { re: 2, im: -1 }
 */
export function complexSqrt(a: Complex): Complex {
  const larger = Math.sqrt((Math.hypot(a.re, a.im) + Math.abs(a.re)) / 2);
  if (larger === 0) return { re: 0, im: 0 };
  const smaller = a.im / (2 * larger);
  if (a.re >= 0) return { re: larger, im: smaller };
  return { re: Math.abs(smaller), im: a.im < 0 ? -larger : larger };
}

/**
 * e^a − 1, without the digits that the subtraction costs near 0.
 * @example complexExpm1({ re: 1e-20, im: 0 }); // => { re: 1e-20, im: 0 }
 */
export function complexExpm1(a: Complex): Complex {
  const halfSine = Math.sin(a.im / 2);
  return {
    re: Math.expm1(a.re) * Math.cos(a.im) - 2 * halfSine * halfSine,
    im: Math.exp(a.re) * Math.sin(a.im),
  };
}
