import { ArgumentError } from "../issues/index.js";
import { findRoot, normalTailQuantile } from "../numeric/index.js";
import { ratioToDb } from "../units/index.js";
import type { FadeLaw } from "./fade-law.js";
import { requiredSigmaDb } from "./fade-law.js";
import { fadeOutageRatio } from "./fade-outage.js";

/**
 * The margin below the law's reference level that a share of receiver positions needs: the inverse of
 * {@link fadeOutageRatio} at outage 1 − reliability.
 * @param query the law, its parameter, and reliability, the share of positions that shall have enough, 0..1 exclusive
 * @returns dB; negative for small shares
 * @throws {ArgumentError} when reliability is not above 0 and below 1, and as {@link fadeOutageRatio}
 * @source as {@link fadeOutageRatio}
 * @validity small-scale fading alone for rayleigh and rician: positions within some metres; 99 % is per receiver
 * @example fadeAllowanceDb({ law: "rayleigh", reliability: 0.99 }); // => 19.97819425120579
 */
export function fadeAllowanceDb(query: FadeLaw & { readonly reliability: number }): number {
  const { reliability } = query;
  if (!(reliability > 0 && reliability < 1))
    throw new ArgumentError("reliability", "a number above 0 and below 1", reliability);
  if (query.law === "rayleigh") return -ratioToDb(-Math.log(reliability));
  return fadeMarginDb({ ...query, outageRatio: 1 - reliability });
}

/**
 * The margin at which a share of positions falls short: {@link fadeOutageRatio} solved for the margin. The
 * same as {@link fadeAllowanceDb} with reliability 1 − outageRatio, without the digits which that
 * subtraction costs at small outages.
 * @param query the law, its parameter, and outageRatio, 0..1 exclusive
 * @returns dB, to 1e-10
 * @throws {ArgumentError} when outageRatio is not above 0 and below 1, and as {@link fadeOutageRatio}
 * @source the inverse of `fadeOutageRatio`, by root finding
 * @validity outages from 1e-40 up
 * @example fadeMarginDb({ law: "lognormal", sigmaDb: 8, outageRatio: 0.5 }); // => 0
 */
export function fadeMarginDb(query: FadeLaw & { readonly outageRatio: number }): number {
  const { outageRatio } = query;
  if (!(outageRatio > 0 && outageRatio < 1))
    throw new ArgumentError("outageRatio", "a number above 0 and below 1", outageRatio);
  if (query.law === "rayleigh") return -ratioToDb(-Math.log1p(-outageRatio));
  if (query.law === "lognormal") return requiredSigmaDb(query) * normalTailQuantile(outageRatio);
  // In logarithms the outage is nearly a straight line of the margin.
  const excess = (marginDb: number): number =>
    Math.log(Math.max(fadeOutageRatio({ ...query, marginDb }), Number.MIN_VALUE) / outageRatio);
  let [lowDb, highDb] = [-1, 1];
  while (excess(lowDb) < 0 && lowDb > -FURTHEST_DB) lowDb *= 2;
  while (excess(highDb) > 0 && highDb < FURTHEST_DB) highDb *= 2;
  return findRoot(excess, lowDb, highDb, 1e-12);
}

const FURTHEST_DB = 1e5;
