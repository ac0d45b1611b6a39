import { expect, it } from 'vitest';
import { describeProblem, type Problem } from '../../../../shared/base/result.ts';
import { bringUp, parseProject } from '../../../../shared/document/project/parseProject.ts';
import type { Project } from '../../../../shared/document/project/schema.ts';
import { samplePort, sampleProject, sampleRun } from '../../../arbitraries/projects.ts';

type Loose = Record<string, unknown>;

function problemsOf(text: string): readonly Problem[] {
  const result = parseProject(text);
  if (result.ok) throw new Error('expected problems');
  return result.problems;
}

function problemsAfter(change: (project: Loose) => void): string[] {
  const project = structuredClone(sampleProject()) as unknown as Loose;
  change(project);
  return problemsOf(JSON.stringify(project)).map(describeProblem);
}

function problemsWith(changes: Partial<Project>): readonly Problem[] {
  return problemsOf(JSON.stringify(sampleProject(changes)));
}

it('reads a sound project and fills in defaults', () => {
  const { seed: _seed, overrides: _overrides, exampleData: _example, ...rest } = sampleProject();
  const result = parseProject(
    JSON.stringify({ ...rest, runs: rest.runs.map(({ slack: _s, supports: _u, ...r }) => r) }),
  );
  expect(result).toEqual({ ok: true, value: sampleProject({ exampleData: false }) });
});

it('passes over a byte order mark', () => {
  expect(parseProject(`\uFEFF${JSON.stringify(sampleProject())}`).ok).toBe(true);
});

it('says where JSON breaks, by line and column', () => {
  expect(problemsOf('{\n  "format": "x",\n  "version" 1\n}').map(describeProblem)).toEqual([
    'not JSON at line 3, column 13: expected : after the key, found "1\\n}"',
  ]);
});

it('refuses what is not a project, by name', () => {
  expect(problemsOf('[]').map(describeProblem)).toEqual(['expected a project: an object in { }, got []']);
  expect(problemsOf('{"format":"shopping"}').map(describeProblem)).toEqual([
    'format: not a project file: expected "hosewright-project", got "shopping"',
  ]);
  expect(problemsAfter((p) => Object.assign(p, { version: 0 }))).toEqual([
    'version: expected a whole number from 1, got 0',
  ]);
});

it('refuses a newer version and names both', () => {
  expect(problemsAfter((p) => Object.assign(p, { version: 7, whatever: true }))).toEqual([
    'version: made by a newer Hosewright (version 7); this one reads up to 1, got 7',
  ]);
});

it('names every fault of the shape at once, each with its path and the value seen', () => {
  const problems = problemsAfter((p) => {
    const runs = p['runs'] as Loose[];
    const ports = p['ports'] as Loose[];
    Object.assign(runs[0] as Loose, { slack: '5%', colour: 'blue' });
    Object.assign(ports[1] as Loose, { dash: 7.5, axis: [0, 0] });
    delete (ports[0] as Loose)['seat'];
    p['seed'] = -1;
    Object.assign(p['bay'] as Loose, { scanUncertaintyMm: null });
    Object.assign((p['tables'] as Loose)['hoses'] as string[], ['../hoses.csv']);
  });
  expect(problems).toEqual(
    expect.arrayContaining([
      'runs[0].slack: expected a number, got "5%"',
      'ports[1].dash: expected a whole number, got 7.5',
      'ports[1].axis: expected at least 3 entries, got [0,0]',
      'ports[0].seat: missing; expected text in quotes',
      'seed: expected 0 or more, got -1',
      'bay.scanUncertaintyMm: expected a number, got null',
      'tables.hoses[0]: expected a path below the project file, with forward slashes, got "../hoses.csv"',
    ]),
  );
  expect(problems.filter((p) => p.startsWith('runs[0].colour: unknown key; known here: id, name, a, b,'))).toHaveLength(
    1,
  );
  expect(problems).toHaveLength(8);
});

it('names several unknown keys one by one, also odd ones', () => {
  const text = JSON.stringify(sampleProject()).replace(
    '"name":"Sample"',
    '"name":"Sample","__proto__":{"x":1},"a b":2,"colour":3',
  );
  expect(problemsOf(text).map((p) => p.path)).toEqual(['__proto__', '["a b"]', 'colour']);
});

it('shortens long values', () => {
  const [problem] = problemsWith({ name: 'x'.repeat(5) as never, ports: 'y'.repeat(500) as never });
  expect(problem?.got).toHaveLength(80);
  expect(problem?.got?.endsWith('…')).toBe(true);
});

it('refuses infinity, which JSON can smuggle in as 1e999', () => {
  const text = JSON.stringify(sampleProject()).replace('"scanUncertaintyMm":0', '"scanUncertaintyMm":1e999');
  expect(problemsOf(text).map(describeProblem)).toEqual(['bay.scanUncertaintyMm: expected a number, got Infinity']);
});

it('asks a hot skin for its temperature and a clamp for its axis', () => {
  const project = sampleProject();
  project.bay.skins[0] = { id: 'exhaust', name: 'Exhaust', kind: 'hot', parts: [] };
  project.runs[0] = sampleRun({ supports: [{ id: 'c1', kind: 'clamp', point: [1, 2, 3] }] });
  expect(problemsOf(JSON.stringify(project)).map((p) => `${p.path}: ${p.message}`)).toEqual([
    'bay.skins[0].surfaceTemperatureC: missing; a hot skin needs its surfaceTemperatureC',
    'runs[0].supports[0].axis: missing; a clamp needs its axis',
  ]);
});

it('finds what names something that is not there, or is there twice', () => {
  const problems = problemsWith({
    ports: [samplePort(), samplePort(), samplePort({ id: 'p3', body: 'gearbox' })],
    runs: [
      sampleRun({ b: { port: 'p9', end: 'end-8-0' } }),
      sampleRun({ a: { port: 'p1', end: 'x' }, b: { port: 'p3', end: 'x' } }),
    ],
    overrides: [
      { rule: 'made-up', value: 1, reason: 'because' },
      { rule: 'drain-no-rise', value: 1, reason: 'because' },
      { rule: 'slack-wanted', run: 'r9', value: 0.04, reason: 'because' },
      { rule: 'clearance-hot', value: -5, reason: 'because' },
    ],
  });
  expect(problems.map((p) => p.path)).toEqual([
    'ports[1].id',
    'runs[1].id',
    'ports[2].body',
    'runs[0].b.port',
    'runs[1].a.port',
    'overrides[0].rule',
    'overrides[1].rule',
    'overrides[2].run',
    'overrides[3].value',
  ]);
  expect(problems.map(describeProblem)).toContain(
    'runs[1].a.port: a port takes one hose; this one is taken by runs[0].a, got "p1"',
  );
});

it('finds a hose whose two ends are on one port', () => {
  const problems = problemsWith({ runs: [sampleRun({ b: { port: 'p1', end: 'end-8-0' } })] });
  expect(problems.map((p) => p.path)).toEqual(['runs[0].b.port']);
});

it('refuses an up along its axis, either way, and takes one two degrees off', () => {
  const up = (deg: number): [number, number, number] => [
    Math.cos((deg * Math.PI) / 180),
    0,
    Math.sin((deg * Math.PI) / 180),
  ];
  for (const deg of [0, 0.9, 179.5])
    expect(problemsWith({ ports: [samplePort({ up: up(deg) }), samplePort({ id: 'p2' })] }).map((p) => p.path)).toEqual(
      ['ports[0].up'],
    );
  const tilted = sampleProject({ ports: [samplePort({ up: up(2) }), samplePort({ id: 'p2' })] });
  expect(parseProject(JSON.stringify(tilted)).ok).toBe(true);
});

it('migrates step by step, sets the version, and leaves what it was given', () => {
  const raw = Object.freeze({ format: 'hosewright-project', version: 1, title: 'Bay' });
  const steps = [
    { from: 1, title: 'title is name', migrate: ({ title, ...rest }: Loose) => ({ ...rest, name: title }) },
    { from: 2, title: 'a note', migrate: (r: Loose) => ({ ...r, note: `was ${r['version']}` }) },
  ];
  expect(bringUp(raw, steps, 3)).toEqual({
    ok: true,
    value: { format: 'hosewright-project', version: 3, name: 'Bay', note: 'was 2' },
  });
  expect(bringUp({ ...raw, version: 3 }, steps, 3)).toEqual({ ok: true, value: { ...raw, version: 3 } });
  expect(bringUp({ ...raw, version: 4 }, steps, 3).ok).toBe(false);
  expect(() => bringUp(raw, steps.slice(1), 3)).toThrow(/migrate/);
});

it('reads how a body moves, the ranges left out as none', () => {
  const motion = { pivot: [575, 0, 215], rollDeg: [-2, 2], shiftMm: { z: [0, 3] } };
  const project = sampleProject();
  const bodies = [{ id: 'engine', name: 'Engine', parts: [], motion }];
  const read = parseProject(JSON.stringify({ ...project, bay: { ...project.bay, bodies } }));
  expect(read.ok && read.value.bay.bodies[0]?.motion).toEqual({
    pivot: [575, 0, 215],
    rollDeg: [-2, 2],
    pitchDeg: [0, 0],
    yawDeg: [0, 0],
    shiftMm: { x: [0, 0], y: [0, 0], z: [0, 3] },
  });
});

it('refuses motions without rest, too far, of the chassis, and supports on bodies that are not there', () => {
  const told = problemsAfter((p) => {
    const motion = { pivot: [0, 0, 0] };
    (p['bay'] as Loose)['bodies'] = [
      { id: 'engine', name: 'Engine', parts: [], motion: { ...motion, rollDeg: [1, 2], pitchDeg: [0, 90] } },
      { id: 'gearbox', name: 'Gearbox', parts: [], motion: { ...motion, shiftMm: { x: 3 } } },
    ];
  });
  expect(told).toEqual([
    'bay.bodies[0].motion.rollDeg: expected [least, most] with rest, 0, between them, got [1,2]',
    'bay.bodies[0].motion.pitchDeg: expected turns of at most 45 degrees, got [0,90]',
    'bay.bodies[1].motion.shiftMm.x: expected a list in [ ], got 3',
  ]);
  const cross = problemsAfter((p) => {
    (p['bay'] as Loose)['bodies'] = [{ id: 'chassis', name: 'Chassis', parts: [], motion: { pivot: [0, 0, 0] } }];
    (p['runs'] as Loose[])[0]!['supports'] = [
      { id: 's', kind: 'clamp', point: [0, 0, 0], axis: [1, 0, 0], body: 'boat' },
    ];
  });
  expect(cross).toEqual([
    'bay.bodies[0].motion: the chassis stands still: all else moves against it; give the motion to the body that rocks, got "chassis"',
    'runs[0].supports[0].body: no body has this id; known: chassis, got "boat"',
  ]);
});
