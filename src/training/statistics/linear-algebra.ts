/** A small dense matrix, row by row. */
export type Matrix = readonly (readonly number[])[];

/**
 * The solution of `matrix` x = `right`, by elimination with row exchange; `undefined` when the matrix is singular to
 * working precision.
 */
export function solve(matrix: Matrix, right: readonly number[]): number[] | undefined {
  return eliminate(
    matrix,
    right.map((value) => [value]),
  )?.map((row) => row[0] ?? 0);
}

/** The inverse of a square matrix; `undefined` when it is singular to working precision. */
export function inverse(matrix: Matrix): number[][] | undefined {
  return eliminate(
    matrix,
    matrix.map((_, i) => matrix.map((_, j) => (i === j ? 1 : 0))),
  );
}

/** The logarithm of the determinant of a symmetric positive definite matrix; `undefined` for any other. */
export function logDeterminant(matrix: Matrix): number | undefined {
  const rows = matrix.map((row) => [...row]);
  let total = 0;
  for (const [i, pivotRow] of rows.entries()) {
    const pivot = pivotRow[i] ?? 0;
    if (!(pivot > 0)) return undefined;
    total += Math.log(pivot);
    for (const row of rows.slice(i + 1)) {
      const factor = (row[i] ?? 0) / pivot;
      for (let j = i; j < row.length; j++) row[j] = (row[j] ?? 0) - factor * (pivotRow[j] ?? 0);
    }
  }
  return total;
}

/** `matrix` times a column. */
export function timesVector(matrix: Matrix, vector: readonly number[]): number[] {
  return matrix.map((row) => dot(row, vector));
}

/** The matrix `left` `middle` `left` transposed. */
export function sandwich(left: Matrix, middle: Matrix): number[][] {
  return left.map((row) => {
    const across = middle.map((_, j) =>
      row.reduce((sum, value, k) => sum + value * (middle[k]?.[j] ?? 0), 0),
    );
    return left.map((other) => dot(across, other));
  });
}

/** The scalar product of two equally long rows. */
export function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

/** Gauss-Jordan elimination with partial pivoting, applied to several right-hand columns at once. */
function eliminate(matrix: Matrix, right: Matrix): number[][] | undefined {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...(right[i] ?? [])]);
  const largest = Math.max(0, ...matrix.flat().map(Math.abs));
  for (let i = 0; i < size; i++) {
    let best = i;
    for (let k = i + 1; k < size; k++) {
      if (Math.abs(rows[k]?.[i] ?? 0) > Math.abs(rows[best]?.[i] ?? 0)) best = k;
    }
    const pivotRow = rows[best];
    const displaced = rows[i];
    const pivot = pivotRow?.[i] ?? 0;
    if (!pivotRow || !displaced || !(Math.abs(pivot) > largest * size * Number.EPSILON)) return undefined;
    rows[best] = displaced;
    rows[i] = pivotRow.map((value) => value / pivot);
    for (const [k, row] of rows.entries()) {
      const factor = row[i] ?? 0;
      if (k === i || factor === 0) continue;
      rows[k] = row.map((value, j) => value - factor * (rows[i]?.[j] ?? 0));
    }
  }
  return rows.map((row) => row.slice(size));
}
