import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedProject } from '../../document/project/resolve.ts';
import { buildTubeField, type Tube, type TubeField } from '../bay/tubeField.ts';
import { standingTubes } from './standingTubes.ts';
import { tubesOfLay } from './tubesOfLay.ts';

/**
 * Every run but one as obstacles to that one: hose and ends of those that are laid, of the others what stands on their ports
 * anyway. In order of the runs' ids, whatever order the project has them in.
 */
export function tubesAmong(resolved: ResolvedProject, laid: ReadonlyMap<string, Lay>, except: string): Tube[] {
  const runs = [...resolved.runs].sort((a, b) => (a.run.id < b.run.id ? -1 : 1));
  const to = runs.find((run) => run.run.id === except);
  return runs.flatMap((run) => {
    const lay = laid.get(run.run.id);
    if (run.run.id === except) return [];
    return lay === undefined ? standingTubes(resolved.project, run, to) : tubesOfLay(lay, run, to);
  });
}

/** As `tubesAmong`, ready to be asked. */
export function tubesOf(resolved: ResolvedProject, laid: ReadonlyMap<string, Lay>, except: string): TubeField {
  return buildTubeField(tubesAmong(resolved, laid, except));
}
