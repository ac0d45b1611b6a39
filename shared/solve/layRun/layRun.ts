import { SAME_POINT_MM } from '../../base/tolerances.ts';
import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import type { Box } from '../../geometry/box.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { buildContactField } from '../bay/contactField.ts';
import { buildRunField, type RunField } from '../bay/runField.ts';
import { buildTubeField, type TubeField } from '../bay/tubeField.ts';
import { hasCharacter } from '../character/character.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import { breathe } from './breathe.ts';
import { type Breathing, breatheWell } from './breatheWell.ts';
import { layBundled } from './bundled.ts';
import { calmRoutes } from './calmRoutes.ts';
import { betterOf, type Candidate, findShape, worthAClamp } from './findShape.ts';
import { givenUpOf, withApart } from './givenUp.ts';
import { measureLay } from './measureLay.ts';
import { type NearLine, nearLineField } from './nearLine.ts';
import { reasonOf, shortByMm } from './reasonOf.ts';
import { withReserve } from './reserve.ts';
import { type Route, routeRun } from './routeRun.ts';
import { runKeeps, runSetting } from './runLimits.ts';
import { heldPlaces, type RunSetting } from './runSetting.ts';
import { brokenByShape } from './shapeLine.ts';
import { straightShape } from './straightShape.ts';

export interface LayContext {
  readonly project: Project;
  readonly bay: BayIndex;
  /** where it is given, routes are only looked for near a line, and quickly */
  readonly near?: NearLine;
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
const EVERYTHING: Attempt = { clearanceShare: 1, tailShare: 1 };
/** The least that can be asked without going through things. */
const LEAST: Attempt = { clearanceShare: 0, tailShare: 0, givesUpCharacter: true };
const BLIND: Attempt = { clearanceShare: 0, tailShare: 1, givesUpCharacter: true, blind: true };
const ATTEMPTS: readonly Attempt[] = [
  EVERYTHING,
  { clearanceShare: 1, tailShare: 0.5 },
  WITHOUT_CHARACTER,
  { clearanceShare: 0.5, tailShare: 1, givesUpCharacter: true },
  { clearanceShare: 0.2, tailShare: 0.5, givesUpCharacter: true },
  LEAST,
  BLIND,
];

/** How many ways round things are followed up. */
const WAYS = 3;
/** A relaxed hose bends tighter somewhere than the arcs it was led along; routes of a larger radius leave it room. */
const GENTLER = 1.3;
const GENTLEST = 1.6;

/**
 * Lays one run: global search between the ends, relaxation of the hose along each way found, proposed clamps where it
 * will not keep clear by itself, and the measured result. others: hoses that are already laid. Always answers a lay:
 * `laid` when radius and clearance are kept; `near-miss` with its reason when the best found breaks something;
 * `no-way` when only a hose through the bay could be shown. The same input gives the same lay on every host.
 */
export function layRun(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  return layWith(ATTEMPTS, context, resolved, others, watch);
}

/** As `layRun`, but no room is given up where the run does not lie clean: `near-miss` or `no-way` then, and much sooner. */
export function layAsAsked(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  return layWith([EVERYTHING, WITHOUT_CHARACTER], context, resolved, others, watch);
}

function layWith(
  attempts: readonly Attempt[],
  context: LayContext,
  resolved: ResolvedRun,
  others: TubeField,
  watch: Watch,
): Lay {
  const startedAt = watch.now();
  const setting = runSetting(context.project, resolved);
  const timingsMs = (): Record<string, number> => ({ lay: watch.now() - startedAt });
  const bundled = layBundled(context, setting, others, watch);
  if (bundled.kind === 'tied') return layOf(context, setting, others, bundled, EVERYTHING, watch, timingsMs);
  let best: { candidate: Candidate; attempt: Attempt } | undefined;
  let isShut = false;
  for (const [i, attempt] of attempts.entries()) {
    if (isShut && attempt !== BLIND) continue;
    if (attempt === WITHOUT_CHARACTER && !hasCharacter(setting.character)) continue;
    if (best !== undefined && attempt !== WITHOUT_CHARACTER) continue;
    const part = partOf(watch, i / attempts.length, (i + 1) / attempts.length);
    const candidate = tryAttempt(
      context,
      attempt.givesUpCharacter === true ? { ...setting, characterAsked: false } : setting,
      others,
      attempt,
      part,
    );
    // Where the least that can be asked finds no way, nothing between finds one.
    if (attempt === EVERYTHING && candidate === undefined && attempts.includes(LEAST))
      isShut = !hasAnyWay(context, setting, others, part);
    if (candidate === undefined) continue;
    if (best === undefined || candidate.judgement.fault < best.candidate.judgement.fault) best = { candidate, attempt };
    if (!mayGiveUpMore(setting, attempt, candidate)) break;
  }
  if (best === undefined) return layWithoutHose(context, setting, others, timingsMs());
  const isFull = best.candidate.judgement.fault === 0 && best.attempt.clearanceShare === 1;
  const breathed = isFull
    ? breatheWell(context, setting, best.candidate, others, contactOf(context.bay, others, setting), watch)
    : best;
  const lay = layOf(context, setting, others, breathed, best.attempt, watch, timingsMs);
  return bundled.kind === 'apart' ? withApart(lay, bundled.from) : lay;
}

/** Whether a search that asks the least finds any way at all. */
function hasAnyWay({ project, bay }: LayContext, setting: RunSetting, others: TubeField, watch: Watch): boolean {
  const skins = bay.skins.map((s) => s.skin);
  const field = withReserve(buildRunField(bay, others, runKeeps(project, setting, skins, LEAST.clearanceShare)));
  const asked = { ...setting, characterAsked: false };
  return (
    routeRun(asked, field, setting.minRadiusMm, LEAST.tailShare * setting.tailMm, 1, 'quick', watch).routes.length > 0
  );
}

/** What is answered where no hose can be shown at all. */
export function layWithoutHose(
  { project, bay }: LayContext,
  setting: RunSetting,
  others: TubeField,
  timingsMs: Record<string, number>,
): Lay {
  const shape = straightShape(setting);
  const measured = { project, setting, bay, others, shape, tautLiveMm: shape.liveLengthMm };
  return { ...measureLay({ ...measured, outcome: 'no-way', timingsMs }), reason: NO_HOSE };
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
  const everything: Attempt = { ...EVERYTHING, brief: true };
  const candidate = tryAttempt(context, setting, others, everything, watch);
  if (candidate === undefined || candidate.judgement.fault > 0) return undefined;
  const startedAt = watch.now();
  const lay = layOf(context, setting, others, { candidate }, everything, watch, () => ({
    lay: watch.now() - startedAt,
  }));
  return lay.outcome === 'laid' ? lay : undefined;
}

/** The lay of a hose that was made to keep all of its clearances and tails, whether it does or not. */
export function layOfShape(
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  candidate: Candidate,
  watch: Watch,
): Lay {
  const startedAt = watch.now();
  return layOf(context, setting, others, { candidate }, EVERYTHING, watch, () => ({ lay: watch.now() - startedAt }));
}

/** What is told of a candidate: measured, judged, and breathed where it is clean, if it was not before. */
function layOf(
  context: LayContext,
  setting: RunSetting,
  others: TubeField,
  { candidate, breathing: known }: Pick<Breathing, 'candidate'> & Partial<Breathing>,
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
  const { project, bay } = context;
  const breathing = known ?? breathe(project, setting, candidate, contactOf(bay, others, setting), bay, others, watch);
  return { ...told, breathing: [...breathing], timingsMs: timingsMs() };
}

/** What a run may come to lie against. */
export function contactOf(bay: BayIndex, others: TubeField, setting: RunSetting): ContactField {
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
  const room = blind ? judged : withReserve(field);
  const all = context.near === undefined ? room : nearLineField(room, context.near);
  const tailMm = setting.tailMm * attempt.tailShare;
  const led = isBarring(setting) ? roomWithoutCrest(setting, all, tailMm, watch) : all;
  if (led === undefined) return undefined;
  const effort = attempt !== EVERYTHING || context.near !== undefined ? 'quick' : 'normal';
  const sideRoutes = (radiusMm: number, part: Watch): readonly Route[] =>
    routeRun(setting, led, radiusMm, tailMm, WAYS, 'quick', part).routes;
  const shortest = routeRun(setting, led, setting.minRadiusMm, tailMm, 1, effort, partOf(watch, 0, 0.3)).routes;
  if (shortest.length === 0) return undefined;
  const contact = blind
    ? contactOf({ ...bay, skins: [] }, buildTubeField([]), setting)
    : contactOf(bay, others, setting);
  const surroundings = (known: readonly Route[]) => {
    return { field: judged, contact, tautLiveOf: (route: Route) => tautLiveMm(route, known) };
  };
  const lie = (routes: readonly Route[], known: readonly Route[], part: Watch): Candidate | undefined =>
    findShape(setting, routes, surroundings(known), part);
  const plainly = attempt.brief !== true && !blind;
  const along = findShape(setting, shortest, surroundings(shortest), partOf(watch, 0.3, 0.4), plainly);
  if (along?.judgement.content === true || attempt.brief === true) return along;
  if (along?.judgement.fault === 0) {
    // Only what the service wishes for is missing: a few other routes are tried, not every side of everything.
    const mostMm = LONGEST_DETOUR * along.route.lengthMm;
    const room = { ...led, bounds: reachOf(setting, led.bounds, mostMm) };
    const near = (routes: readonly Route[]): Route[] => routes.filter((r) => r.lengthMm <= mostMm);
    const gentler = wishedRadii(setting).flatMap(
      (radiusMm) => routeRun(setting, room, radiusMm, tailMm, 1, 'quick', partOf(watch, 0.4, 0.6)).routes,
    );
    const wished = betterOf(along, lie(near(gentler), shortest, partOf(watch, 0.6, 0.8)));
    const held = wished?.judgement.content === true ? [] : near(calmRoutes(setting, room, tailMm, watch));
    return worthAClamp(wished, lie(held, held, partOf(watch, 0.8, 1)));
  }
  const close = sideRoutes(setting.minRadiusMm, partOf(watch, 0.4, 0.6));
  const gentle = sideRoutes(setting.minRadiusMm * GENTLER, partOf(watch, 0.6, 0.8));
  const sides = [...shortest, ...close];
  const best = betterOf(along, lie([...sides, ...gentle], sides, partOf(watch, 0.8, 0.9)));
  if (best?.judgement.fault === 0) return best;
  const gentlest = sideRoutes(setting.minRadiusMm * GENTLEST, partOf(watch, 0.9, 0.95));
  return betterOf(best, lie(gentlest, sides, partOf(watch, 0.95, 1)));
}

/** Where a service bars most ways, whether there is any is found out before time is spent on the shortest. */
function isBarring({ character: { crest }, characterAsked }: RunSetting): boolean {
  return characterAsked && crest !== undefined && !crest.forced;
}

/** What a service wishes for may make a hose so many times as long: rather than more of it a builder fits a bleed. */
const LONGEST_DETOUR = 1.5;

/**
 * The field with its room cut down to what a hose can reach that is not longer than LONGEST_DETOUR allows; nothing where
 * there is no way without a crest in it, as far as a glance sees.
 */
function roomWithoutCrest(setting: RunSetting, field: RunField, tailMm: number, watch: Watch): RunField | undefined {
  const glance = (asked: boolean, room: RunField): Route | undefined =>
    routeRun({ ...setting, characterAsked: asked }, room, setting.minRadiusMm, tailMm, 1, 'glance', watch).routes[0];
  const free = glance(false, field);
  if (free === undefined) return undefined;
  const mostMm = LONGEST_DETOUR * (free.lengthMm + free.tailMm.a + free.tailMm.b);
  const room = { ...field, bounds: reachOf(setting, field.bounds, mostMm) };
  const kept = glance(true, room);
  return kept !== undefined && kept.lengthMm <= mostMm ? room : undefined;
}

/** The part of a box that a hose of this length from port to port can reach. */
function reachOf(setting: RunSetting, { min, max }: Box, lengthMm: number): Box {
  const places = [setting.a, setting.b].map(({ port, end }) => ({
    at: port.seatPoint,
    far: lengthMm / 2 + end.seatToBendMm + end.bendToShoulderMm + end.shoulderToMouthMm,
  }));
  const low = (k: 0 | 1 | 2): number => Math.max(min[k], Math.min(...places.map((p) => p.at[k] - p.far)));
  const high = (k: 0 | 1 | 2): number => Math.min(max[k], Math.max(...places.map((p) => p.at[k] + p.far)));
  return { min: [low(0), low(1), low(2)], max: [high(0), high(1), high(2)] };
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

function emptyField(field: RunField): RunField {
  return { ...field, coarseMarginMm: () => CLEAR_MM, marginMm: () => CLEAR_MM };
}
