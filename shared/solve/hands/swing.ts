import { wrapRadians } from '../../base/turnRange.ts';
import { radiansToDegrees } from '../../base/units.ts';
import { add, cross, scale, triple, type Vec3 } from '../../base/vec3.ts';
import type { Swing } from '../../document/lay/hands.ts';
import type { Thing } from '../../document/lay/schema.ts';
import { type Arc, coveredRad, placeInArc, ROUND_RAD, uncovered } from './arcs.ts';
import { type Bar, blockedClocks } from './blockedClocks.ts';
import type { Layer, Shadow } from './layer.ts';
import type { Wrench } from './wrench.ts';

/** Times hex. What keeps within this of the axis is the nut itself, or thread and hex of what it is screwed on. */
const WITHIN_NUT = 0.7;
/** Times hex. From the middle of the nut to the tips of the jaw: just past the corners of the hex. */
const JAW_TIPS = 0.6;
/** Times hex. How far the jaw is drawn back to come off: its depth beyond the middle of the nut, and a little air. */
const DRAWN_BACK = 1.2;

/** The bars that a wrench is made of: the handle as it swings, and the way its head takes when it is slid on. */
export interface WrenchBars {
  readonly handle: Bar;
  readonly way: Bar;
}

/** Both bars of a wrench; the head is a disc up to the tips of its jaw. */
export function barsOf({ hexMm, headMm, handleMm, lengthMm }: Wrench): WrenchBars {
  const head = { headRadiusMm: headMm / 2, cutMm: JAW_TIPS * hexMm, withinNutMm: WITHIN_NUT * hexMm };
  return {
    handle: { ...head, halfWidthMm: handleMm / 2, lengthMm },
    way: { ...head, halfWidthMm: headMm / 2, lengthMm: headMm / 2 + DRAWN_BACK * hexMm },
  };
}

/** What a shadow takes of the round. */
export interface Taken {
  readonly thing: Thing;
  readonly arc: Arc;
  readonly by: 'handle' | 'way';
}

/** What the shadows in a wrench's layer take of the round. */
export function takenBy(bars: WrenchBars, shadows: readonly Shadow[]): Taken[] {
  return shadows.flatMap((shadow) =>
    (['handle', 'way'] as const).flatMap((by) =>
      blockedClocks(bars[by], shadow).map((arc): Taken => ({ thing: shadow.thing, arc, by })),
    ),
  );
}

/** The widest swing between two places where the jaw goes on, and where it does. */
export interface SwingArcs {
  readonly widest?: Arc;
  /** where the handle is free and the jaw goes on */
  readonly on: readonly Arc[];
}

/**
 * How far a handle swings: within a stretch of the round that leaves the handle free, from the first to the last clock at
 * which the head can also be slid off and on. A handle that is free all round swings all round. Exact for the envelope.
 */
export function swingOf(taken: readonly Taken[]): SwingArcs {
  const free = uncovered(taken.filter(({ by }) => by === 'handle').map(({ arc }) => arc));
  const on = uncovered(taken.map(({ arc }) => arc));
  const swings = free.flatMap((stretch) => widestIn(stretch, on));
  const widest = swings.reduce<Arc | undefined>(
    (most, arc) => (arc.width > (most?.width ?? -1) ? arc : most),
    undefined,
  );
  return { on, ...(widest === undefined ? {} : { widest }) };
}

function widestIn(stretch: Arc, on: readonly Arc[]): Arc[] {
  const within = on.flatMap((arc) => {
    const start = placeInArc(stretch, arc.from);
    return start === undefined ? [] : [{ start, end: Math.min(stretch.width, start + arc.width) }];
  });
  if (within.length === 0) return [];
  if (stretch.width >= ROUND_RAD) return [stretch];
  const from = Math.min(...within.map(({ start }) => start));
  const to = Math.max(...within.map(({ end }) => end));
  return [{ from: wrapRadians(stretch.from + from), width: to - from }];
}

/** The swing in degrees, with its middle in the bay and what narrows it. */
export function tellSwing(taken: readonly Taken[], layer: Pick<Layer, 'axis' | 'up'>): Swing {
  const { widest, on } = swingOf(taken);
  const middle = widest === undefined ? undefined : wrapRadians(widest.from + widest.width / 2);
  return {
    goesOn: on.length > 0,
    widestDeg: radiansToDegrees(widest?.width ?? 0),
    ...(middle === undefined
      ? {}
      : { middleDeg: radiansToDegrees(middle), middle: triple(directionAt(layer, middle)) }),
    sectors: on.map(({ from, width }) => ({ fromDeg: radiansToDegrees(from), widthDeg: radiansToDegrees(width) })),
    inTheWay: worst(taken),
  };
}

/** Unit: where a handle points at a clock, rad. */
export function directionAt({ axis, up }: Pick<Layer, 'axis' | 'up'>, clockRad: number): Vec3 {
  return add(scale(up, Math.cos(clockRad)), scale(cross(axis, up), Math.sin(clockRad)));
}

/** Things told of as being in the way. */
const MOST_TOLD = 3;

/** What takes most of the round by itself, most first; equal ones in the order of the bay. */
function worst(taken: readonly Taken[]): Thing[] {
  const byThing = new Map<string, { thing: Thing; arcs: Arc[] }>();
  for (const { thing, arc } of taken) {
    const key = `${thing.kind} ${thing.id} ${thing.part ?? ''}`;
    const known = byThing.get(key) ?? { thing, arcs: [] };
    known.arcs.push(arc);
    byThing.set(key, known);
  }
  return [...byThing.values()]
    .map(({ thing, arcs }) => ({ thing, coveredRad: coveredRad(arcs) }))
    .sort((a, b) => b.coveredRad - a.coveredRad)
    .slice(0, MOST_TOLD)
    .map(({ thing }) => thing);
}
