import { UNWATCHED } from '../../shared/base/watch.ts';
import { buildRunField } from '../../shared/solve/bay/runField.ts';
import { buildTubeField } from '../../shared/solve/bay/tubeField.ts';
import { runKeeps, runSetting } from '../../shared/solve/layRun/runLimits.ts';
import { tailPose } from '../../shared/solve/layRun/runSetting.ts';
import type { SearchProblem, SearchResult } from '../../shared/solve/search/problem.ts';
import { searchWays } from '../../shared/solve/search/searchWays.ts';
import type { CarvedBay } from './carvedBays.ts';

/** What laying asks of the search in a carved bay: one way between the tails, all of the clearance kept. */
export function carvedProblem({ bay, project, minRadiusMm }: CarvedBay): SearchProblem {
  const setting = runSetting(project.project, project.runs[0]!);
  return {
    from: { kind: 'held', pose: tailPose(setting.a, 'a', setting.tailMm, 0) },
    to: { kind: 'held', pose: tailPose(setting.b, 'b', setting.tailMm, 0) },
    minRadiusMm,
    field: buildRunField(bay, buildTubeField([]), runKeeps({ project: project.project, bay }, setting, 1)),
    ways: 1,
    seed: 1,
    effort: 'normal',
    withoutNearMiss: true,
  };
}

export function searchCarved(bay: CarvedBay): SearchResult {
  return searchWays(carvedProblem(bay), UNWATCHED);
}
