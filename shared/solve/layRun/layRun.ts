import { SAME_POINT_MM } from '../../base/tolerances.ts';
import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { buildContactField } from '../bay/contactField.ts';
import { buildRunField, type RunField } from '../bay/runField.ts';
import { buildTubeField, type TubeField } from '../bay/tubeField.ts';
import { hasCharacter } from '../character/character.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import { breathe } from './breathe.ts';
import { betterOf, type Candidate, findShape } from './findShape.ts';
import { givenUpOf } from './givenUp.ts';
import { measureLay } from './measureLay.ts';
import { reasonOf, shortByMm } from './reasonOf.ts';
import { type Route, routeRun } from './routeRun.ts';
import { runKeeps, runSetting } from './runLimits.ts';
import { heldPlaces, type RunSetting } from './runSetting.ts';
import { brokenByShape } from './shapeLine.ts';
import { straightShape } from './straightShape.ts';

export interface LayContext {
  readonly project: Project;
  readonly bay: BayIndex;
}

/**
 * One attempt: how much of each clearance and of the straight tails is asked. The first asks for all. Later ones give
 * up tail, then what the service asks of the shape, then clearance, to find the lay that breaks least; the last looks through everything, only
 * to have a hose to show.
 */
interface Attempt {
  readonly clearanceShare: number;
  readonly tailShare: number;
  readonly blind?: boolean;
  /** true = what the service asks of the shape (a drain's fall, no high point, no tight bend at a pump) is given up */
  readonly givesUpCharacter?: boolean;
  /** true = only the shortest way, quickly: for trying many things one after the other */
  readonly brief?: boolean;
}
/** Only where the service asks something of the shape: all of the rest is kept before any clearance is given up. */
const WITHOUT_CHARACTER: Attempt = { clearanceShare: 1, tailShare: 1, givesUpCharacter: true };
const ATTEMPTS: readonly Attempt[] = [
  { clearanceShare: 1, tailShare: 1 },
  { clearanceShare: 1, tailShare: 0.5 },
  WITHOUT_CHARACTER,
  { clearanceShare: 0.5, tailShare: 1, givesUpCharacter: true },
  { clearanceShare: 0.2, tailShare: 0.5, givesUpCharacter: true },
  { clearanceShare: 0, tailShare: 0, givesUpCharacter: true },
  { clearanceShare: 0, tailShare: 1, givesUpCharacter: true, blind: true },
];

/** How many ways round things are followed up. */
const WAYS = 3;
/** A relaxed hose bends tighter somewhere than the arcs it was led along; routes of a larger radius leave it room. */
const GENTLER = 1.3;

/**
 * Lays one run: global search between the ends, relaxation of the hose along each way found, proposed clamps where it
 * will not keep clear by itself, and the measured result. others: hoses that are already laid. Always answers a lay:
 * `laid` when radius and clearance are kept; `near-miss` with its reason when the best found breaks something;
 * `no-way` when only a hose through the bay could be shown. The same input gives the same lay on every host.
 */
export function layRun(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  const startedAt = watch.now();
  const setting = runSetting(context.project, resolved);
  let best: { candidate: Candidate; attempt: Attempt } | undefined;
  for (const [i, attempt] of ATTEMPTS.entries()) {
    if (attempt === WITHOUT_CHARACTER && !hasCharacter(setting.character)) continue;
    if (best !== undefined && attempt !== WITHOUT_CHARACTER) continue;
    const part = partOf(watch, i / ATTEMPTS.length, (i + 1) / ATTEMPTS.length);
    const candidate = tryAttempt(
      context,
      attempt.givesUpCharacter === true ? { ...setting, characterAsked: false } : setting,
      others,
      attempt,
      part,
    );
    if (candidate === undefined) continue;
    if (best === undefined || candidate.judgement.fault < best.candidate.judgement.fault) best = { candidate, attempt };
    if (!mayGiveUpMore(setting, attempt, candidate)) break;
  }
  const timingsMs = (): Record<string, number> => ({ lay: watch.now() - startedAt });
  const measured = { project: context.project, setting, bay: context.bay, others };
  if (best === undefined) {
    const shape = straightShape(setting);
    const lay = measureLay({
      ...measured,
      shape,
      tautLiveMm: shape.liveLengthMm,
      outcome: 'no-way',
      timingsMs: timingsMs(),
    });
    return { ...lay, reason: NO_HOSE };
  }
  return layOf(context, setting, others, best.candidate, best.attempt, watch, timingsMs);
}

/** A hose whose radius or clearance suffers under what its service asks may be better without; a drain is not. */
function mayGiveUpMore({ character }: RunSetting, attempt: Attempt, { judgement }: Candidate): boolean {
  const asks = attempt.givesUpCharacter !== true && hasCharacter(character) && character.fall === undefined;
  return asks && judgement.fault > 0;
}

/** As `layRun`, but only if the run lies clean with all of its clearances and tails: undefined otherwise, and sooner. */
export function layIfClean(
  context: LayContext,
  resolved: ResolvedRun,
  others: TubeField,
  watch: Watch,
): Lay | undefined {
  const setting = runSetting(context.project, resolved);
  const everything: Attempt = { clearanceShare: 1, tailShare: 1, brief: true };
  const candidate = tryAttempt(context, setting, others, everything, watch);
  if (candidate === undefined || candidate.judgement.fault > 0) return undefined;
  const startedAt = watch.now();
  const lay = layOf(context, setting, others, candidate, everything, watch, () => ({ lay: watch.now() - startedAt }));
  return lay.outcome === 'laid' ? lay : undefined;
}

/** What is told of a candidate: measured, judged, and breathed where it is clean. */
function layOf(
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  candidate: Candidate,
  attempt: Attempt,
  watch: Watch,
  timingsMs: () => Record<string, number>,
): Lay {
  const measured = { project: context.project, setting, bay: context.bay, others };
  const tooShort = shortByMm(setting, candidate.tautLiveMm) > SAME_POINT_MM;
  const broken = brokenByShape(setting, candidate.shape);
  const climbs = broken.some((b) => b.wish === 'fall');
  const clean = candidate.judgement.fault === 0 && attempt.clearanceShare === 1 && !climbs && !tooShort;
  const lay = measureLay({
    ...measured,
    shape: candidate.shape,
    tautLiveMm: candidate.tautLiveMm,
    outcome: clean ? 'laid' : attempt.blind === true ? 'no-way' : 'near-miss',
    timingsMs: timingsMs(),
  });
  const givenUp = givenUpOf(setting, broken);
  const told = givenUp.length === 0 ? lay : { ...lay, givenUp };
  if (!clean) return { ...told, reason: reasonOf(lay, candidate, setting) };
  const contact = contactOf(context.bay, others, setting);
  const breathing = breathe(context.project, setting, candidate, contact, context.bay, others, watch);
  return { ...told, breathing, timingsMs: timingsMs() };
}

function contactOf(bay: BayIndex, others: TubeField, setting: RunSetting): ContactField {
  return buildContactField(bay, others, setting.outsideRadiusMm, heldPlaces(setting));
}

const NO_HOSE =
  'no hose of this bend radius joins the two ends as they stand: the straight line between them is shown only to find the run';

function tryAttempt(
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  attempt: Attempt,
  watch: Watch,
): Candidate | undefined {
  const { bay, project } = context;
  const skins = bay.skins.map((s) => s.skin);
  const keeps = runKeeps(project, setting, skins, attempt.clearanceShare);
  const blind = attempt.blind === true;
  const field = buildRunField(bay, others, keeps);
  const judged = blind ? emptyField(field) : field;
  const led = blind ? judged : withReserve(field, ROUTE_RESERVE_MM);
  const tailMm = setting.tailMm * attempt.tailShare;
  const routesOf = (radiusMm: number, count: number, part: Watch): readonly Route[] =>
    routeRun(setting, led, radiusMm, tailMm, count, attempt.brief === true ? 'quick' : 'normal', part).routes;
  const shortest = routesOf(setting.minRadiusMm, 1, partOf(watch, 0, 0.3));
  if (shortest.length === 0) return undefined;
  const contact = blind
    ? contactOf({ ...bay, skins: [] }, buildTubeField([]), setting)
    : contactOf(bay, others, setting);
  const lie = (routes: readonly Route[], known: readonly Route[], part: Watch): Candidate | undefined =>
    findShape(setting, routes, { field: judged, contact, tautLiveOf: (route) => tautLiveMm(route, known) }, part);
  const along = lie(shortest, shortest, partOf(watch, 0.3, 0.4));
  if (along?.judgement.content === true || attempt.brief === true) return along;
  if (along?.judgement.fault === 0) {
    // Only what the service wishes for is missing: a few gentler routes are tried, not every side of everything.
    const wished = wishedRadii(setting).flatMap((radiusMm) => routesOf(radiusMm, 1, partOf(watch, 0.4, 0.7)));
    return betterOf(along, lie(wished, shortest, partOf(watch, 0.7, 1)));
  }
  const close = routesOf(setting.minRadiusMm, WAYS, partOf(watch, 0.4, 0.6));
  const gentle = routesOf(setting.minRadiusMm * GENTLER, WAYS, partOf(watch, 0.6, 0.8));
  return betterOf(along, lie([...close, ...gentle], close, partOf(watch, 0.8, 1)));
}

/** Radii of the routes that are tried when a hose lies clean but not as its service wishes. */
function wishedRadii({ minRadiusMm, character: { calm } }: RunSetting): number[] {
  const wanted = Math.max(minRadiusMm, calm?.radiusMm ?? 0) * GENTLER;
  return [wanted, wanted * GENTLER];
}

/**
 * Live length of the shortest lay on this route's side of things. A gentler route is measured against the longest close
 * route that is not longer than itself: the one on its own side, if there are several.
 */
function tautLiveMm(route: Route, close: readonly Route[]): number {
  const lengths = close.map((r) => r.lengthMm + r.tailMm.a + r.tailMm.b).sort((a, b) => a - b);
  const own = route.lengthMm + route.tailMm.a + route.tailMm.b;
  return lengths.filter((l) => l <= own).at(-1) ?? own;
}

/** mm. Margin everywhere when nothing is in the way. */
const CLEAR_MM = 1e6;

/** mm. Routes keep this much more than is asked, so that a clamp put on a route does not stand at the very limit. */
const ROUTE_RESERVE_MM = 0.5;

function withReserve(field: RunField, reserveMm: number): RunField {
  return {
    ...field,
    coarseMarginMm: (x, y, z) => field.coarseMarginMm(x, y, z) - reserveMm,
    marginMm: (x, y, z, upToMm) => field.marginMm(x, y, z, upToMm + reserveMm) - reserveMm,
  };
}

function emptyField(field: RunField): RunField {
  return { ...field, coarseMarginMm: () => CLEAR_MM, marginMm: () => CLEAR_MM };
}
