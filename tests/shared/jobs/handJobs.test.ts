import { beforeAll, describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import { LayReport } from '../../../shared/document/lay/schema.ts';
import type { HandChange, JobEnd, ProjectFiles } from '../../../shared/jobs/contract.ts';
import { type JobMemory, newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';
import { smallBay } from '../../electron/smallBay.ts';

function filesOf(changes: Readonly<Record<string, unknown>> = {}): ProjectFiles {
  const { 'project.json': projectText, ...rest } = smallBay(changes);
  const bytes = (value: string | Uint8Array): Uint8Array =>
    typeof value === 'string' ? new TextEncoder().encode(value) : value;
  return {
    projectText: projectText as string,
    files: Object.entries(rest).map(([path, value]) => ({ path, bytes: bytes(value) })),
  };
}

function done<N extends 'takeRun' | 'moveRun' | 'relayRun' | 'layRuns'>(end: JobEnd<N>) {
  if (end.kind !== 'done') throw new Error(JSON.stringify(end));
  return end.output;
}

describe('jobs by hand', () => {
  let memory: JobMemory;
  let report: LayReport;
  beforeAll(async () => {
    memory = newJobMemory();
    report = done(await runJob('layRuns', filesOf(), UNWATCHED, memory));
  });
  const taken = async () => done(await runJob('takeRun', { ...filesOf(), run: 'feed', report }, UNWATCHED, memory));
  const third = (): { arcLengthMm: number; point: Vec3 } => {
    const { points, arcLengthMm } = report.lays[0]!.centreline;
    const i = Math.floor(points.length / 4);
    return { arcLengthMm: arcLengthMm[i]!, point: points[i]! };
  };
  const change = (by: number): HandChange => {
    const { arcLengthMm, point } = third();
    return { pull: { arcLengthMm, to: [point[0], point[1] + by, point[2]] } };
  };

  it('take a run as it was laid, and move it without a file', async () => {
    const { hand, shape } = await taken();
    const lay = report.lays[0]!;
    expect(shape.outcome).toBe(lay.outcome);
    expect(shape.cutLengthMm).toBeCloseTo(lay.cutLengthMm, 1);
    const moved = done(await runJob('moveRun', { hand, change: change(12) }, UNWATCHED, memory));
    expect(moved.hold!.offMm).toBeLessThan(0.5);
    expect(distance(moved.hold!.point, change(12).pull!.to)).toBeCloseTo(moved.hold!.offMm, 9);
    // A shape stands in for a lay where one is drawn.
    const drawn = { ...report, lays: [{ ...lay, ...moved, hold: undefined, tightest: undefined }] };
    expect(LayReport.safeParse(JSON.parse(JSON.stringify(drawn))).success).toBe(true);
  });

  it('answer the same for the same change, however often the hose was let go between', async () => {
    const { hand } = await taken();
    const once = done(await runJob('moveRun', { hand, change: change(10) }, UNWATCHED, memory));
    await runJob('moveRun', { hand, change: {} }, UNWATCHED, memory);
    const again = done(await runJob('moveRun', { hand, change: change(10) }, UNWATCHED, memory));
    expect(distance(again.hold!.point, once.hold!.point)).toBeLessThan(1e-3);
    expect(again.cutLengthMm).toBeCloseTo(once.cutLengthMm, 2);
  });

  it('refuse what they cannot work on, in words', async () => {
    const gone = await runJob('moveRun', { hand: 'another', change: {} }, UNWATCHED, memory);
    expect(gone).toMatchObject({ kind: 'bad-input', problems: [{ path: 'hand' }] });
    const { hand } = await taken();
    const nowhere: HandChange = { pull: { arcLengthMm: 100, to: [Number.NaN, 0, 0] } };
    expect(await runJob('moveRun', { hand, change: nowhere }, UNWATCHED, memory)).toMatchObject({ kind: 'bad-input' });
    const unknown = await runJob('takeRun', { ...filesOf(), run: 'drain', report }, UNWATCHED, memory);
    expect(unknown).toMatchObject({ kind: 'bad-input', problems: [{ path: 'run', got: '"drain"' }] });
    const empty = { ...report, lays: [] };
    const unlaid = await runJob('takeRun', { ...filesOf(), run: 'feed', report: empty }, UNWATCHED, memory);
    expect(unlaid).toMatchObject({ kind: 'bad-input', problems: [{ path: 'run' }] });
    const again = await runJob('relayRun', { ...filesOf(), run: 'feed', earlier: empty }, UNWATCHED, memory);
    expect(again).toMatchObject({ kind: 'bad-input', problems: [{ path: 'run' }] });
  });

  it('lay the run again in the project as it is then, with the hash of what it was laid from', async () => {
    const { hand } = await taken();
    const { hold, centreline } = done(await runJob('moveRun', { hand, change: change(8) }, UNWATCHED, memory));
    const { runs } = JSON.parse(filesOf().projectText) as { runs: object[] };
    const clamp = { id: 'by-hand', kind: 'clamp', point: hold!.point, axis: hold!.axis };
    const files = filesOf({ runs: runs.map((run) => ({ ...run, supports: [clamp] })) });
    const input = { ...files, run: 'feed', earlier: report, along: centreline.points };
    const after = done(await runJob('relayRun', input, UNWATCHED, memory));
    const lay = LayReport.parse(after).lays[0]!;
    expect(lay.supports.map((s) => s.id)).toContain('by-hand');
    expect(lay.inputHash).not.toBe(report.lays[0]!.inputHash);
    const anew = done(await runJob('layRuns', files, UNWATCHED, memory));
    expect(lay.inputHash).toBe(anew.lays[0]!.inputHash);
  });

  it('keep mesh and index when a port moves', async () => {
    await taken();
    const { mesh, index } = memory;
    const { ports } = JSON.parse(filesOf().projectText) as { ports: { id: string; seatPoint: number[] }[] };
    const moved = ports.map((p) => (p.id === 'right' ? { ...p, seatPoint: [600, 15, 60] } : p));
    const input = { ...filesOf({ ports: moved }), run: 'feed', earlier: report };
    const after = done(await runJob('relayRun', input, UNWATCHED, memory));
    expect(after.lays[0]!.ends.b.seatPoint).toEqual([600, 15, 60]);
    expect(memory.mesh?.mesh).toBe(mesh?.mesh);
    expect(memory.index?.index).toBe(index?.index);
  });
});
