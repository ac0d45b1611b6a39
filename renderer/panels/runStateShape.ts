import type { Severity } from '../../shared/document/lay/schema.ts';
import type { ShownRunState } from '../state/runState.ts';
import type { ShapeKind } from '../widgets/Shape.tsx';

/** One shape per state and per severity; the bay's flags use the same three. */
export const STATE_SHAPES: Record<ShownRunState, ShapeKind> = {
  found: 'wave',
  'not-laid': 'dash',
  stale: 'turn',
  stop: 'octagon',
  look: 'triangle',
  clean: 'tick',
};

export const SEVERITY_SHAPES: Record<Severity, ShapeKind> = { stop: 'octagon', look: 'triangle', note: 'ring' };

export const SEVERITY_WORDS: Record<Severity, string> = {
  stop: 'Do not cut',
  look: 'Decide first',
  note: 'Know it',
};
