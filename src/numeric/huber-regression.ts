import { invertPositive } from "./invert-positive.js";
import { dot, leastSquares } from "./least-squares.js";
import { normalDensity } from "./normal-hazard.js";
import { normalTail } from "./normal-tail.js";

/** A linear model in which no observation pulls harder than one at 1.345 σ. */
export interface HuberRegression {
  readonly coefficients: readonly number[];
  /** Scale of the bulk of the observations. */
  readonly sigma: number;
  /** Observed − fitted; of a censored observation, its limit − fitted. */
  readonly residuals: readonly number[];
  /** Of the coefficients, from the scores themselves. */
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Huber's M-estimate with k = 1.345 and his second proposal for the scale, by modified residuals. An
 * observation known only to be above a limit scores what one above it scores on average in a normal scatter.
 * @param design X: one row for each observation
 * @param observed y; of a censored observation the limit
 * @param censored is the true y known only to be above? None unless given
 * @returns null where the columns depend on each other or more than half of the observations lie on the model exactly
 * @throws {ArgumentError} when sizes differ or a number is not finite
 * @source P. J. Huber, Robust Statistics (1981), ch. 7; k for 95 % efficiency in a normal scatter
 * @validity outliers among the observed, up to a fifth of them; not among the columns of X
 * @example huberRegression([[1], [1], [1], [1], [1]], [0, 1, 2, 3, 100])?.coefficients[0] < 4; // => true
 */
export function huberRegression(
  design: readonly (readonly number[])[],
  observed: readonly number[],
  censored: readonly boolean[] = [],
): HuberRegression | null {
  const start = leastSquares(design, observed);
  if (start === null) return null;
  const freedom = design.length - start.coefficients.length;
  let { residuals, coefficients } = start;
  let sigma = middleSize(residuals);
  for (let step = 0; step < MOST_STEPS; step++) {
    if (!(sigma > 0)) return null;
    const scale = sigma;
    const scores = residuals.map((each, index) => scoreOf(each / scale, censored[index] === true));
    const pulls = scores.map(({ mean }) => mean * scale);
    const move = leastSquares(design, pulls)!.coefficients;
    coefficients = coefficients.map((each, index) => each + move[index]!);
    const now = coefficients;
    residuals = design.map((row, index) => observed[index]! - dot(row, now));
    const squares = scores.reduce((sum, { square }) => sum + square, 0);
    sigma = scale * Math.sqrt(squares / (freedom * MEAN_SQUARE));
    const moved = Math.max(...move.map(Math.abs), Math.abs(sigma - scale));
    if (!(moved > CONVERGED * scale)) break;
  }
  const covariance = covarianceOf({ design, censored }, start.unscaledCovariance, residuals, sigma);
  return covariance === null ? null : { coefficients, sigma, residuals, covariance };
}

interface Observations {
  readonly design: Matrix;
  readonly censored: readonly boolean[];
}

const K = 1.345;
const MOST_STEPS = 1_000;
const CONVERGED = 1e-10;
const BEYOND = normalTail(K);
/** E ψ² in a normal scatter. */
const MEAN_SQUARE = 1 - 2 * BEYOND - 2 * K * normalDensity(K) + 2 * K * K * BEYOND;

interface Score {
  readonly mean: number;
  readonly square: number;
  /** How the score rises with the residual. */
  readonly slope: number;
}

function scoreOf(z: number, isCensored: boolean): Score {
  const mean = Math.max(-K, Math.min(K, z));
  if (!isCensored) return { mean, square: mean * mean, slope: Math.abs(z) < K ? 1 : 0 };
  if (z >= K) return { mean: K, square: K * K, slope: 0 };
  const above = normalTail(z);
  const low = Math.max(z, -K);
  // ∫ψ·φ and ∫ψ²·φ above z: the part on the slope, the flat part beyond K and, if any, that below −K.
  const flatBelow = normalTail(z) - normalTail(low);
  const first = normalDensity(low) - normalDensity(K) + K * BEYOND - K * flatBelow;
  const onSlope = normalTail(low) - BEYOND + low * normalDensity(low) - K * normalDensity(K);
  const second = onSlope + K * K * (BEYOND + flatBelow);
  const average = first / above;
  return { mean: average, square: second / above, slope: (normalDensity(z) / above) * (average - mean) };
}

/** Median of the sizes of residuals as a normal σ. */
function middleSize(residuals: readonly number[]): number {
  const sizes = residuals.map(Math.abs).sort((a, b) => a - b);
  return (sizes[Math.floor(sizes.length / 2)] ?? 0) / 0.6744897501960817; // normal quantile of 0.75
}

/**
 * σ²·A⁻¹·B·A⁻¹ with A from the slopes and B from the squares of the scores, each score enlarged by 1/(1 − h) for
 * the pull that its observation has on the model: without it intervals of a dozen observations are too narrow.
 * @source the form HC3: J. G. MacKinnon, H. White, J. Econometrics 29 (1985) 305–325
 */
function covarianceOf(
  { design, censored }: Observations,
  hat: Matrix,
  residuals: readonly number[],
  sigma: number,
): number[][] | null {
  const zero = (): number[][] => hat.map((row) => row.map(() => 0));
  const [slopes, squares] = [zero(), zero()];
  for (const [index, row] of design.entries()) {
    const { mean, slope } = scoreOf(residuals[index]! / sigma, censored[index] === true);
    const enlarged = mean / Math.max(1e-6, 1 - dot(row, timesVector(hat, row)));
    for (const [i, left] of row.entries())
      for (const [j, right] of row.entries()) {
        slopes[i]![j]! += slope * left * right;
        squares[i]![j]! += enlarged * enlarged * left * right;
      }
  }
  const inverse = invertPositive(slopes);
  if (inverse === null) return null;
  const halfway = inverse.map((row) => timesVector(squares, row)); // A⁻¹·B, for B is symmetric
  return inverse.map((_, i) => inverse.map((column) => sigma * sigma * dot(halfway[i]!, column)));
}

type Matrix = readonly (readonly number[])[];

function timesVector(matrix: Matrix, vector: readonly number[]): number[] {
  return matrix.map((row) => dot(row, vector));
}
