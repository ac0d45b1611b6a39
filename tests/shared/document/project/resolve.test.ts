import { expect, it } from 'vitest';
import { dot, length } from '../../../../shared/base/vec3.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import { crossReferenceProblems } from '../../../../shared/document/project/crossReferenceProblems.ts';
import { resolveProject } from '../../../../shared/document/project/resolve.ts';
import type { Port } from '../../../../shared/document/project/schema.ts';
import { exampleAdapter } from '../../../arbitraries/adapters.ts';
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

it('warns of hose clamps stated at an end that none hold', () => {
  const run = sampleRun();
  const project = sampleProject({ runs: [{ ...run, a: { ...run.a, hoseClamps: { count: 2 } } }] });
  const warned = (joint: End['joint']) =>
    resolveProject(project, { ...sampleTables(), ends: [sampleEnd({ joint })] }).warnings.map(({ path }) => path);
  expect(warned('crimp')).toEqual(['runs[0].a.hoseClamps']);
  expect(warned('clamped')).toEqual([]);
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

const ELBOW = exampleAdapter({ id: 'elbow', form: 'elbow', bendAngleDeg: 90, seat: 'cone-24' });
const USE = { adapter: 'elbow', outlet: 'straight' } as const;

function withAdapters(port: Partial<Port>, adapters = [ELBOW]) {
  const project = sampleProject({ ports: [samplePort(port), samplePort({ id: 'p2', seatPoint: [300, 0, 0] })] });
  return resolveProject(project, { ...sampleTables(), adapters });
}

it('sets an end on the last adapter of its port and keeps the bare port', () => {
  const { seat } = sampleEnd();
  const adapter = { ...ELBOW, seat };
  const result = withAdapters({ seat: 'o-ring-boss', adapters: [USE] }, [adapter]);
  if (!result.ok) throw new Error('expected a resolved project');
  const { a, b } = result.value.runs[0] ?? {};
  const bare = result.value.project.ports[0];
  expect(a?.port).toMatchObject({ id: 'p1', seat, dash: 8 });
  expect(a?.stack?.bare).toEqual(bare);
  expect(a?.stack?.fitted[0]?.to.seatPoint).toEqual(a?.port.seatPoint);
  expect(dot(a?.port.axis ?? [0, 0, 0], bare?.axis ?? [0, 0, 0])).toBeCloseTo(0, 14);
  expect(b).not.toHaveProperty('stack');
  expect(result.warnings).toEqual([]);
});

it('names an adapter that no table has, an outlet that it has not, a range that it does not need', () => {
  const problems = (adapters: Port['adapters']) => {
    const result = withAdapters({ adapters });
    return result.ok ? [] : result.problems.map((p) => p.path);
  };
  expect(problems([{ adapter: 'elbows', outlet: 'straight' }])).toEqual(['ports[0].adapters[0].adapter']);
  expect(problems([{ ...USE, outlet: 'branch' }])).toEqual(['ports[0].adapters[0].outlet']);
  expect(problems([{ ...USE, clockRangeDeg: [0, 90] }])).toEqual(['ports[0].adapters[0].clockRangeDeg']);
});

it('warns where port, adapters and end do not seat on each other, and of a taper elbow with no range', () => {
  const taper = { ...ELBOW, turning: 'taper' as const };
  const paths = withAdapters({ seat: 'flare-37', adapters: [USE, USE] }, [taper]).warnings.map((w) => w.path);
  expect(paths).toEqual([
    'ports[0].adapters[0].adapter',
    'ports[0].adapters[0]',
    'ports[0].adapters[1].adapter',
    'ports[0].adapters[1]',
    'runs[0].a.end',
  ]);
});

it('names the adapters of the tables that would join a port to an end, straight ones first', () => {
  const seat = sampleEnd().seat;
  const table = [
    { ...ELBOW, seat },
    exampleAdapter({ id: 'union', seat }),
    exampleAdapter({ id: 'other', seat, portDash: 6 }),
  ];
  const [warning] = withAdapters({ seat: 'o-ring-boss' }, table).warnings;
  expect(warning?.message).toMatch(/such as union, elbow$/);
  expect(withAdapters({ seat: 'o-ring-boss' }, []).warnings[0]?.message).toMatch(/no adapter of the tables joins/);
});

it('refuses a clock that an end with a range cannot take, and warns of a fixed end without one', () => {
  const turning = (end: Parameters<typeof sampleEnd>[0], clockDeg?: number) =>
    resolveProject(
      sampleProject({
        runs: [sampleRun({ a: { port: 'p1', end: 'end-8-0', ...(clockDeg === undefined ? {} : { clockDeg }) } })],
      }),
      { ...sampleTables(), ends: [sampleEnd(end)] },
    );
  const range = { bendAngleDeg: 90, turning: 'range', turnFromDeg: -30, turnToDeg: 40 } as const;
  expect(turning(range, 350).ok).toBe(true);
  const refused = turning(range, 50);
  expect(refused.ok ? [] : refused.problems.map((p) => p.path)).toEqual(['runs[0].a.clockDeg']);
  const fixed = { bendAngleDeg: 90, turning: 'fixed' } as const;
  expect(turning(fixed).warnings.map((w) => w.path)).toEqual(['runs[0].a', 'runs[0].b']);
  expect(turning(fixed, 10).warnings.map((w) => w.path)).toEqual(['runs[0].b']);
});

it('lets two ports share a seat as the outlets of one tee, and not otherwise', () => {
  const tee = { adapter: 'tee', clockDeg: 30 };
  const paths = (first: Port['adapters'], second: Port['adapters']) =>
    crossReferenceProblems(
      sampleProject({
        ports: [
          samplePort({ ...(first === undefined ? {} : { adapters: first }) }),
          samplePort({ id: 'p2', ...(second === undefined ? {} : { adapters: second }) }),
        ],
      }),
    ).map((p) => p.path);
  const through = { ...tee, outlet: 'straight' } as const;
  const branch = { ...tee, outlet: 'branch' } as const;
  expect(paths([USE, through], [USE, branch, USE])).toEqual([]);
  for (const wrong of [[USE, through], [USE], [USE, { ...branch, clockDeg: 31 }], undefined])
    expect(paths([USE, through], wrong)).toEqual(['ports[1].adapters']);
});
