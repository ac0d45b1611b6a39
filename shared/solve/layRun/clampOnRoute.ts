import { angleBetween } from '../../base/vec3.ts';
import type { Candidate } from './candidate.ts';
import { proposedIds } from './proposedIds.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { type ProposedClamp, poseOnRoute } from './spans.ts';

/**
 * Adds a clamp where the hose goes furthest wrong, put on the route's nearest straight stretch where there is one near
 * by, since a clamp does not sit on a bend.
 */
export function clampOnRoute(
  setting: RunSetting,
  route: Route,
  clamps: readonly ProposedClamp[],
  worst: Candidate,
): readonly ProposedClamp[] | undefined {
  const { judgement, shape } = worst;
  const atMm = judgement.worstAtMm;
  const fraction =
    (atMm - setting.a.end.shoulderToMouthMm - shape.tailMm.a) / (shape.liveLengthMm - shape.tailMm.a - shape.tailMm.b);
  const wanted = Math.min(1, Math.max(0, fraction)) * route.lengthMm;
  const gap = leastApartMm(setting);
  let alongMm: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let s = PLACE_STEP_MM; s <= route.lengthMm; s += PLACE_STEP_MM) {
    if (Math.abs(s - wanted) >= least || !isFree(route, clamps, s, gap)) continue;
    const cost = Math.abs(s - wanted) + (isStraightAt(route, s) ? 0 : ON_BEND_COST_MM);
    if (cost >= least) continue;
    least = cost;
    alongMm = s;
  }
  if (alongMm === undefined) return undefined;
  const [id] = proposedIds(setting, route, clamps, 1) as [string];
  return [...clamps, { id, alongMm }];
}

/** Whether a clamp put there stands clear of both ends and of the other clamps. */
function isFree(route: Route, clamps: readonly ProposedClamp[], alongMm: number, gapMm: number): boolean {
  if (alongMm <= gapMm || alongMm >= route.lengthMm - gapMm) return false;
  for (const clamp of clamps) if (Math.abs(clamp.alongMm - alongMm) <= gapMm) return false;
  return true;
}

/** How near to each other, and to what else holds the hose, clamps are put, mm. */
export function leastApartMm({ outsideRadiusMm }: RunSetting): number {
  return Math.max(LEAST_APART_DIAMETERS * 2 * outsideRadiusMm, LEAST_APART_MM);
}

const LEAST_APART_DIAMETERS = 4;
const LEAST_APART_MM = 40;
/** mm. How far along a clamp is moved to get off a bend. */
const ON_BEND_COST_MM = 60;
const PLACE_STEP_MM = 5;

function isStraightAt(route: Route, alongMm: number): boolean {
  const before = poseOnRoute(route, Math.max(0, alongMm - PLACE_STEP_MM));
  const after = poseOnRoute(route, Math.min(route.lengthMm, alongMm + PLACE_STEP_MM));
  return angleBetween(before.direction, after.direction) < STRAIGHT_RAD;
}

const STRAIGHT_RAD = 0.01;
