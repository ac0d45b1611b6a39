import { expect, test } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { cutOffMm, dropMm } from '../../../../shared/document/parts/cutOff.ts';
import { drawingScale } from '../../../../shared/sheets/straight/drawingScale.ts';
import { endProfile } from '../../../../shared/sheets/straight/endProfile.ts';
import { stations } from '../../../../shared/sheets/straight/stations.ts';
import { COOLER_LAY, COOLER_RUN, ELBOW_8, FUEL_LAY, FUEL_RUN } from '../../../arbitraries/reports.ts';

test('the drawn seat lies at C along the hose and at the drop off it, for any end', () => {
  const random = seededRandom(5);
  for (let i = 0; i < 200; i++) {
    const end = {
      ...ELBOW_8,
      bendAngleDeg: random() * 180,
      seatToBendMm: random() * 60,
      bendToShoulderMm: random() * 60,
    };
    const { seat, centre } = endProfile(end);
    expect(seat.outMm).toBeCloseTo(cutOffMm(end), 9);
    expect(seat.dropMm).toBeCloseTo(dropMm(end), 9);
    expect(centre[0]).toEqual({ outMm: 0, dropMm: 0 });
    expect(centre[centre.length - 1]).toBe(seat);
  }
});

test('the scale is the largest usual one that fits', () => {
  expect(drawingScale(180, 183)).toBe(1);
  expect(drawingScale(538, 183)).toBe(3);
  expect(drawingScale(183 * 2.5, 183)).toBe(2.5);
  expect(drawingScale(1_000_000, 100)).toBe(10_000);
});

test('marks run from A to B; the mouth of B is its insertion back from the far cut; waypoints are not marked', () => {
  const marks = stations(COOLER_RUN, COOLER_LAY);
  expect(marks.map((m) => m.kind)).toEqual(['mouth', 'clamp', 'mouth']);
  expect(marks[2]?.fromShoulderAMm).toBeCloseTo(420.159 - 22, 9);
  const along = stations(FUEL_RUN, FUEL_LAY).map((m) => m.fromShoulderAMm);
  expect(along).toEqual([...along].sort((x, y) => x - y));
});
