import type { ClearanceField } from './problem.ts';

/** What of a field is another's. */
type Changes = Partial<Pick<ClearanceField, 'bounds' | 'coarseMarginMm' | 'marginMm'>>;

/**
 * A field with other bounds or margins, which change no more per mm than its own. All fields are records of one shape: what asks
 * them, the innermost of every search, is compiled once.
 */
export function fieldWith(field: ClearanceField, changes: Changes): ClearanceField {
  return {
    bounds: changes.bounds ?? field.bounds,
    lipschitz: field.lipschitz,
    steepest: field.steepest,
    coarseMarginMm: changes.coarseMarginMm ?? field.coarseMarginMm,
    marginMm: changes.marginMm ?? field.marginMm,
  };
}
