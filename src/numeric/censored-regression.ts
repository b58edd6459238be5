import { invertPositive } from "./invert-positive.js";
import { dot, leastSquares } from "./least-squares.js";
import { normalHazard } from "./normal-hazard.js";
import { normalTail } from "./normal-tail.js";

/** A linear model with normal scatter, fitted to observations of which some are known only to lie above a limit. */
export interface CensoredRegression {
  readonly coefficients: readonly number[];
  /** Standard deviation of the scatter, of greatest likelihood: no correction for the coefficients fitted. */
  readonly sigma: number;
  /** Of the coefficients, from the observed information. */
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Greatest likelihood of y = X·b + σ·z where some y are known only to be above a limit (Tobit). Newton's steps
 * on b/σ and 1/σ, in which the logarithm of the likelihood has one maximum.
 * @param design X: one row for each observation
 * @param observed y; of a censored observation the limit
 * @param censored is the true y known only to be above?
 * @returns null where the columns depend on each other, or no maximum is found: no more uncensored
 *   observations than columns, or such as lie on the model exactly
 * @throws {ArgumentError} when sizes differ or a number is not finite
 * @source R. J. Olsen, Econometrica 46 (1978) 1211–1215
 * @example censoredRegression([[1], [1], [1], [1]], [1, 2, 3, 4], [false, false, false, false])?.coefficients; // => [2.5]
 */
export function censoredRegression(
  design: readonly (readonly number[])[],
  observed: readonly number[],
  censored: readonly boolean[],
): CensoredRegression | null {
  const start = leastSquares(design, observed);
  const uncensoredCount = design.length - censored.filter(Boolean).length;
  if (start === null || uncensoredCount <= start.coefficients.length) return null;
  const rows = design.map((row, index) => [...row, -observed[index]!]);
  const likelihood: Likelihood = { rows, censored };
  const sigma = Math.sqrt(dot(start.residuals, start.residuals) / design.length);
  if (!(sigma > 0)) return null;
  let at = [...start.coefficients.map((each) => each / sigma), 1 / sigma];
  for (let step = 0; step < MOST_STEPS; step++) {
    const { score, information } = slopes(likelihood, at);
    const inverse = invertPositive(information);
    if (inverse === null) return null;
    const move = inverse.map((row) => dot(row, score));
    const gain = dot(move, score);
    if (gain < CONVERGED) return inFirstForm(at, inverse);
    at = climbed(likelihood, at, move, gain);
  }
  return null;
}

const MOST_STEPS = 200;
const CONVERGED = 1e-18; // twice what the logarithm of the likelihood would still gain

/** `rows` hold X and −y; at (b/σ, 1/σ) their products are −(y − X·b)/σ. */
interface Likelihood {
  readonly rows: readonly (readonly number[])[];
  readonly censored: readonly boolean[];
}

function slopes(
  { rows, censored }: Likelihood,
  at: readonly number[],
): { score: number[]; information: number[][] } {
  const last = at.length - 1;
  const score = at.map(() => 0);
  const information = at.map(() => at.map(() => 0));
  for (const [index, row] of rows.entries()) {
    const z = -dot(row, at);
    const isCensored = censored[index] === true;
    const push = isCensored ? normalHazard(z) : z;
    const weight = isCensored ? push * (push - z) : 1;
    for (const [i, left] of row.entries()) {
      score[i]! += push * left;
      for (const [j, right] of row.entries()) information[i]![j]! += weight * left * right;
    }
    if (isCensored) continue;
    score[last]! += 1 / at[last]!;
    information[last]![last]! += 1 / at[last]! ** 2;
  }
  return { score, information };
}

/** Newton's step, halved until it climbs and 1/σ stays above 0. */
function climbed(
  likelihood: Likelihood,
  at: readonly number[],
  move: readonly number[],
  gain: number,
): number[] {
  const before = logLikelihood(likelihood, at);
  for (let share = 1; share > 1e-6; share /= 2) {
    const next = at.map((each, index) => each + share * move[index]!);
    if (next[next.length - 1]! <= 0) continue;
    if (gain < 1e-9 || logLikelihood(likelihood, next) > before) return next;
  }
  return [...at];
}

function logLikelihood({ rows, censored }: Likelihood, at: readonly number[]): number {
  const logInverseSigma = Math.log(at[at.length - 1]!);
  return rows.reduce((sum, row, index) => {
    const z = -dot(row, at);
    return sum + (censored[index] === true ? logTail(z) : logInverseSigma - 0.5 * z * z);
  }, 0);
}

function logTail(z: number): number {
  if (z < 35) return Math.log(normalTail(z));
  return -0.5 * z * z - 0.5 * Math.log(2 * Math.PI) - Math.log(normalHazard(z));
}

/** From b/σ and 1/σ to b and σ, with the covariance of b. */
function inFirstForm(at: readonly number[], inverse: readonly (readonly number[])[]): CensoredRegression {
  const last = at.length - 1;
  const sigma = 1 / at[last]!;
  const coefficients = at.slice(0, last).map((each) => each * sigma);
  const covariance = coefficients.map((left, i) =>
    coefficients.map((right, j) => {
      const cross = left * inverse[last]![j]! + right * inverse[i]![last]!;
      return sigma * sigma * (inverse[i]![j]! - cross + left * right * inverse[last]![last]!);
    }),
  );
  return { coefficients, sigma, covariance };
}
