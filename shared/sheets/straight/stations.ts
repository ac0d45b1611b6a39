import type { Lay } from '../../document/lay/schema.ts';
import { insertionDepthMm } from '../../document/parts/insertionDepth.ts';
import type { SheetRun } from '../input.ts';

/** A place along the straight hose that the bench marks, from shoulder A. */
export interface Station {
  readonly fromShoulderAMm: number;
  readonly name: string;
  readonly kind: 'mouth' | 'clamp' | 'pass-through';
  readonly proposed: boolean;
}

/**
 * What is marked along the hose, in order from END A: the depth it goes into each end, clamps and pass-throughs.
 * Waypoints only guided the way and are not marked.
 */
export function stations(run: SheetRun, lay: Lay): Station[] {
  const mouth = (name: string, fromShoulderAMm: number): Station => ({
    fromShoulderAMm,
    name,
    kind: 'mouth',
    proposed: false,
  });
  const held = lay.supports.flatMap((s): Station[] => {
    if (s.kind === 'waypoint') return [];
    const word = s.kind === 'clamp' ? 'clamp' : 'pass-through';
    const name = `${s.proposed ? 'proposed ' : ''}${word} ${s.id}, middle`;
    return [{ fromShoulderAMm: s.at.arcLengthMm, name, kind: s.kind, proposed: s.proposed }];
  });
  return [
    mouth('mouth A: hose in to here', insertionDepthMm(run.a.end)),
    ...held.sort((x, y) => x.fromShoulderAMm - y.fromShoulderAMm),
    mouth('mouth B: hose in to here', lay.cutLengthMm - insertionDepthMm(run.b.end)),
  ];
}
