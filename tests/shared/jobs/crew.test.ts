import { describe, expect, test } from 'vitest';
import { Cancelled, UNWATCHED, type Watch } from '../../../shared/base/watch.ts';
import { type Crew, type FromLayWorker, openCrew, type ToLayWorker } from '../../../shared/jobs/crew.ts';
import { rockTogether } from '../../../shared/jobs/rockTogether.ts';
import { inSharedMemory } from '../../../shared/jobs/sharedBay.ts';
import { layRuns } from '../../../shared/solve/layRuns/layRuns.ts';
import type { LaidTask, LayTask } from '../../../shared/solve/layRuns/layTask.ts';
import { bodyBays } from '../../../shared/solve/rock/bodyBays.ts';
import { blockBay } from '../../arbitraries/blockBays.ts';
import { rockingBlocks } from '../../arbitraries/rockingBlocks.ts';
import { laysAsText } from '../../oracles/laysAsText.ts';
import { dawdlers } from './dawdlers.ts';

interface Puppet {
  readonly posted: ToLayWorker[];
  terminated: boolean;
  say(message: FromLayWorker): void;
  die(words: string): void;
}

/** Workers that do nothing by themselves: the test says what they answer. */
function puppets(most: number, canShareMemory = true): { crew: Crew; started: Puppet[] } {
  const started: Puppet[] = [];
  const crew = openCrew({
    start: (receive, broke) => {
      const puppet: Puppet = { posted: [], terminated: false, say: receive, die: broke };
      started.push(puppet);
      return {
        post: (message) => void puppet.posted.push(message),
        terminate: () => {
          puppet.terminated = true;
        },
      };
    },
    most,
    canShareMemory,
  });
  return { crew, started };
}

const made = blockBay(11, 6, 4);
const context = { project: made.project.project, bay: made.bay };
const tasks: LayTask[] = made.project.runs.map((run) => ({ how: 'as-asked', run, others: [] }));
const done: LaidTask = { breathLines: [] };
const kinds = ({ posted }: Puppet): string[] => posted.map((m) => m.kind);

async function severalLaid(crew?: Crew): Promise<string> {
  const { bay, project } = blockBay(5, 9, 5);
  const within = { project: project.project, bay };
  return laysAsText(await layRuns(within, project, project.runs, [], UNWATCHED, crew?.inContext(within)));
}

const rocking = rockingBlocks(3);
const still = await layRuns(
  { project: rocking.project.project, bay: rocking.bay },
  rocking.project,
  rocking.project.runs,
  [],
  UNWATCHED,
);

async function rockedBy(crew?: Crew): Promise<string> {
  const { project, bay } = rocking;
  const bodies = bodyBays(project.project, bay.mesh, UNWATCHED);
  const memory = crew === undefined ? {} : { crew };
  const rocked = await rockTogether({ project: project.project, bay }, project, bodies, still, memory, UNWATCHED);
  expect(rocked[0]?.rock?.extremes.length).toBeGreaterThan(2);
  return laysAsText(rocked);
}

const laidAlone = await severalLaid();
const rockedAlone = await rockedBy();

describe('a crew', () => {
  // One worker has nobody to be sooner than.
  test.each([
    [1, [1]],
    [2, [1, 2]],
    [3, [1, 2]],
  ])('of %d answers the same bytes as one that lays by itself', async (most, seeds) => {
    for (const seed of seeds) expect(await severalLaid(dawdlers(most, seed))).toBe(laidAlone);
  });

  test.each([2, 3])('of %d rocks hoses as one does that rocks them by itself', async (most) => {
    expect(await rockedBy(dawdlers(most, 3))).toBe(rockedAlone);
  });

  test('starts no worker for a lone task, and no more than there are tasks', async () => {
    const { crew, started } = puppets(4);
    const [only] = await crew.inContext(context).doEach(tasks.slice(0, 1), () => UNWATCHED);
    expect(only?.lay?.run).toBe('run-0');
    expect(started).toHaveLength(0);
    void crew.inContext(context).doEach(tasks.slice(0, 2), () => UNWATCHED);
    expect(started).toHaveLength(2);
  });

  test('gives each worker the bay once, one task at a time, and keeps the order of answers', async () => {
    const { crew, started } = puppets(2);
    const end = crew.inContext(context).doEach(tasks.slice(0, 3), () => UNWATCHED);
    expect(started.map(kinds)).toEqual([
      ['context', 'task'],
      ['context', 'task'],
    ]);
    const [first, second] = started as [Puppet, Puppet];
    expect(first.posted[0]).toHaveProperty('bay');
    second.say({ kind: 'done', done: { ...done, breathLines: [undefined] } });
    expect(kinds(second)).toEqual(['context', 'task', 'task']);
    second.say({ kind: 'done', done });
    first.say({ kind: 'done', done: { breathLines: [undefined, undefined] } });
    expect((await end).map((d) => d.breathLines.length)).toEqual([2, 1, 0]);
    // Another project in the same bay: the bay is not sent again.
    void crew.inContext({ ...context }).doEach(tasks.slice(0, 2), () => UNWATCHED);
    expect(kinds(first).slice(2)).toEqual(['context', 'task']);
    expect(first.posted[2]).not.toHaveProperty('bay');
  });

  test('tells how far each task is to its own watch', () => {
    const { crew, started } = puppets(2);
    const heard: [number, number][] = [];
    const watchOf = (i: number): Watch => ({ ...UNWATCHED, report: ({ fraction }) => void heard.push([i, fraction]) });
    void crew.inContext(context).doEach(tasks.slice(0, 2), watchOf);
    started[1]?.say({ kind: 'progress', progress: { fraction: 0.5, doing: 'laying' } });
    expect(heard).toEqual([[1, 0.5]]);
  });

  test('fails in words when a worker dies, ends the others, and starts anew for what comes next', async () => {
    const { crew, started } = puppets(2);
    const end = crew.inContext(context).doEach(tasks, () => UNWATCHED);
    started[1]?.die('out of memory');
    await expect(end).rejects.toThrow('a worker that lays hoses broke off: out of memory');
    expect(started.map((p) => p.terminated)).toEqual([true, true]);
    const next = crew.inContext(context).doEach(tasks.slice(0, 2), () => UNWATCHED);
    expect(started).toHaveLength(4);
    started[0]?.say({ kind: 'done', done });
    started[2]?.say({ kind: 'failed', message: 'crew.test: thrown on purpose' });
    await expect(next).rejects.toThrow('thrown on purpose');
  });

  test('hands the cancel flag on; what was asked ends as cancelled and what waits is not begun', async () => {
    const { crew, started } = puppets(2);
    const cancelFlag = new SharedArrayBuffer(4);
    const flag = new Int32Array(cancelFlag);
    const watch: Watch = { ...UNWATCHED, isCancelled: () => Atomics.load(flag, 0) !== 0, cancelFlag };
    const end = crew.inContext(context).doEach(tasks, () => watch);
    expect(started[0]?.posted[1]).toMatchObject({ kind: 'task', cancelFlag });
    Atomics.store(flag, 0, 1);
    started[0]?.say({ kind: 'cancelled' });
    await expect(end).rejects.toBeInstanceOf(Cancelled);
    expect(started.flatMap(kinds)).toEqual(['context', 'task', 'context', 'task']);
    // The other worker has not ended its task yet: the next job waits for it.
    const next = crew.inContext(context).doEach(tasks.slice(0, 2), () => UNWATCHED);
    started[1]?.say({ kind: 'cancelled' });
    for (const puppet of started) puppet.say({ kind: 'done', done });
    expect(await next).toEqual([done, done]);
  });

  test('lays by itself where every worker would need a copy of a bay too large for that', async () => {
    const { crew, started } = puppets(2, false);
    const large = { ...made.bay.mesh, positions: { byteLength: 2 ** 30 } as Float32Array };
    const answers = await crew.inContext({ ...context, bay: { ...made.bay, mesh: large } }).doEach([], () => UNWATCHED);
    expect([answers, started]).toEqual([[], []]);
  });
});

test('a bay in shared memory is the same bay', () => {
  const shared = inSharedMemory(made.bay);
  expect(shared).toEqual(made.bay);
  expect(shared.skins[0]?.bvh.corners.buffer).toBeInstanceOf(SharedArrayBuffer);
  expect(shared.skins[0]?.bvh.corners.constructor).toBe(Float32Array);
});
