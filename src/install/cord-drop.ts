import { ArgumentError, requireNonNegative } from "../issues/index.js";

/** A cord run and what it feeds. */
export interface CordDropTerms {
  /** Of one conductor. */
  readonly resistanceOhmPerM: number;
  /** `feedsM[i]`: cord from the box, or through-fed from luminaire i − 1, to luminaire i. */
  readonly feedsM: readonly number[];
  /** `loadsA[i]`: what luminaire i draws. */
  readonly loadsA: readonly number[];
}

/**
 * Voltage lost from the box to each luminaire of a through-fed run, exact for its distributed loads:
 * ΔVₖ = 2·r·Σ_{j≤k} Lⱼ·Σ_{i≥j} Iᵢ; there and back through two conductors.
 * @returns V, in the order of the run
 * @throws {ArgumentError} when a figure is not ≥ 0 or the lists differ in length
 * @source Ohm's and Kirchhoff's laws
 * @validity single phase; each load draws its current whatever the voltage (a driver of constant power draws some
 *   per cent more at the end of a long run); reactance left out, small at these sizes
 * @example throughFedDropsV({ resistanceOhmPerM: 0.01, feedsM: [10, 5], loadsA: [2, 1] }); // => [0.6, 0.7]
 */
export function throughFedDropsV(terms: CordDropTerms): number[] {
  requireTerms(terms);
  const { resistanceOhmPerM, feedsM, loadsA } = terms;
  let carriedA = loadsA.reduce((sumA, loadA) => sumA + loadA, 0);
  let dropV = 0;
  return feedsM.map((feedM, index) => {
    dropV += 2 * resistanceOhmPerM * feedM * carriedA;
    carriedA -= loadsA[index]!;
    return dropV;
  });
}

/**
 * Voltage lost from its own box to each luminaire: ΔV = 2·r·L·I.
 * @returns V, in the order of the lists
 * @throws {ArgumentError} as {@link throughFedDropsV}
 * @example ownBoxDropsV({ resistanceOhmPerM: 0.01, feedsM: [10, 5], loadsA: [2, 1] }); // => [0.4, 0.1]
 */
export function ownBoxDropsV(terms: CordDropTerms): number[] {
  requireTerms(terms);
  return terms.feedsM.map((feedM, index) => 2 * terms.resistanceOhmPerM * feedM * terms.loadsA[index]!);
}

function requireTerms({ resistanceOhmPerM, feedsM, loadsA }: CordDropTerms): void {
  requireNonNegative("resistanceOhmPerM", resistanceOhmPerM);
  feedsM.forEach((feedM, index) => requireNonNegative(`feedsM[${index}]`, feedM));
  loadsA.forEach((loadA, index) => requireNonNegative(`loadsA[${index}]`, loadA));
  if (feedsM.length !== loadsA.length)
    throw new ArgumentError("loadsA", `${feedsM.length} loads, one for each feed`, loadsA.length);
}
