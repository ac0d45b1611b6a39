import { readFileSync } from 'node:fs';
import path from 'node:path';
import { bench, describe } from 'vitest';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { namedPaths } from '../../shared/document/project/namedPaths.ts';
import { skinOfPart } from '../../shared/document/project/skinOfPart.ts';
import { bayMesh, newJobMemory } from '../../shared/jobs/jobMemory.ts';
import { readProject } from '../../shared/jobs/readProject.ts';
import { buildBayIndex } from '../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../shared/solve/layRun/layRun.ts';
import { keep, REFERENCE, reference } from './reference.ts';

/** Whole runs of the example bay with its index ready: search, relaxation, certificate, clock. */
const folder = path.resolve(import.meta.dirname, '../../models/bays/hillclimb');
const projectText = readFileSync(path.join(folder, 'project.json'), 'utf8');
const files = namedPaths(projectText).map((named) => ({
  path: named.path,
  bytes: new Uint8Array(readFileSync(path.join(folder, named.path))),
}));
const read = readProject({ projectText, files });
if (!read.ok) throw new Error('lay.bench: the example project does not read');
const { resolved } = read.value;
const opened = await bayMesh(read.value, newJobMemory());
if (!opened.ok) throw new Error('lay.bench: the example mesh does not open');
const { mesh } = opened.value;
const buildIndex = () => buildBayIndex(mesh, (part) => skinOfPart(resolved.project, part), UNWATCHED);
const context = { project: resolved.project, bay: buildIndex() };
const alone = buildTubeField([]);
const FEW = { iterations: 5, time: 0, warmupIterations: 2, warmupTime: 0 };

describe('whole runs of the example bay', () => {
  bench(REFERENCE, () => keep(reference()));
  bench('index of the bay', () => keep(buildIndex().skins.length), { ...FEW, iterations: 3, warmupIterations: 1 });
  for (const id of ['scavenge-return', 'cooler-feed', 'oil-suction', 'turbo-oil-feed']) {
    const run = resolved.runs.find((r) => r.run.id === id)!;
    bench(`lay ${id}`, () => keep(layRun(context, run, alone, UNWATCHED).cutLengthMm), FEW);
  }
});
