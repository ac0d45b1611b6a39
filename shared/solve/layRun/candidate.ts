import type { Judgement } from './judgeShape.ts';
import type { Shape } from './relaxRoute.ts';
import type { Route } from './routeRun.ts';
import type { ProposedClamp } from './spans.ts';

/** A hose to be let lie along a route. */
export interface Hose {
  readonly route: Route;
  /** live length of the shortest lay on this side of things, mm */
  readonly tautLiveMm: number;
  readonly clamps: readonly ProposedClamp[];
  /** mouth to mouth, as wanted, mm */
  readonly liveMm: number;
  /** whether swivel ends went on turning as the hose relaxed */
  readonly freeClocks: boolean;
}

/** A hose with its shape and how it stands. */
export interface Candidate extends Hose {
  readonly shape: Shape;
  readonly judgement: Judgement;
  readonly look: Look;
}

/**
 * How closely a shape was looked at: `free` roughly, and as if there were nothing to lie against; `rough` roughly; `fine` as it
 * is told. Where what a hose touches is too near anyway, a free look tells a good shape from bad ones in a fraction of the time,
 * and shows better where a clamp is missing: a hose that lies against something is as near to it all along.
 */
export type Look = 'free' | 'rough' | 'fine';

/** mm of fault. A shape that is so bad roughly is not made good by looking finely. */
export const FAR_FROM_CLEAN_MM = 2;

export function isFarFromClean({ judgement }: Candidate): boolean {
  return judgement.fault > FAR_FROM_CLEAN_MM;
}

/** The better of two candidates: less fault, then less regret, then less bending. */
export function betterOf(a: Candidate | undefined, b: Candidate | undefined): Candidate | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return isBetter(b, a) ? b : a;
}

/** A clamp more must take away half of the regret, or of what a hose lacks that is not clean with it, or it is not worth having. */
const WORTH_A_CLAMP = 0.5;

/** The better of two candidates of which the second may have more clamps: they must be worth it. */
export function worthAClamp(best: Candidate | undefined, more: Candidate | undefined): Candidate | undefined {
  if (best === undefined || more === undefined) return best ?? more;
  if (more.clamps.length <= best.clamps.length) return betterOf(best, more);
  const [had, has] = [best.judgement, more.judgement];
  const isWorthIt =
    had.fault > 0
      ? has.fault <= WORTH_A_CLAMP * had.fault
      : has.fault === 0 && has.regret <= WORTH_A_CLAMP * had.regret;
  return isWorthIt ? more : best;
}

function isBetter(a: Candidate, b: Candidate): boolean {
  if (a.judgement.fault !== b.judgement.fault) return a.judgement.fault < b.judgement.fault;
  if (a.judgement.regret !== b.judgement.regret) return a.judgement.regret < b.judgement.regret;
  return a.shape.energyNmm < b.shape.energyNmm;
}
