import type { Finding } from '../../document/lay/schema.ts';
import { FUELS } from '../../document/parts/fluids.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { notStated } from './notStated.ts';
import { endPlace, SIDES, type Side, sideText } from './places.ts';

/**
 * Rigid fuel lines that a hose joins: how far from the joint they are first held. On a boat, whose code sets the limit, it is decided
 * before cutting; elsewhere it is good to know.
 */
export function rigidLine(context: CheckContext): Finding[] {
  const { run } = context;
  if (!FUELS.includes(run.run.service.fluid)) return [];
  return SIDES.flatMap((side) => {
    const line = run[side].port.rigidLine;
    if (line === undefined) return [];
    return line.clampMm === undefined ? unknown(context, side) : held(context, side, line.clampMm);
  });
}

function unknown(context: CheckContext, side: Side): Finding[] {
  return notStated(context, 'rigid-line-known', {
    check: 'rigidLine',
    message: `A rigid fuel line ends at ${sideText(side)}; it is not stated how far from the hose it is first held.`,
    mend: 'State it of the port.',
  });
}

function held({ project, run, lay }: CheckContext, side: Side, clampMm: number): Finding[] {
  const use = ruleValue(project, 'rigid-line-clamp', run.run.id);
  return judge({
    check: 'rigidLine',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: clampMm,
    unit: 'mm',
    severity: project.vehicle === 'boat' ? 'look' : 'note',
    at: endPlace(lay, side, lay.ends[side].seatPoint),
    message: `The rigid fuel line at ${sideText(side)} is first held ${lengthText(clampMm)} from the hose: it shakes there and works its joint loose.`,
    mend: `A clamp on the line within ${lengthText(use.value)} of the joint.`,
  });
}
