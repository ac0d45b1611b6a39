import { writeFileSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';
import type { JobEnd, JobInput, JobName } from '../../../shared/jobs/contract.ts';
import { serveJobs } from '../../../shared/jobs/serveJobs.ts';
import { exampleFinding, exampleLay, exampleReport } from '../exampleReport.ts';

/** Answers what the project's name asks for, so that the command line can be tested without laying anything. */
async function fakeJob<N extends JobName>(name: N, input: JobInput<N>): Promise<JobEnd<N>> {
  if (name === 'makeSheets') return sheets(input as JobInput<'makeSheets'>) as unknown as JobEnd<N>;
  const wanted = (JSON.parse((input as JobInput<'layRuns'>).projectText) as { name: string }).name;
  if (wanted === 'fault') throw new Error('fakeLayWorker: thrown on purpose');
  if (wanted === 'forever') {
    writeFileSync('started', '');
    return new Promise<never>(() => undefined);
  }
  const look = { ...exampleFinding, severity: 'look' as const };
  const report = {
    clean: exampleReport([exampleLay], [look]),
    stop: exampleReport([exampleLay], [exampleFinding]),
    overridden: exampleReport([exampleLay], [{ ...exampleFinding, overrideReason: 'measured by hand' }]),
    'near-miss': exampleReport([{ ...exampleLay, outcome: 'near-miss' }], []),
  }[wanted];
  if (report !== undefined) return { kind: 'done', output: report } as unknown as JobEnd<N>;
  const problems = [
    { path: 'name', message: 'expected another', got: JSON.stringify(wanted) },
    { path: 'runs', message: 'expected runs' },
  ];
  return { kind: 'bad-input', problems };
}

function sheets(input: JobInput<'makeSheets'>): JobEnd<'makeSheets'> {
  const text = `${input.printedOn} ${input.report.project.name} ${input.fonts.bold.length > 0} ${input.runs ?? 'all'}`;
  return { kind: 'done', output: { files: [{ path: 'build.txt', bytes: new TextEncoder().encode(text) }] } };
}

const host = parentPort;
if (host === null) throw new Error('fakeLayWorker: runs as a worker thread only');
const receive = serveJobs({ post: (message) => host.postMessage(message), now: () => performance.now() }, fakeJob);
host.on('message', (message) => void receive(message));
