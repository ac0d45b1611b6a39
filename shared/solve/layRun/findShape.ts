import { angleBetween } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { segmentLengthMm } from '../../geometry/arcLinePath.ts';
import type { RunField } from '../bay/runField.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import { type Judgement, judgeShape } from './judgeShape.ts';
import { relaxRoute, type Shape } from './relaxRoute.ts';
import { FINE, type Fineness, ROUGH } from './relaxSpan.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { lockedLengthMm, type ProposedClamp, poseOnRoute } from './spans.ts';

/** A shape with the route it followed and how it stands. */
export interface Candidate {
  readonly route: Route;
  readonly shape: Shape;
  readonly judgement: Judgement;
  /** live length of the shortest lay on this side of things, mm */
  readonly tautLiveMm: number;
  readonly clamps: readonly ProposedClamp[];
  /** mouth to mouth, as wanted, mm */
  readonly liveMm: number;
  /** whether swivel ends went on turning as the hose relaxed */
  readonly freeClocks: boolean;
  /** relaxed roughly only: good enough to be told from better ones */
  readonly isRough: boolean;
}

/**
 * Slack tried beyond the wanted one, as fractions added to it: a hose that would kink at 5 % may lie well at 7 %. `snug`
 * stays inside the handbook's 5 to 8 %; `loose` goes beyond, and the slack check says so. `wide` is for ports so near to each
 * other that the taut hose is bent to its limit all along: a free hose bends unevenly, and lies in such a place as a wider loop only.
 */
export const SLACK_STEPS = {
  snug: [0, 0.015, 0.03],
  loose: [0.05, 0.08, 0.12],
  wide: [0.2, 0.28, 0.38, 0.5, 0.65, 0.85],
} as const;

interface Trial {
  readonly clamps: number;
  readonly slack: keyof typeof SLACK_STEPS;
}

/**
 * The same for a run with a stretch that stays as it lies: that has its slack in it already, and the rest may have no room
 * for more. The slack check tells what it comes to.
 */
const LESS_SLACK = [-0.02, -0.035, -0.045] as const;

/** Which trials: `plain` only those without a proposed clamp and with the handbook's slack, `snug` with clamps too. */
export type TrialRange = 'plain' | 'snug' | 'all';

/** What is tried, in order of what a builder would rather have: few clamps and a snug hose before more of either. */
const TRIALS: readonly Trial[] = [
  { clamps: 0, slack: 'snug' },
  { clamps: 1, slack: 'snug' },
  { clamps: 0, slack: 'loose' },
  { clamps: 1, slack: 'loose' },
  { clamps: 2, slack: 'snug' },
  { clamps: 2, slack: 'loose' },
  { clamps: 3, slack: 'snug' },
];

/** The same where the shortest route is bent all along: a clamp in the middle of a bend widens nothing, more hose does. */
const BENT_TRIALS: readonly Trial[] = [
  { clamps: 0, slack: 'snug' },
  { clamps: 0, slack: 'loose' },
  { clamps: 0, slack: 'wide' },
  ...TRIALS.filter(({ clamps }) => clamps > 0),
];
/** A route counts as bent all along when arcs of the least radius make up this share of it. */
const BENT_SHARE = 0.75;
/** Arcs of up to this many least radii are meant: routes are looked for with a little in hand. */
const BENT_RADIUS = 1.3;

/** What a hose is let lie in. */
export interface Surroundings {
  /** what the shape is judged against */
  readonly field: RunField;
  /** what the hose may come to lie against */
  readonly contact: ContactField;
  /** live length of the shortest lay on a route's side of things, mm */
  tautLiveOf(route: Route): number;
}

/**
 * From routes, the shortest first, to the hose that lies best: each route is relaxed with growing slack, with its swivel ends free and then
 * held at the route's clock; if that does not keep radius and clearance, clamps are proposed one by one where the hose
 * goes furthest wrong. The first trial with a candidate that leaves nothing to wish for
 * wins; else the candidate with the least fault, then the least regret.
 */
export function findShape(
  setting: RunSetting,
  routes: readonly Route[],
  surroundings: Surroundings,
  watch: Watch,
  range: TrialRange = 'all',
): Candidate | undefined {
  let best: Candidate | undefined;
  const clamped = new Map(routes.map((route) => [route, ownClamps(route)]));
  const crowded = new Set<readonly ProposedClamp[]>();
  const [shortest] = routes;
  const isBent = shortest !== undefined && isBentAllAlong(shortest, setting.minRadiusMm);
  const all = isBent ? BENT_TRIALS : TRIALS;
  const trials = all.filter((t) => isTried(setting, t, isBent ? 'all' : range));
  for (const [i, trial] of trials.entries()) {
    // More slack than the handbook's is not worth what only the service wishes for.
    if (best?.judgement.fault === 0 && trial.slack !== 'snug') continue;
    watch.report({ fraction: i / trials.length, doing: 'letting the hose lie' });
    for (const [route, byCount] of clamped) {
      const clamps = byCount[trial.clamps];
      if (clamps === undefined || (trial.slack !== 'snug' && crowded.has(clamps))) continue;
      const here = bestOfRoute(setting, route, clamps, SLACK_STEPS[trial.slack], surroundings, watch);
      if (here === undefined) continue;
      best = worthAClamp(best, here);
      if (isCrowded(setting, here)) crowded.add(clamps);
      const more = byCount[trial.clamps + 1] ?? oneMoreClamp(setting, route, clamps, here);
      if (more !== undefined) byCount[trial.clamps + 1] = more;
    }
    if (best?.judgement.content === true) return best;
  }
  return best && refined(setting, best, surroundings, watch);
}

/** A hose already cut has no slack to choose. */
function isTried({ cutLengthMm }: RunSetting, { clamps, slack }: Trial, range: TrialRange): boolean {
  if (slack !== 'snug') return cutLengthMm === undefined && range === 'all';
  return clamps === 0 || range !== 'plain';
}

function isBentAllAlong({ ways }: Route, minRadiusMm: number): boolean {
  let bentMm = 0;
  let totalMm = 0;
  for (const segment of ways.flatMap(({ path }) => path.segments)) {
    const lengthMm = segmentLengthMm(segment);
    totalMm += lengthMm;
    if (segment.kind === 'arc' && segment.radiusMm <= minRadiusMm * BENT_RADIUS) bentMm += lengthMm;
  }
  return bentMm >= BENT_SHARE * totalMm;
}

/** By how many clamps there are: a route starts with none, or with those that belong to it. */
function ownClamps({ clampsAtMm = [] }: Route): (readonly ProposedClamp[] | undefined)[] {
  const byCount: (readonly ProposedClamp[] | undefined)[] = [];
  byCount[clampsAtMm.length] = clampsAtMm.map((alongMm, i) => ({ id: `proposed-${i + 1}`, alongMm }));
  return byCount;
}

/** The hose that lies best along one route with these clamps, over the slacks to be tried, its swivel ends free and held. */
export function bestOfRoute(
  setting: RunSetting,
  route: Route,
  clamps: readonly ProposedClamp[],
  slackSteps: readonly number[],
  surroundings: Surroundings,
  watch: Watch,
): Candidate | undefined {
  let best: Candidate | undefined;
  const tautLiveMm = surroundings.tautLiveOf(route);
  const freedoms = setting.a.turns || setting.b.turns ? [true, false] : [false];
  const less = lockedLengthMm(route) > 0 ? LESS_SLACK.filter((step) => setting.slack + step >= 0) : [];
  for (const step of setting.cutLengthMm === undefined ? [...slackSteps, ...less] : [0]) {
    for (const freeClocks of freedoms) {
      stopIfCancelled(watch);
      const liveMm = wantedLiveMm(setting, route, tautLiveMm, setting.slack + step);
      const hose = { route, liveMm, tautLiveMm, clamps, freeClocks };
      const rough = judged(setting, hose, surroundings, watch, ROUGH);
      if (rough === undefined || rough.judgement.fault > FAR_FROM_CLEAN_MM) best = betterOf(best, rough);
      else best = betterOf(best, refined(setting, rough, surroundings, watch));
    }
    if (best?.judgement.content === true || (best !== undefined && isCrowded(setting, best))) return best;
  }
  return best;
}

/** Whether a hose is bent no tighter than it may be and lies far too near to something: more of it would lie nearer still. */
function isCrowded({ minRadiusMm }: RunSetting, { judgement }: Candidate): boolean {
  return judgement.radiusMm >= minRadiusMm && judgement.marginMm < -FAR_FROM_CLEAN_MM;
}

/** mm of fault. A shape that is so bad roughly is not made good by looking finely. */
const FAR_FROM_CLEAN_MM = 2;

function judged(
  setting: RunSetting,
  hose: Omit<Candidate, 'shape' | 'judgement' | 'isRough'>,
  surroundings: Surroundings,
  watch: Watch,
  fineness: Fineness,
  from?: Shape,
): Candidate | undefined {
  const { route, liveMm, clamps, freeClocks } = hose;
  const { contact, field } = surroundings;
  const shape = relaxRoute(setting, route, liveMm, clamps, freeClocks, contact, watch, fineness, from?.rods);
  if (shape === undefined) return undefined;
  return { ...hose, shape, judgement: judgeShape(setting, shape, field), isRough: fineness === ROUGH };
}

/** The same hose, fine; as it was where it cannot be had finer. */
export function refined(
  setting: RunSetting,
  candidate: Candidate,
  surroundings: Surroundings,
  watch: Watch,
): Candidate {
  if (!candidate.isRough) return candidate;
  const { shape, judgement: _, isRough: __, ...hose } = candidate;
  return judged(setting, hose, surroundings, watch, FINE, shape) ?? candidate;
}

/**
 * A hose already cut has its length; another gets its slack over taut, but for stretches that stay as they lie. A hose too
 * short for its place is shown taut.
 */
function wantedLiveMm(setting: RunSetting, route: Route, tautLiveMm: number, slack: number): number {
  const lyingMm = lockedLengthMm(route);
  if (setting.cutLengthMm === undefined) return lyingMm + (tautLiveMm - lyingMm) * (1 + slack);
  const sockets = setting.a.end.shoulderToMouthMm + setting.b.end.shoulderToMouthMm;
  return Math.max(setting.cutLengthMm - sockets, tautLiveMm);
}

/** The better of two candidates: less fault, then less regret, then less bending. */
export function betterOf(a: Candidate | undefined, b: Candidate | undefined): Candidate | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return isBetter(b, a) ? b : a;
}

/** A clamp more must take away half of the regret, or it is not worth having. */
const WORTH_A_CLAMP = 0.5;

/** The better of two candidates of which the second may have more clamps: they must be worth it where the first has no fault. */
export function worthAClamp(best: Candidate | undefined, more: Candidate | undefined): Candidate | undefined {
  if (best === undefined || more === undefined) return best ?? more;
  if (best.judgement.fault > 0 || more.clamps.length <= best.clamps.length) return betterOf(best, more);
  const isWorthIt = more.judgement.fault === 0 && more.judgement.regret <= WORTH_A_CLAMP * best.judgement.regret;
  return isWorthIt ? more : best;
}

function isBetter(a: Candidate, b: Candidate): boolean {
  if (a.judgement.fault !== b.judgement.fault) return a.judgement.fault < b.judgement.fault;
  if (a.judgement.regret !== b.judgement.regret) return a.judgement.regret < b.judgement.regret;
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
  const atMm = judgement.worstAtMm;
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
