import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { OpenDocument } from '../../../renderer/state/documentStore.ts';
import { lockOf, stretchBetween, stretchOf } from '../../../renderer/state/edits/lockEdits.ts';
import { changeSupport, reorderSupport, supportName } from '../../../renderer/state/edits/supportEdits.ts';
import { handLay } from '../../../renderer/state/handLay.ts';
import { KEY_ACTIONS } from '../../../renderer/state/keys.ts';
import { runState } from '../../../renderer/state/runState.ts';
import { shownSupports } from '../../../renderer/state/shownSupports.ts';
import { hosePlace, supportArc } from '../../../renderer/state/supportPlaces.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Run, Support } from '../../../shared/document/project/schema.ts';
import type { HandShape, JobEnd } from '../../../shared/jobs/contract.ts';
import { SAMPLE_BAY, SAMPLE_PROJECT, sampleBench, sampleLay, sampleReport } from '../sampleBench.ts';

type SampleBench = ReturnType<typeof sampleBench>['bench'];

/** The sample hose: straight along x from 0 to 100, a point every 10 mm. */
const LAY: Lay = sampleLay('feed', {
  centreline: {
    points: Array.from({ length: 11 }, (_, i): [number, number, number] => [i * 10, 0, 0]),
    arcLengthMm: Array.from({ length: 11 }, (_, i) => i * 10),
  },
});
const LAID = sampleReport([LAY, sampleLay('drain')]);
/** The same after a relay: told from the first by its length. */
const RELAID = sampleReport([{ ...LAY, cutLengthMm: 104 }, sampleLay('drain')]);

function shapeAt(point: [number, number, number]): HandShape {
  const { run, outcome, centreline, outsideDiameterMm, ends, supports, liveLengthMm, overallLengthMm, clock } = LAY;
  const { minRadius, straightTailMm } = LAY;
  const hold = { arcLengthMm: 52, point, axis: [1, 0, 0] as [number, number, number], offMm: 0, forceN: 1 };
  const kept = { run, outcome, centreline, outsideDiameterMm, ends, supports, liveLengthMm, overallLengthMm, clock };
  return { ...kept, minRadius, straightTailMm, cutLengthMm: 103, hold };
}

async function laidBench(ends: Parameters<typeof sampleBench>[0] = {}) {
  const made = sampleBench({
    openProject: SAMPLE_BAY,
    layRuns: { kind: 'done', output: LAID },
    relayRun: { kind: 'done', output: RELAID },
    takeRun: { kind: 'done', output: { hand: 'h1', shape: shapeAt([50, 0, 0]) } },
    moveRun: { kind: 'done', output: shapeAt([50, 8, 0]) },
    ...ends,
  });
  await made.bench.openGiven();
  await made.bench.layAll();
  return made;
}

function opened(bench: SampleBench): OpenDocument {
  const { open } = bench.document.getState();
  if (open === null) throw new Error('nothing is open');
  return open;
}

const feed = (bench: SampleBench): Run => opened(bench).history.present.runs[0] as Run;
const cutOf = (bench: SampleBench): number | undefined => opened(bench).report?.lays[0]?.cutLengthMm;

/** An answer that comes when it is told to. */
function late<T>(): { readonly promise: Promise<T>; readonly come: (value: T) => void } {
  let come: (value: T) => void = () => undefined;
  const promise = new Promise<T>((resolve) => {
    come = resolve;
  });
  return { promise, come };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('supports put by hand', () => {
  it('puts a clamp in the middle by key, lays the run again near where it lies, and undo brings the old hose back', async () => {
    const { bench, asked } = await laidBench();
    KEY_ACTIONS.find(({ shown }) => shown === 'c')?.act(bench);
    expect(feed(bench).supports).toEqual([{ id: 'clamp-1', kind: 'clamp', point: [50, 0, 0], axis: [1, 0, 0] }]);
    expect(bench.hand.getState().support).toBe('clamp-1');
    expect(runState(opened(bench), 'feed')).toBe('stale');
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked.at(-1)?.name).toBe('relayRun');
    expect(asked.at(-1)?.input).toMatchObject({ run: 'feed', earlier: LAID });
    expect(cutOf(bench)).toBe(104);
    expect(runState(opened(bench), 'feed')).toBe('clean');
    bench.document.undo();
    expect(feed(bench).supports).toEqual([]);
    expect(cutOf(bench)).toBe(100);
    expect(runState(opened(bench), 'feed')).toBe('clean');
    bench.document.redo();
    expect(cutOf(bench)).toBe(104);
  });

  it('puts it where the pointer is, in the order the hose meets them, each with its own id', async () => {
    const { bench } = await laidBench();
    for (const arcLengthMm of [70, 20, 45]) {
      bench.hover.setState({ place: { run: 'feed', arcLengthMm, from: 'bay' } });
      bench.byHand.put('waypoint');
    }
    expect(feed(bench).supports.map(({ id, point }) => [id, point[0]])).toEqual([
      ['waypoint-2', 20],
      ['waypoint-3', 45],
      ['waypoint-1', 70],
    ]);
  });

  it('waits for the last of several edits before it lays again, and makes them one step', async () => {
    const { bench, asked } = await laidBench();
    bench.byHand.put('clamp');
    for (const x of [51, 52, 53]) {
      await vi.advanceTimersByTimeAsync(100);
      bench.byHand.edit(
        'feed',
        'place of Clamp 1',
        (p) => changeSupport(p, 'feed', 'clamp-1', { point: [x, 0, 0] }),
        true,
      );
    }
    expect(asked.filter(({ name }) => name === 'relayRun')).toHaveLength(0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked.filter(({ name }) => name === 'relayRun')).toHaveLength(1);
    bench.document.undo();
    expect(feed(bench).supports[0]?.point[0]).toBe(50);
  });

  it('says so when no run is chosen, and puts between the ports on a run without a hose', async () => {
    const { bench, asked } = await laidBench({ layRuns: { kind: 'done', output: sampleReport([]) } });
    bench.byHand.put('clamp');
    expect(feed(bench).supports[0]).toMatchObject({ point: [50, 0, 0], axis: [1, 0, 0] });
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked.map(({ name }) => name)).not.toContain('relayRun');
    bench.session.choose(null);
    bench.byHand.put('clamp');
    expect(bench.jobs.getState().notice?.title).toBe('No run is chosen');
  });

  it('keeps what a clamp needs, and the order within its ends', () => {
    const clamp: Support = { id: 'c', kind: 'clamp', point: [1, 2, 3], axis: [1, 0, 0] };
    const way: Support = { id: 'w', kind: 'waypoint', point: [4, 5, 6] };
    const project = { ...SAMPLE_PROJECT, runs: [{ ...(SAMPLE_PROJECT.runs[0] as Run), supports: [clamp, way] }] };
    const supports = (p: typeof project): Support[] => p.runs[0]?.supports ?? [];
    expect(changeSupport(project, 'feed', 'w', { kind: 'clamp' })).toBe(project);
    expect(changeSupport(project, 'feed', 'c', { axis: [0, 0, 0] })).toBe(project);
    expect(supports(changeSupport(project, 'feed', 'c', { name: ' By the tank ' }) as typeof project)[0]?.name).toBe(
      'By the tank',
    );
    const hole = (kind: Support['kind'], holeMm: number): number | undefined =>
      supports(changeSupport(project, 'feed', 'c', { kind, holeMm }) as typeof project)[0]?.holeMm;
    expect([hole('pass-through', 32), hole('pass-through', 0), hole('clamp', 32)]).toEqual([32, undefined, undefined]);
    expect(reorderSupport(project, 'feed', 'c', -1)).toBe(project);
    expect(supports(reorderSupport(project, 'feed', 'c', 1) as typeof project).map(({ id }) => id)).toEqual(['w', 'c']);
    expect(supportName([clamp, way], way, 'Waypoint')).toBe('Waypoint 1');
  });

  it('does not call a run stale for the name of a clamp', async () => {
    const { bench } = await laidBench();
    bench.byHand.put('clamp');
    await vi.advanceTimersByTimeAsync(1000);
    bench.document.edit('name', (p) => changeSupport(p, 'feed', 'clamp-1', { name: 'By the tank' }));
    expect(runState(opened(bench), 'feed')).toBe('clean');
  });
});

describe('the hose in the hand', () => {
  it('follows, leaves a waypoint where it was held when let go, as one step, and is laid again along its shape', async () => {
    const { bench, asked } = await laidBench();
    bench.byHand.grasp({ arcLengthMm: 52 }, [52, 0, 0]);
    bench.byHand.drag([52, 9, 0], false);
    await vi.advanceTimersByTimeAsync(10);
    expect(asked.at(-1)).toMatchObject({
      name: 'moveRun',
      input: { hand: 'h1', change: { pull: { arcLengthMm: 52, to: [52, 9, 0] } } },
    });
    expect(bench.hand.getState().shape?.cutLengthMm).toBe(103);
    expect(handLay(LAY, bench.hand.getState().shape).cutLengthMm).toBe(103);
    expect(feed(bench).supports).toEqual([]);
    await bench.byHand.release();
    expect(feed(bench).supports).toEqual([{ id: 'waypoint-1', kind: 'waypoint', point: [50, 8, 0], axis: [1, 0, 0] }]);
    expect(asked.at(-1)).toMatchObject({ name: 'relayRun', input: { along: LAY.centreline.points } });
    expect(bench.hand.getState()).toMatchObject({ hold: null, shape: null });
    expect(opened(bench).history.past).toHaveLength(1);
    bench.document.undo();
    expect(feed(bench).supports).toEqual([]);
  });

  it('leaves a clamp with Shift, and nothing at all when it is left with Escape', async () => {
    const { bench } = await laidBench();
    bench.byHand.grasp({ arcLengthMm: 52 }, [52, 0, 0]);
    bench.byHand.drag([52, 9, 0], true);
    await bench.byHand.release();
    expect(feed(bench).supports.map(({ kind }) => kind)).toEqual(['clamp']);
    bench.document.undo();
    bench.byHand.grasp({ arcLengthMm: 52 }, [52, 0, 0]);
    bench.byHand.drag([52, 9, 0], true);
    KEY_ACTIONS.find(({ shown }) => shown === 'Escape')?.act(bench);
    await bench.byHand.release();
    await vi.advanceTimersByTimeAsync(1000);
    expect(bench.hand.getState()).toMatchObject({ hold: null, shape: null });
    expect(feed(bench).supports).toEqual([]);
    expect(cutOf(bench)).toBe(100);
  });

  it('asks for the latest place only while one is being worked out', async () => {
    const { bench, asked } = await laidBench();
    bench.byHand.grasp({ arcLengthMm: 52 }, [52, 0, 0]);
    for (const y of [1, 2, 3, 4]) bench.byHand.drag([52, y, 0], false);
    await vi.advanceTimersByTimeAsync(10);
    const moves = asked
      .filter(({ name }) => name === 'moveRun')
      .map(({ input }) => input as { change: { pull: { to: number[] } } });
    expect(moves.map(({ change }) => change.pull.to[1])).toEqual([4]);
  });

  it('moves a support of the run, with the others where they are', async () => {
    const { bench, asked } = await laidBench();
    bench.byHand.putAt('clamp', 30);
    bench.byHand.putAt('waypoint', 60);
    await vi.advanceTimersByTimeAsync(1000);
    bench.byHand.grasp({ support: 'clamp-1' }, [30, 0, 0]);
    bench.byHand.drag([30, 5, 0], false);
    await vi.advanceTimersByTimeAsync(10);
    const { hold } = bench.hand.getState();
    const shown = shownSupports(feed(bench), LAY, hold);
    expect(shown.map(({ id, point }) => [id, point[1]])).toEqual([
      ['clamp-1', 5],
      ['waypoint-1', 0],
    ]);
    expect(asked.at(-1)).toMatchObject({
      input: { change: { supports: [{ point: [30, 5, 0] }, { point: [60, 0, 0] }] } },
    });
    await bench.byHand.release();
    expect(feed(bench).supports.map(({ point }) => point[1])).toEqual([5, 0]);
  });

  it('slides a clamp along the hose by key and by dragging, with the direction the hose has there', async () => {
    const { bench } = await laidBench();
    bench.byHand.putAt('clamp', 40);
    for (let i = 0; i < 3; i++) KEY_ACTIONS.find(({ shown }) => shown === '.')?.act(bench);
    KEY_ACTIONS.find(({ shown }) => shown === ',')?.act(bench);
    expect(feed(bench).supports[0]).toMatchObject({ point: [42, 0, 0], axis: [1, 0, 0] });
    await vi.advanceTimersByTimeAsync(1000);
    bench.byHand.dragAlong('clamp-1', 55);
    bench.byHand.dragAlong('clamp-1', 500);
    await bench.byHand.release();
    // The hose lies free up to its mouth, 18 mm before its end.
    expect(feed(bench).supports[0]?.point[0]).toBe(86);
    bench.document.undo();
    expect(feed(bench).supports[0]?.point[0]).toBe(42);
    bench.document.undo();
    expect(feed(bench).supports[0]?.point[0]).toBe(40);
  });

  it('says why the hose does not follow, and still leaves the waypoint where the hand was', async () => {
    const refused: JobEnd<'takeRun'> = { kind: 'bad-input', problems: [{ path: '', message: 'no hose to take' }] };
    const { bench } = await laidBench({ takeRun: refused });
    bench.byHand.grasp({ arcLengthMm: 52 }, [52, 0, 0]);
    bench.byHand.drag([52, 9, 0], false);
    await vi.advanceTimersByTimeAsync(10);
    expect(bench.hand.getState().trouble).toBe('no hose to take');
    await bench.byHand.release();
    expect(feed(bench).supports[0]?.point).toEqual([52, 9, 0]);
  });
});

describe('answers that come late', () => {
  it('do not put a hose on the bench whose clamp has been taken back meanwhile', async () => {
    const relay = late<JobEnd<'relayRun'>>();
    const { bench, asked } = await laidBench({ relayRun: relay.promise });
    bench.byHand.put('clamp');
    await vi.advanceTimersByTimeAsync(1000);
    bench.document.undo();
    relay.come({ kind: 'done', output: RELAID });
    await vi.advanceTimersByTimeAsync(10);
    expect(cutOf(bench)).toBe(100);
    expect(runState(opened(bench), 'feed')).toBe('clean');
    // The other hose goes back with it to the laying that was measured against this one.
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked.filter(({ name }) => name === 'layRuns')).toHaveLength(1);
  });

  it('are stopped without a word when the hose is taken in the hand before they come', async () => {
    const relay = late<JobEnd<'relayRun'>>();
    const { bench } = await laidBench({ relayRun: relay.promise });
    bench.byHand.put('clamp');
    await vi.advanceTimersByTimeAsync(1000);
    bench.byHand.grasp({ arcLengthMm: 70 }, [70, 0, 0]);
    expect(bench.jobs.getState().current?.cancelling).toBe(true);
    relay.come({ kind: 'cancelled' });
    await vi.advanceTimersByTimeAsync(10);
    expect(bench.jobs.getState()).toMatchObject({ current: null, notice: null });
    expect(bench.hand.getState().hold).not.toBeNull();
  });

  it('let the hose be taken in the hand again while it settles, and settle after that', async () => {
    const relay = late<JobEnd<'relayRun'>>();
    const { bench, asked } = await laidBench({ relayRun: relay.promise });
    bench.byHand.put('clamp');
    await vi.advanceTimersByTimeAsync(1000);
    bench.byHand.grasp({ arcLengthMm: 70 }, [70, 0, 0]);
    expect(bench.hand.getState().hold).not.toBeNull();
    bench.byHand.drag([70, 4, 0], false);
    const letGo = bench.byHand.release();
    await vi.advanceTimersByTimeAsync(10);
    expect(asked.filter(({ name }) => name === 'relayRun')).toHaveLength(1);
    relay.come({ kind: 'done', output: RELAID });
    await vi.advanceTimersByTimeAsync(10);
    await letGo;
    expect(asked.filter(({ name }) => name === 'relayRun')).toHaveLength(2);
    expect(feed(bench).supports.map(({ kind }) => kind)).toEqual(['clamp', 'waypoint']);
  });
});

describe('a clamp slid before the run was laid with it, and undone', () => {
  /** The sample hose as it lies with the clamp held at x; its length tells the lays apart. */
  const laidWithClampAt = (x: number): Lay => ({
    ...LAY,
    cutLengthMm: 100 + x / 100,
    supports: [
      {
        id: 'clamp-1',
        kind: 'clamp',
        proposed: false,
        at: { arcLengthMm: x, point: [x, 0, 0] },
        axis: [1, 0, 0],
      },
    ],
  });
  const relayWith = (lay: Lay): JobEnd<'relayRun'> => ({
    kind: 'done',
    output: sampleReport([lay, sampleLay('drain')]),
  });
  /** As the list of what holds the hose tells it. */
  const shownMm = (bench: SampleBench): number =>
    supportArc(opened(bench).report?.lays[0] as Lay, feed(bench).supports[0] as Support);

  it('stands where it was put again, and its hose is laid there', async () => {
    const { bench, asked, ends } = await laidBench({ relayRun: relayWith(laidWithClampAt(70)) });
    bench.byHand.putAt('clamp', 40);
    await vi.advanceTimersByTimeAsync(100);
    bench.byHand.dragAlong('clamp-1', 70);
    await bench.byHand.release();
    expect(asked.filter(({ name }) => name === 'relayRun')).toHaveLength(1);
    expect(shownMm(bench)).toBe(70);

    ends.relayRun = relayWith(laidWithClampAt(40));
    bench.document.undo();
    expect(feed(bench).supports[0]?.point[0]).toBe(40);
    expect(shownMm(bench)).toBe(40);
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked.filter(({ name }) => name === 'relayRun')).toHaveLength(2);
    expect(asked.at(-1)?.input).toMatchObject({ run: 'feed', earlier: LAID });
    expect(cutOf(bench)).toBe(100.4);
    expect(runState(opened(bench), 'feed')).toBe('clean');
  });

  it('is laid though something else is edited before its moment has come, and not when it is taken back by then', async () => {
    const { bench, asked } = await laidBench({ relayRun: relayWith(laidWithClampAt(40)) });
    const relays = () => asked.filter(({ name }) => name === 'relayRun').length;
    bench.byHand.putAt('clamp', 40);
    bench.document.edit('name', (project) => ({ ...project, name: 'Another name' }));
    await vi.advanceTimersByTimeAsync(1000);
    expect(relays()).toBe(1);
    bench.byHand.putAt('waypoint', 60);
    bench.document.undo();
    await vi.advanceTimersByTimeAsync(1000);
    expect(relays()).toBe(1);
    expect(runState(opened(bench), 'feed')).toBe('clean');
  });

  it('is told where it is put, not where the hose of another moment held it', () => {
    const clamp: Support = { id: 'clamp-1', kind: 'clamp', point: [40, 0, 0], axis: [1, 0, 0] };
    expect(supportArc(laidWithClampAt(70), clamp)).toBe(40);
    expect(supportArc(laidWithClampAt(70), { ...clamp, point: [70, 0, 0] })).toBe(70);
  });
});

describe('runs changed by hand one after the other', () => {
  const clampOn = (bench: SampleBench, run: string): void => {
    bench.session.choose(run);
    bench.byHand.put('clamp');
  };
  const relaid = (asked: readonly { name: string; input: unknown }[]): string[] =>
    asked.filter(({ name }) => name === 'relayRun').map(({ input }) => (input as { run: string }).run);
  const states = (bench: SampleBench): string[] => ['feed', 'drain'].map((run) => runState(opened(bench), run));

  it('are both laid again, though the second was changed before the first one’s moment had come', async () => {
    const { bench, asked } = await laidBench();
    clampOn(bench, 'feed');
    await vi.advanceTimersByTimeAsync(100);
    clampOn(bench, 'drain');
    expect(states(bench)).toEqual(['stale', 'stale']);
    await vi.advanceTimersByTimeAsync(2000);
    expect(relaid(asked)).toEqual(['feed', 'drain']);
    expect(states(bench)).toEqual(['clean', 'clean']);
  });

  it('are both laid again, though the second was changed while the first settled', async () => {
    const relay = late<JobEnd<'relayRun'>>();
    const { bench, asked, ends } = await laidBench({ relayRun: relay.promise });
    clampOn(bench, 'feed');
    await vi.advanceTimersByTimeAsync(1000);
    clampOn(bench, 'drain');
    await vi.advanceTimersByTimeAsync(1000);
    expect([relaid(asked), bench.jobs.getState().current?.cancelling]).toEqual([['feed'], false]);
    ends.relayRun = { kind: 'done', output: RELAID };
    relay.come({ kind: 'done', output: RELAID });
    await vi.advanceTimersByTimeAsync(2000);
    expect(relaid(asked)).toEqual(['feed', 'drain']);
    expect(states(bench)).toEqual(['clean', 'clean']);
  });

  it('are laid again when other work has ended that was under way as their moment came', async () => {
    const { bench, asked, ends } = await laidBench();
    const all = late<JobEnd<'layRuns'>>();
    ends.layRuns = all.promise;
    void bench.layAll();
    clampOn(bench, 'feed');
    await vi.advanceTimersByTimeAsync(5000);
    expect(relaid(asked)).toEqual([]);
    all.come({ kind: 'done', output: LAID });
    await vi.advanceTimersByTimeAsync(1000);
    expect(relaid(asked)).toEqual(['feed']);
    expect(states(bench)).toEqual(['clean', 'clean']);
  });

  const rename = (bench: SampleBench, name: string): void =>
    bench.document.edit('name', (project) => ({ ...project, name }));

  it('are not tried again at every other edit once they could not be laid, and again when they are changed', async () => {
    const refused: JobEnd<'relayRun'> = { kind: 'bad-input', problems: [{ path: '', message: 'no way there' }] };
    const { bench, asked } = await laidBench({ relayRun: refused });
    clampOn(bench, 'feed');
    await vi.advanceTimersByTimeAsync(1000);
    expect(bench.jobs.getState().notice?.lines[0]).toContain('no way there');
    bench.jobs.dismiss();
    for (const name of ['One', 'Two', 'Three']) {
      rename(bench, name);
      await vi.advanceTimersByTimeAsync(1000);
    }
    expect(relaid(asked)).toEqual(['feed']);
    expect(bench.jobs.getState().notice).toBeNull();
    clampOn(bench, 'feed');
    await vi.advanceTimersByTimeAsync(1000);
    expect(relaid(asked)).toEqual(['feed', 'feed']);
  });

  it('are let be when laying again was stopped by the user, also where something else was edited meanwhile', async () => {
    const relay = late<JobEnd<'relayRun'>>();
    const { bench, asked } = await laidBench({ relayRun: relay.promise });
    clampOn(bench, 'feed');
    await vi.advanceTimersByTimeAsync(1000);
    rename(bench, 'One');
    bench.jobs.cancel();
    relay.come({ kind: 'cancelled' });
    await vi.advanceTimersByTimeAsync(1000);
    rename(bench, 'Two');
    await vi.advanceTimersByTimeAsync(1000);
    expect(relaid(asked)).toEqual(['feed']);
    expect(states(bench)).toEqual(['stale', 'clean']);
  });

  it('are laid again after the hose was taken in the hand while they settled, and let go without a change', async () => {
    const relay = late<JobEnd<'relayRun'>>();
    const { bench, asked, ends } = await laidBench({ relayRun: relay.promise });
    clampOn(bench, 'feed');
    await vi.advanceTimersByTimeAsync(1000);
    bench.byHand.grasp({ arcLengthMm: 70 }, [70, 0, 0]);
    relay.come({ kind: 'cancelled' });
    await vi.advanceTimersByTimeAsync(1000);
    ends.relayRun = { kind: 'done', output: RELAID };
    bench.byHand.letGo();
    await vi.advanceTimersByTimeAsync(1000);
    expect(relaid(asked)).toEqual(['feed', 'feed']);
    expect(states(bench)).toEqual(['clean', 'clean']);
  });
});

describe('locked stretches', () => {
  it('holds the line of the hose between its ends, after the support before it', async () => {
    const { bench } = await laidBench();
    bench.byHand.putAt('clamp', 30);
    const made = lockOf(LAY, feed(bench), { fromMm: 45, toMm: 72 });
    if (!made.ok) throw new Error('refused');
    expect(made.value).toMatchObject({ id: 'lock-1', after: 'clamp-1', startAxis: [1, 0, 0], endAxis: [1, 0, 0] });
    expect(made.value.points.map((p) => p[0])).toEqual([45, 50, 60, 70, 72]);
    expect(
      stretchOf(LAY, {
        ...made.value,
        points: [
          [40, 0, 0],
          [70, 0, 0],
        ],
      }),
    ).toEqual({ fromMm: 40, toMm: 70 });
  });

  it('is marked and locked by one key, and freed again; too short, in a collar or over another is refused in words', async () => {
    const { bench } = await laidBench();
    const g = KEY_ACTIONS.find(({ shown }) => shown === 'g');
    g?.act(bench);
    expect(bench.hand.getState().stretch).not.toBeNull();
    g?.act(bench);
    expect(bench.hand.getState().stretch).toBeNull();
    expect(feed(bench).locks?.map(({ id }) => id)).toEqual(['lock-1']);
    bench.byHand.lock({ fromMm: 40, toMm: 60 });
    expect(bench.jobs.getState().notice?.lines[0]).toContain('locked already');
    bench.byHand.lock({ fromMm: 0, toMm: 5 });
    expect(bench.jobs.getState().notice?.lines[0]).toContain('10 mm or longer');
    bench.byHand.unlock('feed', 'lock-1');
    expect(feed(bench).locks).toBeUndefined();
    expect(stretchBetween(LAY, 60, 41)).toEqual({ fromMm: 41, toMm: 60 });
    expect(stretchBetween(LAY, 60, 58)).toBeNull();
  });
});

describe('places on the hose', () => {
  it('is the middle where none is pointed at, and nowhere between two ports in one place', () => {
    const run = SAMPLE_PROJECT.runs[0] as Run;
    expect(hosePlace(SAMPLE_PROJECT, run, LAY, null)?.point).toEqual([50, 0, 0]);
    const heaped = {
      ...SAMPLE_PROJECT,
      ports: SAMPLE_PROJECT.ports.map((p) => ({ ...p, seatPoint: [0, 0, 0] as [number, number, number] })),
    };
    expect(hosePlace(heaped, run, undefined, null)).toBeNull();
  });
});
