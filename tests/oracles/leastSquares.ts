/**
 * A root of as many or fewer equations than unknowns by Levenberg and Marquardt's method, from one start; the slow and plain way.
 * `equations` fills its second argument and answers false where it has no value; `slopes`, where given, fills row after row of the
 * Jacobian; else differences are taken. undefined = no root met.
 */
export interface RootSetting {
  readonly unknowns: number;
  readonly equations: number;
  readonly mostSteps: number;
  /** largest change of an unknown in one step */
  readonly mostChange: number;
  readonly closeEnough: number;
}

type Equations = (x: Float64Array, out: Float64Array, isDifference: boolean) => boolean;

export function findRoot(equations: Equations, start: Float64Array, setting: RootSetting): Float64Array | undefined {
  let x: Float64Array = start.slice();
  let values: Float64Array = new Float64Array(setting.equations);
  if (!equations(x, values, false)) return undefined;
  let damping = 1e-3;
  for (let step = 0; step < setting.mostSteps; step++) {
    if (!equations(x, values, false)) return undefined;
    const size = Math.hypot(...values);
    if (size < setting.closeEnough) return x;
    if (step === Math.ceil(setting.mostSteps / 3) && size > 1) return undefined;
    const rows = differences(equations, x, values, setting);
    if (!rows) return undefined;
    let better = false;
    for (let tries = 0; tries < 8 && !better; tries++) {
      const change = dampedStep(rows, values, damping);
      const next =
        change && x.map((v, i) => v + Math.max(-setting.mostChange, Math.min(setting.mostChange, change[i] as number)));
      const nextValues = new Float64Array(setting.equations);
      better = next !== undefined && equations(next, nextValues, false) && Math.hypot(...nextValues) < 0.9999 * size;
      if (better) [x, values, damping] = [next as Float64Array, nextValues, Math.max(1e-14, damping / 10)];
      else damping *= 8;
    }
    if (!better) return undefined;
  }
  return undefined;
}

function differences(
  equations: Equations,
  x: Float64Array,
  values: Float64Array,
  { unknowns, equations: count }: RootSetting,
): number[][] | undefined {
  const rows = Array.from({ length: count }, () => new Array<number>(unknowns).fill(0));
  const moved = new Float64Array(count);
  for (let j = 0; j < unknowns; j++) {
    const h = 1e-6 * (1 + Math.abs(x[j] as number));
    const y = x.slice();
    y[j] = (y[j] as number) + h;
    if (!equations(y, moved, true)) return undefined;
    for (let i = 0; i < count; i++) (rows[i] as number[])[j] = ((moved[i] as number) - (values[i] as number)) / h;
  }
  return rows;
}

/** Least x with (J J^T + damping diag) y = -values, x = J^T y: few equations, so the small system. */
function dampedStep(rows: readonly number[][], values: Float64Array, damping: number): number[] | undefined {
  const count = rows.length;
  const system = rows.map((row, i) => {
    const line = rows.map((other) => row.reduce((sum, v, k) => sum + v * (other[k] as number), 0));
    line[i] = (line[i] as number) * (1 + damping) + 1e-14;
    return [...line, -(values[i] as number)];
  });
  const y = eliminated(system, count);
  return (
    y &&
    (rows[0] as number[]).map((_, k) => rows.reduce((sum, row, i) => sum + (row[k] as number) * (y[i] as number), 0))
  );
}

/** Gauss' elimination with row exchange; each line ends with its right side. */
function eliminated(system: number[][], count: number): number[] | undefined {
  const at = (r: number, c: number): number => (system[r] as number[])[c] as number;
  for (let i = 0; i < count; i++) {
    let pivot = i;
    for (let r = i + 1; r < count; r++) if (Math.abs(at(r, i)) > Math.abs(at(pivot, i))) pivot = r;
    [system[i], system[pivot]] = [system[pivot] as number[], system[i] as number[]];
    if (at(i, i) === 0) return undefined;
    for (let r = i + 1; r < count; r++) {
      const factor = at(r, i) / at(i, i);
      for (let c = i; c <= count; c++) (system[r] as number[])[c] = at(r, c) - factor * at(i, c);
    }
  }
  const x = new Array<number>(count).fill(0);
  for (let i = count - 1; i >= 0; i--) {
    let sum = at(i, count);
    for (let c = i + 1; c < count; c++) sum -= at(i, c) * (x[c] as number);
    x[i] = sum / at(i, i);
  }
  return x.every(Number.isFinite) ? x : undefined;
}
