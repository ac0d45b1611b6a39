import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import { buildTubeField, type TubeField } from '../bay/tubeField.ts';
import { clearanceToRun } from './clearanceToRun.ts';
import { type LayContext, layAsAsked, layRun } from './layRun.ts';
import { runSetting } from './runLimits.ts';
import { tubesOfLay } from './tubesOfLay.ts';

/** How often room is made for the runs that find their way taken. */
const ROUNDS = 2;

/**
 * Lays several runs that keep clear of each other. kept: lays of other runs that stay as they are. The stiffest and
 * thickest hose goes first, since it has the fewest ways. A run that finds no clean way waits; then it is laid as if it
 * were alone, the runs that this comes near are lifted and laid again round it, and the change is kept where all of them
 * lie clean. What still waits is laid as well as can be, with what it breaks. Answers the lays in the project's order.
 */
export function layRuns(
  context: LayContext,
  resolved: ResolvedProject,
  chosen: readonly ResolvedRun[],
  kept: readonly Lay[],
  watch: Watch,
): Lay[] {
  const laid = new Map<string, Lay>(kept.map((l) => [l.run, l]));
  const order = [...chosen].sort(
    (a, b) => hardness(context, b) - hardness(context, a) || (a.run.id < b.run.id ? -1 : 1),
  );
  for (const run of order) laid.delete(run.run.id);
  const bench: Bench = { context, resolved, order, laid, among: new WeakMap(), tried: new Map() };
  let waiting = order.filter((run, i) => {
    const part = partOf(watch, (i / order.length) * 0.7, ((i + 1) / order.length) * 0.7);
    part.report({ fraction: 0, doing: `laying ${run.run.name}` });
    return !layOnto(bench, laid, run, part);
  });
  for (let round = 0, before = Number.POSITIVE_INFINITY; round < ROUNDS && waiting.length < before; round++) {
    before = waiting.length;
    const part = partOf(watch, 0.7 + (0.2 * round) / ROUNDS, 0.7 + (0.2 * (round + 1)) / ROUNDS);
    waiting = waiting.filter((run) => !makeRoom(bench, run, part));
  }
  waiting.forEach((run, i) => {
    const part = partOf(watch, 0.9 + (0.1 * i) / waiting.length, 0.9 + (0.1 * (i + 1)) / waiting.length);
    part.report({ fraction: 0, doing: `laying ${run.run.name} as well as can be` });
    const tried = triedStill(bench, run);
    if (tried === undefined) put(bench, laid, layRun(context, run, tubesOf(resolved, laid, run.run.id), part));
    else laid.set(run.run.id, tried);
  });
  return resolved.runs.flatMap((r) => {
    const lay = laid.get(r.run.id);
    return lay === undefined ? [] : [towardsAll(bench, r, lay)];
  });
}

/** What laying several runs works on. */
interface Bench {
  readonly context: LayContext;
  readonly resolved: ResolvedProject;
  readonly order: readonly ResolvedRun[];
  readonly laid: Map<string, Lay>;
  /** which lays stood in the bay when a lay was made: to those it has measured its clearance with the full proof */
  readonly among: WeakMap<Lay, ReadonlySet<Lay>>;
  /** the near misses of runs that found no clean way among the others */
  readonly tried: Map<string, Lay>;
}

/** Takes in a lay that was just made among the laid ones. */
function put({ among }: Bench, laid: Map<string, Lay>, lay: Lay): void {
  among.set(lay, new Set(laid.values()));
  laid.set(lay.run, lay);
}

/** Lays a run among the laid ones, if it lies clean there; whether it does. */
function layOnto(bench: Bench, laid: Map<string, Lay>, run: ResolvedRun, watch: Watch): boolean {
  const lay = layAsAsked(bench.context, run, tubesOf(bench.resolved, laid, run.run.id), watch);
  if (lay.outcome === 'laid') put(bench, laid, lay);
  else if (lay.outcome === 'near-miss' && laid === bench.laid) {
    bench.among.set(lay, new Set(laid.values()));
    bench.tried.set(run.run.id, lay);
  }
  return lay.outcome === 'laid';
}

/** The near miss that a run came to before, if no run laid since stands in its way. */
function triedStill(bench: Bench, run: ResolvedRun): Lay | undefined {
  const lay = bench.tried.get(run.run.id);
  return lay !== undefined && clashes(bench, run, lay, 1).length === 0 ? lay : undefined;
}

/** The laid runs that a lay comes nearer to than so many times what is asked. */
function clashes({ context, order, laid }: Bench, run: ResolvedRun, lay: Lay, spacings: number): ResolvedRun[] {
  const setting = runSetting(context.project, run);
  return order.filter((other) => {
    const theirs = laid.get(other.run.id);
    if (theirs === undefined || other.run.id === run.run.id) return false;
    const clearance = clearanceToRun(context.project, setting, lay, other.run.id, tubesOfLay(theirs, other));
    return clearance !== undefined && clearance.clearanceMm < spacings * clearance.requiredMm;
  });
}

/** A lay with its clearance to every other run as that lies now: to those laid after it, or again, measured here. */
function towardsAll({ context, resolved, laid, among }: Bench, run: ResolvedRun, lay: Lay): Lay {
  const setting = runSetting(context.project, run);
  const toRuns = resolved.runs.flatMap((other) => {
    const theirs = laid.get(other.run.id);
    if (theirs === undefined || other.run.id === lay.run) return [];
    if (among.get(lay)?.has(theirs))
      return lay.clearances.filter((c) => c.to.kind === 'run' && c.to.id === other.run.id);
    return clearanceToRun(context.project, setting, lay, other.run.id, tubesOfLay(theirs, other)) ?? [];
  });
  return { ...lay, clearances: [...lay.clearances.filter((c) => c.to.kind === 'skin'), ...toRuns] };
}

/** A near miss with no other run within this many spacings is not kept from its way by others. */
const NEAR_SPACINGS = 4;

/** Lays a run as if it were alone, lifts the runs that are in its way then, and lays those again; whether all lie clean. */
function makeRoom(bench: Bench, run: ResolvedRun, watch: Watch): boolean {
  const { context, laid, tried } = bench;
  const miss = tried.get(run.run.id);
  if (miss !== undefined && clashes(bench, run, miss, NEAR_SPACINGS).length === 0) return false;
  watch.report({ fraction: 0, doing: `making room for ${run.run.name}` });
  const silent: Watch = { ...watch, report: () => undefined };
  const alone = layAsAsked(context, run, buildTubeField([]), silent);
  if (alone.outcome !== 'laid') return false;
  const lifted = clashes(bench, run, alone, 1);
  const trial = new Map(laid);
  for (const other of lifted) trial.delete(other.run.id);
  if (![run, ...lifted].every((r) => layOnto(bench, trial, r, silent))) return false;
  for (const [id, lay] of trial) laid.set(id, lay);
  return true;
}

function hardness(context: LayContext, run: ResolvedRun): number {
  const setting = runSetting(context.project, run);
  return setting.minRadiusMm + setting.outsideRadiusMm;
}

/** Every laid run but one, hose and ends, as obstacles. */
export function tubesOf(resolved: ResolvedProject, laid: ReadonlyMap<string, Lay>, except: string): TubeField {
  return buildTubeField(
    resolved.runs.flatMap((r) => {
      const lay = laid.get(r.run.id);
      return lay === undefined || r.run.id === except ? [] : tubesOfLay(lay, r);
    }),
  );
}
