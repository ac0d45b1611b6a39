import { lengthOf } from '../../base/vec3.ts';
import type { Finding, Place } from '../../document/lay/schema.ts';
import { fluidCoreCell } from '../../document/materials/fluidCore.ts';
import type { Port, Run } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import { FLUID_WORDS } from '../../document/wording/serviceWords.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText } from './places.ts';

/** A joint of another hose, with the place of this one that lies nearest under it. */
interface Joint {
  readonly run: Run;
  readonly port: Port;
  readonly under: Place;
  /** mm, from the hose's surface to the plumb line under the joint; below zero = straight under it */
  readonly asideMm: number;
}

/**
 * A hose under a joint of another whose fluid its core does not bear, as oil on EPDM: how far aside of the plumb line, mm, +Z
 * up. A note, of the nearest such joint: whether that joint ever drips, and what lies between, is not known. A sleeve
 * sheds it, and nothing is said.
 */
export function drippedOn(context: CheckContext): Finding[] {
  const { project, run, lay } = context;
  if (run.sleeve !== undefined) return [];
  const joint = jointsAbove(context).reduce<Joint | undefined>(
    (nearest, next) => (nearest === undefined || next.asideMm < nearest.asideMm ? next : nearest),
    undefined,
  );
  if (joint === undefined) return [];
  const { fluid } = joint.run.service;
  const use = ruleValue(project, 'dripped-on', run.run.id);
  const harm = fluidCoreCell(run.hose.core, fluid);
  return judge({
    check: 'drippedOn',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: joint.asideMm,
    unit: 'mm',
    severity: 'note',
    at: joint.under,
    with: { kind: 'run', id: joint.run.id },
    source: harm === undefined ? use.rule.source : `${harm.source}; ${use.rule.source}`,
    message: `Lies under the joint of ${joint.run.name} at ${joint.port.name}, ${placeText(joint.under)}, ${lengthText(Math.max(0, joint.asideMm))} aside of its plumb line, ${lengthText(heightMm(joint, lay.outsideDiameterMm))} below it: ${FLUID_WORDS[fluid].toLowerCase()} that drips there falls on ${run.hose.core}, and ${harm?.why ?? 'harms it'}.`,
    mend: 'Lead it out from under the joint, or a sleeve on it; wipe off at once what drips, and look at it again.',
  });
}

function heightMm({ port, under }: Joint, thickMm: number): number {
  return port.seatPoint[2] - under.point[2] - thickMm / 2;
}

/** The ports of the other runs whose fluid this core does not bear, where the hose passes below them. */
function jointsAbove({ project, run, lay }: CheckContext): Joint[] {
  return project.runs
    .filter((other) => other.id !== run.run.id && fluidCoreCell(run.hose.core, other.service.fluid)?.grade === 0)
    .flatMap((other) =>
      [other.a.port, other.b.port].flatMap((id): Joint[] => {
        const port = project.ports.find((one) => one.id === id);
        const under = port === undefined ? undefined : nearestUnder(lay, port);
        return port === undefined || under === undefined ? [] : [{ run: other, port, ...under }];
      }),
    );
}

/** The place of the hose below a port that is nearest to its plumb line, and how far its surface is from that; undefined where the hose is nowhere below it. */
function nearestUnder(
  { centreline, outsideDiameterMm }: CheckContext['lay'],
  { seatPoint: [x, y, z] }: Port,
): Pick<Joint, 'under' | 'asideMm'> | undefined {
  let nearest: Pick<Joint, 'under' | 'asideMm'> | undefined;
  centreline.points.forEach((point, i) => {
    if (point[2] + outsideDiameterMm / 2 >= z) return;
    const asideMm = lengthOf(point[0] - x, point[1] - y) - outsideDiameterMm / 2;
    if (nearest === undefined || asideMm < nearest.asideMm)
      nearest = { under: { arcLengthMm: centreline.arcLengthMm[i] ?? 0, point }, asideMm };
  });
  return nearest;
}
