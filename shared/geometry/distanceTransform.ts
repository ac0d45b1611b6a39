/**
 * Squared distance, in cells, from each cell's centre to the nearest marked cell's centre; Infinity where none is marked.
 * Cell (i, j, k) is number i + nx * (j + ny * k). Exact while nx^2 + ny^2 + nz^2 <= 2^24 (float32 whole numbers).
 * Three passes of lower envelopes of parabolas: Felzenszwalb and Huttenlocher 2012, "Distance transforms of sampled
 * functions". O(cells).
 */
export function squaredDistancesToMarked(marks: Uint8Array, nx: number, ny: number, nz: number): Float32Array {
  const squares = new Float32Array(marks.length);
  for (let row = 0; row < marks.length; row += nx) transformMarks(marks, squares, row, nx);
  const line = newLine(Math.max(ny, nz));
  for (let k = 0; k < nz; k++) {
    for (let i = 0; i < nx; i++) transformLine(squares, i + nx * ny * k, nx, ny, line);
  }
  for (let column = 0; column < nx * ny; column++) transformLine(squares, column, nx * ny, nz, line);
  return squares;
}

/** First pass, along x: marks are 0 or 1, so counting steps from both ends does. */
function transformMarks(marks: Uint8Array, squares: Float32Array, from: number, count: number): void {
  let steps = Infinity;
  for (let n = from; n < from + count; n++) {
    steps = marks[n] ? 0 : steps + 1;
    squares[n] = steps * steps;
  }
  steps = Infinity;
  for (let n = from + count - 1; n >= from; n--) {
    steps = marks[n] ? 0 : steps + 1;
    squares[n] = Math.min(squares[n]!, steps * steps);
  }
}

interface Line {
  /** the values as they came in */
  readonly values: Float64Array;
  /** cells whose parabolas make the lower envelope, from left to right */
  readonly apex: Int32Array;
  /** where each of them begins to be the lowest */
  readonly begins: Float64Array;
}

function newLine(most: number): Line {
  return { values: new Float64Array(most), apex: new Int32Array(most), begins: new Float64Array(most) };
}

/** min over m of (n - m)^2 + value(m), for each n of a line of `count` cells `stride` apart, in place. */
function transformLine(squares: Float32Array, start: number, stride: number, count: number, line: Line): void {
  const { values, apex, begins } = line;
  let last = -1;
  for (let n = 0, at = start; n < count; n++, at += stride) {
    const value = squares[at]!;
    values[n] = value;
    if (value === Infinity) continue;
    let meet = -Infinity;
    while (last >= 0) {
      const m = apex[last]!;
      meet = (value + n * n - values[m]! - m * m) / (2 * (n - m));
      if (meet > begins[last]!) break;
      last--;
      meet = -Infinity;
    }
    apex[++last] = n;
    begins[last] = meet;
  }
  if (last < 0) return;
  let lowest = 0;
  for (let n = 0, at = start; n < count; n++, at += stride) {
    while (lowest < last && begins[lowest + 1]! < n) lowest++;
    const m = apex[lowest]!;
    squares[at] = (n - m) * (n - m) + values[m]!;
  }
}
