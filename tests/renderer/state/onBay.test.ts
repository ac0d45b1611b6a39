import { describe, expect, it } from 'vitest';
import type { OpenDocument } from '../../../renderer/state/documentStore.ts';
import { freshId, numberedId } from '../../../renderer/state/edits/freshId.ts';
import { draftProblems, draftRun, endsFor, freePorts, removeRun, runOf } from '../../../renderer/state/edits/newRun.ts';
import { changePort, newPort, seatPort, upFor } from '../../../renderer/state/edits/portEdits.ts';
import { addSkin, changeSkin, setPartSkin } from '../../../renderer/state/edits/skinEdits.ts';
import { KEY_ACTIONS } from '../../../renderer/state/keys.ts';
import { dot, length, type Vec3 } from '../../../shared/base/vec3.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import { Project } from '../../../shared/document/project/schema.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import { skinOfPart } from '../../../shared/document/project/skinOfPart.ts';
import { SAMPLE_BAY, SAMPLE_PROJECT, sampleBench, sampleLay, sampleReport } from '../sampleBench.ts';

type SampleBench = ReturnType<typeof sampleBench>['bench'];

function opened(bench: SampleBench): OpenDocument {
  const { open } = bench.document.getState();
  if (open === null) throw new Error('nothing is open');
  return open;
}

async function readBench(ends: Parameters<typeof sampleBench>[0] = {}) {
  const made = sampleBench({ openProject: SAMPLE_BAY, ...ends });
  await made.bench.openGiven();
  return made;
}

const press = (bench: SampleBench, shown: string): void => KEY_ACTIONS.find((a) => a.shown === shown)?.act(bench);
const readsBack = (project: Project): boolean => parseProject(serialiseProject(project)).ok;
const AIM = { point: [1.23456, 2, 3], normal: [0, 0, 1], part: 'plate' } as const;

describe('ports by hand', () => {
  it('puts a port in the middle of a round rim, else on the surface, and a run may join it', async () => {
    const { bench } = await readBench();
    press(bench, 'o');
    expect(bench.session.getState().step).toBe('ports');
    bench.onBay.take({ ...AIM, rim: { centre: [5, 6, 7], axis: [0, 1, 0], radiusMm: 8 } });
    expect(bench.hand.getState()).toMatchObject({ tool: { kind: 'none' }, port: 'port-5' });
    expect(opened(bench).history.present.ports.at(-1)).toEqual({
      id: 'port-5',
      name: 'Port 5',
      seatPoint: [5, 6, 7],
      axis: [0, 1, 0],
      up: [0, 0, 1],
      seat: 'flare-37',
      dash: 8,
    });
    press(bench, 'o');
    bench.onBay.take({ ...AIM, rim: null });
    expect(opened(bench).history.present.ports.at(-1)).toMatchObject({ seatPoint: [1.23, 2, 3], axis: [0, 0, 1] });
    expect(readsBack(opened(bench).history.present)).toBe(true);
    expect(freePorts(opened(bench).history.present).map(({ id }) => id)).toEqual(['port-5', 'port-6']);
    bench.document.undo();
    bench.document.undo();
    expect(opened(bench).history.present.ports).toHaveLength(4);
  });

  it('moves the chosen port, and Escape puts the tool down without a trace', async () => {
    const { bench } = await readBench();
    bench.session.goTo('ports');
    bench.hand.set({ port: 'p2' });
    press(bench, 'm');
    press(bench, 'Escape');
    bench.onBay.take({ ...AIM, rim: null });
    expect(opened(bench).history.past).toHaveLength(0);
    press(bench, 'm');
    bench.onBay.take({ ...AIM, rim: null });
    expect(opened(bench).history.present.ports[1]).toMatchObject({ id: 'p2', seatPoint: [1.23, 2, 3], up: [1, 0, 0] });
  });

  it('takes a free port away and keeps one that a run joins, with a sentence', async () => {
    const { bench } = await readBench();
    press(bench, 'o');
    bench.onBay.take(AIM);
    press(bench, 'Delete');
    expect(opened(bench).history.present.ports).toHaveLength(4);
    bench.hand.set({ port: 'p1' });
    press(bench, 'Delete');
    expect(opened(bench).history.present.ports).toHaveLength(4);
    expect(bench.jobs.getState().notice).toMatchObject({ title: 'This port stays' });
    expect(bench.jobs.getState().notice?.lines[0]).toContain('Feed joins it');
  });

  it('keeps 12 o’clock square to the axis, as near as it can to what it was', () => {
    for (const axis of [
      [0, 0, 1],
      [0, 0, -3],
      [1, 2, 3],
      [0.001, 0, 1],
      [-4, 0.2, 0],
    ] as Vec3[]) {
      const up = upFor(axis);
      expect(length(up)).toBeCloseTo(1, 12);
      expect(dot(up, axis) / length(axis)).toBeCloseTo(0, 12);
    }
    expect(upFor([1, 0, 0])).toEqual([0, 0, 1]);
    const turned = seatPort(SAMPLE_PROJECT, 'p1', { seatPoint: [0, 0, 0], axis: [1, 0, 0] });
    expect(readsBack(turned)).toBe(true);
    expect(seatPort(SAMPLE_PROJECT, 'p1', { seatPoint: [0, 0, 0], axis: [0, 0, 1] })).toBe(SAMPLE_PROJECT);
    expect(changePort(SAMPLE_PROJECT, 'p1', { name: 'Port 1' })).toBe(SAMPLE_PROJECT);
    expect(newPort({ ...SAMPLE_PROJECT, ports: [] }, { seatPoint: [0, 0, 0], axis: [0, 0, 1] }, []).name).toBe(
      'Port 1',
    );
  });
});

describe('a new run', () => {
  const spare = Project.parse({
    ...SAMPLE_PROJECT,
    ports: [
      ...SAMPLE_PROJECT.ports,
      { ...SAMPLE_PROJECT.ports[0], id: 'p5', name: 'Small', dash: 6 },
      { ...SAMPLE_PROJECT.ports[0], id: 'p6', name: 'Spare' },
      { ...SAMPLE_PROJECT.ports[0], id: 'p7', name: 'Other' },
    ],
  });

  it('is drafted between two free ports of one size, with what runs of its purpose carry', async () => {
    const { bench } = await readBench();
    const { tables } = opened(bench);
    expect(draftRun(SAMPLE_PROJECT, tables)).toBeNull();
    const draft = draftRun(spare, tables, { portA: 'p6', purpose: 'turbo-oil-feed' });
    expect(draft).toMatchObject({
      name: 'Turbo oil feed',
      portA: 'p6',
      portB: 'p7',
      hose: 'braided',
      endA: 'straight',
      endB: 'straight',
      fluid: 'engine-oil',
      pressureKpa: 400,
      temperatureC: 110,
    });
    const fuel = draftRun(spare, tables, { purpose: 'fuel' });
    expect(fuel).toMatchObject({ fluid: 'petrol', pressureKpa: null, temperatureC: null });
    if (draft === null || fuel === null) throw new Error('no draft');
    expect(draftProblems(fuel, spare, tables)).toEqual([
      'State the working pressure.',
      'State the temperature of what runs in it.',
    ]);
    expect(runOf(fuel, spare, tables)).toBeNull();
    expect(draftProblems({ ...draft, name: ' ', portB: 'p6' }, spare, tables)).toHaveLength(2);
    expect(runOf(draft, spare, tables)).toMatchObject({ id: 'turbo-oil-feed', a: { port: 'p6' }, b: { port: 'p7' } });
  });

  it('puts ends that seat without an adapter first, straight before angled', async () => {
    const { bench } = await readBench();
    const { ends, hoses } = opened(bench).tables;
    expect(endsFor(ends, hoses[0], spare.ports[0]).map(({ id }) => id)).toEqual(['straight', 'elbow']);
    const jic = ends.map((end, i) => (i === 0 ? { ...end, seat: 'other' } : end));
    expect(endsFor(jic, hoses[0], spare.ports[0]).map(({ id }) => id)).toEqual(['elbow', 'straight']);
  });

  it('leaves no rule and no bundle that names it when it is taken away', () => {
    const third = { ...(SAMPLE_PROJECT.runs[0] as Project['runs'][number]), id: 'third', name: 'Third' };
    const bundled = (runs: string[]): Project => ({
      ...SAMPLE_PROJECT,
      runs: [...SAMPLE_PROJECT.runs, third],
      bundles: [{ id: 'side', name: 'Side by side', runs }],
      overrides: [{ rule: 'slack-least', run: 'feed', value: 0, reason: 'a test' }],
    });
    expect(removeRun(bundled(['feed', 'drain', 'third']), 'feed')).toMatchObject({
      bundles: [{ runs: ['drain', 'third'] }],
      overrides: [],
    });
    expect(removeRun(bundled(['feed', 'drain']), 'feed').bundles).toBeUndefined();
  });

  it('is added and chosen, taken away with its hose, and undo brings both back', async () => {
    const report = sampleReport([sampleLay('feed'), sampleLay('drain')]);
    const { bench } = await readBench({ layRuns: { kind: 'done', output: report } });
    await bench.layAll();
    bench.onRuns.remove('feed');
    expect(bench.session.getState().run).toBe('drain');
    expect(opened(bench).report?.lays.map(({ run }) => run)).toEqual(['drain']);
    bench.document.undo();
    expect(opened(bench).report?.lays.map(({ run }) => run)).toEqual(['feed', 'drain']);
    bench.document.redo();
    expect(opened(bench).report?.lays.map(({ run }) => run)).toEqual(['drain']);
    press(bench, 'r');
    expect(bench.hand.getState().stating).toBe(true);
    const { tables, history } = opened(bench);
    const draft = draftRun(history.present, tables, { purpose: 'turbo-oil-feed' });
    if (draft === null) throw new Error('no draft');
    bench.onRuns.add(draft);
    expect(bench.session.getState().run).toBe('turbo-oil-feed');
    expect(bench.hand.getState().stating).toBe(false);
    expect(readsBack(opened(bench).history.present)).toBe(true);
  });
});

describe('skins by hand', () => {
  const PARTS = ['exhaust-1', 'exhaust-2', 'tank', 'plate'];
  const project = Project.parse({
    ...SAMPLE_PROJECT,
    bay: {
      ...SAMPLE_PROJECT.bay,
      skins: [
        { id: 'hot', name: 'Exhaust', kind: 'hot', parts: ['exhaust-*'], surfaceTemperatureC: 600 },
        { id: 'composite', name: 'Tub', kind: 'composite', parts: ['tank'] },
      ],
    },
  });
  const skins = (p: Project): string[] => PARTS.map((part) => skinOfPart(p, part).id);

  it('moves one part and leaves every other where it was, patterns too', () => {
    expect(skins(project)).toEqual(['hot', 'hot', 'composite', 'plain']);
    expect(skins(setPartSkin(project, 'exhaust-2', 'composite', PARTS))).toEqual([
      'hot',
      'composite',
      'composite',
      'plain',
    ]);
    expect(skins(setPartSkin(project, 'exhaust-1', null, PARTS))).toEqual(['plain', 'hot', 'composite', 'plain']);
    expect(skins(setPartSkin(project, 'plate', 'hot', PARTS))).toEqual(['hot', 'hot', 'composite', 'hot']);
    expect(setPartSkin(project, 'tank', 'composite', PARTS)).toBe(project);
  });

  it('adds a skin with an id of its own', () => {
    const { project: more, id } = addSkin(project, { name: 'Exhaust', kind: 'sharp-edge' });
    expect(id).toBe('exhaust');
    expect(readsBack(more)).toBe(true);
    expect(addSkin(project, { name: 'Plain', kind: 'composite' }).id).toBe('plain-2');
  });

  it('states the emissivity of a hot skin, keeps it through other changes, and takes it away again', () => {
    const of = (p: Project): number | undefined => p.bay.skins.find((s) => s.id === 'hot')?.emissivity;
    const bare = changeSkin(project, 'hot', { emissivity: 0.4 });
    expect(of(bare)).toBe(0.4);
    expect(readsBack(bare)).toBe(true);
    expect(of(changeSkin(bare, 'hot', { name: 'Manifold' }))).toBe(0.4);
    expect(changeSkin(bare, 'hot', { emissivity: null })).toEqual(project);
    expect(of(changeSkin(bare, 'hot', { kind: 'plain' }))).toBeUndefined();
  });
});

describe('ids', () => {
  it('are made of names, and told apart by a number', () => {
    expect(freshId('Öl, Zulauf 2', 'x', [])).toBe('ol-zulauf-2');
    expect(freshId('…', 'port', [])).toBe('port');
    expect(freshId('Tank', 'x', [{ id: 'tank' }, { id: 'tank-2' }])).toBe('tank-3');
    expect(numberedId('clamp', [{ id: 'clamp-1' }, { id: 'clamp-3' }])).toBe('clamp-2');
  });
});
