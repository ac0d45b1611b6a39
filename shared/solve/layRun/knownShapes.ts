import type { Hose, Look } from './candidate.ts';
import type { Judgement } from './judgeShape.ts';
import type { Shape } from './relaxRoute.ts';
import type { Route } from './routeRun.ts';

/** A hose that was let lie, and how it stands. */
export interface Lain {
  readonly shape: Shape;
  readonly judgement: Judgement;
}

/** How hoses of one run came to lie in the same surroundings, so that none is let lie twice: the same routes are followed up with growing freedom. */
export class KnownShapes {
  private readonly byRoute = new Map<Route, Map<string, Lain | undefined>>();

  /** How this hose lies; nothing where it cannot. lay: finds out, if it is not known. */
  of({ route, liveMm, clamps, freeClocks }: Hose, look: Look, lay: () => Lain | undefined): Lain | undefined {
    const ofRoute = this.byRoute.get(route) ?? new Map<string, Lain | undefined>();
    this.byRoute.set(route, ofRoute);
    const hose = [
      liveMm,
      freeClocks,
      look,
      ...clamps.map((c) => (c.held === undefined ? c.alongMm : `held ${c.alongMm}`)),
    ].join(' ');
    if (!ofRoute.has(hose)) ofRoute.set(hose, lay());
    return ofRoute.get(hose);
  }
}
