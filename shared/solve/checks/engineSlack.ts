import { distance } from '../../base/vec3.ts';
import type { Finding, Lay, Place } from '../../document/lay/schema.ts';
import { CHASSIS_BODY } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { mouthPlace, placeText, SIDES, type Side, sideText } from './places.ts';

/**
 * Hose to spare between an end on a body that moves and the next thing that holds the hose elsewhere: length of that stretch less the straight
 * line across it, mm. Looked at where the extremes of the motion were not laid; where they were and the hose keeps slack there, it is a note.
 */
export function engineSlack({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'engine-slack', run.run.id);
  const keepsSlack = lay.rock?.extremes.every(({ slackLeftMm }) => slackLeftMm >= 0) === true;
  return SIDES.flatMap((side) => {
    const body = movingBodyAt({ project, run }, side);
    if (body === undefined) return [];
    const next = nextHold(project, run, lay, side, body);
    if (next === undefined) return [];
    const mouth = mouthPlace(lay, side);
    const spare = Math.abs(next.arcLengthMm - mouth.arcLengthMm) - distance(next.point, mouth.point);
    return judge({
      check: 'engineSlack',
      run: run.run.id,
      use,
      sense: 'at-least',
      measured: spare,
      unit: 'mm',
      severity: keepsSlack ? 'note' : 'look',
      at: next,
      message: `From ${sideText(side)}, which moves with its mounts, to what next holds the hose, ${placeText(next)}, there are ${lengthText(spare)} to spare.`,
      mend: 'Move that support further along the hose, or give the stretch more hose.',
    });
  });
}

/** The body that an end of the hose is on, where it moves on its mounts. */
export function movingBodyAt({ project, run }: Pick<CheckContext, 'project' | 'run'>, side: Side): string | undefined {
  const body = run[side].stack?.bare.body ?? run[side].port.body;
  return body !== undefined && moves(project, body) ? body : undefined;
}

function moves(project: CheckContext['project'], body: string): boolean {
  return project.bay.bodies.some(({ id, motion }) => id === body && motion !== undefined);
}

/** The next support that does not move along, else the other end where that does not. */
function nextHold(
  project: CheckContext['project'],
  run: CheckContext['run'],
  lay: Lay,
  side: Side,
  body: string,
): Place | undefined {
  const bodyOf = (id: string): string =>
    lay.rock?.holds.find((hold) => hold.id === id)?.body ??
    run.run.supports.find((support) => support.id === id)?.body ??
    CHASSIS_BODY.id;
  const held = lay.supports.filter(({ kind, id }) => kind !== 'waypoint' && bodyOf(id) !== body);
  const ordered = side === 'a' ? held : [...held].reverse();
  const [next] = ordered;
  if (next !== undefined) return next.at;
  const other: Side = side === 'a' ? 'b' : 'a';
  const there = run[other].stack?.bare.body ?? run[other].port.body;
  return there === body || movingBodyAt({ project, run }, other) !== undefined ? undefined : mouthPlace(lay, other);
}
