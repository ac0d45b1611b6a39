import { bench, describe } from 'vitest';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { buildTubeField } from '../../shared/solve/bay/tubeField.ts';
import { heatOf } from '../../shared/solve/heat/heatOf.ts';
import { RAYS_A_SECTOR } from '../../shared/solve/heat/radiationAlong.ts';
import { layRun } from '../../shared/solve/layRun/layRun.ts';
import { NINE_HEATED } from '../arbitraries/heatedRuns.ts';
import { buildExampleIndex, resolved } from './exampleBay.ts';
import { keep, REFERENCE, reference } from './reference.ts';

/** Heat along nine hoses of the example bay, laid by themselves. */
const bay = buildExampleIndex();
const context = { project: resolved.project, bay };
const alone = buildTubeField([]);
const laid = NINE_HEATED.map((id) => {
  const run = resolved.runs.find((r) => r.run.id === id)!;
  return { run, lay: layRun(context, run, alone, UNWATCHED) };
});
const FEW = { iterations: 5, time: 0, warmupIterations: 1, warmupTime: 0 };

function heatAll(raysASector: number): number {
  let sum = 0;
  for (const { run, lay } of laid)
    sum += heatOf(run, lay, bay, resolved.project.bay, UNWATCHED, raysASector)?.running.hottest.cover.likely ?? 0;
  return sum;
}

describe('heat of nine runs of the example bay', () => {
  bench(REFERENCE, () => keep(reference()));
  bench('heat of nine runs', () => keep(heatAll(RAYS_A_SECTOR)), FEW);
  bench('heat of nine runs with half the rays', () => keep(heatAll(RAYS_A_SECTOR / 2)), FEW);
});
