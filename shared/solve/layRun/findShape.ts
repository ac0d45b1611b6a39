import { angleBetween } from '../../base/vec3.ts';
import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { RunField } from '../bay/runField.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import { type Judgement, judgeShape } from './judgeShape.ts';
import { relaxRoute, type Shape } from './relaxRoute.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { type ProposedClamp, poseOnRoute } from './spans.ts';

/** A shape with the route it followed and how it stands. */
export interface Candidate {
  readonly route: Route;
  readonly shape: Shape;
  readonly judgement: Judgement;
  /** live length of the shortest lay on this side of things, mm */
  readonly tautLiveMm: number;
  readonly clamps: readonly ProposedClamp[];
}

/**
 * Slack tried beyond the wanted one, as fractions added to it: a hose that would kink at 5 % may lie well at 7 %. The
 * first steps stay inside the handbook's 5 to 8 %; the rest are looser and the slack check says so.
 */
const SLACK_STEPS = [0, 0.015, 0.03, 0.05, 0.08, 0.12];
/** How many clamps the program asks for at most before it says that the run does not fit. */
const MOST_CLAMPS = 3;

/**
 * From routes to the hose that lies best: each route is relaxed with growing slack, with its swivel ends free and then
 * held at the route's clock; if none keeps radius and clearance, clamps are proposed one by one where the hose goes
 * furthest wrong. The first candidate without fault wins, fewest clamps first, then least slack, then least energy.
 */
export function findShape(
  setting: RunSetting,
  routes: readonly Route[],
  field: RunField,
  contact: ContactField,
  tautLiveOf: (route: Route) => number,
  watch: Watch,
): Candidate | undefined {
  let best: Candidate | undefined;
  let clamps = new Map<Route, readonly ProposedClamp[]>(routes.map((r) => [r, []]));
  for (let count = 0; count <= MOST_CLAMPS; count++) {
    const part = partOf(watch, count / (MOST_CLAMPS + 1), (count + 1) / (MOST_CLAMPS + 1));
    part.report({ fraction: 0, doing: count === 0 ? 'letting the hose lie' : `trying ${count} clamps` });
    const next = new Map<Route, readonly ProposedClamp[]>();
    for (const [route, proposed] of clamps) {
      const here = bestOfRoute(setting, route, proposed, field, contact, tautLiveOf, watch);
      if (here === undefined) continue;
      best = betterOf(best, here);
      const more = oneMoreClamp(setting, route, proposed, here);
      if (more !== undefined) next.set(route, more);
    }
    if (best !== undefined && best.judgement.fault === 0) return best;
    clamps = next;
  }
  return best;
}

function bestOfRoute(
  setting: RunSetting,
  route: Route,
  clamps: readonly ProposedClamp[],
  field: RunField,
  contact: ContactField,
  tautLiveOf: (route: Route) => number,
  watch: Watch,
): Candidate | undefined {
  let best: Candidate | undefined;
  const tautLiveMm = tautLiveOf(route);
  const freedoms = setting.a.turns || setting.b.turns ? [true, false] : [false];
  const steps = setting.cutLengthMm === undefined ? SLACK_STEPS : [0];
  for (const step of steps) {
    for (const freeClocks of freedoms) {
      stopIfCancelled(watch);
      const liveMm = wantedLiveMm(setting, tautLiveMm, setting.slack + step);
      const shape = relaxRoute(setting, route, liveMm, clamps, freeClocks, contact, watch);
      if (shape === undefined) continue;
      const candidate = { route, shape, judgement: judgeShape(setting, shape, field), tautLiveMm, clamps };
      best = betterOf(best, candidate);
    }
    if (best !== undefined && best.judgement.fault === 0) return best;
  }
  return best;
}

/** A hose already cut has its length; another gets its slack over taut. A hose too short for its place is shown taut. */
function wantedLiveMm(setting: RunSetting, tautLiveMm: number, slack: number): number {
  if (setting.cutLengthMm === undefined) return tautLiveMm * (1 + slack);
  const sockets = setting.a.end.shoulderToMouthMm + setting.b.end.shoulderToMouthMm;
  return Math.max(setting.cutLengthMm - sockets, tautLiveMm);
}

/** The better of two candidates: less fault, then less bending. */
export function betterOf(a: Candidate | undefined, b: Candidate | undefined): Candidate | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return isBetter(b, a) ? b : a;
}

function isBetter(a: Candidate, b: Candidate): boolean {
  if (a.judgement.fault !== b.judgement.fault) return a.judgement.fault < b.judgement.fault;
  return a.shape.energyNmm < b.shape.energyNmm;
}

/**
 * Adds a clamp where the hose goes furthest wrong, put on the route's nearest straight stretch where there is one near
 * by, since a clamp does not sit on a bend.
 */
function oneMoreClamp(
  setting: RunSetting,
  route: Route,
  clamps: readonly ProposedClamp[],
  worst: Candidate,
): readonly ProposedClamp[] | undefined {
  const { judgement, shape } = worst;
  const atMm = judgement.marginMm < 0 ? judgement.marginAtMm : judgement.radiusAtMm;
  const fraction =
    (atMm - setting.a.end.shoulderToMouthMm - shape.tailMm.a) / (shape.liveLengthMm - shape.tailMm.a - shape.tailMm.b);
  const wanted = Math.min(1, Math.max(0, fraction)) * route.lengthMm;
  const gap = Math.max(LEAST_APART_DIAMETERS * 2 * setting.outsideRadiusMm, LEAST_APART_MM);
  const places = clampPlaces(route).filter(
    (s) => s > gap && s < route.lengthMm - gap && clamps.every((c) => Math.abs(c.alongMm - s) > gap),
  );
  if (places.length === 0) return undefined;
  const cost = (s: number): number => Math.abs(s - wanted) + (isStraightAt(route, s) ? 0 : ON_BEND_COST_MM);
  const alongMm = places.reduce((a, b) => (cost(b) < cost(a) ? b : a));
  return [...clamps, { id: `proposed-${clamps.length + 1}`, alongMm }];
}

const LEAST_APART_DIAMETERS = 4;
const LEAST_APART_MM = 40;
/** mm. How far along a clamp is moved to get off a bend. */
const ON_BEND_COST_MM = 60;
const PLACE_STEP_MM = 5;

function clampPlaces(route: Route): number[] {
  return Array.from({ length: Math.floor(route.lengthMm / PLACE_STEP_MM) }, (_, i) => (i + 1) * PLACE_STEP_MM);
}

function isStraightAt(route: Route, alongMm: number): boolean {
  const before = poseOnRoute(route, Math.max(0, alongMm - PLACE_STEP_MM));
  const after = poseOnRoute(route, Math.min(route.lengthMm, alongMm + PLACE_STEP_MM));
  return angleBetween(before.direction, after.direction) < STRAIGHT_RAD;
}

const STRAIGHT_RAD = 0.01;
