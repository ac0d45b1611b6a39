import { bench, describe } from 'vitest';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { buildTubeField } from '../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../shared/solve/layRun/layRun.ts';
import { buildExampleIndex, resolved } from './exampleBay.ts';
import { keep, REFERENCE, reference } from './reference.ts';

/** Whole runs of the example bay with its index ready: search, relaxation, certificate, clock. */
const context = { project: resolved.project, bay: buildExampleIndex() };
const alone = buildTubeField([]);
const FEW = { iterations: 5, time: 0, warmupIterations: 2, warmupTime: 0 };

describe('whole runs of the example bay', () => {
  bench(REFERENCE, () => keep(reference()));
  bench('index of the bay', () => keep(buildExampleIndex().skins.length), {
    ...FEW,
    iterations: 3,
    warmupIterations: 1,
  });
  for (const id of ['scavenge-return', 'cooler-feed', 'oil-suction', 'turbo-oil-feed']) {
    const run = resolved.runs.find((r) => r.run.id === id)!;
    bench(`lay ${id}`, () => keep(layRun(context, run, alone, UNWATCHED).cutLengthMm), FEW);
  }
});
