import { MM_PER_INCH } from '../../base/units.ts';
import { dot, length, sub, type Vec3 } from '../../base/vec3.ts';
import type { Finding } from '../../document/lay/schema.ts';
import type { Port } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import { LEVEL_UP, upAt } from '../flow/upAt.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { notStated } from './notStated.ts';
import { endPlace, sideText } from './places.ts';
import { lowerSide } from './profile.ts';

/**
 * A turbo drain enters above the oil: the lowest point of the bore of its lower port, under any adapter, above the oil's surface; level
 * at rest, and at each attitude stated with the surface turned about its middle, square to gravity and acceleration
 * together. mm, measured along that direction. The worst of the attitudes is told.
 */
export function drainEntry(context: CheckContext): Finding[] {
  if (context.run.run.service.purpose !== 'turbo-oil-drain') return [];
  const { oilLevel } = context.project.bay;
  if (oilLevel === undefined) return unknown(context);
  const atRest = against(context, oilLevel, LEVEL_UP);
  return atRest.length > 0 ? atRest : leaning(context, oilLevel);
}

function leaning(context: CheckContext, oilLevel: Vec3): Finding[] {
  const { attitudes = [] } = context.project.bay;
  const found = attitudes.flatMap((attitude) => against(context, oilLevel, upAt(attitude), attitude.name));
  const [first, ...others] = found;
  return first === undefined
    ? []
    : [others.reduce((worst, next) => (next.margin < worst.margin ? next : worst), first)];
}

function against({ project, run, lay }: CheckContext, oilLevel: Vec3, up: Vec3, attitude?: string): Finding[] {
  const side = lowerSide(lay);
  const { port, stack } = run[side];
  const entry = stack?.bare ?? port;
  const measured = lowestAbove(entry, boreMm(entry), oilLevel, up);
  const use = ruleValue(project, attitude === undefined ? 'drain-above-oil' : 'drain-above-oil-leaning', run.run.id);
  const where = measured < 0 ? `${lengthText(-measured)} under the oil` : `${lengthText(measured)} above the oil`;
  const state = attitude === undefined ? 'standing level' : `in this attitude: ${attitude}`;
  return judge({
    check: 'drainEntry',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured,
    unit: 'mm',
    severity: 'stop',
    at: endPlace(lay, side, lay.ends[side].seatPoint),
    message: `The drain enters at ${sideText(side)} with the lowest point of its bore of ${lengthText(boreMm(entry))} ${where}, ${state}: oil stands in the drain and backs up into the turbo.`,
    mend: 'A higher entry, less oil, or baffles that keep it away; where the turbo is too low, a scavenge pump.',
  });
}

/** Height over a plane of the lowest point of a round hole, mm. */
function lowestAbove(port: Pick<Port, 'seatPoint' | 'axis'>, bore: number, onPlane: Vec3, up: Vec3): number {
  const along = dot(port.axis, up) / length(port.axis);
  return dot(sub(port.seatPoint, onPlane), up) - (bore / 2) * Math.sqrt(Math.max(0, 1 - along * along));
}

/** The hole as stated, else the tube that the dash size counts in sixteenths of an inch, which is a little wider. */
function boreMm({ boreMm: stated, dash }: Pick<Port, 'boreMm' | 'dash'>): number {
  return stated ?? (dash * MM_PER_INCH) / 16;
}

function unknown(context: CheckContext): Finding[] {
  return notStated(context, 'drain-level-known', {
    check: 'drainEntry',
    message: 'Whether the drain enters above the oil is not known: the oil level is not stated.',
    mend: 'State the oil level of the bay, and how it leans, brakes and corners.',
  });
}
