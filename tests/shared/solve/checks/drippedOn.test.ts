import { expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { Hose } from '../../../../shared/document/parts/schema.ts';
import type { Fluid, Run } from '../../../../shared/document/project/schema.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleHose, samplePort, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const COOLANT = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 150, temperatureC: 110 } as const;

/** A hose straight along X, 500 mm at height 0, and another run whose END A is joined at a place. */
function found(joint: Vec3, fluid: Fluid = 'engine-oil', hose: Partial<Hose> = {}, run: Partial<Run> = {}) {
  const place: [number, number, number] = [joint[0], joint[1], joint[2]];
  const ends = { a: { port: 'p3', end: 'end-8-0' }, b: { port: 'p4', end: 'end-8-0' } };
  const project = resolved(
    {
      ports: [
        samplePort(),
        samplePort({ id: 'p2', seatPoint: [500, 0, 0], axis: [-1, 0, 0] }),
        samplePort({ id: 'p3', name: 'Oil gallery', seatPoint: place }),
        samplePort({ id: 'p4', seatPoint: [0, 4000, 0] }),
      ],
      runs: [
        sampleRun({ service: COOLANT, ...run }),
        sampleRun({ id: 'r2', name: 'Feed', ...ends, service: { ...sampleRun().service, fluid } }),
      ],
    },
    { hoses: [sampleHose({ core: 'epdm', cover: 'rubber', ...hose })] },
  );
  return findingsOf('drippedOn', project, straightLay());
}

it('notes an EPDM hose under an oil joint, where and how far below', () => {
  const [note, ...more] = found([120, 0, 300]);
  expect(more).toEqual([]);
  expect(note).toMatchObject({ severity: 'note', with: { kind: 'run', id: 'r2' }, at: { arcLengthMm: 120 } });
  expect(note?.message).toMatch(
    /joint of Feed at Oil gallery, 120\.0 mm .* 292\.1 mm .*below it.*it swells in mineral oil/,
  );
  expect(note?.source).toContain('trelleborg.com');
});

it('says nothing of a joint beside or below it, nor of fluids that the core bears, nor of a sleeved hose', () => {
  expect(found([120, 0, -50])).toEqual([]);
  expect(found([120, 0, 5])).toEqual([]);
  expect(found([120, 40, 300])).toEqual([]);
  expect(found([120, 0, 300], 'coolant')).toEqual([]);
  expect(found([120, 0, 300], 'engine-oil', { core: 'nbr' })).toEqual([]);
  expect(found([120, 0, 300], 'engine-oil', {}, { sleeve: 'sleeve-16' })).toEqual([]);
});

it('holds for petrol on silicone as for oil on EPDM', () => {
  expect(found([120, 0, 300], 'petrol', { core: 'silicone' })).toHaveLength(1);
});
