import { expect, it } from 'vitest';
import { dot, length } from '../../../../shared/base/vec3.ts';
import { resolveProject } from '../../../../shared/document/project/resolve.ts';
import {
  sampleEnd,
  sampleHose,
  samplePort,
  sampleProject,
  sampleRun,
  sampleSleeve,
  sampleTables,
} from '../../../arbitraries/projects.ts';

it('replaces ids by what they name and makes directions unit and square', () => {
  const project = sampleProject({
    ports: [samplePort({ axis: [0, 0, 10], up: [3, 0, 4] }), samplePort({ id: 'p2', axis: [-2, 0, 0] })],
    runs: [
      sampleRun({
        sleeve: 'sleeve-16',
        a: { port: 'p1', end: 'end-8-0', clockDeg: 90 },
        supports: [{ id: 'c', kind: 'clamp', point: [1, 1, 1], axis: [0, 5, 0] }],
      }),
    ],
  });
  const result = resolveProject(project, sampleTables());
  if (!result.ok) throw new Error('expected a resolved project');
  const [run] = result.value.runs;
  expect(run?.hose).toEqual(sampleHose());
  expect(run?.sleeve).toEqual(sampleSleeve());
  expect(run?.a.end).toEqual(sampleEnd());
  expect(run?.a.clockDeg).toBe(90);
  expect(run?.b).not.toHaveProperty('clockDeg');
  expect(run?.a.port.axis).toEqual([0, 0, 1]);
  expect(run?.a.port.up).toEqual([1, 0, 0]);
  expect(run?.run.supports[0]?.axis).toEqual([0, 1, 0]);
  expect(result.value.project.ports[0]).toEqual(run?.a.port);
  expect(result.warnings).toEqual([]);
});

it('keeps up square and unit for crooked input', () => {
  const project = sampleProject({
    ports: [samplePort({ axis: [1, 2, 3], up: [0.3, -2, 9] }), samplePort({ id: 'p2' })],
  });
  const result = resolveProject(project, sampleTables());
  const port = result.ok ? result.value.runs[0]?.a.port : undefined;
  expect(Math.abs(dot(port?.axis ?? [9, 9, 9], port?.up ?? [9, 9, 9]))).toBeLessThan(1e-15);
  expect(length(port?.up ?? [0, 0, 0])).toBeCloseTo(1, 14);
});

it('names every part that no table has', () => {
  const project = sampleProject({
    runs: [sampleRun({ hose: 'hose-9', sleeve: 'sock', b: { port: 'p2', end: 'end-8-90' } })],
  });
  const result = resolveProject(project, sampleTables());
  expect(result.ok ? [] : result.problems.map((p) => p.path)).toEqual([
    'runs[0].hose',
    'runs[0].sleeve',
    'runs[0].b.end',
  ]);
  expect(result.ok ? '' : result.problems[0]?.message).toContain('hose-8');
});

it('refuses an end of another dash size than its hose', () => {
  const tables = { ...sampleTables(), ends: [sampleEnd({ dash: 10 })] };
  const result = resolveProject(sampleProject(), tables);
  expect(result.ok ? [] : result.problems.map((p) => p.path)).toEqual(['runs[0].a.end', 'runs[0].b.end']);
});

it('warns of adapters and of a tight sleeve, and goes on', () => {
  const project = sampleProject({
    ports: [samplePort({ seat: 'taper-pipe' }), samplePort({ id: 'p2', dash: 10 })],
    runs: [sampleRun({ sleeve: 'sleeve-16' })],
  });
  const tables = { ...sampleTables(), sleeves: [sampleSleeve({ insideDiameterMm: 15 })] };
  const result = resolveProject(project, tables);
  expect(result.ok).toBe(true);
  expect(result.warnings.map((w) => w.path)).toEqual(['runs[0].a.end', 'runs[0].b.end', 'runs[0].sleeve']);
  expect(resolveProject(sampleProject(), sampleTables()).warnings).toEqual([]);
});
