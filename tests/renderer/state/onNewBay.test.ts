import { expect, it } from 'vitest';
import { faceOf } from '../../../renderer/state/onSquareUp.ts';
import type { MeshLook } from '../../../shared/jobs/contract.ts';
import { sampleBench } from '../sampleBench.ts';

const LOOK: MeshLook & { warnings: [] } = {
  meshes: [{ path: 'scan.stl', sha256: 'a'.repeat(64) }],
  triangles: 12,
  parts: ['scan'],
  sample: new Float32Array(9),
  box: { min: [0, 0, 0], max: [55, 30, 20] },
  unit: 'in',
  warnings: [],
};
const SCAN = [{ path: 'scan.stl', bytes: new Uint8Array(4) }];

it('a scan goes through its questions in order and comes to the bench as a project that stands nowhere yet', async () => {
  let begun = 0;
  const written: string[][] = [];
  const { bench } = sampleBench(
    { lookAtMeshes: { kind: 'done', output: LOOK } },
    {
      beginNew: async () => void begun++,
      saveProject: async (_text, added = []) => {
        written.push(added.map(({ path }) => path));
        return { ok: true, value: { kind: 'saved', where: 'here' } };
      },
    },
  );
  await bench.onNewBay.begin(SCAN);
  expect(bench.onNewBay.getState()).toMatchObject({ question: 'unit', unit: 'in', name: 'scan' });
  const asked = ['unit'];
  for (let i = 0; i < 5; i++) {
    bench.onNewBay.next();
    asked.push(bench.onNewBay.getState().question);
  }
  expect(asked).toEqual(['unit', 'up', 'uncertainty', 'parts', 'parts', 'parts']);
  bench.onNewBay.set({ scanUncertaintyMm: 0.6, upAxis: '+y', parts: 'empty' });
  await bench.onNewBay.finish();
  expect(begun).toBe(1);
  const open = bench.document.getState().open;
  expect(open?.history.present.bay).toMatchObject({
    meshes: [{ path: 'scan.stl', unit: 'in', upAxis: '+y', sha256: 'a'.repeat(64) }],
    scanUncertaintyMm: 0.6,
  });
  expect(bench.session.getState().step).toBe('bay');
  expect(bench.onNewBay.getState().look).toBeNull();
  await bench.save();
  expect(written[0]).toContain('scan.stl');
  expect(written[0]).toContain('parts/hoses.csv');
  await bench.save();
  expect(written[1]).toEqual([]);
});

it('an empty drawer is tables with headings and no rows', async () => {
  const { bench } = sampleBench({ lookAtMeshes: { kind: 'done', output: LOOK } });
  await bench.onNewBay.begin(SCAN);
  bench.onNewBay.set({ parts: 'empty' });
  await bench.onNewBay.finish();
  expect(bench.document.getState().open?.tables.hoses).toEqual([]);
});

it('a scan that cannot be read leaves the bench as it was', async () => {
  const { bench } = sampleBench({
    lookAtMeshes: { kind: 'bad-input', problems: [{ path: 'scan.stl', message: 'The file is empty.' }] },
  });
  await bench.onNewBay.begin(SCAN);
  expect(bench.onNewBay.getState().look).toBeNull();
  expect(bench.jobs.getState().notice?.lines.join()).toContain('The file is empty.');
});

it('three places say how far a face is off level; on one line they say nothing', () => {
  expect(faceOf([[0, 0, 0]])).toEqual({ kind: 'few', missing: 2 });
  expect(
    faceOf([
      [0, 0, 0],
      [50, 0, 0],
      [100, 1, 0],
    ]),
  ).toEqual({ kind: 'line' });
  // 100 mm along, 2 mm up: atan(0.02) = 1.1458 degrees
  const face = faceOf([
    [0, 0, 0],
    [100, 0, 2],
    [0, 100, 0],
  ]);
  expect(face.kind === 'face' && face.offDeg).toBeCloseTo(1.1458, 3);
});
