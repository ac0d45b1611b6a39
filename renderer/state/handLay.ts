import type { HandShape } from '../../shared/document/hand/handChange.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';

/** A lay as the hand has it at this moment: what is known of the shape now, and nothing of what it was. */
export function handLay(lay: Lay, shape: HandShape | null): Lay {
  if (shape === null || shape.run !== lay.run) return lay;
  const { profile: _profile, breathing: _breathing, heat: _heat, reason: _reason, ...kept } = lay;
  const { tightest, hold: _hold, ...changed } = shape;
  return { ...kept, ...changed, clearances: tightest === undefined ? [] : [tightest] };
}
