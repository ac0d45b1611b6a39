import { expect, it } from 'vitest';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import { LayReport } from '../../../shared/document/lay/schema.ts';
import type { ProjectFiles } from '../../../shared/jobs/contract.ts';
import { readProject } from '../../../shared/jobs/readProject.ts';
import { newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';
import { smallBay } from '../../electron/smallBay.ts';

/** The small rig, all of its bay hot, or none of it. */
function rig(surfaceTemperatureC: number | undefined, bay: object = {}): ProjectFiles {
  const all = smallBay();
  const project = JSON.parse(all['project.json'] as string);
  const hot = { id: 'hot', name: 'Hot', kind: 'hot', parts: ['*'], surfaceTemperatureC, clearanceMm: 0 };
  const skins = surfaceTemperatureC === undefined ? [] : [hot];
  const encoder = new TextEncoder();
  const files = ['bay.stl', 'hoses.csv', 'ends.csv'].map((path) => {
    const content = all[path]!;
    return { path, bytes: typeof content === 'string' ? encoder.encode(content) : content };
  });
  return { projectText: JSON.stringify({ ...project, bay: { ...project.bay, ...bay, skins } }), files };
}

async function lay(input: ProjectFiles): Promise<LayReport> {
  const end = await runJob('layRuns', input, UNWATCHED, newJobMemory());
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  return end.output;
}

function hashOf(input: ProjectFiles): string | undefined {
  const read = readProject(input);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return Object.values(read.value.runHashes)[0];
}

it('keeps the heat of a hose on its lay where something is hot, hotter with a hotter skin, and none elsewhere', async () => {
  const [none, warm, hot] = await Promise.all([lay(rig(undefined)), lay(rig(200)), lay(rig(600))]);
  expect(none.lays[0]?.heat).toBeUndefined();
  expect(LayReport.safeParse(hot).error).toBeUndefined();
  const cover = (report: LayReport): number => report.lays[0]?.heat?.running.hottest.cover.likely ?? 0;
  expect(cover(hot)).toBeGreaterThan(cover(warm));
  expect(hot.lays[0]?.heat?.sources[0]?.from.id).toBe('hot');
});

it('measures each pair of ends of a trial as it measures a lay: less room to the liner under a hotter skin, and room for hands', async () => {
  const tried = async (input: ProjectFiles) => {
    const run = (await lay(input)).lays[0]?.run as string;
    const end = await runJob('endTrial', { ...input, run }, UNWATCHED, newJobMemory());
    if (end.kind !== 'done') throw new Error(JSON.stringify(end));
    return end.output.entries;
  };
  const [none, warm, hot] = await Promise.all([tried(rig(undefined)), tried(rig(200)), tried(rig(600))]);
  expect(hot.length).toBeGreaterThan(0);
  expect(none.every(({ heatRoomC }) => heatRoomC === undefined)).toBe(true);
  for (const one of hot) {
    const cooler = warm.find(({ ends }) => ends.a === one.ends.a && ends.b === one.ends.b);
    expect(one.heatRoomC).toBeLessThan(cooler?.heatRoomC as number);
    expect(one.lay.hands).toBeDefined();
  }
});

it('makes a run stale when a skin gets hotter or the air another', () => {
  const before = hashOf(rig(600));
  expect(hashOf(rig(600))).toBe(before);
  expect(hashOf(rig(610))).not.toBe(before);
  expect(hashOf(rig(600, { airTemperatureC: 70 }))).not.toBe(before);
  expect(hashOf(rig(600, { airSpeedMPerS: 4 }))).not.toBe(before);
});
