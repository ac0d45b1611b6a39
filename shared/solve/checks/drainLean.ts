import { radiansToDegrees } from '../../base/units.ts';
import { angleBetween, length, sub, unit } from '../../base/vec3.ts';
import type { Finding, Severity } from '../../document/lay/schema.ts';
import type { Attitude } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText } from '../../document/wording/quantityText.ts';
import { standing, upAt } from '../flow/upAt.ts';
import type { CheckContext } from './check.ts';
import { shallowest } from './drainFall.ts';
import { judge } from './judge.ts';
import { endPlace, placeText, sideText } from './places.ts';
import { flowDown, higherSide, lowerSide, type Stretch } from './profile.ts';

/**
 * What leans about a turbo drain: the way from seat to seat, deg off straight down (a note, since makers speak of the
 * outlet); the turbo's shaft off level, where stated; and whether the drain still falls everywhere at the attitudes stated. At a grade,
 * where the bay may stand for long, that is looked at; what only acceleration does passes, and is a note.
 */
export function drainLean(context: CheckContext): Finding[] {
  if (context.run.run.service.purpose !== 'turbo-oil-drain') return [];
  return [...wholeWay(context), ...shaft(context), ...attitudes(context)];
}

function wholeWay({ project, run, lay }: CheckContext): Finding[] {
  const side = higherSide(lay);
  const from = lay.ends[side];
  const way = sub(lay.ends[lowerSide(lay)].seatPoint, from.seatPoint);
  if (length(way) === 0) return [];
  const measured = radiansToDegrees(angleBetween(unit(way), [0, 0, -1]));
  const use = ruleValue(project, 'drain-way-tilt', run.run.id);
  const limit = ruleValue(project, 'drain-outlet-limit', run.run.id);
  const past = measured > limit.value ? 'past' : 'within';
  return judge({
    check: 'drainLean',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured,
    unit: 'deg',
    severity: 'note',
    at: endPlace(lay, side, from.seatPoint),
    message: `From seat to seat the drain leans ${degreesText(measured)} off straight down: outside the ${degreesText(use.value)} of one note of the maker and ${past} the ${degreesText(limit.value)} of another. Both speak of the outlet; holding the whole drain to them is an inference.`,
    mend: 'An entry more nearly under the turbo, where there is the choice.',
  });
}

function shaft({ project, run }: CheckContext): Finding[] {
  const { shaftTiltDeg } = run.run.service;
  if (shaftTiltDeg === undefined) return [];
  const use = ruleValue(project, 'drain-shaft-level', run.run.id);
  return judge({
    check: 'drainLean',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: shaftTiltDeg,
    unit: 'deg',
    severity: 'look',
    message: `The turbo's shaft is ${degreesText(shaftTiltDeg)} off level; up to ${degreesText(use.value)} is asked for.`,
    mend: 'Mount the turbo with its shaft level.',
  });
}

interface Shallow {
  readonly stretch: Stretch;
  readonly attitude: Attitude;
  readonly severity: Severity;
}

/** One finding: the attitude at which it falls least, of those that last before those that pass. Level ones at rest are told by `drainFall`. */
function attitudes(context: CheckContext): Finding[] {
  const { bay } = context.project;
  const atRest = shallowest(flowDown(context.lay));
  if (atRest === undefined || atRest.fallDeg <= 0) return [];
  const lasting = worstOf(context, (bay.attitudes ?? []).map(standing), 'look');
  const found = lasting === undefined ? [] : told(context, lasting);
  if (found.length > 0) return found;
  const passing = worstOf(context, bay.attitudes ?? [], 'note');
  return passing === undefined ? [] : told(context, passing);
}

function worstOf({ lay }: CheckContext, among: readonly Attitude[], severity: Severity): Shallow | undefined {
  const all = among.flatMap((attitude): Shallow[] => {
    const stretch = shallowest(flowDown(lay, upAt(attitude)));
    return stretch === undefined ? [] : [{ stretch, attitude, severity }];
  });
  return all.reduce<Shallow | undefined>(
    (worst, next) => (worst === undefined || next.stretch.fallDeg < worst.stretch.fallDeg ? next : worst),
    undefined,
  );
}

function told({ project, run }: CheckContext, { stretch, attitude, severity }: Shallow): Finding[] {
  const use = ruleValue(project, 'drain-falls-leaning', run.run.id);
  const where = stretch.inEnd === undefined ? placeText(stretch.at) : `inside ${sideText(stretch.inEnd)}`;
  const what =
    stretch.fallDeg < 0 ? `rises by ${degreesText(-stretch.fallDeg)}` : `falls ${degreesText(stretch.fallDeg)}`;
  const lasts =
    severity === 'look' ? 'standing so, oil stays in it and backs up.' : 'oil waits in it for as long as that lasts.';
  return judge({
    check: 'drainLean',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: stretch.fallDeg,
    unit: 'deg',
    severity,
    at: stretch.at,
    message: `In this attitude, ${attitude.name}, the drain ${what} ${where}: ${lasts}`,
    mend: 'A steeper drain towards that side, or a scavenge pump.',
  });
}
