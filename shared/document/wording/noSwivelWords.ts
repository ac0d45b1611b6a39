import type { End } from '../parts/schema.ts';

type Turns = Pick<End, 'bendAngleDeg' | 'turning'>;

/** Two angled ends of which neither turns freely at its port: nothing takes up an error of the clock but the hose. */
export function hasNoSwivel(a: Turns, b: Turns): boolean {
  return [a, b].every(({ bendAngleDeg, turning }) => bendAngleDeg > 0 && turning !== 'swivel');
}

/** What that means, in one sentence. */
export const NO_SWIVEL_SENTENCE =
  'NO SWIVEL: both ends are angled and neither turns at its port. Whatever the clock is off by becomes twist in the hose, and no nut can take it up.';

/**
 * What the builder does before such a hose is made up, in order: the ends are stood at their ports, the hose is marked between them,
 * and made up to the marks. Common practice, no source.
 */
export const NO_SWIVEL_STEPS: readonly string[] = [
  'Stand both ends at their ports without the hose, tight as they will stay; mark end and port across the joint.',
  'Lay the cut hose between them to its insertion marks, not yet crimped or tightened, its lay line straight; draw one line along hose and socket at each end.',
  'Hold the clock between these lines against the clock card: where they differ, the ends stand otherwise than planned. Settle that before going on.',
  'Make both ends up to their lines. Nothing turns afterwards; an end that screws in needs a union or an adapter that turns, or the hose twists with it.',
];
