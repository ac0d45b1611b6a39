import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { RunField } from '../bay/runField.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import { betterOf, type Candidate, FAR_FROM_CLEAN_MM, type Hose, isFarFromClean, type Look } from './candidate.ts';
import { judgeShape } from './judgeShape.ts';
import type { KnownShapes, Lain } from './knownShapes.ts';
import { leanClamps } from './leanClamps.ts';
import { liesAlongRoute } from './liesAlongRoute.ts';
import { relaxRoute, type Shape } from './relaxRoute.ts';
import { FINE, ROUGH } from './relaxSpan.ts';
import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';
import { lockedLengthMm, type ProposedClamp } from './spans.ts';

/** What a hose is let lie in. */
export interface Lying {
  /** what the shape is judged against */
  readonly field: RunField;
  /** what the hose may come to lie against */
  readonly contact: ContactField;
  /** hoses of this run that were let lie here before; absent = none are kept */
  readonly known?: KnownShapes;
}

/** The same with what tells which hoses are tried. */
export interface Surroundings extends Lying {
  /** live length of the shortest lay on a route's side of things, mm */
  tautLiveOf(route: Route): number;
  /** the shortest route known, which tells whether there is room to lie but in a bend; absent = the first of those tried */
  readonly shortest?: Route;
  /** what it leans on that is to keep clear of everything by what is asked; absent = such a hose is not looked for */
  readonly kept?: ContactField;
  /** whether a hose that touches something may still be clear of it by all that is asked */
  readonly mayTouch: boolean;
}

/**
 * The same for a run with a stretch that stays as it lies: that has its slack in it already, and the rest may have no room
 * for more. The slack check tells what it comes to.
 */
const LESS_SLACK = [-0.02, -0.035, -0.045] as const;

/** The hose that lies best along one route with these clamps, over the slacks to be tried, its swivel ends free and held. */
export function bestOfRoute(
  setting: RunSetting,
  route: Route,
  clamps: readonly ProposedClamp[],
  slackSteps: readonly number[],
  surroundings: Surroundings,
  watch: Watch,
): Candidate | undefined {
  return bestOver(setting, route, slackSteps, surroundings, watch, () => clamps);
}

/** The same with clamps where a hose that is to keep clear would lean, for each slack its own. */
export function bestHeldOfRoute(
  setting: RunSetting,
  route: Route,
  slackSteps: readonly number[],
  surroundings: Surroundings,
  watch: Watch,
): Candidate | undefined {
  const { kept, known } = surroundings;
  if (kept === undefined) return undefined;
  return bestOver(setting, route, slackSteps, surroundings, watch, (hose) => {
    const find = (): readonly ProposedClamp[] | undefined => leanClamps(setting, hose, kept, watch);
    return known === undefined ? find() : known.leanClamps.of(route, `${hose.liveMm} ${hose.freeClocks}`, find);
  });
}

function bestOver(
  setting: RunSetting,
  route: Route,
  slackSteps: readonly number[],
  surroundings: Surroundings,
  watch: Watch,
  clampsFor: (hose: Omit<Hose, 'clamps'>) => readonly ProposedClamp[] | undefined,
): Candidate | undefined {
  let best: Candidate | undefined;
  const tautLiveMm = surroundings.tautLiveOf(route);
  const freedoms = setting.a.turns || setting.b.turns ? [true, false] : [false];
  const less = lockedLengthMm(route) > 0 ? LESS_SLACK : [];
  const steps = [...slackSteps, ...less].filter((step) => setting.slack + step >= 0);
  let isFull = false;
  for (const step of setting.cutLengthMm === undefined ? steps : [0]) {
    // More hose would lie nearer still; less may lie well.
    if (isFull && step >= 0) continue;
    for (const freeClocks of freedoms) {
      stopIfCancelled(watch);
      const liveMm = wantedLiveMm(setting, route, tautLiveMm, setting.slack + step);
      const hose = { route, liveMm, tautLiveMm, freeClocks };
      const clamps = clampsFor(hose);
      if (clamps === undefined) continue;
      const first = letLie(setting, { ...hose, clamps }, surroundings, watch);
      if (first === undefined || isFarFromClean(first)) best = betterOf(best, first);
      else best = betterOf(best, refined(setting, first, surroundings, watch));
    }
    if (best?.judgement.content === true || (step < 0 && best?.judgement.fault === 0)) return best;
    isFull ||= best !== undefined && isCrowded(setting, best);
  }
  return best;
}

/** Whether a hose is bent no tighter than it may be and lies far too near to something: more of it would lie nearer still. */
export function isCrowded({ minRadiusMm }: RunSetting, { judgement }: Candidate): boolean {
  return judgement.radiusMm >= minRadiusMm && judgement.marginMm < -FAR_FROM_CLEAN_MM;
}

function judged(
  setting: RunSetting,
  hose: Hose,
  surroundings: Lying,
  watch: Watch,
  look: Look,
  from?: Shape,
): Candidate | undefined {
  const { route, liveMm, clamps, freeClocks } = hose;
  const { field, known } = surroundings;
  const contact = look === 'free' ? undefined : surroundings.contact;
  const fineness = look === 'fine' ? FINE : ROUGH;
  const lain = (): Lain | undefined => {
    const shape = relaxRoute(setting, route, liveMm, clamps, freeClocks, contact, watch, fineness, from);
    return shape && { shape, judgement: judgeShape(setting, shape, field) };
  };
  const places = clamps.map((c) => (c.held === undefined ? c.alongMm : `held ${c.alongMm}`));
  const found =
    known === undefined ? lain() : known.lain.of(route, [liveMm, freeClocks, look, ...places].join(' '), lain);
  return found && { ...hose, ...found, look };
}

/**
 * A hose looked at roughly: free of things where that shows how it stands, else as it lies against them. One that is far from clean so
 * is not made clean by what it would lie against, which it then touches.
 */
function letLie(setting: RunSetting, hose: Hose, surroundings: Surroundings, watch: Watch): Candidate | undefined {
  const against = (): Candidate | undefined => judged(setting, hose, surroundings, watch, 'rough');
  if (surroundings.mayTouch) return against();
  const free = judged(setting, hose, surroundings, watch, 'free');
  if (free === undefined || isFarFromClean(free)) return free;
  return liesAlongRoute(setting, hose.route, free.shape, surroundings.field) ? free : against();
}

/** The same hose, fine; as it was where it cannot be had finer. One that went through things is let lie against them first. */
export function refined(setting: RunSetting, candidate: Candidate, surroundings: Lying, watch: Watch): Candidate {
  const { shape: _, judgement: __, look, ...hose } = candidate;
  if (look === 'fine') return candidate;
  const isThrough = look === 'free' && isFarFromClean(candidate);
  const lain = isThrough ? (judged(setting, hose, surroundings, watch, 'rough') ?? candidate) : candidate;
  return judged(setting, hose, surroundings, watch, 'fine', lain.shape) ?? lain;
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
