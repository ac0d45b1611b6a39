import { RADIUS_RELATIVE } from '../../base/tolerances.ts';
import type { EndPose, Finding, Taper, TaperPose } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText, lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { endPlace, SIDES, sideText } from './places.ts';
import { thingText } from './skins.ts';
import { slackOrLackMm, tightnessText } from './tightness.ts';

/**
 * The hose at every clock at which the taper threads of its ports may come tight: it may nowhere go tight, bend under its
 * radius, come nearer than asked or have an end stand in the bay (stop), and is looked at where it is wrung or no lay at
 * rest was found. The worst clock speaks for all. What the lay itself breaks is said there, not again here.
 */
export function taperRange(context: CheckContext): Finding[] {
  const { taper } = context.lay;
  if (taper === undefined) return [];
  const worst = (n: number | undefined): TaperPose | undefined => (n === undefined ? undefined : taper.poses[n]);
  return [
    ...goesTight(context, taper, worst(taper.worst.slackLeft)),
    ...bendsTight(context, taper, worst(taper.worst.minRadius)),
    ...comesNear(context, taper, worst(taper.worst.clearance)),
    ...standsIn(context, taper, worst(taper.worst.room)),
    ...isWrung(context, taper, worst(taper.worst.twist)),
    ...findsNoRest(context, taper),
  ];
}

function withClock({ name }: TaperPose, { ranges, poses }: Taper, isBad: (pose: TaperPose) => boolean): string {
  const spans = ranges.map(({ fromDeg, toDeg }) => `${Math.round(fromDeg)} to ${Math.round(toDeg)}`).join(' and ');
  return `With ${name} (so at ${poses.filter(isBad).length} of ${poses.length} clocks looked at, from ${spans} degrees)`;
}

const MEND = 'Cut it when the taper is tight and its clock is known, or take an adapter that is settable and locked.';

function goesTight({ project, run, lay }: CheckContext, taper: Taper, pose: TaperPose | undefined): Finding[] {
  if (pose === undefined || lay.liveLengthMm < lay.tautLengthMm) return [];
  const use = ruleValue(project, 'taper-slack', run.run.id);
  const measured = slackOrLackMm(pose);
  return judge({
    check: 'taperRange',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured,
    unit: 'mm',
    severity: 'stop',
    message: `${withClock(pose, taper, (p) => slackOrLackMm(p) < use.value)} ${tightnessText(pose)}`,
    mend: `Give it at least ${lengthText(use.value - measured)} more hose. Or: ${MEND}`,
  });
}

function bendsTight({ project, run, lay }: CheckContext, taper: Taper, pose: TaperPose | undefined): Finding[] {
  const own = lay.minRadius.limitMm;
  const isBrokenAsLaid = lay.minRadius.provenAtLeastMm < own * (1 - RADIUS_RELATIVE);
  if (pose?.minRadius === undefined || isBrokenAsLaid) return [];
  const use = ruleValue(project, 'taper-range', run.run.id);
  const limit = own * use.value;
  const { provenAtLeastMm, at } = pose.minRadius;
  const isTight = (p: TaperPose): boolean => (p.minRadius?.provenAtLeastMm ?? limit) < limit * (1 - RADIUS_RELATIVE);
  return judge({
    check: 'taperRange',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit,
    ruleLimit: own * use.rule.value,
    // As near as the curvature of a lay is known counts as kept, as in the lay itself.
    measured: isTight(pose) ? provenAtLeastMm : Math.max(provenAtLeastMm, limit),
    unit: 'mm',
    severity: 'stop',
    at,
    message: `${withClock(pose, taper, isTight)} it bends to ${lengthText(provenAtLeastMm)} at the centreline; ${lengthText(limit)} is asked for.`,
    mend: MEND,
  });
}

function comesNear({ project, run, lay }: CheckContext, taper: Taper, pose: TaperPose | undefined): Finding[] {
  if (pose?.tightest === undefined) return [];
  const { clearanceMm, requiredMm, to, at } = pose.tightest;
  const asLaid = lay.clearances.find((c) => c.to.kind === to.kind && c.to.id === to.id);
  const isSaid = asLaid !== undefined && asLaid.clearanceMm < asLaid.requiredMm;
  if (isSaid && (clearanceMm > 0 || asLaid.clearanceMm <= 0)) return [];
  const use = ruleValue(project, 'taper-range', run.run.id);
  const isNear = ({ tightest: t }: TaperPose): boolean => t !== undefined && t.clearanceMm < use.value * t.requiredMm;
  const near = clearanceMm <= 0 ? 'it touches' : `it comes within ${lengthText(clearanceMm)} of`;
  return judge({
    check: 'taperRange',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit: use.value * requiredMm,
    ruleLimit: use.rule.value * requiredMm,
    measured: clearanceMm,
    unit: 'mm',
    severity: 'stop',
    at,
    with: to,
    message: `${withClock(pose, taper, isNear)} ${near} ${thingText(project, pose.tightest)}; ${lengthText(use.value * requiredMm)} is asked for.`,
    mend: MEND,
  });
}

function standsIn({ project, run, lay }: CheckContext, taper: Taper, pose: TaperPose | undefined): Finding[] {
  if (pose === undefined) return [];
  const use = ruleValue(project, 'end-room', run.run.id);
  const isIn = (p: TaperPose): boolean =>
    SIDES.some((s) => (p.room[s]?.roomMm ?? use.value) < use.value && !isInAsLaid(lay.ends[s], use.value));
  const side = SIDES.find((s) => pose.room[s] !== undefined && pose.room[s].roomMm === leastRoomMm(pose));
  const room = side === undefined ? undefined : pose.room[side];
  if (side === undefined || room === undefined || isInAsLaid(lay.ends[side], use.value)) return [];
  const what = room.adapter === undefined ? 'the end' : `the adapter ${room.adapter}`;
  return judge({
    check: 'taperRange',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: room.roomMm,
    unit: 'mm',
    severity: room.roomMm < 0 ? 'stop' : 'look',
    at: endPlace(lay, side, room.point),
    message: `${withClock(pose, taper, isIn)} ${what} at ${sideText(side)} ${room.roomMm < 0 ? `stands ${lengthText(-room.roomMm)} in` : `has ${lengthText(room.roomMm)} of room at`} ${room.part}.`,
    mend: MEND,
  });
}

function isInAsLaid({ room }: EndPose, limitMm: number): boolean {
  return room !== undefined && room.roomMm < limitMm;
}

function leastRoomMm({ room }: TaperPose): number {
  return Math.min(...SIDES.map((s) => room[s]?.roomMm ?? Number.POSITIVE_INFINITY));
}

function isWrung({ project, run }: CheckContext, taper: Taper, pose: TaperPose | undefined): Finding[] {
  if (pose?.twistDeg === undefined) return [];
  const use = ruleValue(project, 'taper-twist', run.run.id);
  const isOver = (p: TaperPose): boolean => Math.abs(p.twistDeg ?? 0) > use.value;
  return judge({
    check: 'taperRange',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: Math.abs(pose.twistDeg),
    unit: 'deg',
    severity: 'look',
    message: `${withClock(pose, taper, isOver)} the hose is wrung by ${degreesText(Math.abs(pose.twistDeg))} between its two angled ends.`,
    mend: 'Make one end a swivel, and tighten it last; or make the hose up when the taper is tight.',
  });
}

function findsNoRest({ project, run }: CheckContext, { poses }: Taper): Finding[] {
  const restless = poses.filter((p) => p.outcome === 'unsettled');
  return judge({
    check: 'taperRange',
    run: run.run.id,
    use: ruleValue(project, 'rock-settles', run.run.id),
    sense: 'at-most',
    limit: 0,
    measured: restless.length,
    unit: 'clocks',
    severity: 'look',
    message: `At ${restless.length} of ${poses.length} clocks no lay at rest was found, first with ${restless[0]?.name ?? ''}: look at it on the engine.`,
  });
}
