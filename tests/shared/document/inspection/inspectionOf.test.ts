import { expect, it } from 'vitest';
import { inspectionOf } from '../../../../shared/document/inspection/inspectionOf.ts';
import type { AsBuilt } from '../../../../shared/document/project/schema.ts';
import { layAlong, straightLay } from '../../../arbitraries/lays.ts';
import { sampleRun, sampleSleeve } from '../../../arbitraries/projects.ts';

const fitted = (more: Partial<AsBuilt> = {}) => ({ run: sampleRun({ asBuilt: { fittedOn: '2026-05-12', ...more } }) });

it('is due so many months after it was fitted, or after the last look', () => {
  expect(inspectionOf(fitted(), undefined, 12, '2027-05-11')).toMatchObject({ dueOn: '2027-05-12', isDue: false });
  expect(inspectionOf(fitted(), undefined, 12, '2027-05-12').isDue).toBe(true);
  const seen = fitted({ inspections: [{ on: '2027-05-20' }, { on: '2026-11-01' }] });
  expect(inspectionOf(seen, undefined, 12, '2027-06-01')).toMatchObject({ lastOn: '2027-05-20', dueOn: '2028-05-20' });
});

it('has no day for a hose of which nobody says that it is fitted', () => {
  const { dueOn, isDue } = inspectionOf({ run: sampleRun() }, straightLay(), 12, '2040-01-01');
  expect([dueOn, isDue]).toEqual([undefined, false]);
});

it('takes places from the report, and says what has to come off to be seen', () => {
  const hands = {
    before: ['r2', 'r3'],
    basis: [],
    places: [
      {
        at: { arcLengthMm: 120, point: [120, 0, 0] as [number, number, number] },
        why: 'under the clamp',
        by: 'mirror' as const,
      },
    ],
  };
  const bare = inspectionOf(fitted(), straightLay({ hands }), 12);
  expect(bare.places).toEqual([hands.places[0]]);
  expect(bare.removal).toEqual([]);
  const sleeved = inspectionOf({ ...fitted(), sleeve: sampleSleeve() }, straightLay({ hands }), 12);
  expect(sleeved.removal[0]).toContain('The sleeve Sample sleeve hides the hose');
  expect(sleeved.removal[1]).toBe('Before it these come off: r2, r3.');
});

it('a hose that turns by 150 degrees and more comes off to be seen inside its bend', () => {
  // two legs with a corner of 149 and of 151 degrees
  const bent = (deg: number) => {
    const rad = (deg * Math.PI) / 180;
    return layAlong([
      [0, 0, 0],
      [200, 0, 0],
      [200 + 200 * Math.cos(rad), 200 * Math.sin(rad), 0],
    ]);
  };
  expect(inspectionOf(fitted(), bent(149), 12).removal).toEqual([]);
  expect(inspectionOf(fitted(), bent(151), 12).removal[0]).toContain('turns through 151 degrees');
});

it('what was found is open until it is closed', () => {
  const worn = { on: '2026-11-12', found: 'braid worn bright' };
  expect(inspectionOf(fitted({ inspections: [worn, { on: '2026-12-01' }] }), undefined, 12).open).toEqual([worn]);
  expect(inspectionOf(fitted({ inspections: [{ ...worn, closedOn: '2026-11-20' }] }), undefined, 12).open).toEqual([]);
});
