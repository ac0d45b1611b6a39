import { radiansToDegrees } from '../../base/units.ts';
import { angleBetween, length, sub, unit, type Vec3 } from '../../base/vec3.ts';

/** deg. No rod turns more than this between three of its points: one of them is out of order, or off the rod. */
const MOST_TURN_DEG = 75;
/** A gap so many times the usual one is a stretch where the bend is guessed. */
const WIDE_GAP = 4;

/** What is odd about the points of a digitised rod, each told by its place in the row of points, the first being 1. */
export function backTurns(points: readonly Vec3[]): string[] {
  const steps = points.slice(1).map((p, i) => sub(p, points[i] as Vec3));
  const lengths = steps.map((s) => length(s));
  const usual = [...lengths].sort((a, b) => a - b)[lengths.length >> 1] as number;
  const notes: string[] = [];
  steps.slice(1).forEach((step, i) => {
    const deg = radiansToDegrees(angleBetween(unit(steps[i] as Vec3), unit(step)));
    if (deg > MOST_TURN_DEG)
      notes.push(`The path turns ${Math.round(deg)} degrees at point ${i + 2}: is it in its order, and on the rod?`);
  });
  lengths.forEach((mm, i) => {
    if (mm > WIDE_GAP * usual)
      notes.push(
        `Points ${i + 1} and ${i + 2} are ${mm.toFixed(0)} mm apart, the others about ${usual.toFixed(0)}: what the rod does between them is guessed.`,
      );
  });
  return notes;
}
