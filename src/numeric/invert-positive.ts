/**
 * The inverse of a symmetric positive definite matrix, by Cholesky's factors.
 * @param values the matrix, row by row; its lower triangle is read
 * @returns null where it is not positive definite
 * @source Golub, Van Loan, Matrix Computations, ch. 4.2 (textbook form)
 * @example invertPositive([[4, 2], [2, 2]]); // => [[0.5, -0.5], [-0.5, 1]]
 */
export function invertPositive(values: readonly (readonly number[])[]): number[][] | null {
  const size = values.length;
  const lower = values.map(() => new Array<number>(size).fill(0));
  for (let row = 0; row < size; row++)
    for (let column = 0; column <= row; column++) {
      let rest = values[row]![column]!;
      for (let k = 0; k < column; k++) rest -= lower[row]![k]! * lower[column]![k]!;
      if (row === column && !(rest > 0)) return null;
      lower[row]![column] = row === column ? Math.sqrt(rest) : rest / lower[column]![column]!;
    }
  const inverse = values.map((_, at) => forward(lower, at));
  return values.map((_, i) =>
    values.map((__, j) => lower.reduce((sum, ___, k) => sum + inverse[i]![k]! * inverse[j]![k]!, 0)),
  );
}

/** The column of L⁻¹ that belongs to a unit vector. */
function forward(lower: readonly number[][], at: number): number[] {
  const solution: number[] = [];
  for (const [row, factors] of lower.entries()) {
    let rest = row === at ? 1 : 0;
    for (let k = 0; k < row; k++) rest -= factors[k]! * solution[k]!;
    solution.push(rest / factors[row]!);
  }
  return solution;
}
