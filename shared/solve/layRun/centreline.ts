import { triple } from '../../base/vec3.ts';
import { DRAWN_STEP_MM } from '../../document/lay/places.ts';
import type { Lay } from '../../document/lay/schema.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';

/** mm. Greatest distance between the report's centreline points. */
export const CENTRELINE_STEP_MM = 4;

/** A curve as the report gives it: points evenly spaced, at most CENTRELINE_STEP_MM apart, with their arc lengths, mm. */
export function centrelineOf(curve: CubicCurve): Lay['centreline'] {
  const total = curveLengthMm(curve);
  const steps = Math.max(2, Math.ceil(total / CENTRELINE_STEP_MM));
  const points: [number, number, number][] = [];
  const arcLengthMm: number[] = [];
  for (let i = 0; i <= steps; i++) {
    const s = (total * i) / steps;
    points.push(triple(curveAt(curve, s).point));
    arcLengthMm.push(s);
  }
  return { points, arcLengthMm };
}

/** A curve as it is drawn: points about DRAWN_STEP_MM apart, to a tenth of a mm. */
export function drawnLine(curve: CubicCurve): [number, number, number][] {
  const total = curveLengthMm(curve);
  const steps = Math.max(2, Math.ceil(total / DRAWN_STEP_MM));
  const line: [number, number, number][] = [];
  for (let i = 0; i <= steps; i++) {
    const [x, y, z] = curveAt(curve, (total * i) / steps).point;
    line.push([tenth(x), tenth(y), tenth(z)]);
  }
  return line;
}

function tenth(mm: number): number {
  return Math.round(mm * 10) / 10;
}
