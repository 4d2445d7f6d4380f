// Small linear least-squares problems by Householder reflections, columns scaled: solution, covariance, condition.

export interface LinearSolution {
  readonly solution: readonly number[];
  /** (JᵀJ)⁻¹, to be multiplied by the residual variance. */
  readonly unscaledCovariance: readonly (readonly number[])[];
  /** Least over greatest diagonal of R after scaling: near 0 means that the columns cannot be told apart. */
  readonly independence: number;
  /** Σr² of the solution. */
  readonly squares: number;
  /** Σ of the squared part of y that the columns explain. */
  readonly explained: number;
}

/** Least independence of columns that counts as identifiable in double precision. */
const leastIndependence = 1e-11;

/** Length of a column, safe against overflow and underflow. */
export function columnNorm(rows: readonly (readonly number[])[], column: number): number {
  let greatest = 0;
  for (const row of rows) greatest = Math.max(greatest, Math.abs(row[column] as number));
  if (!(greatest > 0) || !Number.isFinite(greatest)) return greatest;
  let sum = 0;
  for (const row of rows) sum += ((row[column] as number) / greatest) ** 2;
  return greatest * Math.sqrt(sum);
}

/**
 * Minimises |J·x − y|. `rows` are the rows of J, at least as many as columns. null where the columns are dependent: where their
 * independence is not above `least`.
 */
export function solveLeastSquares(rows: readonly (readonly number[])[], y: readonly number[], least = leastIndependence): LinearSolution | null {
  const height = rows.length;
  const width = rows[0]?.length ?? 0;
  if (width === 0 || height < width) return null;
  // columns as arrays of their own: this is the innermost loop of every fit
  const scales: number[] = [];
  const columns: Float64Array[] = [];
  for (let column = 0; column < width; column += 1) {
    const scale = columnNorm(rows, column);
    if (!(scale > 0 && Number.isFinite(scale))) return null;
    scales.push(scale);
    const values = new Float64Array(height);
    for (let row = 0; row < height; row += 1) values[row] = (rows[row] as readonly number[])[column] as number / scale;
    columns.push(values);
  }
  const q = Float64Array.from(y);
  const v = new Float64Array(height);
  const reflect = (values: Float64Array, from: number, square: number): void => {
    let dot = 0;
    for (let row = from; row < height; row += 1) dot += (v[row] as number) * (values[row] as number);
    const factor = 2 * dot / square;
    for (let row = from; row < height; row += 1) values[row] = (values[row] as number) - factor * (v[row] as number);
  };
  for (let column = 0; column < width; column += 1) {
    const here = columns[column] as Float64Array;
    let normSquare = 0;
    for (let row = column; row < height; row += 1) normSquare += (here[row] as number) ** 2;
    const norm = Math.sqrt(normSquare);
    if (!(norm > 0)) return null;
    const head = here[column] as number;
    v.set(here.subarray(column), column);
    v[column] = head + (head >= 0 ? norm : -norm);
    const square = 2 * (normSquare + Math.abs(head) * norm);
    for (let other = column; other < width; other += 1) reflect(columns[other] as Float64Array, column, square);
    reflect(q, column, square);
  }
  const diagonal = Array.from({ length: width }, (_, column) => Math.abs(columns[column]?.[column] as number));
  const independence = Math.min(...diagonal) / Math.max(...diagonal);
  if (!(independence > least)) return null;
  const backSubstitute = (right: ArrayLike<number>): number[] => {
    const x = new Array<number>(width).fill(0);
    for (let row = width - 1; row >= 0; row -= 1) {
      let sum = right[row] as number;
      for (let column = row + 1; column < width; column += 1) sum -= (columns[column]?.[row] as number) * (x[column] as number);
      x[row] = sum / (columns[row]?.[row] as number);
    }
    return x;
  };
  const solution = backSubstitute(q).map((each, column) => each / (scales[column] as number));
  const inverse = Array.from({ length: width }, (_, column) => backSubstitute(Array.from({ length: width }, (__, row) => (row === column ? 1 : 0))));
  // inverse[column][row] is R⁻¹(row, column)
  const unscaledCovariance = Array.from({ length: width }, (_, i) => Array.from({ length: width }, (__, j) => {
    let sum = 0;
    for (const column of inverse) sum += (column[i] as number) * (column[j] as number);
    return sum / ((scales[i] as number) * (scales[j] as number));
  }));
  const squares = q.slice(width).reduce((sum, each) => sum + each * each, 0);
  const explained = q.slice(0, width).reduce((sum, each) => sum + each * each, 0);
  return { solution, unscaledCovariance, independence, squares, explained };
}
