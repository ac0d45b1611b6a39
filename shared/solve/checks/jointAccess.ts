import { asksForAccess } from '../../document/lay/leakyJoints.ts';
import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { sideText } from './places.ts';

/**
 * Joints of fuel and exhaust hose on a boat to which no straight arm comes, by the reach that was measured when the hose was laid.
 * An arm that bends, and a panel that the scan does not show to come off, may still get there: it is to be known.
 */
export function jointAccess({ project, run, lay }: CheckContext): Finding[] {
  if (!asksForAccess(run, project.vehicle)) return [];
  const use = ruleValue(project, 'joint-access', run.run.id);
  return (lay.hands?.places ?? []).flatMap(({ joint, by, at }) =>
    joint === undefined
      ? []
      : judge({
          check: 'jointAccess',
          run: run.run.id,
          use,
          sense: 'at-least',
          measured: by === 'hand' ? 1 : 0,
          unit: 'count',
          severity: 'note',
          at,
          message: `No straight arm comes to the joint at ${sideText(joint)}. It has to be come at with common hand tools, without a saw.`,
          mend: 'A hatch there, or a panel that comes off with a screwdriver or a wrench.',
        }),
  );
}
