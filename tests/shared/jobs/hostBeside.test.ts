import { expect, test } from 'vitest';
import type { FromWorker, JobInput, ToWorker } from '../../../shared/jobs/contract.ts';
import { hostBeside } from '../../../shared/jobs/hostBeside.ts';
import { hostJobs, type JobHost } from '../../../shared/jobs/hostJobs.ts';

interface Puppet {
  readonly posted: ToWorker[];
  terminated: boolean;
  say(message: FromWorker): void;
}

/** A host whose workers do nothing by themselves. */
function puppets(): { host: JobHost; started: Puppet[] } {
  const started: Puppet[] = [];
  const host = hostJobs((receive) => {
    const puppet: Puppet = { posted: [], terminated: false, say: receive };
    started.push(puppet);
    return {
      post: (message) => void puppet.posted.push(message),
      terminate: () => {
        puppet.terminated = true;
      },
    };
  }, true);
  return { host, started };
}

/** Both hosts, and the moment in which the short one is let go as a call. */
function beside() {
  const [long, short] = [puppets(), puppets()];
  let letGo: (() => void) | null = null;
  const whenIdle = (go: () => void): (() => void) => {
    letGo = go;
    return () => {
      letGo = null;
    };
  };
  const host = hostBeside({ long: long.host, short: short.host, whenIdle });
  return { host, long, short, waits: () => letGo !== null, idle: () => letGo?.() };
}

const FILES = { projectText: '', files: [] };
const SWEEP: JobInput<'sweepParts'> = {
  mesh: { positions: new Float32Array(), indices: new Uint32Array(), parts: [] },
  sweep: { kind: 'stroke', direction: [1, 0, 0], fromMm: 0, toMm: 10 },
};
const STOPPED = { kind: 'cancelled' } as const;

function end({ started }: { started: Puppet[] }, worker: number, job: number): void {
  const puppet = started[worker] as Puppet;
  puppet.say({ id: puppet.posted[job]?.id ?? -1, kind: 'end', end: STOPPED });
}

test('a short job is done while a long one goes on, and neither starts a worker before it is needed', async () => {
  const { host, long, short } = beside();
  host.start('layRuns', FILES);
  expect([long.started.length, short.started.length]).toEqual([1, 0]);
  const sweep = host.start('sweepParts', SWEEP);
  expect(short.started[0]?.posted.map(({ name }) => name)).toEqual(['sweepParts']);
  expect(long.started[0]?.posted.map(({ name }) => name)).toEqual(['layRuns']);
  end(short, 0, 0);
  expect(await sweep.end).toEqual(STOPPED);
});

test('the worker of short jobs is let go only when it has nothing to do, and started anew for the next', async () => {
  const { host, long, short, waits, idle } = beside();
  host.start('layRuns', FILES);
  const [first, second] = [host.start('sweepParts', SWEEP), host.start('sweepParts', SWEEP)];
  end(short, 0, 0);
  await first.end;
  expect(waits()).toBe(false);
  end(short, 0, 1);
  await second.end;
  expect(waits()).toBe(true);
  host.start('sweepParts', SWEEP);
  expect(waits()).toBe(false);
  expect(short.started).toHaveLength(1);
  end(short, 0, 2);
  await Promise.resolve();
  await Promise.resolve();
  idle();
  expect(short.started[0]?.terminated).toBe(true);
  expect(long.started[0]?.terminated).toBe(false);
  host.start('sweepParts', SWEEP);
  expect(short.started[1]?.posted).toHaveLength(1);
});

test('closing ends both, and nothing is waited for or started after it', async () => {
  const { host, long, short, waits } = beside();
  const jobs = [host.start('layRuns', FILES), host.start('sweepParts', SWEEP)];
  host.close();
  expect(await Promise.all(jobs.map((job) => job.end as Promise<unknown>))).toEqual([STOPPED, STOPPED]);
  await Promise.resolve();
  expect(waits()).toBe(false);
  expect(await host.start('layRuns', FILES).end).toEqual(STOPPED);
  expect(await host.start('sweepParts', SWEEP).end).toEqual(STOPPED);
  expect([long.started.length, short.started.length]).toEqual([1, 1]);
  expect([long.started[0]?.terminated, short.started[0]?.terminated]).toEqual([true, true]);
});
