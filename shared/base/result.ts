/** One thing wrong with what came in: where, what was expected, and the value seen (as JSON text). */
export interface Problem {
  /** Path of the value, such as `runs[3].slack`, or `hoses.csv row 4, outside_diameter_mm`. */
  readonly path: string;
  /** A sentence a builder can act on. */
  readonly message: string;
  /** The value seen, as it would stand in JSON; absent where nothing was there. */
  readonly got?: string;
}

/** Bad input is a value: all its problems, never only the first. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function good<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function bad<T>(problems: readonly Problem[]): Result<T> {
  return { ok: false, problems };
}

/** One problem on one line: `runs[3].slack: expected a number above 0, got "x"`. */
export function describeProblem(problem: Problem): string {
  const place = problem.path === '' ? '' : `${problem.path}: `;
  const seen = problem.got === undefined ? '' : `, got ${problem.got}`;
  return `${place}${problem.message}${seen}`;
}
