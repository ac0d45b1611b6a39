import { lengthOf } from '../../base/vec3.ts';
import type { Watch } from '../../base/watch.ts';
import { curveAt } from '../../geometry/cubicCurve.ts';
import { leastRadius } from '../../geometry/curveLimits.ts';
import type { ContactField, RodShape } from '../rod/rodProblem.ts';
import type { Hose } from './candidate.ts';
import { leastApartMm } from './clampOnRoute.ts';
import { proposedIds } from './proposedIds.ts';
import { relaxRoute } from './relaxRoute.ts';
import { ROUGH } from './relaxSpan.ts';
import type { RunSetting } from './runSetting.ts';
import type { ProposedClamp } from './spans.ts';

/** More clamps than this are no way to lead a hose. */
const MOST_CLAMPS = 4;
/** Relative. A rough shape's least radius is off by under a hundredth, and clamps change it a little. */
const RADIUS_DOUBT = 0.03;

/**
 * The clamps that hold a hose clear: it is let lie as if everything stood out by what is asked from it (kept), which is
 * the smoothest hose that keeps clear there, and is clamped where it leans, as it lies there. Where it leans on nothing, none. Nothing
 * where it does not come to rest, bends tighter than it may even so, or leans all along.
 */
export function leanClamps(
  setting: RunSetting,
  { route, liveMm, freeClocks }: Omit<Hose, 'clamps'>,
  kept: ContactField,
  watch: Watch,
): readonly ProposedClamp[] | undefined {
  const shape = relaxRoute(setting, route, liveMm, [], freeClocks, kept, watch, ROUGH);
  if (shape === undefined || !shape.settled) return undefined;
  if (leastRadius(shape.curve, RADIUS_DOUBT).found < setting.minRadiusMm * (1 - RADIUS_DOUBT)) return undefined;
  const fromMm = setting.a.end.shoulderToMouthMm + shape.tailMm.a;
  const wholeMm = shape.liveLengthMm - shape.tailMm.a - shape.tailMm.b;
  const chordsMm = shape.rods.map(rodLengthMm);
  const perChord = wholeMm / chordsMm.reduce((sum, mm) => sum + mm, 0);
  let goneMm = 0;
  const clamps = shape.rods.flatMap((rod, span): Omit<ProposedClamp, 'id'>[] => {
    const beganMm = goneMm;
    const lengthMm = (chordsMm[span] as number) * perChord;
    goneMm += lengthMm;
    return leanShares(rod, leastApartMm(setting) / lengthMm).map((share) => {
      const atMm = beganMm + share * lengthMm;
      const { point, tangent } = curveAt(shape.curve, fromMm + atMm);
      return {
        alongMm: (atMm / wholeMm) * route.lengthMm,
        held: { span, atMm: share * lengthMm, ofMm: lengthMm, pose: { point, direction: tangent } },
      };
    });
  });
  if (clamps.length > MOST_CLAMPS) return undefined;
  const ids = proposedIds(setting, route, [], clamps.length);
  return clamps.map((clamp, i) => ({ ...clamp, id: ids[i] as string }));
}

/**
 * Where to hold a span, as shares of its length: the middle of each stretch that leans, by force, none nearer than `apart` to
 * another or to the span's ends.
 */
function leanShares({ nodes, contacts }: RodShape, apart: number): number[] {
  const edges = nodes.length / 3 - 1;
  const stretches: { share: number; forceN: number }[][] = [];
  for (const { node, forceN } of [...contacts].sort((p, q) => p.node - q.node)) {
    const share = node / edges;
    if (share < apart || share > 1 - apart || forceN <= 0) continue;
    const last = stretches.at(-1);
    if (last?.[0] !== undefined && share - last[0].share < apart) last.push({ share, forceN });
    else stretches.push([{ share, forceN }]);
  }
  return stretches.map((stretch) => {
    const forceN = stretch.reduce((sum, c) => sum + c.forceN, 0);
    return stretch.reduce((sum, c) => sum + c.share * c.forceN, 0) / forceN;
  });
}

function rodLengthMm({ nodes }: RodShape): number {
  let mm = 0;
  for (let i = 3; i < nodes.length; i += 3)
    mm += lengthOf(nodes[i]! - nodes[i - 3]!, nodes[i + 1]! - nodes[i - 2]!, nodes[i + 2]! - nodes[i - 1]!);
  return mm;
}
