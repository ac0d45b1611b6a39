import { distance, type Vec3 } from '../../base/vec3.ts';
import type { Finding } from '../../document/lay/schema.ts';
import type { Project, Run } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText, lengthText } from '../../document/wording/quantityText.ts';
import { deepestHump } from '../../geometry/deepestHump.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { notStated } from './notStated.ts';
import { endPlace, placeText, type Side, sideText } from './places.ts';
import { type Knot, seatToSeat } from './profile.ts';

/**
 * The water of a turbo: the outlet not under the inlet, and hot water uphill all the way out, so that it rises by itself once
 * the pump stands; the housing turned no further for it than its drain allows. Humps are judged by `coolantHighPoint`;
 * here it is dips, and a whole way down. mm and deg, +Z up.
 */
export function turboWater(context: CheckContext): Finding[] {
  const { service } = context.run.run;
  if (service.purpose !== 'turbo-water') return [];
  if (service.turboAt === undefined) return unknown(context);
  const leaves = fromSide(context.run.run) === service.turboAt;
  return [...housing(context), ...(leaves ? [...outlet(context), ...uphill(context)] : [])];
}

/** The end of a run that its fluid comes from. */
function fromSide({ flow = 'a-to-b' }: Run): Side {
  return flow === 'a-to-b' ? 'a' : 'b';
}

function unknown(context: CheckContext): Finding[] {
  return notStated(context, 'turbo-water-side-known', {
    check: 'turboWater',
    message:
      'Which end is at the turbo is not stated, so nothing is said of its water: in at the low side, out at the high side, uphill all the way.',
    mend: 'State which end is at the turbo, and which way the water goes.',
  });
}

function housing({ project, run }: CheckContext): Finding[] {
  const { housingTurnDeg } = run.run.service;
  if (housingTurnDeg === undefined) return [];
  const use = ruleValue(project, 'turbo-housing-turn', run.run.id);
  return judge({
    check: 'turboWater',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: housingTurnDeg,
    unit: 'deg',
    severity: 'look',
    message: `The centre housing is turned by ${degreesText(housingTurnDeg)}; up to ${degreesText(use.value)} is allowed for the water, and the oil drain still has to point down.`,
    mend: 'Turn the housing back.',
  });
}

/** The seat at the turbo of the nearest hose that brings water to it, in the project's order where two are alike. */
function inletOf(project: Project, outletPort: Vec3): { run: Run; seat: Vec3 } | undefined {
  const inlets = project.runs.flatMap((run) => {
    const { purpose, turboAt } = run.service;
    if (purpose !== 'turbo-water' || turboAt === undefined || fromSide(run) === turboAt) return [];
    const port = project.ports.find(({ id }) => id === run[turboAt].port);
    return port === undefined ? [] : [{ run, seat: port.seatPoint as Vec3 }];
  });
  return inlets.sort((p, q) => distance(p.seat, outletPort) - distance(q.seat, outletPort))[0];
}

function outlet({ project, run, lay }: CheckContext): Finding[] {
  const side = fromSide(run.run);
  const { port, stack } = run[side];
  const seat = (stack?.bare ?? port).seatPoint;
  const inlet = inletOf(project, seat);
  if (inlet === undefined) return [];
  const use = ruleValue(project, 'turbo-water-outlet-above', run.run.id);
  const measured = seat[2] - inlet.seat[2];
  return judge({
    check: 'turboWater',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured,
    unit: 'mm',
    severity: 'look',
    at: endPlace(lay, side, lay.ends[side].seatPoint),
    with: { kind: 'run', id: inlet.run.id },
    message: `The water leaves the turbo at ${sideText(side)} ${lengthText(-measured)} lower than ${inlet.run.name} brings it in: hot water cannot rise out once the pump stands.`,
    mend: 'Cold in at the low side, hot out at the high side; turn the housing, by 20 degrees at most, or change the two hoses over.',
  });
}

/** The deepest dip on the way out, or how far its end lies under the turbo, whichever is more. */
function uphill({ project, run, lay }: CheckContext): Finding[] {
  const knots = seatToSeat(lay);
  const way = fromSide(run.run) === 'a' ? knots : knots.reverse();
  const [first, last] = [way[0], way.at(-1)];
  if (first === undefined || last === undefined) return [];
  const dip = deepestHump(way.map((k) => -k.point[2]));
  const downMm = first.point[2] - last.point[2];
  const isWhole = downMm > (dip?.depth ?? 0);
  const knot = isWhole || dip === undefined ? last : (way[dip.at] as Knot);
  const measured = Math.max(0, downMm, dip?.depth ?? 0);
  const use = ruleValue(project, 'turbo-water-dip', run.run.id);
  const where = knot.inEnd === undefined ? placeText(knot.place) : `inside ${sideText(knot.inEnd)}`;
  return judge({
    check: 'turboWater',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured,
    unit: 'mm',
    severity: 'look',
    at: knot.place,
    message: isWhole
      ? `From the turbo the water goes down by ${lengthText(measured)} in all; hot water has to rise all the way to the header.`
      : `On its way from the turbo the water dips by ${lengthText(measured)} ${where}; hot water has to rise all the way to the header.`,
    mend: 'Lead it uphill without a dip: a clamp that lifts it there, a shorter hose, or a higher place for its end.',
  });
}
