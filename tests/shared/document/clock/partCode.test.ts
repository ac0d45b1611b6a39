import { expect, it } from 'vitest';
import { clockCode } from '../../../../shared/document/clock/partCode.ts';
import { readClock } from '../../../../shared/document/clock/readClock.ts';

it.each([
  // MIL-DTL-83796/5 Fig. 3 note 4: 50 degrees = 10; MIL-DTL-83796B 1.2: 30 degrees = 06.
  [50, '10', 0],
  [30, '06', 0],
  [0, '00', 0],
  [270, '54', 0],
  [358, '00', 2],
  [112.6, '23', 2.4],
])('%d degrees is code %s', (deg, code, off) => {
  const found = clockCode(deg);
  expect(found.code).toBe(code);
  expect(found.offDeg).toBeCloseTo(off, 9);
});

it('reads back as the angle it stands for, for every step', () => {
  for (let deg = 0; deg < 360; deg += 5) {
    const { code } = clockCode(deg);
    expect(readClock(`code ${code}`)).toMatchObject({ ok: true, shapes: [{ clockDeg: deg }] });
  }
});
