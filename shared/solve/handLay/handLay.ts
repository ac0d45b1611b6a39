import { degreesToRadians } from '../../base/units.ts';
import { distance } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import type { HandChange, HandShape } from '../../document/hand/handChange.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { curveAt, curveLengthMm } from '../../geometry/cubicCurve.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { LayContext } from '../layRun/layRun.ts';
import type { EndSetting } from '../layRun/runSetting.ts';
import { anchorsOf, type TakenRun } from './anchors.ts';
import { handPlaces } from './handPlace.ts';
import { type HandLine, handShapeOf } from './handShapeOf.ts';
import { lineOf } from './lineOf.ts';
import { nearnessOf } from './nearnessOf.ts';
import { type SpanMemory, type StandingEnds, stretchesOf } from './spansOf.ts';
import { takenLay } from './takenLay.ts';

/** A run in the hand. */
export interface HandLay {
  /** The hose after a change, which stands against the lay as it was taken. */
  move(change: HandChange, watch: Watch): HandShape;
}

/**
 * Takes one laid run in the hand: keeps everything that a drag needs ready (fields of the bay and of the other hoses, the
 * run in numbers, the last shape of every stretch), so that a move costs a few warm rods and one look along the hose.
 * undefined: the lay shows no hose that could be taken (`no-way`).
 * Each stretch between holds is relaxed as when a run is laid, in contact with everything, only coarser (edges of 7 % of
 * the least radius), from the shape it had. Swivel ends turn with the hose where they are free in the lay, and stand
 * where the lay had them held. A hose that has snapped over something stays so until it is let go: the answer
 * may depend on the way it was dragged.
 */
export function openHandLay(
  context: LayContext,
  resolved: ResolvedRun,
  lay: Lay,
  others: TubeField,
  watch: Watch,
): HandLay | undefined {
  if (lay.outcome === 'no-way') return undefined;
  const taken = takenLay(lay);
  const placeFor = handPlaces(context, resolved, others);
  const memory: SpanMemory = new Map();
  const { setting } = placeFor({});
  const asLaid = { a: clockInLay(setting.a, lay, 'a'), b: clockInLay(setting.b, lay, 'b') };
  let before: TakenRun = { a: setting.a, b: setting.b, clocks: asLaid, supports: resolved.run.supports };
  let ends: StandingEnds = { ...asLaid, free: setting.a.turns || setting.b.turns };

  function lineAfter(change: HandChange, watched: Watch): HandLine {
    const place = placeFor(change);
    const locks = change.locks ?? resolved.run.locks ?? [];
    const anchors = anchorsOf(taken, before, place.setting, change, locks, ends);
    const laid = stretchesOf(taken, anchors, locks, place.setting, ends, place.contact, memory, watched);
    return lineOf(place.setting, taken, change, laid, ends);
  }
  if (ends.free && !liesAs(lay, lineAfter({}, watch), asLaid, ends)) {
    ends = { ...asLaid, free: false };
    memory.clear();
  }
  // Lengths are measured against the swivels as this rod has them, so that nothing changed is no change.
  before = { ...before, clocks: { a: ends.a, b: ends.b } };
  lineAfter({}, watch);
  const rest = { spans: new Map(memory), a: ends.a, b: ends.b };

  return {
    move(change, watched) {
      if (Object.values(change).every((part) => part === undefined)) {
        // A hose let go lies as it was taken, whatever it snapped over.
        for (const [id, span] of rest.spans) memory.set(id, span);
        ends.a = rest.a;
        ends.b = rest.b;
      }
      const { setting: now, field, neighbours } = placeFor(change);
      const line = lineAfter(change, watched);
      return handShapeOf(context.project, now, line, nearnessOf(now, field, neighbours, line.curve));
    },
  };
}

function clockInLay(end: EndSetting, lay: Lay, side: 'a' | 'b'): number {
  return end.turns ? degreesToRadians(lay.ends[side].ownClockDeg) : end.clockRad;
}

/** mm. A free swivel that leaves the hose nearer than this to its lay was free when it was laid. */
const SAME_LAY_MM = 2;
/** rad, as above, of the swivel's clock. */
const SAME_CLOCK_RAD = 0.03;

function liesAs(lay: Lay, line: HandLine, asLaid: { a: number; b: number }, ends: StandingEnds): boolean {
  const { points } = lay.centreline;
  const total = curveLengthMm(line.curve);
  const turned = Math.max(...(['a', 'b'] as const).map((side) => Math.abs(Math.sin(ends[side] - asLaid[side]))));
  return (
    turned < SAME_CLOCK_RAD &&
    points.every((p, i) => distance(p, curveAt(line.curve, (total * i) / (points.length - 1)).point) < SAME_LAY_MM)
  );
}
