import { expect, it } from 'vitest';
import type { Lay, TaperPose } from '../../../../shared/document/lay/schema.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { findingsOf, resolved } from './context.ts';

const FITS: TaperPose = {
  name: 'npt-elbow at END A at 0 degrees',
  clocks: [{ end: 'a', adapter: 'npt-elbow', clockDeg: 0 }],
  outcome: 'lies',
  slackLeftMm: 12,
  minRadius: { provenAtLeastMm: 140, at: { arcLengthMm: 100, point: [100, 0, 0] } },
  ownClockDeg: { a: 0, b: 0 },
  room: {},
};
const CLOSE = {
  to: { kind: 'skin' as const, id: 'plain', part: 'block' },
  clearanceMm: 9,
  provenAtLeastMm: 8.9,
  requiredMm: 10,
  at: { arcLengthMm: 60, point: [60, 0, 0] as [number, number, number] },
  onThing: [60, 0, 17] as [number, number, number],
};

function found(
  worst: Partial<TaperPose>,
  changes: Partial<Lay> = {},
  overrides: { rule: string; value: number; reason: string }[] = [],
) {
  const at30 = {
    name: 'npt-elbow at END A at 30 degrees',
    clocks: [{ end: 'a' as const, adapter: 'npt-elbow', clockDeg: 30 }],
  };
  const taper: Lay['taper'] = {
    ranges: [{ end: 'a', adapter: 'npt-elbow', fromDeg: 0, toDeg: 30, laidAtDeg: 15 }],
    poses: [FITS, { ...FITS, ...at30, ...worst }],
    worst: { slackLeft: 1, minRadius: 1, clearance: 1, room: 1, twist: 1 },
  };
  return findingsOf('taperRange', resolved({ overrides }), straightLay({ taper, ...changes }));
}

it('says nothing where the hose fits at every clock, or where there is no taper', () => {
  expect(found({})).toEqual([]);
  expect(findingsOf('taperRange', resolved(), straightLay())).toEqual([]);
});

it('stops a hose that goes tight or does not reach, and says at which clock and by how much', () => {
  expect(found({ slackLeftMm: 0 })).toEqual([]);
  const [tight] = found({ slackLeftMm: -0.1, outcome: 'tight' });
  expect(tight).toMatchObject({ severity: 'stop', rule: 'taper-slack', measured: -0.1 });
  expect(tight?.message).toMatch(/at 30 degrees \(so at 1 of 2 clocks looked at, from 0 to 30 degrees\)/);
  const [short] = found({ slackLeftMm: -40, missingMm: 12.5, outcome: 'too-short' });
  expect(short?.message).toMatch(/12\.5 mm/);
  expect(
    found({ slackLeftMm: -1 }, {}, [{ rule: 'taper-slack', value: -2, reason: 'a soft hose' }]).map((f) => f.severity),
  ).toEqual(['note']);
});

it('stops one that bends under the limit of the lay, unless the lay does so itself', () => {
  const radius = (mm: number) => ({
    minRadius: { provenAtLeastMm: mm, at: { arcLengthMm: 5, point: [5, 0, 0] as [number, number, number] } },
  });
  // straightLay has a limit of 107.9 mm; meeting it to 0.1 % counts
  expect(found(radius(107.85))).toEqual([]);
  expect(found(radius(107.7))).toMatchObject([{ severity: 'stop', rule: 'taper-range', measured: 107.7 }]);
  const broken = {
    minRadius: {
      radiusMm: 90,
      provenAtLeastMm: 90,
      limitMm: 107.9,
      at: { arcLengthMm: 5, point: [5, 0, 0] as [number, number, number] },
    },
  };
  expect(found(radius(80), broken)).toEqual([]);
});

it('stops one that comes too near, unless the lay does so itself and nothing touches', () => {
  expect(found({ tightest: { ...CLOSE, clearanceMm: 10 } })).toEqual([]);
  expect(found({ tightest: CLOSE })).toMatchObject([{ severity: 'stop', measured: 9, limit: 10, with: CLOSE.to }]);
  const near = { clearances: [{ ...CLOSE, clearanceMm: 8 }] };
  expect(found({ tightest: CLOSE }, near)).toEqual([]);
  expect(found({ tightest: { ...CLOSE, clearanceMm: -1 } }, near)).toHaveLength(1);
});

it('stops an end or an adapter that swings into the bay, and looks at twist and at clocks without rest', () => {
  const room = { roomMm: -2, part: 'block', point: [0, 0, 0] as [number, number, number], adapter: 'npt-elbow' };
  expect(found({ room: { a: room } })[0]?.message).toMatch(/the adapter npt-elbow at END A stands .* in block/);
  expect(found({ twistDeg: 6.9 })).toEqual([]);
  expect(found({ twistDeg: -7.2 })).toMatchObject([{ severity: 'look', rule: 'taper-twist', measured: 7.2 }]);
  expect(found({ outcome: 'unsettled' })).toMatchObject([{ severity: 'look', unit: 'clocks', measured: 1 }]);
});
