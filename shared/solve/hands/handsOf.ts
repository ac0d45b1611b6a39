import { addScaled, triple } from '../../base/vec3.ts';
import { stopIfCancelled, UNWATCHED, type Watch } from '../../base/watch.ts';
import type { Hands, NutHands } from '../../document/lay/hands.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { type Ball, ballsBesideNut, ballsOfEnd, ballsOfRun } from './balls.ts';
import { crowFootSwing } from './crowFoot.ts';
import { ballsInLayer, bayInLayer, type Layer, type Shadow } from './layer.ts';
import { type Nut, nutOf } from './nut.ts';
import { reachPlaces } from './reach.ts';
import { heldHex, holdFor } from './secondWrench.ts';
import { barsOf, swingOf, type Taken, takenBy, tellSwing } from './swing.ts';
import { wrenchFor } from './wrench.ts';

/** What there is round a run's nuts. */
export interface HandsContext {
  readonly resolved: ResolvedProject;
  readonly bay: BayIndex;
  readonly lays: readonly Lay[];
}

const SIDES = ['a', 'b'] as const;

/**
 * Whether hands get at a laid hose: at each nut how far a wrench swings and where, a crow-foot where no wrench does, a second
 * wrench to hold against it, which hoses have to wait until it is tight, and where a hand reaches to look it over again.
 * Wrenches are envelopes (`wrenchFor`), turned in layers square to the nut's axis, exact against the bay's triangles and the
 * other hoses; the own hose is let be, it is bent aside, and the scan's uncertainty is not taken off.
 */
export function handsOf(around: HandsContext, run: ResolvedRun, lay: Lay, watch: Watch = UNWATCHED): Hands {
  const others = around.lays.flatMap((other) => {
    const its = around.resolved.runs.find((r) => r.run.id === other.run);
    const lies = other.run !== lay.run && other.outcome !== 'no-way' && other.centreline.points.length > 1;
    return its === undefined || !lies ? [] : ballsOfRun(its, other);
  });
  const nuts = SIDES.flatMap((side) => {
    stopIfCancelled(watch);
    const nut = nutOf(run[side], lay.ends[side]);
    return nut === undefined ? [] : [{ side, hands: nutHands(around, run, lay, side, nut, others) }];
  });
  const before = [...new Set(nuts.flatMap(({ hands }) => hands.blockedBy ?? []))].toSorted();
  return {
    ...Object.fromEntries(nuts.map(({ side, hands }) => [side, hands])),
    before,
    places: reachPlaces(run, lay, around.bay, around.resolved.project),
    basis: basisOf(run, nuts),
  };
}

function nutHands(
  { resolved, bay }: HandsContext,
  run: ResolvedRun,
  lay: Lay,
  side: 'a' | 'b',
  nut: Nut,
  others: readonly Ball[],
): NutHands {
  const { wrench, middle, axis, up } = nut;
  const asked = ruleValue(resolved.project, 'wrench-swing', run.run.id).value;
  const layer = { middle, axis, up, thicknessMm: wrench.thicknessMm, reachMm: wrench.lengthMm };
  const own = [...ballsBesideNut(run, lay, side), ...ballsOfEnd(run, lay, side === 'a' ? 'b' : 'a')];
  const fixed = [...bayInLayer(bay, layer), ...ballsInLayer(own, layer)];
  const hoses = ballsInLayer(others, layer);
  const bars = barsOf(wrench);
  const [byFixed, byHoses] = [takenBy(bars, fixed), takenBy(bars, hoses)];
  const all = [...byFixed, ...byHoses];
  const swing = tellSwing(all, nut);
  const alone = byHoses.length === 0 ? swing : tellSwing(byFixed, nut);
  const narrowed = alone.widestDeg > swing.widestDeg;
  const blockedBy = swing.widestDeg < asked && alone.widestDeg >= asked ? blockers(byFixed, byHoses, asked) : [];
  const bvhs = bay.skins.map(({ bvh }) => bvh);
  const { widest } = swingOf(all);
  return {
    hexMm: wrench.hexMm,
    hexAssumed: nut.hexAssumed,
    middle: triple(middle),
    axis: triple(axis),
    up: triple(up),
    wrench: {
      lengthMm: wrench.lengthMm,
      headMm: wrench.headMm,
      thicknessMm: wrench.thicknessMm,
      handleMm: wrench.handleMm,
    },
    swing,
    ...(narrowed ? { alone } : {}),
    ...(blockedBy.length === 0 ? {} : { blockedBy }),
    ...(swing.widestDeg >= asked
      ? {}
      : { crowFoot: crowFootSwing(wrench, layer, [...fixed, ...hoses], bvhs, [...own, ...others]) }),
    ...(widest === undefined
      ? {}
      : { second: secondOf({ bay, balls: [...own, ...others] }, run, side, nut, { widest, asked }) }),
  };
}

/** The runs that by themselves leave too little swing; where only several together do, all that take of the round. */
function blockers(byFixed: readonly Taken[], byHoses: readonly Taken[], askedDeg: number): string[] {
  const runs = [...new Set(byHoses.map(({ thing }) => thing.id))].toSorted();
  const blocking = runs.filter((id) => {
    const swing = swingOf([...byFixed, ...byHoses.filter(({ thing }) => thing.id === id)]);
    return ((swing.widest?.width ?? 0) * 180) / Math.PI < askedDeg;
  });
  return blocking.length === 0 ? runs : blocking;
}

interface FirstSwing {
  readonly widest: NonNullable<ReturnType<typeof swingOf>['widest']>;
  readonly asked: number;
}

/** On what the nut is screwed on: a wrench for its hex, in the layer next to the nut's end. */
function secondOf(
  { bay, balls }: { readonly bay: BayIndex; readonly balls: readonly Ball[] },
  run: ResolvedRun,
  side: 'a' | 'b',
  { front, axis, up, wrench }: Nut,
  { widest, asked }: FirstSwing,
): NutHands['second'] {
  const { hexMm, assumed } = heldHex(run[side], wrench.hexMm);
  const second = wrenchFor(hexMm);
  const middle = addScaled(front, axis, -second.thicknessMm / 2);
  const layer: Layer = { middle, axis, up, thicknessMm: second.thicknessMm, reachMm: second.lengthMm };
  const shadows: Shadow[] = [...bayInLayer(bay, layer), ...ballsInLayer(balls, layer)];
  const hold = swingOf(takenBy(barsOf(second), shadows)).on;
  const two = { swing: widest, swingLengthMm: wrench.lengthMm, hold, holdLengthMm: second.lengthMm, askedDeg: asked };
  return { hexMm, assumed, ...holdFor(two) };
}

function basisOf(run: ResolvedRun, nuts: readonly { readonly side: 'a' | 'b'; readonly hands: NutHands }[]): string[] {
  const without = SIDES.filter((side) => nuts.every((nut) => nut.side !== side));
  const reach = nuts.some(({ side }) => run[side].end.nutReachMm === undefined);
  return [
    'a short open-ended wrench: head 2.2 hex wide and 0.45 thick, handle 60 mm + 5 hex long (from memory, common practice, no source)',
    ...(nuts.some(({ hands }) => hands.hexAssumed) ? ['hex of a flare nut by dash, where a part states none'] : []),
    ...(reach ? ['nuts that begin at their seat, where a part states no nut reach, and are 0.75 hex long'] : []),
    'surfaces where the scan has them; the own hose bent aside',
    ...without.map((side) => `no nut at END ${side.toUpperCase()} (${run[side].end.form}): nothing measured there`),
  ];
}
