import { angleBetween, length, sub, unit, type Vec3 } from '../../base/vec3.ts';
import type { Lay } from '../../document/lay/schema.ts';

/** A short stretch of a hose as the flow meets it. */
export interface FlowStretch {
  readonly lengthMm: number;
  readonly turnRad: number;
}

/** The hose in short stretches, shoulder to shoulder: the length round each point of its centreline and the angle it turns there. */
export function flowLine({ centreline }: Pick<Lay, 'centreline'>): FlowStretch[] {
  const points = centreline.points as readonly Vec3[];
  const steps = points.slice(1).map((p, i) => sub(p, points[i] as Vec3));
  const lengths = steps.map((s) => length(s));
  return points.map((_, i) => {
    const before = steps[i - 1];
    const after = steps[i];
    return {
      lengthMm: ((lengths[i - 1] ?? 0) + (lengths[i] ?? 0)) / 2,
      turnRad: before === undefined || after === undefined ? 0 : angleBetween(unit(before), unit(after)),
    };
  });
}
