import { expect, it } from 'vitest';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import { LayReport } from '../../../shared/document/lay/schema.ts';
import type { ProjectFiles } from '../../../shared/jobs/contract.ts';
import { type JobMemory, newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';
import { smallBay } from '../../electron/smallBay.ts';

/** The small rig with its right-hand port on a body that gives so far along X, or stands. */
function files(giveMm: number): ProjectFiles {
  const all = smallBay();
  const project = JSON.parse(all['project.json'] as string);
  const motion = { pivot: [0, 0, 0], shiftMm: { x: [0, giveMm] } };
  project.bay.bodies = [{ id: 'engine', name: 'Engine', parts: [], motion }];
  project.ports[1].body = 'engine';
  const encoder = new TextEncoder();
  const named = ['bay.stl', 'hoses.csv', 'ends.csv'].map((path) => {
    const content = all[path]!;
    return { path, bytes: typeof content === 'string' ? encoder.encode(content) : content };
  });
  return { projectText: JSON.stringify(project), files: named };
}

async function lay(input: ProjectFiles, memory: JobMemory, seen: number[] = []): Promise<LayReport> {
  const watch = { ...UNWATCHED, report: ({ fraction }: { fraction: number }) => void seen.push(fraction) };
  const end = await runJob('layRuns', input, watch, memory);
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  return end.output;
}

it('lays that are made are rocked, checked, and rocked again when one is laid by hand or the motion changed', async () => {
  const memory = newJobMemory();
  const seen: number[] = [];
  const report = await lay(files(3), memory, seen);
  expect(seen).toEqual([...seen].sort((p, q) => p - q));
  expect(LayReport.safeParse(report).error).toBeUndefined();
  const rock = report.lays[0]?.rock;
  expect(rock?.extremes.map((e) => e.pose.name)).toEqual(['at rest', 'engine at x +3 mm']);
  const [rest, away] = rock?.extremes ?? [];
  expect(Math.abs((away?.slackLeftMm ?? 0) - (rest?.slackLeftMm ?? 0))).toBeCloseTo(3, 1);
  expect(report.findings.filter((f) => f.check === 'rock')).toEqual([]);

  // Far enough to draw it tight, whichever way the port faces.
  const give = (rest?.slackLeftMm ?? 0) * (away && rest && away.slackLeftMm < rest.slackLeftMm ? 1.3 : -1.3);
  const wide =
    give > 0 ? files(give) : { ...files(3), projectText: files(3).projectText.replace('[0,3]', `[${give},0]`) };
  const tight = await lay(wide, memory);
  const found = tight.findings.filter((f) => f.check === 'rock' && f.severity === 'stop');
  expect(found[0]?.rule).toBe('rock-slack');
  expect(found[0]?.message).toMatch(/tight at 76 % of the motion/);

  const end = await runJob('relayRun', { ...files(3), run: report.lays[0]!.run, earlier: tight }, UNWATCHED, memory);
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  expect(end.output.lays[0]?.rock?.extremes[1]?.slackLeftMm).toBeCloseTo(away?.slackLeftMm ?? 0, 1);

  const still = await lay(files(0), memory);
  expect(still.lays[0]?.rock).toBeUndefined();
});
