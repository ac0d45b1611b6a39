import { LEVEL_DEG, ROUNDING_RAD } from '../../base/tolerances.ts';
import { radiansToDegrees } from '../../base/units.ts';
import { angleBetween } from '../../base/vec3.ts';
import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { degreesText, lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { endPlace, placeText, sideText } from './places.ts';
import { flowDown, higherSide, type Stretch } from './profile.ts';

/**
 * A turbo oil drain, from the higher seat to the lower, +Z up: no level or rising stretch in hose or ends; the least fall;
 * and how far its outlet (the axis of the higher port, under any adapter) points from straight down. Slope is taken between neighbouring
 * points of the centreline, at most 5 mm apart.
 */
export function drainFall(context: CheckContext): Finding[] {
  if (context.run.run.service.purpose !== 'turbo-oil-drain') return [];
  return [...outletTilt(context), ...fall(context)];
}

function outletTilt({ project, run, lay }: CheckContext): Finding[] {
  const side = higherSide(lay);
  const { port, stack } = run[side];
  const tiltDeg = radiansToDegrees(angleBetween((stack?.bare ?? port).axis, [0, 0, -1]));
  const wanted = ruleValue(project, 'drain-outlet-tilt', run.run.id);
  const limit = ruleValue(project, 'drain-outlet-limit', run.run.id);
  const shared = {
    check: 'drainFall',
    run: run.run.id,
    sense: 'at-most',
    measured: tiltDeg,
    unit: 'deg',
    at: endPlace(lay, side, lay.ends[side].seatPoint),
    message: `The drain outlet at ${sideText(side)} points ${degreesText(tiltDeg)} off straight down; ${degreesText(wanted.value)} is asked for, past ${degreesText(limit.value)} turbos leak.`,
    mend: 'Turn the centre housing so that the drain points down.',
  } as const;
  const past = judge({ ...shared, use: limit, limit: limit.value, severity: 'stop' });
  if (past.length > 0) return past;
  return judge({ ...shared, use: wanted, limit: wanted.value, ruleLimit: wanted.rule.value, severity: 'look' });
}

function fall({ project, run, lay }: CheckContext): Finding[] {
  const way = flowDown(lay);
  const lowest = shallowest(way);
  if (lowest === undefined) return [];
  const noRise = ruleValue(project, 'drain-no-rise', run.run.id);
  const least = ruleValue(project, 'drain-least-fall', run.run.id);
  const shared = {
    check: 'drainFall',
    run: run.run.id,
    sense: 'at-least',
    measured: lowest.fallDeg,
    unit: 'deg',
    at: lowest.at,
    mend: 'Lower the far port, shorten the hose, or clamp it so that it falls all the way; where it cannot, a scavenge pump.',
  } as const;
  if (lowest.fallDeg < LEVEL_DEG)
    return judge({
      ...shared,
      use: noRise,
      limit: noRise.value + LEVEL_DEG,
      severity: 'stop',
      message: levelText(way),
    });
  return judge({
    ...shared,
    use: least,
    severity: 'look',
    message: `Falls only ${degreesText(lowest.fallDeg)} ${stretchText(lowest)}; ${degreesText(least.value)} is asked for.`,
  });
}

/** The stretch of a way down that falls least; the first of them where several fall alike to rounding. */
export function shallowest(way: readonly Stretch[]): Stretch | undefined {
  const roundingDeg = radiansToDegrees(ROUNDING_RAD);
  return way.reduce<Stretch | undefined>(
    (low, s) => (low === undefined || s.fallDeg < low.fallDeg - roundingDeg ? s : low),
    undefined,
  );
}

/** Names the level or rising stretch that rises most: by how much, over what length, and where it begins. */
function levelText(way: readonly Stretch[]): string {
  const level = levelStretches(way);
  const worst = level.reduce((most, s) => (s.riseMm > most.riseMm ? s : most));
  const more = level.length > 1 ? ` and ${level.length - 1} more` : '';
  const what = worst.riseMm > 0 ? `Rises ${lengthText(worst.riseMm)}` : 'Lies level';
  return `${what} over ${lengthText(worst.lengthMm)}, beginning ${stretchText(worst.first)}${more}: oil stands there and backs up into the turbo.`;
}

interface LevelStretch {
  readonly first: Stretch;
  readonly lengthMm: number;
  readonly riseMm: number;
}

function levelStretches(way: readonly Stretch[]): LevelStretch[] {
  const found: LevelStretch[] = [];
  let open: LevelStretch | undefined;
  for (const s of way) {
    if (s.fallDeg >= LEVEL_DEG) {
      if (open !== undefined) found.push(open);
      open = undefined;
    } else
      open = {
        first: open?.first ?? s,
        lengthMm: (open?.lengthMm ?? 0) + s.lengthMm,
        riseMm: (open?.riseMm ?? 0) + s.riseMm,
      };
  }
  return open === undefined ? found : [...found, open];
}

function stretchText(stretch: Stretch): string {
  return stretch.inEnd === undefined ? placeText(stretch.at) : `inside ${sideText(stretch.inEnd)}`;
}
