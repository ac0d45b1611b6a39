import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay, Taper } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { relayNear } from '../handLay/relayNear.ts';
import { runSetting } from '../layRun/runLimits.ts';
import { faultAtPose } from './faultAtPose.ts';
import { type TaperContext, taperLays } from './taperLays.ts';

/** Shares of the taut length by which a hose is made longer beyond what it lacks, one after the other. */
const LONGER = [0.005, 0.02, 0.04, 0.06];
/** Share of the taut length. A hose that would need to be longer by more than this is not helped by length. */
const MOST_LONGER = 0.1;

/**
 * As `taperLays`; and a hose still to be cut that lies clean for the middle of its range but goes tight, bends too tight or
 * comes too near at some clock of it is made longer where that lets it fit at every clock, the least that does. It stays on its
 * way, and its lay as clean as it was; where no length helps it stays as it is. chosen: ids of the runs that may change.
 */
export function taperWell(context: TaperContext, lays: readonly Lay[], chosen: readonly string[], watch: Watch): Lay[] {
  let told = taperLays(context, lays, partOf(watch, 0, 0.5));
  const open = context.resolved.runs.filter(
    ({ run }) =>
      chosen.includes(run.id) && run.cutLengthMm === undefined && mayGrow(told.find((l) => l.run === run.id)),
  );
  for (const [i, run] of open.entries())
    told = grown(context, run, told, partOf(watch, 0.5 + (0.5 * i) / open.length, 0.5 + (0.5 * (i + 1)) / open.length));
  return told;
}

function mayGrow(lay: Lay | undefined): boolean {
  return lay?.outcome === 'laid' && lay.taper !== undefined;
}

function grown(context: TaperContext, run: ResolvedRun, lays: readonly Lay[], watch: Watch): Lay[] {
  const { resolved, bay } = context;
  const setting = runSetting(resolved.project, run);
  const fault = (taper: Taper | undefined): number =>
    Math.max(0, ...(taper?.poses ?? []).map((pose) => faultAtPose(setting, pose)));
  const lay = lays.find((l) => l.run === run.run.id);
  if (lay?.taper === undefined || fault(lay.taper) === 0) return [...lays];
  const lackMm = Math.max(0, ...lay.taper.poses.map((p) => Math.max(-p.slackLeftMm, p.missingMm ?? 0)));
  for (const share of LONGER) {
    stopIfCancelled(watch);
    const moreMm = lackMm + share * lay.tautLengthMm;
    if (moreMm > MOST_LONGER * lay.tautLengthMm) break;
    watch.report({ fraction: share / MOST_LONGER, doing: `giving ${run.run.name} the length its taper needs` });
    const longer = { ...run, run: { ...run.run, cutLengthMm: lay.cutLengthMm + moreMm } };
    const silent = { ...watch, report: () => undefined };
    const tried = relayNear({ project: resolved.project, bay }, resolved, longer, lays, lay.centreline.points, silent);
    if (tried.find((l) => l.run === lay.run)?.outcome !== 'laid') continue;
    const told = taperLays(context, tried, silent, lay.run);
    if (fault(told.find((l) => l.run === lay.run)?.taper) === 0) return told;
  }
  return [...lays];
}
