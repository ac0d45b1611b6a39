/** Longest text of a value that a problem shows. */
const LONGEST = 80;

/**
 * A value as it would stand in JSON, cut to 80 characters with an ellipsis, for the `got` of a problem.
 * Answers undefined for a value that is not there, and words for numbers that JSON cannot carry.
 */
export function shortJson(value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value);
  const text = JSON.stringify(value) ?? String(value);
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`;
}
