import { radiansToDegrees } from '../../base/units.ts';
import type { Finding, Lay, Place } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText, lengthText } from '../../document/wording/quantityText.ts';
import { planePieces, pointsBetween } from '../character/brokenBy.ts';
import { planeApartRad, planeThrough } from '../character/planeThrough.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/**
 * Every stretch that the project wants in one plane: how far its hose lies off the plane laid best through it, mm, piece by
 * piece between what holds it (a clamp is where a hose may change its plane). Says where the ends of a stretch stand so that
 * no hose between them could.
 */
export function onePlane({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'one-plane', run.run.id);
  return (run.run.onePlane ?? []).flatMap((from) =>
    planePieces(from, { holds: holdsOf(lay), arcLengthMm: lay.centreline.arcLengthMm }).flatMap((piece) => {
      const points = pointsBetween(lay.centreline, piece.from, piece.to);
      const { offMm } = planeThrough(points);
      const apartRad = planeApartRad(points);
      const why =
        apartRad === undefined || apartRad < TURNED_RAD
          ? ''
          : ` Its two ends stand turned ${degreesText(radiansToDegrees(apartRad))} to each other about the line between them: no hose there lies in one plane.`;
      const middle = points[Math.floor(points.length / 2)] ?? [0, 0, 0];
      const at: Place = { arcLengthMm: (piece.from + piece.to) / 2, point: [middle[0], middle[1], middle[2]] };
      return judge({
        check: 'onePlane',
        run: run.run.id,
        use,
        sense: 'at-most',
        measured: offMm,
        unit: 'mm',
        severity: 'look',
        at,
        message: `From ${lengthText(piece.from)} to ${lengthText(piece.to)} from shoulder A it lies ${lengthText(offMm)} off one plane, where one plane is asked: flexing in two planes twists a hose.${why}`,
        mend: 'Turn an end or a clamp into the plane of the other, or clamp the hose where it changes its plane.',
      });
    }),
  );
}

/** rad. 5 degrees: ends turned to each other by less do not keep a hose from lying in one plane to the eye. */
const TURNED_RAD = 0.0873;

function holdsOf(lay: Lay): { id: string; atMm: number; proposed: boolean }[] {
  return lay.supports
    .filter((s) => s.kind !== 'waypoint')
    .map((s) => ({ id: s.id, atMm: s.at.arcLengthMm, proposed: s.proposed }))
    .sort((p, q) => p.atMm - q.atMm);
}
