import { DRAWN_STEP_MM } from '../../document/lay/places.ts';
import type { Lay } from '../../document/lay/schema.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';

/** mm. Greatest distance between the report's centreline points. */
export const CENTRELINE_STEP_MM = 4;

/** A curve as the report gives it: points evenly spaced, at most CENTRELINE_STEP_MM apart, with their arc lengths, mm. */
export function centrelineOf(curve: CubicCurve): Lay['centreline'] {
  const total = curveLengthMm(curve);
  const steps = Math.max(2, Math.ceil(total / CENTRELINE_STEP_MM));
  const arcLengthMm = Array.from({ length: steps + 1 }, (_, i) => (total * i) / steps);
  return {
    points: arcLengthMm.map((s) => {
      const { point } = curveAt(curve, s);
      return [point[0], point[1], point[2]];
    }),
    arcLengthMm,
  };
}

/** A curve as it is drawn: points about DRAWN_STEP_MM apart, to a tenth of a mm. */
export function drawnLine(curve: CubicCurve): [number, number, number][] {
  const total = curveLengthMm(curve);
  const steps = Math.max(2, Math.ceil(total / DRAWN_STEP_MM));
  const tenth = (n: number): number => Math.round(n * 10) / 10;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const { point } = curveAt(curve, (total * i) / steps);
    return [tenth(point[0]), tenth(point[1]), tenth(point[2])];
  });
}
