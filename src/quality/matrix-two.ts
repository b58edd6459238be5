/** A 2 × 2 matrix, row by row: [from 0 to 0, from 0 to 1, from 1 to 0, from 1 to 1]. */
export type MatrixTwo = readonly [number, number, number, number];

/** A row of two. */
export type RowTwo = readonly [number, number];

export const IDENTITY: MatrixTwo = [1, 0, 0, 1];
export const NOTHING: MatrixTwo = [0, 0, 0, 0];

/** First `a`, then `b`. */
export function product(a: MatrixTwo, b: MatrixTwo): MatrixTwo {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
  ];
}

export function sum(a: MatrixTwo, b: MatrixTwo): MatrixTwo {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3]];
}

/** The matrix times itself, `timesCount` factors, by squaring. */
export function power(matrix: MatrixTwo, timesCount: number): MatrixTwo {
  let [result, square] = [IDENTITY, matrix];
  for (let left = timesCount; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) result = product(result, square);
    square = product(square, square);
  }
  return result;
}

export function moved(row: RowTwo, matrix: MatrixTwo): RowTwo {
  return [row[0] * matrix[0] + row[1] * matrix[2], row[0] * matrix[1] + row[1] * matrix[3]];
}

export function total(row: RowTwo): number {
  return row[0] + row[1];
}
