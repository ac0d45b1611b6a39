import { degreesToRadians } from '../../base/units.ts';
import type { Sweep } from '../../geometry/sweep/sweep.ts';
import type { Skin } from './schema.ts';

/** How the parts of a skin move; undefined where it does not move or does not say how. */
export function sweepOfSkin({ kind, sweep }: Skin): Sweep | undefined {
  if (kind !== 'moving' || sweep === undefined) return undefined;
  if (sweep.kind === 'stroke') return sweep;
  const { point, axis, fromDeg = 0, toDeg = 360 } = sweep;
  return { kind: 'turn', point, axis, fromRad: degreesToRadians(fromDeg), toRad: degreesToRadians(toDeg) };
}
