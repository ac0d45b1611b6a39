import type { Watch } from '../../base/watch.ts';
import { AT_REST } from '../../geometry/rigidMotion.ts';
import { type RelaxedSpan, relaxSpan } from '../layRun/relaxSpan.ts';
import { heldPlaces } from '../layRun/runSetting.ts';
import { materialAtEnd } from '../rod/index.ts';
import type { RodTwist } from '../rod/rodProblem.ts';
import type { BodyBay } from './bodyBays.ts';
import type { HeldHose, HeldSpan } from './heldHose.ts';
import { type Motions, movedContact } from './movedBay.ts';
import { movedSetting } from './movedSetting.ts';
import { poseThen } from './slackLeft.ts';

/** One stretch of a hose let go from a guess (x, y, z of places), between its holds where they stand then, in the moved bay. */
export function letGo(
  hose: HeldHose,
  span: HeldSpan,
  bays: readonly BodyBay[],
  motions: Motions,
  guess: Float64Array,
  twist: RodTwist | undefined,
  watch: Watch,
): RelaxedSpan | undefined {
  const moved = movedSetting(hose, motions);
  return relaxSpan(
    moved,
    {
      a: { kind: 'held', ...poseThen(span.from, motions) },
      b: { kind: 'held', ...poseThen(span.to, motions) },
      lengthMm: span.lengthMm,
      guess,
      contact: movedContact(bays, motions, moved.outsideRadiusMm, heldPlaces(moved)),
      ...(twist === undefined ? {} : { twist }),
    },
    watch,
  );
}

/**
 * The hose as it lies at rest once nothing but its holds holds it, and as its ends are tightened then: every stretch let go,
 * free of twist. A hose that is carried whole stays as laid.
 */
export function letGoAtRest(hose: HeldHose, bays: readonly BodyBay[], watch: Watch): HeldHose {
  if (hose.carriedBy !== undefined) return hose;
  const spans = hose.spans.map((span) => {
    const lain = letGo(hose, span, bays, () => AT_REST, span.line, undefined, watch);
    if (lain === undefined) return span;
    return { ...span, line: lain.rod.nodes, surfaceTo: materialAtEnd(lain.rod, span.surfaceFrom, 0) };
  });
  return { ...hose, spans };
}
