import { partOf, type Watch } from '../../base/watch.ts';
import type { AttemptRoom } from './attemptRoom.ts';
import type { Attempt } from './attempts.ts';
import type { Candidate } from './candidate.ts';
import { distinctRoutes } from './distinctRoutes.ts';
import { findAsWished } from './findAsWished.ts';
import type { Route } from './routeRun.ts';

/** How many ways round things are followed up. */
const WAYS = 3;
/** A relaxed hose bends tighter somewhere than the arcs it was led along; routes of a larger radius leave it room. */
const GENTLER = 1.3;
const GENTLEST = 1.6;

/**
 * The hoses of one attempt in the order in which they are looked for, each only once it is asked for: along the shortest way, and where that
 * lies clean but not as its service wishes the best of a few others; along gentler ways; on other sides of things. None where no way was found.
 */
export function* hosesInTurn(
  room: AttemptRoom,
  attempt: Attempt,
  isNearALine: boolean,
  watch: Watch,
): Generator<Candidate | undefined> {
  const effort = attempt.thorough === true && !isNearALine ? 'normal' : 'quick';
  const shortest = room.routes(room.setting.minRadiusMm, 1, effort, partOf(watch, 0, 0.3));
  if (shortest.length === 0) return;
  const isQuickLook = attempt.brief === true || attempt.blind === true;
  const along = room.lie(shortest, shortest, partOf(watch, 0.3, 0.4), isQuickLook ? 'all' : 'plain');
  const isWished = attempt.brief === true || along?.judgement.content === true || along?.judgement.fault !== 0;
  yield isWished ? along : findAsWished(room, along, shortest, partOf(watch, 0.4, 0.6));
  if (attempt.brief === true) return;
  yield* beside(room, shortest, partOf(watch, 0.6, 0.7));
  if (attempt.keepsItsSides !== true) yield* onOtherSides(room, shortest, partOf(watch, 0.7, 1));
}

/** Gentler ways, which leave a hose room and mostly go the same sides as the shortest, with clamps where it needs them. */
function* beside(room: AttemptRoom, shortest: readonly Route[], watch: Watch): Generator<Candidate | undefined> {
  const routes = [...shortest];
  for (const [i, times] of [GENTLER, GENTLEST].entries()) {
    const part = partOf(watch, 0.5 * i, 0.5 * (i + 1));
    const gentle = room.routes(room.setting.minRadiusMm * times, 1, 'unkicked', partOf(part, 0, 0.4));
    routes.push(...gentle);
    yield room.lie(gentle, shortest, partOf(part, 0.4, 0.6), 'plain');
    yield room.lie(routes, shortest, partOf(part, 0.6, 1), 'snug');
  }
}

/** Gentler ways and those on other sides of things. */
function* onOtherSides(room: AttemptRoom, shortest: readonly Route[], watch: Watch): Generator<Candidate | undefined> {
  const { minRadiusMm } = room.setting;
  const sideRoutes = (radiusMm: number, part: Watch): readonly Route[] =>
    room.routes(radiusMm, WAYS, radiusMm > minRadiusMm ? 'unkicked' : 'quick', part);
  const close = sideRoutes(minRadiusMm, partOf(watch, 0, 0.2));
  const gentle = sideRoutes(minRadiusMm * GENTLER, partOf(watch, 0.2, 0.6));
  // The close routes are looked for anew: mostly the first of them is the shortest again.
  const sides = distinctRoutes([...shortest, ...close], room.led);
  yield room.lie([...sides, ...gentle], sides, partOf(watch, 0.6, 0.8));
  const gentlest = sideRoutes(minRadiusMm * GENTLEST, partOf(watch, 0.8, 0.9));
  yield room.lie(gentlest, sides, partOf(watch, 0.9, 1));
}
