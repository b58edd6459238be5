import { expect, test } from "vitest";
import {
  complexExpm1,
  complexProduct,
  complexQuotient,
  complexSqrt,
  complexSum,
  real,
  seededRandom,
} from "../../src/numeric/index.js";
import type { Complex } from "../../src/numeric/index.js";

const random = seededRandom(2040);
const draws = Array.from({ length: 200 }, (): Complex => ({
  re: 20 * random() - 10,
  im: 20 * random() - 10,
}));
const near = (a: Complex, b: Complex): void => {
  expect(Math.hypot(a.re - b.re, a.im - b.im)).toBeLessThan(1e-13 * (1 + Math.hypot(b.re, b.im)));
};

test("arithmetic: quotient undoes product, sum is by parts", () => {
  draws.forEach((a, index) => {
    const b = draws[(index + 1) % draws.length]!;
    near(complexQuotient(complexProduct(a, b), b), a);
    near(complexSum(a, b), { re: a.re + b.re, im: a.im + b.im });
    expect(complexProduct(real(2), a)).toEqual({ re: 2 * a.re, im: 2 * a.im });
  });
});
test("root: its square is the number, its real part ≥ 0; by polar form", () => {
  for (const a of draws) {
    const found = complexSqrt(a);
    near(complexProduct(found, found), a);
    const [size, angle] = [Math.sqrt(Math.hypot(a.re, a.im)), Math.atan2(a.im, a.re) / 2];
    near(found, { re: size * Math.cos(angle), im: size * Math.sin(angle) });
  }
  expect(complexSqrt({ re: -4, im: 0 })).toEqual({ re: 0, im: 2 });
  expect(complexSqrt(real(0))).toEqual(real(0));
});
test("e^a − 1: by polar form where it is large, by its series where it is small", () => {
  for (const a of draws)
    near(complexExpm1(a), {
      re: Math.exp(a.re) * Math.cos(a.im) - 1,
      im: Math.exp(a.re) * Math.sin(a.im),
    });
  for (const a of draws.map(({ re, im }) => ({ re: re * 1e-9, im: im * 1e-9 }))) {
    const series = complexSum(a, complexProduct(real(0.5), complexProduct(a, a)));
    const found = complexExpm1(a);
    expect(Math.hypot(found.re - series.re, found.im - series.im)).toBeLessThan(1e-22);
  }
});
