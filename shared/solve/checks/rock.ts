import { RADIUS_RELATIVE } from '../../base/tolerances.ts';
import type { Finding, RockExtreme } from '../../document/lay/schema.ts';
import { centrelineMinRadiusMm } from '../../document/parts/centrelineMinRadius.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText, lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { endPlace, sideText } from './places.ts';
import { skinOfClearance, thingText } from './skins.ts';
import { slackOrLackMm, tightnessText } from './tightness.ts';

/**
 * The hose when bodies stand at the extremes of their motion: it may not go tight, bend under its radius or touch (stop),
 * and is looked at where it comes nearer than asked, where it is wrung, and where no lay at rest was found. The worst
 * extreme speaks for all; what strikes an end is a stop too. What the lay breaks at rest already is said there, not again here, unless it is graver: a
 * touch. A lay without rock is of a hose whose bodies stand still.
 */
export function rock(context: CheckContext): Finding[] {
  const { lay } = context;
  if (lay.rock === undefined) return [];
  // At rest the lay itself speaks.
  const moved = lay.rock.extremes.filter((e) => e.pose.bodies.length > 0);
  return [
    ...goesTight(context, moved),
    ...bendsTight(context, moved),
    ...comesNear(context, moved),
    ...strikesAnEnd(context, moved),
    ...isWrung(context, moved),
    ...findsNoRest(context, moved),
  ];
}

/** The extreme with the least of a value, and the value; undefined where none has it. */
function least(
  extremes: readonly RockExtreme[],
  of: (extreme: RockExtreme) => number | undefined,
): { readonly extreme: RockExtreme; readonly value: number } | undefined {
  let worst: { extreme: RockExtreme; value: number } | undefined;
  for (const extreme of extremes) {
    const value = of(extreme);
    if (value !== undefined && (worst === undefined || value < worst.value)) worst = { extreme, value };
  }
  return worst;
}

function withPose({ pose }: RockExtreme): string {
  return `With ${pose.name}`;
}

function goesTight({ project, run, lay }: CheckContext, moved: readonly RockExtreme[]): Finding[] {
  const use = ruleValue(project, 'rock-slack', run.run.id);
  // The rest's own lack of slack is the slack check's.
  const worst = least(moved, (e) => e.slackLeftMm - (e.missingMm ?? 0));
  if (worst === undefined || lay.rock?.carried === true) return [];
  const measured = slackOrLackMm(worst.extreme);
  const at = lay.rock?.tightAt;
  const from =
    at === undefined || at.share > 1 ? '' : ` It goes tight at ${Math.floor(at.share * 100)} % of the motion.`;
  return judge({
    check: 'rock',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured,
    unit: 'mm',
    severity: 'stop',
    message: `${withPose(worst.extreme)} ${tightnessText(worst.extreme)}${from}`,
    mend: `Cut it at least ${lengthText(use.value - measured)} longer, or leave more hose between what moves and the next clamp.`,
  });
}

function bendsTight({ project, run, lay }: CheckContext, moved: readonly RockExtreme[]): Finding[] {
  const use = ruleValue(project, 'rock-radius', run.run.id);
  const own = centrelineMinRadiusMm(run.hose) * ruleValue(project, 'bend-radius', run.run.id).value;
  const worst = least(moved, (e) => e.minRadius?.provenAtLeastMm);
  const brokenAtRest = lay.minRadius.provenAtLeastMm < own * (1 - RADIUS_RELATIVE);
  if (worst === undefined || brokenAtRest) return [];
  const limit = own * use.value;
  // As near as the curvature of a lay is known counts as kept, as at rest.
  const isKept = worst.value >= limit * (1 - RADIUS_RELATIVE);
  return judge({
    check: 'rock',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit,
    ruleLimit: own * use.rule.value,
    measured: isKept ? Math.max(worst.value, limit) : worst.value,
    unit: 'mm',
    severity: 'stop',
    ...placeOf(worst.extreme),
    message: `${withPose(worst.extreme)} it bends to ${lengthText(worst.value)} at the centreline; ${lengthText(limit)} is asked for.`,
    mend: 'Give it more hose between what moves and what stands, or a bend in the plane of the movement.',
  });
}

function placeOf({ minRadius }: RockExtreme): { at?: NonNullable<RockExtreme['minRadius']>['at'] } {
  return minRadius === undefined ? {} : { at: minRadius.at };
}

function comesNear({ project, run, lay }: CheckContext, moved: readonly RockExtreme[]): Finding[] {
  const use = ruleValue(project, 'rock-clearance', run.run.id);
  const worst = least(moved, ({ tightest: t }) =>
    t === undefined ? undefined : t.clearanceMm - use.value * t.requiredMm,
  );
  const tightest = worst?.extreme.tightest;
  if (worst === undefined || tightest === undefined) return [];
  const { clearanceMm, requiredMm, to, at } = tightest;
  const touches = clearanceMm <= 0;
  const atRest = lay.clearances.find((c) => c.to.kind === to.kind && c.to.id === to.id);
  const saidAtRest = atRest !== undefined && atRest.clearanceMm < atRest.requiredMm;
  if (saidAtRest && (!touches || atRest.clearanceMm <= 0)) return [];
  const near = touches ? 'it touches' : `it comes within ${lengthText(clearanceMm)} of`;
  return judge({
    check: 'rock',
    run: run.run.id,
    use,
    sense: 'at-least',
    limit: use.value * requiredMm,
    ruleLimit: use.rule.value * requiredMm,
    measured: clearanceMm,
    unit: 'mm',
    // Heat burns whether it comes near for long or for short; other things are only touched where it touches them.
    severity: touches || skinOfClearance(project, tightest)?.kind === 'hot' ? 'stop' : 'look',
    at,
    with: to,
    message: `${withPose(worst.extreme)} ${near} ${thingText(project, tightest)}; ${lengthText(use.value * requiredMm)} is asked for.`,
    mend: 'Lead it further away on the side that moves, or hold it with a clamp there.',
  });
}

function strikesAnEnd({ project, run, lay }: CheckContext, moved: readonly RockExtreme[]): Finding[] {
  const worst = least(moved, (e) => e.endRoom?.roomMm);
  const room = worst?.extreme.endRoom;
  if (worst === undefined || room === undefined) return [];
  const what = room.adapter === undefined ? 'the end' : `the adapter ${room.adapter}`;
  const found = room.roomMm <= 0 ? `strikes ${room.part}` : `has ${lengthText(room.roomMm)} of room at ${room.part}`;
  // What stands in the bay at rest is said there.
  const atRest = lay.ends[room.end].room;
  if (atRest !== undefined && atRest.roomMm < 0 && atRest.part === room.part) return [];
  return judge({
    check: 'rock',
    run: run.run.id,
    use: ruleValue(project, 'rock-end-room', run.run.id),
    sense: 'at-least',
    measured: room.roomMm,
    unit: 'mm',
    severity: room.roomMm <= 0 ? 'stop' : 'look',
    at: endPlace(lay, room.end, room.point),
    message: `${withPose(worst.extreme)} ${what} at ${sideText(room.end)} ${found}.`,
    mend: 'Turn it away from what moves, or take an end of another angle.',
  });
}

function isWrung({ project, run }: CheckContext, moved: readonly RockExtreme[]): Finding[] {
  const use = ruleValue(project, 'rock-twist', run.run.id);
  const worst = least(moved, (e) => (e.twistDeg === undefined ? undefined : -Math.abs(e.twistDeg)));
  if (worst === undefined) return [];
  return judge({
    check: 'rock',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: -worst.value,
    unit: 'deg',
    severity: 'look',
    message: `${withPose(worst.extreme)} the hose is wrung by ${degreesText(-worst.value)} between two places that hold it.`,
    mend: 'Let the hose bend in the plane of the movement, or leave it longer between what moves and the next clamp.',
  });
}

function findsNoRest({ project, run }: CheckContext, moved: readonly RockExtreme[]): Finding[] {
  const restless = moved.filter((e) => e.outcome === 'unsettled');
  return judge({
    check: 'rock',
    run: run.run.id,
    use: ruleValue(project, 'rock-settles', run.run.id),
    sense: 'at-most',
    limit: 0,
    measured: restless.length,
    unit: 'poses',
    severity: 'look',
    message: `At ${restless.length} of ${moved.length} extremes no lay at rest was found, first with ${restless[0]?.pose.name ?? ''}: look at it on the engine.`,
  });
}
