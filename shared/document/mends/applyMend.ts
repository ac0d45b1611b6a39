import type { Project, Run, RunEnd } from '../project/schema.ts';
import type { Mend, MendEdit, OneEdit } from './schema.ts';

/**
 * The project with a mend made: a pure edit of the mend's one run, and for another size of the adapters on its ports; the same
 * wherever it is applied. A run or a support that the project does not have leaves it the very same project.
 */
export function applyMend(project: Project, { run, edit }: Pick<Mend, 'run' | 'edit'>): Project {
  const edits = edit.kind === 'both' ? [edit.first, edit.second] : [edit];
  return edits.reduce((mended, one) => applyOne(mended, { run, edit: one }), project);
}

function applyOne(project: Project, mend: { readonly run: string; readonly edit: OneEdit }): Project {
  const at = project.runs.findIndex(({ id }) => id === mend.run);
  const run = project.runs[at];
  if (run === undefined) return project;
  if (mend.edit.kind === 'own-way') return untied(project, mend.run, mend.edit.apartFrom);
  const mended = mendRun(run, mend.edit);
  if (mended === run) return project;
  const ports = mend.edit.kind === 'size' ? withAdapters(project.ports, run, mend.edit) : project.ports;
  return { ...project, ports, runs: project.runs.with(at, mended) };
}

/** A bundle of one hose is none. */
function untied(project: Project, run: string, other: string): Project {
  const { bundles = [], ...rest } = project;
  const left = bundles
    .map((bundle) =>
      bundle.runs.includes(run) && bundle.runs.includes(other)
        ? { ...bundle, runs: bundle.runs.filter((id) => id !== run) }
        : bundle,
    )
    .filter(({ runs }) => runs.length > 1);
  return left.length > 0 ? { ...rest, bundles: left } : rest;
}

function mendRun(run: Run, edit: Exclude<OneEdit, { kind: 'own-way' }>): Run {
  switch (edit.kind) {
    case 'end':
      return { ...run, [edit.side]: withEnd(run[edit.side], edit.end) };
    case 'ends':
      return { ...run, a: withEnd(run.a, edit.a), b: withEnd(run.b, edit.b) };
    case 'free-clock':
      return { ...run, [edit.side]: withoutClock(run[edit.side]) };
    case 'hose':
      return { ...run, hose: edit.hose };
    case 'sleeve':
      return { ...run, sleeve: edit.sleeve };
    case 'slack':
      return { ...run, slack: edit.slack };
    case 'bleed':
      return { ...run, bledAtCrest: true };
    case 'new-hose':
      return cutAnew(run);
    case 'hold':
      return { ...run, supports: withSupports(run.supports, edit.put) };
    case 'change-support':
      return { ...run, supports: run.supports.map((s) => (s.id === edit.support.id ? edit.support : s)) };
    case 'hose-clamps':
      return { ...run, a: withClamps(run.a, edit.a), b: withClamps(run.b, edit.b) };
    case 'let-go':
      return withoutSupport(run, edit.support);
    case 'size':
      return inSize(run, edit);
  }
}

function withoutClock({ clockDeg: _stated, ...end }: RunEnd): RunEnd {
  return end;
}

function withClamps(end: RunEnd, hoseClamps: RunEnd['hoseClamps']): RunEnd {
  return hoseClamps === undefined ? end : { ...end, hoseClamps };
}

type SizeEdit = Extract<MendEdit, { kind: 'size' }>;

function inSize(run: Run, { hose, a, b, sleeve, clamps }: SizeEdit): Run {
  const supports = run.supports.map((support) => {
    const clamp = clamps.find((one) => one.support === support.id);
    if (clamp === undefined) return support;
    const { part: _, ...unnamed } = support;
    return clamp.part === undefined ? unnamed : { ...unnamed, part: clamp.part };
  });
  const sleeved = sleeve === undefined ? {} : { sleeve };
  return { ...run, hose, a: withEnd(run.a, a.end), b: withEnd(run.b, b.end), ...sleeved, supports };
}

function withAdapters(ports: Project['ports'], run: Run, { a, b }: SizeEdit): Project['ports'] {
  const stacks = new Map([
    [run.a.port, a.adapters],
    [run.b.port, b.adapters],
  ]);
  return ports.map((port) => {
    const adapters = stacks.get(port.id);
    return adapters === undefined ? port : { ...port, adapters };
  });
}

/** Another end is free to turn: a stated clock was that of the end before it. */
function withEnd(current: RunEnd, end: string): RunEnd {
  return current.end === end ? current : { port: current.port, end };
}

function cutAnew({ cutLengthMm: _cut, asBuilt: _built, ...run }: Run): Run {
  return run;
}

function withSupports(supports: Run['supports'], put: Extract<MendEdit, { kind: 'hold' }>['put']): Run['supports'] {
  const before = (i: number) => put.filter((one) => Math.min(one.before, supports.length) === i).map((p) => p.support);
  return [...supports.flatMap((support, i) => [...before(i), support]), ...before(supports.length)];
}

/** A stretch that shall lie in one plane from the support on, or a lock after it, has lost its name with it. */
function withoutSupport(run: Run, id: string): Run {
  const isNamed = run.onePlane?.includes(id) === true || run.locks?.some(({ after }) => after === id) === true;
  if (isNamed || !run.supports.some((support) => support.id === id)) return run;
  return { ...run, supports: run.supports.filter((support) => support.id !== id) };
}
