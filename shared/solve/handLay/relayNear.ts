import { SLACK_LEFT } from '../../base/tolerances.ts';
import { add, distance, lerp, sub, type Vec3 } from '../../base/vec3.ts';
import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { connectPoses } from '../../geometry/arcLineConnector.ts';
import { pathEnd } from '../../geometry/arcLinePath.ts';
import { type CubicCurve, curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import { nearestArcMm } from '../../geometry/nearestArc.ts';
import type { RunField } from '../bay/runField.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { betterOf, type Candidate } from '../layRun/candidate.ts';
import { clearanceToRun } from '../layRun/clearanceToRun.ts';
import { contactOfRun } from '../layRun/contactOfRun.ts';
import { fieldOfRun } from '../layRun/fieldOfRun.ts';
import { findShape } from '../layRun/findShape.ts';
import { judgeShape } from '../layRun/judgeShape.ts';
import { lacksOf, slackOf } from '../layRun/lacksOf.ts';
import type { LayContext } from '../layRun/layContext.ts';
import { layIfClean } from '../layRun/layIfClean.ts';
import { layOf } from '../layRun/layOf.ts';
import { layWithoutHose } from '../layRun/layWithoutHose.ts';
import { relaxRoute } from '../layRun/relaxRoute.ts';
import { type MeasuredLine, measuredLine, routeAlong } from '../layRun/routeAlong.ts';
import type { Route } from '../layRun/routeRun.ts';
import { runSetting } from '../layRun/runLimits.ts';
import { type EndSetting, fittedAt, type RunSetting } from '../layRun/runSetting.ts';
import type { ProposedClamp } from '../layRun/spans.ts';
import { liveMmOf } from '../layRun/tautLiveMm.ts';
import { tautThroughHolds } from '../layRun/throughClamps.ts';
import { tubesOf } from '../layRun/tubesOf.ts';
import { fieldOfLay } from '../layRun/tubesOfLay.ts';
import type { ContactField } from '../rod/index.ts';
import { GIVES_WAY_MM } from './anchors.ts';

/**
 * mm. How far from the line a route is looked for: a hose of 5 % slack lies up to about this far from its taut route, and
 * nothing thicker than a wire has another side within it that a hose could keep clear on.
 */
const WITHIN_MM = 40;

/**
 * Lays one run again near a line (a hose as it lies, or as the hand left it) without a search for other ways: first the hose
 * as long and as led as the line, let go between everything that holds it in the project as it is now. Where that lies clean
 * it is drawn taut on its own side of things, and is the lay if it has the slack that breathing needs; else a hose of the
 * wanted slack along the taut line is, if clean and near by; without one it stays as it was seen, a near miss where it goes taut.
 * Where it does not lie clean, a route is looked for within 40 mm of it whose hose stays as near; without one the hose along the line
 * comes back, with what it breaks. Proofs and measures are those of `layRun`.
 * earlier: the lays as they are; the other ones stay, and are told their clearance to the run as it lies now. Answers all
 * lays in the project's order.
 */
export function relayNear(
  context: LayContext,
  resolved: ResolvedProject,
  run: ResolvedRun,
  earlier: readonly Lay[],
  line: readonly Vec3[],
  watch: Watch,
): Lay[] {
  const laid = new Map(earlier.map((l) => [l.run, l]));
  const others = tubesOf(resolved, laid, run.run.id);
  return withRelaid(context, resolved, run, earlier, relayOne(context, run, others, line, laid.get(run.run.id), watch));
}

/** All lays in the project's order with one that was laid again: the others stay, and are told their clearance to it. */
export function withRelaid(
  context: LayContext,
  resolved: ResolvedProject,
  run: ResolvedRun,
  earlier: readonly Lay[],
  anew: Lay,
): Lay[] {
  const laid = new Map(earlier.map((l) => [l.run, l]));
  return resolved.runs.flatMap((r) => {
    if (r.run.id === anew.run) return [anew];
    const lay = laid.get(r.run.id);
    if (lay === undefined) return [];
    const toAnew = clearanceToRun(
      context.project,
      runSetting(context.project, r),
      lay,
      anew.run,
      fieldOfLay(anew, run, r),
    );
    const rest = lay.clearances.filter((c) => !(c.to.kind === 'run' && c.to.id === anew.run));
    return [{ ...lay, clearances: toAnew === undefined ? rest : [...rest, toAnew] }];
  });
}

/** What `relayNear` does for the run itself. before: as it lay. */
export function relayOne(
  context: LayContext,
  run: ResolvedRun,
  others: TubeField,
  points: readonly Vec3[],
  before: Lay | undefined,
  watch: Watch,
): Lay {
  const { project, bay } = context;
  const setting = runSetting(project, run);
  const line = fittedLine(setting, points);
  const field = fieldOfRun(context, setting, others);
  watch.report({ fraction: 0, doing: 'letting the hose lie' });
  const contact = contactOfRun(bay, others, setting);
  const held = hoseAlong(setting, field, contact, measuredLine(line), before, watch);
  const told = (candidate: Candidate): Lay =>
    layOf(context, setting, others, { candidate, byHand: true }, partOf(watch, 0.7, 1));
  if (held !== undefined && lacksOf(setting, { candidate: held, byHand: true }).length === 0) {
    watch.report({ fraction: 0.2, doing: 'drawing it taut' });
    const taut = tautThroughHolds(setting, held.shape, field, watch);
    const kept = taut === undefined ? held : drawnFrom(held, taut);
    if (setting.cutLengthMm !== undefined || taut === undefined || slackOf(kept) >= breathingSlack(context, setting))
      return told(kept);
    const surroundings = { field, contact, tautLiveOf: liveMmOf, mayTouch: true };
    const wanted = findShape(setting, [taut], surroundings, partOf(watch, 0.3, 0.7));
    const isClean = wanted !== undefined && lacksOf(setting, { candidate: wanted }).length === 0;
    const asSeen = isClean && furthestMm(wanted.shape.curve, held.shape.curve) < SEEN_MM;
    return told(asSeen ? wanted : kept);
  }
  const near = { ...context, near: { line, withinMm: WITHIN_MM } };
  const clean = setting.cutLengthMm === undefined ? layIfClean(near, run, others, partOf(watch, 0.2, 0.7)) : undefined;
  if (clean !== undefined && offLineMm(clean, line) < WITHIN_MM) return clean;
  if (held === undefined) return layWithoutHose(context, setting, others, {});
  return told({ ...held, tautLiveMm: Math.min(shortestMm(setting, held.route), held.shape.liveLengthMm) });
}

/** A hose that lies, with what it is longer than when it is drawn taut from there. */
function drawnFrom(held: Candidate, taut: Route): Candidate {
  return { ...held, route: taut, clamps: [], tautLiveMm: Math.min(liveMmOf(taut), held.shape.liveLengthMm) };
}

/** How far a lay goes from a line, mm; the line's points are a few mm apart. */
function offLineMm({ centreline }: Lay, line: readonly Vec3[]): number {
  return Math.max(...centreline.points.map((point) => Math.min(...line.map((p) => distance(p, point)))));
}

/** mm. A hose that lies further than this from where it was seen in the hand is another one to who led it there. */
const SEEN_MM = 20;

/** Greatest distance of two curves at the same share of their lengths, mm. */
function furthestMm(a: CubicCurve, b: CubicCurve): number {
  const at = (curve: CubicCurve, share: number): Vec3 => curveAt(curve, share * curveLengthMm(curve)).point;
  const shares = Array.from({ length: 101 }, (_, i) => i / 100);
  return Math.max(...shares.map((share) => distance(at(a, share), at(b, share))));
}

/** A route along a line is about as long as the line; one so many times as long runs back and forth. */
const MOST_LENGTHENED = 2;

/**
 * The hose as long and as led as the line, its swivels held at the line's clocks; where that is not clean, let turn as well,
 * and the better of the two.
 */
function hoseAlong(
  setting: RunSetting,
  field: RunField,
  contact: ContactField,
  line: MeasuredLine,
  before: Lay | undefined,
  watch: Watch,
): Candidate | undefined {
  const route = routeAlong(setting, line);
  // A support that stands before the end of a tail, or against the line, cannot be led through: that is for the search.
  if (!(route.lengthMm < MOST_LENGTHENED * (line.arcLengthMm.at(-1) ?? 0))) return undefined;
  const sockets = setting.a.end.shoulderToMouthMm + setting.b.end.shoulderToMouthMm;
  const liveMm = setting.cutLengthMm === undefined ? liveMmOf(route) : setting.cutLengthMm - sockets;
  const clamps = proposedAlong(setting, line, before, route.lengthMm);
  let best: Candidate | undefined;
  for (const free of setting.a.turns || setting.b.turns ? [false, true] : [false]) {
    stopIfCancelled(watch);
    const shape = relaxRoute(setting, route, liveMm, clamps, free, contact, watch);
    if (shape === undefined) continue;
    const judgement = judgeShape(setting, shape, field);
    const hose = { route, liveMm, tautLiveMm: liveMm, clamps, freeClocks: free };
    best = betterOf(best, { ...hose, shape, judgement, look: 'fine' });
    if (judgement.fault === 0) break;
  }
  return best;
}

/** The clamps that the lay before proposed, where the line still passes them and nothing stated holds the hose near by. */
function proposedAlong(
  setting: RunSetting,
  { points, arcLengthMm }: MeasuredLine,
  before: Lay | undefined,
  routeMm: number,
): ProposedClamp[] {
  const begin = setting.a.end.shoulderToMouthMm + setting.tailMm;
  const stated = setting.supports.filter(({ kind }) => kind !== 'waypoint');
  return (before?.supports ?? []).flatMap(({ id, proposed, at }): ProposedClamp[] => {
    const alongMm = nearestArcMm(points, arcLengthMm, at.point) - begin;
    const offMm = Math.min(...points.map((p) => distance(p, at.point)));
    const isNeeded = proposed && stated.every(({ point }) => distance(point, at.point) > GIVES_WAY_MM);
    return isNeeded && offMm < PASSES_MM && alongMm > 0 && alongMm < routeMm ? [{ id, alongMm }] : [];
  });
}

/** mm. A line that passes a proposed clamp nearer than this still goes through it; its points are 4 mm apart. */
const PASSES_MM = 4;

/**
 * Live length of the shortest lines of arc, straight and arc from hold to hold, mm, whatever stands in their way: what a hose
 * that lies wrongly is measured against, where there is no taut lay to be had. Its slack is told too large so, not too small.
 */
function shortestMm(setting: RunSetting, { ways, stations, tailMm }: Route): number {
  return ways.reduce((sum, { path, lengthMm }, i) => {
    if (lengthMm === 0 || stations[i - 1]?.locked !== undefined) return sum + lengthMm;
    return sum + Math.min(lengthMm, connectPoses(path.start, pathEnd(path), setting.minRadiusMm)?.lengthMm ?? lengthMm);
  }, tailMm.a + tailMm.b);
}

/** The least slack with which a hose does not go taut when pressure shortens it; the wanted one where less is wanted. */
function breathingSlack({ project }: LayContext, setting: RunSetting): number {
  const shorter = ruleValue(project, 'breathing-shorter', setting.run).value;
  return Math.min(setting.slack, 1 / (1 + shorter) - 1) - SLACK_LEFT;
}

/** The line with its ends brought to the shoulders as they stand now, the rest moved along in proportion. */
function fittedLine({ a, b }: RunSetting, line: readonly Vec3[]): Vec3[] {
  const move = (end: EndSetting, tip: Vec3): Vec3 => {
    const { shoulderPoint } = fittedAt(end, end.clockRad);
    if (!end.turns) return sub(shoulderPoint, tip);
    // Of a swivel only its distance from the seat is known: towards where the line ends.
    const seat = end.port.seatPoint;
    const away = distance(tip, seat);
    return away > 0 ? sub(lerp(seat, tip, distance(shoulderPoint, seat) / away), tip) : sub(shoulderPoint, tip);
  };
  const moveA = move(a, line[0] as Vec3);
  const moveB = move(b, line[line.length - 1] as Vec3);
  return line.map((p, i) => add(p, lerp(moveA, moveB, i / (line.length - 1))));
}
