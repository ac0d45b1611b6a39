import type { Judgement } from './judgeShape.ts';
import type { Shape } from './relaxRoute.ts';
import type { Route } from './routeRun.ts';
import type { ProposedClamp } from './spans.ts';

/** A hose that was let lie, and how it stands. */
export interface Lain {
  readonly shape: Shape;
  readonly judgement: Judgement;
}

/** What was found out of routes before: the same routes are followed up with growing freedom, and nothing is let lie twice. */
class KnownOfRoutes<T> {
  private readonly byRoute = new Map<Route, Map<string, T>>();

  /** What is known of the route under a name; find: finds it out, if it is not. */
  of(route: Route, name: string, find: () => T): T {
    const ofRoute = this.byRoute.get(route) ?? new Map<string, T>();
    this.byRoute.set(route, ofRoute);
    const known = ofRoute.has(name) ? (ofRoute.get(name) as T) : find();
    ofRoute.set(name, known);
    return known;
  }
}

/** How hoses of one run came to lie in the same surroundings. Nothing where one cannot, or has nowhere to be held. */
export class KnownShapes {
  readonly lain = new KnownOfRoutes<Lain | undefined>();
  readonly leanClamps = new KnownOfRoutes<readonly ProposedClamp[] | undefined>();
}
