import { ArgumentError } from "../issues/index.js";

/** A linear model fitted to observations. */
export interface LeastSquares {
  /** One for each column of the design. */
  readonly coefficients: readonly number[];
  /** Observed − fitted, one for each observation. */
  readonly residuals: readonly number[];
  /** (XᵀX)⁻¹: times the variance of one observation it is the covariance of the coefficients. */
  readonly unscaledCovariance: readonly (readonly number[])[];
}

/**
 * The coefficients b that make the sum of squares of y − X·b least, by Householder reflections of X.
 * @param design X: one row for each observation, one number for each coefficient
 * @param observed y, as many as rows
 * @returns null where the columns of X depend on each other (to 1e-10 of their length), or are more than its rows
 * @throws {ArgumentError} when sizes differ or a number is not finite
 * @source G. H. Golub, Numer. Math. 7 (1965) 206–216
 * @example leastSquares([[1, 0], [1, 1], [1, 2]], [1, 3, 5])?.coefficients; // => [1, 2]
 */
export function leastSquares(
  design: readonly (readonly number[])[],
  observed: readonly number[],
): LeastSquares | null {
  const columnCount = design[0]?.length ?? 0;
  requireTable(design, observed, columnCount);
  const triangle = design.map((row, index) => [...row, observed[index]!]);
  for (let column = 0; column < columnCount; column++)
    if (!reflect(triangle, column, columnNorm(design, column))) return null;
  const coefficients = backSubstituted(
    triangle,
    columnCount,
    triangle.map((row) => row[columnCount]!),
  );
  const residuals = design.map((row, index) => observed[index]! - dot(row, coefficients));
  return { coefficients, residuals, unscaledCovariance: gramInverse(triangle, columnCount) };
}

/** @returns Σ a·b over the terms of the first */
export function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, term, index) => sum + term * b[index]!, 0);
}

const DEPENDENT_RATIO = 1e-10;

/** Zeroes a column below its diagonal; false where next to nothing of its length is left there. */
function reflect(triangle: number[][], column: number, norm: number): boolean {
  const below = triangle.slice(column);
  const length = Math.hypot(...below.map((row) => row[column]!));
  if (below.length === 0 || !(length > DEPENDENT_RATIO * norm)) return false;
  const diagonal = below[0]![column]! > 0 ? -length : length;
  const mirror = below.map((row, index) => row[column]! - (index === 0 ? diagonal : 0));
  const half = dot(mirror, mirror) / 2;
  for (let other = column; other < triangle[0]!.length; other++) {
    const share = below.reduce((sum, row, index) => sum + row[other]! * mirror[index]!, 0) / half;
    for (const [index, row] of below.entries()) row[other]! -= share * mirror[index]!;
  }
  return true;
}

function columnNorm(design: readonly (readonly number[])[], column: number): number {
  return Math.hypot(...design.map((row) => row[column]!));
}

function backSubstituted(triangle: readonly number[][], size: number, right: readonly number[]): number[] {
  const solution = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row--) {
    let rest = right[row]!;
    for (let column = row + 1; column < size; column++) rest -= triangle[row]![column]! * solution[column]!;
    solution[row] = rest / triangle[row]![row]!;
  }
  return solution;
}

/** (RᵀR)⁻¹ = R⁻¹·R⁻ᵀ. */
function gramInverse(triangle: readonly number[][], size: number): number[][] {
  const units = Array.from({ length: size }, (_, at) => Array.from({ length: size }, (__, k) => +(k === at)));
  const inverseColumns = units.map((unit) => backSubstituted(triangle, size, unit));
  return units.map((_, i) =>
    units.map((__, j) => inverseColumns.reduce((sum, column) => sum + column[i]! * column[j]!, 0)),
  );
}

function requireTable(
  design: readonly (readonly number[])[],
  observed: readonly number[],
  columnCount: number,
): void {
  if (observed.length !== design.length)
    throw new ArgumentError("observed", `one number for each of ${design.length} rows`, observed.length);
  for (const row of design)
    if (row.length !== columnCount || !row.every(Number.isFinite))
      throw new ArgumentError("design", `rows of ${columnCount} finite numbers`, row.join(", "));
  for (const value of observed)
    if (!Number.isFinite(value)) throw new ArgumentError("observed", "finite numbers", value);
}
