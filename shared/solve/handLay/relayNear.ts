import { add, distance, lerp, sub, type Vec3 } from '../../base/vec3.ts';
import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import type { LayContext } from '../layRun/layRun.ts';
import { layRuns } from '../layRun/layRuns.ts';
import { runSetting } from '../layRun/runLimits.ts';
import { fittedAt, type RunSetting } from '../layRun/runSetting.ts';

/**
 * mm. How far from the line the route may go: a hose of 5 % slack lies up to about this far from its taut route, and
 * things thinner than a pipe with a hose's room on both sides cannot be passed on their other side. The second is tried where
 * the first leaves no way.
 */
const WITHIN_MM = [40, 80] as const;

/**
 * Lays one run again near a line (a hose as it lies, or as the hand left it), as `layRuns` does but for the search, which looks
 * nowhere else: same relaxation, proofs and proposals. kept: the other lays, which stay; each is told its clearance to the
 * run as it lies now. Answers all lays in the project's order. A run that cannot be laid clean near the line comes back
 * as the near miss that breaks least there.
 */
export function relayNear(
  context: LayContext,
  resolved: ResolvedProject,
  run: ResolvedRun,
  kept: readonly Lay[],
  line: readonly Vec3[],
  watch: Watch,
): Lay[] {
  const fitted = fittedLine(runSetting(context.project, run), line);
  let best: Lay[] = [];
  for (const [i, withinMm] of WITHIN_MM.entries()) {
    const part = partOf(watch, i / WITHIN_MM.length, (i + 1) / WITHIN_MM.length);
    best = layRuns({ ...context, near: { line: fitted, withinMm } }, resolved, [run], kept, part);
    if (best.find((lay) => lay.run === run.run.id)?.outcome !== 'no-way') break;
  }
  return best;
}

/** The line with its ends brought to the shoulders as they stand now, the rest moved along in proportion. */
function fittedLine({ a, b }: RunSetting, line: readonly Vec3[]): Vec3[] {
  const from = fittedAt(a, a.clockRad);
  const to = fittedAt(b, b.clockRad);
  const [first, last] = [line[0] as Vec3, line[line.length - 1] as Vec3];
  // A swivel's shoulder is where its clock will have it: only as far as its port moved is known, which is all that counts.
  const moveA = sub(a.turns ? nearestOnTurn(first, from.shoulderPoint, a.port.seatPoint) : from.shoulderPoint, first);
  const moveB = sub(b.turns ? nearestOnTurn(last, to.shoulderPoint, b.port.seatPoint) : to.shoulderPoint, last);
  return line.map((p, i) => add(p, lerp(moveA, moveB, i / (line.length - 1))));
}

/** Of a swivel: a point as far from its seat as its shoulder is, towards where the line starts. */
function nearestOnTurn(start: Vec3, shoulder: Vec3, seat: Vec3): Vec3 {
  const away = distance(start, seat);
  return away > 0 ? lerp(seat, start, distance(shoulder, seat) / away) : shoulder;
}
