import { describe, expect, test } from 'vitest';
import type { FromWorker, ToWorker } from '../../../shared/jobs/contract.ts';
import { hostJobs } from '../../../shared/jobs/hostJobs.ts';

/** Workers that do nothing by themselves: the test says what they answer. */
function puppets(canShareMemory: boolean) {
  const started: { posted: ToWorker[]; terminated: boolean; say(m: FromWorker): void; die(words: string): void }[] = [];
  const host = hostJobs((receive, broke) => {
    const puppet = { posted: [] as ToWorker[], terminated: false, say: receive, die: broke };
    started.push(puppet);
    return {
      post: (message) => void puppet.posted.push(message),
      terminate: () => {
        puppet.terminated = true;
      },
    };
  }, canShareMemory);
  return { host, started };
}

const input = { projectText: '', files: [] };
const wrong = { kind: 'bad-input', problems: [] } as const;

describe('hostJobs', () => {
  test('starts no worker before the first job, and sends one job at a time', async () => {
    const { host, started } = puppets(true);
    expect(started).toHaveLength(0);
    const first = host.start('openProject', input);
    const second = host.start('layRuns', input);
    expect(started[0]?.posted.map((m) => m.name)).toEqual(['openProject']);
    started[0]?.say({ id: started[0].posted[0]?.id ?? -1, kind: 'end', end: wrong });
    expect(await first.end).toEqual(wrong);
    expect(started[0]?.posted.map((m) => m.name)).toEqual(['openProject', 'layRuns']);
    started[0]?.say({ id: started[0].posted[1]?.id ?? -1, kind: 'end', end: wrong });
    expect(await second.end).toEqual(wrong);
    expect(started).toHaveLength(1);
  });

  test('raises the flag where memory is shared, and the worker stays', () => {
    const { host, started } = puppets(true);
    host.start('openProject', input).cancel();
    const flag = started[0]?.posted[0]?.cancelFlag;
    expect(flag && new Int32Array(flag)[0]).toBe(1);
    expect(started[0]?.terminated).toBe(false);
  });

  test('throws the worker away where memory is not shared', async () => {
    const { host, started } = puppets(false);
    const running = host.start('openProject', input);
    const waiting = host.start('layRuns', input);
    expect(started[0]?.posted[0]).not.toHaveProperty('cancelFlag');
    running.cancel();
    expect(await running.end).toEqual({ kind: 'cancelled' });
    expect(started[0]?.terminated).toBe(true);
    expect(started[1]?.posted.map((m) => m.name)).toEqual(['layRuns']);
    started[1]?.say({ id: started[1].posted[0]?.id ?? -1, kind: 'end', end: wrong });
    expect(await waiting.end).toEqual(wrong);
  });

  test('a job that waits is cancelled without touching the one under way', async () => {
    const { host, started } = puppets(true);
    host.start('openProject', input);
    const waiting = host.start('layRuns', input);
    waiting.cancel();
    expect(await waiting.end).toEqual({ kind: 'cancelled' });
    expect(started[0]?.terminated).toBe(false);
    expect(started[0]?.posted).toHaveLength(1);
  });

  test('after failed the worker is thrown away and what it still says is not heard', async () => {
    const { host, started } = puppets(true);
    const heard: number[] = [];
    const first = host.start('openProject', input);
    const second = host.start('openProject', input, (p) => void heard.push(p.fraction));
    started[0]?.say({ id: started[0].posted[0]?.id ?? -1, kind: 'end', end: { kind: 'failed', message: 'broken' } });
    expect(await first.end).toEqual({ kind: 'failed', message: 'broken' });
    expect(started[0]?.terminated).toBe(true);
    const id = started[1]?.posted[0]?.id ?? -1;
    started[0]?.say({ id, kind: 'progress', progress: { fraction: 0.9, doing: 'late' } });
    started[0]?.die('late');
    started[1]?.say({ id, kind: 'progress', progress: { fraction: 0.1, doing: 'anew' } });
    started[1]?.say({ id, kind: 'end', end: wrong });
    expect(await second.end).toEqual(wrong);
    expect(heard).toEqual([0.1]);
  });
});
