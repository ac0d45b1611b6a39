import type { Watch } from '../../base/watch.ts';
import type { RunField } from '../bay/runField.ts';
import { buildTubeField, type TubeField } from '../bay/tubeField.ts';
import { withMargins } from '../search/changedField.ts';
import type { Effort } from '../search/problem.ts';
import type { Attempt } from './attempts.ts';
import type { Candidate } from './candidate.ts';
import { contactOfRun, keptOfRun } from './contactOfRun.ts';
import { type FieldsOfRun, fieldsOfRun } from './fieldOfRun.ts';
import { findShape, type TrialRange } from './findShape.ts';
import { KnownShapes } from './knownShapes.ts';
import type { LayContext } from './layContext.ts';
import { refined } from './letLie.ts';
import { nearLineField } from './nearLine.ts';
import { barsMostWays, roomWithoutCrest } from './roomWithoutCrest.ts';
import { type Route, routeRun } from './routeRun.ts';
import { mayTouchAnything } from './runLimits.ts';
import type { RunSetting } from './runSetting.ts';
import { liveMmOf, tautLiveMm } from './tautLiveMm.ts';
import { type ClampedIn, throughClamps } from './throughClamps.ts';

/** What one attempt at a run works in: where its routes are led, and how a hose is let lie along them. */
export interface AttemptRoom {
  readonly setting: RunSetting;
  /** where routes may run, with a little in hand */
  readonly led: RunField;
  /** straight hose asked beyond both mouths, mm */
  readonly tailMm: number;
  /** up to `count` routes of at least this radius, mm */
  routes(radiusMm: number, count: number, effort: Effort, watch: Watch): readonly Route[];
  /** the hose that lies best along one of the routes; close: the shortest routes known, which tell what is taut */
  lie(routes: readonly Route[], close: readonly Route[], watch: Watch, range?: TrialRange): Candidate | undefined;
  /** the same hose finely */
  fine(candidate: Candidate, watch: Watch): Candidate;
  /** the hose as it is told: finely, its slack over the way through the clamps that are proposed for it (`throughClamps`) */
  told(candidate: Candidate, watch: Watch): Candidate;
}

/** Opens the room of an attempt; nothing where a glance tells that the service bars every way. */
export function openAttempt(
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  attempt: Attempt,
  watch: Watch,
  fields: FieldsOfRun = fieldsOfRun(context, setting, others),
): AttemptRoom | undefined {
  const blind = attempt.blind === true;
  const { asked, led: ledIn } = fields(attempt.clearanceShare);
  const field = blind ? emptyField(asked) : asked;
  const room = blind ? field : ledIn;
  const all = context.near === undefined ? room : nearLineField(room, context.near);
  const tailMm = setting.tailMm * attempt.tailShare;
  const led = barsMostWays(setting) ? roomWithoutCrest(setting, all, tailMm, watch) : all;
  if (led === undefined) return undefined;
  const known = new KnownShapes();
  // Near a line the hose is to stay where it was seen: as it came to lie there, against whatever it meets.
  const mayTouch = attempt.clearanceShare === 0 || context.near !== undefined || mayTouchAnything(context, setting);
  const kept = mayTouch || blind ? {} : { kept: keptOfRun(context, setting, others, attempt.clearanceShare) };
  const contact = blind
    ? contactOfRun({ ...context.bay, skins: [] }, buildTubeField([]), setting)
    : contactOfRun(context.bay, others, setting);
  const surroundings = { field, contact, ...kept, known, mayTouch };
  const opened: Omit<AttemptRoom, 'told'> = {
    setting,
    led,
    tailMm,
    routes: (radiusMm, count, effort, part) => routeRun(setting, led, radiusMm, tailMm, count, effort, part).routes,
    lie: (routes, close, part, range) => {
      const taut = new Map(routes.map((route) => [route, tautLiveMm(setting, route, close, led, part)]));
      const tautLiveOf = (route: Route): number => taut.get(route) ?? liveMmOf(route);
      const [shortest] = close;
      const tried = { ...surroundings, tautLiveOf, ...(shortest && { shortest }) };
      return findShape(setting, routes, tried, part, range);
    },
    fine: (candidate, part) => refined(setting, candidate, surroundings, part),
  };
  return {
    ...opened,
    told: (candidate, part) => {
      const lie: ClampedIn['lie'] = (route, range) => opened.lie([route], [route], part, range);
      const among = { setting, field, lie, fine: (c: Candidate) => opened.fine(c, part) };
      return throughClamps(among, opened.fine(candidate, part), part);
    },
  };
}

/** mm. Margin everywhere when nothing is in the way. */
const CLEAR_MM = 1e6;

function clearMm(): number {
  return CLEAR_MM;
}

function emptyField(field: RunField): RunField {
  return withMargins(field, { coarseMarginMm: clearMm, mostMarginMm: clearMm, marginMm: clearMm });
}
