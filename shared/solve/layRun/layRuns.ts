import { partOf, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import { buildTubeField, type TubeField } from '../bay/tubeField.ts';
import { clearanceToRun } from './clearanceToRun.ts';
import { type LayContext, layRun } from './layRun.ts';
import { runSetting } from './runLimits.ts';
import { tubesOfLay } from './tubesOfLay.ts';

/** How often a run that finds its way taken may have the runs in its way lifted and laid again. */
const ROUNDS = 2;

/**
 * Lays several runs that keep clear of each other. kept: lays of other runs that stay as they are. The stiffest and
 * thickest hose goes first, since it has the fewest ways. A run that then cannot be laid clean is given the runs in its
 * way lifted, laid, and those laid again round it; the change is kept when fewer lays break something. Answers the lays
 * in the project's order.
 */
export function layRuns(
  context: LayContext,
  resolved: ResolvedProject,
  chosen: readonly ResolvedRun[],
  kept: readonly Lay[],
  watch: Watch,
): Lay[] {
  const laid = new Map<string, Lay>(kept.map((l) => [l.run, l]));
  const among: Among = new WeakMap();
  const order = [...chosen].sort(
    (a, b) => hardness(context, b) - hardness(context, a) || (a.run.id < b.run.id ? -1 : 1),
  );
  for (const run of order) laid.delete(run.run.id);
  order.forEach((run, i) => {
    const part = partOf(watch, (i / order.length) * 0.8, ((i + 1) / order.length) * 0.8);
    part.report({ fraction: 0, doing: `laying ${run.run.name}` });
    laid.set(run.run.id, layAmong(context, resolved, laid, among, run, part));
  });
  for (let round = 0, changed = true; round < ROUNDS && changed; round++) {
    const part = partOf(watch, 0.8 + (0.2 * round) / ROUNDS, 0.8 + (0.2 * (round + 1)) / ROUNDS);
    changed = order.map((run) => makeRoom(context, resolved, order, laid, among, run, part)).includes(true);
  }
  return resolved.runs.flatMap((r) => {
    const lay = laid.get(r.run.id);
    return lay === undefined ? [] : [towardsAll(context, resolved, laid, among, r, lay)];
  });
}

/** Which lays stood in the bay when a lay was made: to those it has measured its clearance with the full proof. */
type Among = WeakMap<Lay, ReadonlySet<Lay>>;

function layAmong(
  context: LayContext,
  resolved: ResolvedProject,
  laid: ReadonlyMap<string, Lay>,
  among: Among,
  run: ResolvedRun,
  watch: Watch,
): Lay {
  const lay = layRun(context, run, tubesOf(resolved, laid, run.run.id), watch);
  among.set(lay, new Set(laid.values()));
  return lay;
}

/** A lay with its clearance to every other run as that lies now: to those laid after it, or again, measured here. */
function towardsAll(
  context: LayContext,
  resolved: ResolvedProject,
  laid: ReadonlyMap<string, Lay>,
  among: Among,
  run: ResolvedRun,
  lay: Lay,
): Lay {
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

/**
 * Where a run would lie clean if it were alone: lifts the runs near it, lays it first, then the lifted ones; keeps the
 * better. Answers whether anything changed.
 */
function makeRoom(
  context: LayContext,
  resolved: ResolvedProject,
  order: readonly ResolvedRun[],
  laid: Map<string, Lay>,
  among: Among,
  run: ResolvedRun,
  watch: Watch,
): boolean {
  const mine = laid.get(run.run.id);
  if (mine === undefined || mine.outcome === 'laid') return false;
  const near = new Set(
    mine.clearances
      .filter((c) => c.to.kind === 'run' && c.clearanceMm < NEAR_SPACINGS * c.requiredMm)
      .map((c) => c.to.id),
  );
  const lifted = order.filter((r) => near.has(r.run.id) && r.run.id !== run.run.id);
  if (lifted.length === 0) return false;
  watch.report({ fraction: 0, doing: `making room for ${run.run.name}` });
  const silent: Watch = { ...watch, report: () => undefined };
  if (layRun(context, run, buildTubeField([]), silent).outcome !== 'laid') return false;
  const trial = new Map(laid);
  for (const r of [run, ...lifted]) trial.delete(r.run.id);
  for (const r of [run, ...lifted]) trial.set(r.run.id, layAmong(context, resolved, trial, among, r, silent));
  if (unclean(trial) >= unclean(laid)) return false;
  for (const [id, lay] of trial) laid.set(id, lay);
  return true;
}

/** Runs nearer than this many spacings may be what keeps a run from its way. */
const NEAR_SPACINGS = 4;

function unclean(laid: ReadonlyMap<string, Lay>): number {
  return [...laid.values()].filter((l) => l.outcome !== 'laid').length;
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
