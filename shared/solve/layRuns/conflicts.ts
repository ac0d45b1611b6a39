import type { Clearance, Lay } from '../../document/lay/schema.ts';
import { bundleOf } from '../../document/project/bundleOf.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { clearanceToRun } from '../layRun/clearanceToRun.ts';
import { runSetting } from '../layRun/runLimits.ts';
import { fieldOfLay } from '../layRun/tubesOfLay.ts';
import type { Bench } from './bench.ts';

/** A run with a lay of it. */
export interface RunLaid {
  readonly run: ResolvedRun;
  readonly lay: Lay;
}

/**
 * Whether two lays cannot both stay: neither was made with the other in the bay, and by what is proven of either it comes
 * nearer to the other than is asked, at rest or, as measured, under pressure.
 */
export function areInConflict(bench: Bench, a: RunLaid, b: RunLaid): boolean {
  if (bench.known.get(a.lay)?.has(b.lay) || bench.known.get(b.lay)?.has(a.lay)) return false;
  return comesTooNear(bench, a, b) || comesTooNear(bench, b, a);
}

function comesTooNear(bench: Bench, a: RunLaid, b: RunLaid): boolean {
  return (
    breaksSpacing(bench, a, b) ||
    breathClearances(bench, a, b).some((c) => c !== undefined && c.clearanceMm < c.requiredMm)
  );
}

/** Whether a hose at rest comes nearer to another than is asked, by what is proven of it. */
function breaksSpacing({ context: { project } }: Bench, a: RunLaid, b: RunLaid): boolean {
  const atRest = clearanceToRun(project, runSetting(project, a.run), a.lay, b.lay.run, fieldOfLay(b.lay, b.run, a.run));
  return atRest !== undefined && atRest.provenAtLeastMm < atRest.requiredMm;
}

/** Whether a hose breaks its spacing from another at rest, or touches it under pressure. */
export function isInTrouble(bench: Bench, a: RunLaid, b: RunLaid): boolean {
  return breaksSpacing(bench, a, b) || breathClearances(bench, a, b).some((c) => c !== undefined && c.clearanceMm <= 0);
}

/** The clearance of each breath of a lay to another one that is laid; hoses tied together breathe together. */
export function breathClearances(bench: Bench, a: RunLaid, b: RunLaid): (Clearance | undefined)[] {
  const { project } = bench.context;
  if (b.lay.outcome !== 'laid' || bundleOf(project, a.lay.run, b.lay.run) !== undefined) return [];
  const setting = runSetting(project, a.run);
  const field = fieldOfLay(b.lay, b.run, a.run);
  return (bench.breathLines.get(a.lay) ?? []).map((line) => {
    const cutLengthMm = line?.arcLengthMm.at(-1);
    if (line === undefined || cutLengthMm === undefined) return undefined;
    return clearanceToRun(project, setting, { centreline: line, cutLengthMm }, b.lay.run, field);
  });
}

/** The runs of the order whose lays cannot stay beside this one. */
export function inTheWayOf(bench: Bench, laid: ReadonlyMap<string, Lay>, one: RunLaid): ResolvedRun[] {
  return bench.order.filter((run) => {
    const lay = laid.get(run.run.id);
    return lay !== undefined && run.run.id !== one.lay.run && areInConflict(bench, one, { run, lay });
  });
}

/** Whether a near miss, which breaks something anyway, comes nearer to a laid run that it does not know than is asked. */
export function meetsUnknown(bench: Bench, { run, lay }: RunLaid): boolean {
  const { context, resolved, laid, known } = bench;
  const setting = runSetting(context.project, run);
  return resolved.runs.some((other) => {
    const theirs = laid.get(other.run.id);
    if (theirs === undefined || theirs.run === lay.run || known.get(lay)?.has(theirs)) return false;
    const clearance = clearanceToRun(context.project, setting, lay, theirs.run, fieldOfLay(theirs, other, run));
    return clearance !== undefined && clearance.clearanceMm < clearance.requiredMm;
  });
}

/**
 * Of lays that do not know of each other, those that can all stay, looked at in their order: hardest first, since a thick
 * hose laid round thin ones costs more and finds less than the thin ones laid round it.
 */
export function withoutConflicts(bench: Bench, lays: readonly RunLaid[]): RunLaid[] {
  const stay: RunLaid[] = [];
  for (const one of lays) if (!stay.some((other) => areInConflict(bench, one, other))) stay.push(one);
  return stay;
}
