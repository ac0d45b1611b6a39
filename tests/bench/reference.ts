/** Name of the piece that every group is measured beside. */
export const REFERENCE = 'reference: 20,000 square roots';

/**
 * A fixed piece of arithmetic, run in every group: 20,000 square roots in a chain, which no compiler can shorten. The
 * ratio to it is the figure to compare between versions and machines.
 */
export function reference(): number {
  let x = 2;
  for (let i = 0; i < 20_000; i++) x = Math.sqrt(x + i);
  return x;
}

let kept = 0;

/** Takes in a result, so that the compiler cannot drop the work that made it. */
export function keep(result: number): void {
  kept += result;
  if (Number.isNaN(kept)) throw new Error('bench: a result is not a number');
}
