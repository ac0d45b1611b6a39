import { describe, expect, it } from 'vitest';
import { applyMend } from '../../../../shared/document/mends/applyMend.ts';
import type { MendEdit } from '../../../../shared/document/mends/schema.ts';
import { takenMend } from '../../../../shared/document/mends/takenMend.ts';
import { parseProject } from '../../../../shared/document/project/parseProject.ts';
import type { Support } from '../../../../shared/document/project/schema.ts';
import { serialiseProject } from '../../../../shared/document/project/serialiseProject.ts';
import { sampleProject, sampleRun } from '../../../arbitraries/projects.ts';
import { sampleLay, sampleReport } from '../../../renderer/sampleBench.ts';

const clamp = (id: string, x: number): Support => ({ id, kind: 'clamp', point: [x, 0, 0], axis: [1, 0, 0] });
const run = sampleRun({ supports: [clamp('one', 100), clamp('two', 200)], cutLengthMm: 300 });
const project = sampleProject({ runs: [{ ...run, a: { ...run.a, clockDeg: 30 } }] });

function mended(edit: MendEdit) {
  return applyMend(project, { run: run.id, edit }).runs[0]!;
}

const EDITS: MendEdit[] = [
  { kind: 'end', side: 'a', end: 'other' },
  { kind: 'ends', a: 'other', b: 'other' },
  { kind: 'free-clock', side: 'a' },
  { kind: 'hose', hose: 'other' },
  { kind: 'sleeve', sleeve: 'other' },
  { kind: 'slack', slack: 0.08 },
  { kind: 'bleed' },
  { kind: 'new-hose' },
  { kind: 'hold', put: [{ before: 1, support: clamp('new', 150) }] },
  { kind: 'change-support', support: clamp('two', 210) },
  { kind: 'let-go', support: 'one' },
  { kind: 'hose-clamps', a: { count: 2, fromHoseEndMm: 8 } },
  { kind: 'size', hose: 'larger', a: { end: 'larger-0' }, b: { end: 'larger-0' }, clamps: [] },
  { kind: 'both', first: { kind: 'hose', hose: 'other' }, second: { kind: 'slack', slack: 0.08 } },
];

describe('a mend made in a project', () => {
  it.each(EDITS)('changes the one run, leaves the project that was handed over, and reads again: $kind', (edit) => {
    const before = JSON.stringify(project);
    const after = applyMend(project, { run: run.id, edit });
    expect(JSON.stringify(project)).toBe(before);
    expect(after.runs[0]).not.toEqual(project.runs[0]);
    expect({ ...after, runs: [] }).toEqual({ ...project, runs: [] });
    const parsed = parseProject(serialiseProject(after));
    expect(parsed).toMatchObject({ ok: true, value: after });
  });

  it('of two changes makes the second in the run as the first leaves it', () => {
    const both = mended({
      kind: 'both',
      first: { kind: 'let-go', support: 'one' },
      second: { kind: 'hold', put: [{ before: 1, support: clamp('new', 250) }] },
    });
    expect(both.supports.map(({ id }) => id)).toEqual(['two', 'new']);
  });

  it('unties a hose from another: it leaves their bundles, and a bundle of one hose is none', () => {
    const bundle = (id: string, runs: string[]) => ({ id, name: id, runs });
    const edit: MendEdit = { kind: 'own-way', apartFrom: 'other' };
    const of = (...bundles: ReturnType<typeof bundle>[]) =>
      applyMend({ ...project, bundles }, { run: run.id, edit }).bundles;
    expect(of(bundle('three', [run.id, 'other', 'third']))).toEqual([bundle('three', ['other', 'third'])]);
    expect(of(bundle('two', [run.id, 'other']))).toBeUndefined();
    expect(of(bundle('apart', [run.id, 'third']))).toEqual([bundle('apart', [run.id, 'third'])]);
  });

  it('frees a clock and leaves the hose clamps beside it', () => {
    const hoseClamps = { count: 2 };
    const clamped = sampleProject({ runs: [{ ...run, a: { ...run.a, clockDeg: 30, hoseClamps } }] });
    const freed = applyMend(clamped, { run: run.id, edit: { kind: 'free-clock', side: 'a' } });
    expect(freed.runs[0]?.a).toEqual({ ...run.a, hoseClamps });
  });

  it('takes the stated clock of an end off with the end, and leaves that of one which stays', () => {
    expect(mended({ kind: 'end', side: 'a', end: 'other' }).a).toEqual({ port: run.a.port, end: 'other' });
    expect(mended({ kind: 'end', side: 'b', end: 'other' }).a.clockDeg).toBe(30);
    expect(mended({ kind: 'ends', a: run.a.end, b: 'other' }).a.clockDeg).toBe(30);
  });

  it('of another size puts adapters on the ports of the run, its clamps and its sleeve, and leaves other ports', () => {
    const named = sampleProject({ runs: [{ ...run, supports: [{ ...clamp('one', 100), part: 'p-16' }] }] });
    const adapters = [{ adapter: 'expander', outlet: 'straight' as const }];
    const a = { end: 'larger-0', adapters };
    const edit: MendEdit = {
      kind: 'size',
      hose: 'larger',
      a,
      b: { end: 'larger-0' },
      sleeve: 'wide',
      clamps: [{ support: 'one' }],
    };
    const after = applyMend(named, { run: run.id, edit });
    expect(after.ports.map((port) => port.adapters)).toEqual([adapters, undefined]);
    expect(after.runs[0]).toMatchObject({ hose: 'larger', sleeve: 'wide', a: { port: 'p1', end: 'larger-0' } });
    expect(after.runs[0]?.supports).toEqual([clamp('one', 100)]);
    const fitting = applyMend(named, { run: run.id, edit: { ...edit, clamps: [{ support: 'one', part: 'p-22' }] } });
    expect(fitting.runs[0]?.supports[0]?.part).toBe('p-22');
    expect(parseProject(serialiseProject(after))).toMatchObject({ ok: true, value: after });
  });

  it('puts supports where they come along the hose', () => {
    const put = [
      { before: 0, support: clamp('first', 50) },
      { before: 2, support: clamp('last', 250) },
    ];
    expect(mended({ kind: 'hold', put }).supports.map(({ id }) => id)).toEqual(['first', 'one', 'two', 'last']);
    expect(mended({ kind: 'let-go', support: 'one' }).supports.map(({ id }) => id)).toEqual(['two']);
  });

  it('leaves a support that something is named by, and a run that is not there', () => {
    const named = { ...project, runs: [{ ...project.runs[0]!, onePlane: ['one'] }] };
    expect(applyMend(named, { run: run.id, edit: { kind: 'let-go', support: 'one' } })).toBe(named);
    expect(applyMend(project, { run: 'nobody', edit: { kind: 'slack', slack: 0.1 } })).toBe(project);
  });
});

it('a report takes the lay that a mend was tried with, and what the others then say of it', () => {
  const report = sampleReport([sampleLay('line'), sampleLay('other')]);
  const lay = sampleLay('line', { cutLengthMm: 120 });
  const clearances = [
    {
      to: { kind: 'run' as const, id: 'line' },
      clearanceMm: 30,
      provenAtLeastMm: 30,
      requiredMm: 12,
      at: { arcLengthMm: 0, point: [0, 0, 0] as [number, number, number] },
      onThing: [0, 0, 0] as [number, number, number],
    },
  ];
  const taken = takenMend(report, {
    mend: { id: 'm', run: 'line', edit: { kind: 'slack', slack: 0.1 }, words: 'w' },
    words: 'w',
    how: 'anew',
    lay,
    towards: [{ run: 'other', clearances }],
    findings: [],
    cured: [],
    left: [],
    stopsLeft: 0,
    looksLeft: 0,
    newNotes: [],
    change: 1,
    longerMm: 20,
    toGet: [],
  });
  expect(taken.lays[0]).toBe(lay);
  expect(taken.lays[1]).toEqual({ ...report.lays[1], clearances });
});
