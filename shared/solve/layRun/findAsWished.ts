import { partOf, type Watch } from '../../base/watch.ts';
import type { AttemptRoom } from './attemptRoom.ts';
import { calmRoutes } from './calmRoutes.ts';
import { betterOf, type Candidate, worthAClamp } from './candidate.ts';
import { LONGEST_DETOUR, roomInReach } from './detour.ts';
import { type Route, routeRun } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';

/** Radii of the routes tried, each over the one before: the first over the radius that is wished for. */
const GENTLER = 1.3;

/**
 * A hose that lies clean but not as its service wishes, or a better one: a few gentler routes are tried, and those that hold a
 * suction hose straight before its pump, none longer than LONGEST_DETOUR allows; not every side of everything.
 */
export function findAsWished(
  { setting, led, tailMm, lie }: AttemptRoom,
  along: Candidate,
  shortest: readonly Route[],
  watch: Watch,
): Candidate | undefined {
  const mostMm = LONGEST_DETOUR * along.route.lengthMm;
  const room = roomInReach(setting, led, mostMm);
  const near = (routes: readonly Route[]): Route[] => routes.filter((r) => r.lengthMm <= mostMm);
  const gentler = wishedRadii(setting).flatMap(
    (radiusMm) => routeRun(setting, room, radiusMm, tailMm, 1, 'quick', partOf(watch, 0, 0.4)).routes,
  );
  const wished = betterOf(along, lie(near(gentler), shortest, partOf(watch, 0.4, 0.7)));
  const held = wished?.judgement.content === true ? [] : near(calmRoutes(setting, room, tailMm, watch));
  return worthAClamp(wished, lie(held, held, partOf(watch, 0.7, 1)));
}

function wishedRadii({ minRadiusMm, character: { calm } }: RunSetting): number[] {
  const wanted = Math.max(minRadiusMm, calm?.radiusMm ?? 0) * GENTLER;
  return [wanted, wanted * GENTLER];
}
