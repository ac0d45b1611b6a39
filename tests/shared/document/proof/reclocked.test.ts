import { expect, it } from 'vitest';
import type { AsBuilt } from '../../../../shared/document/project/schema.ts';
import { clockRefusal, clocksApartDeg, withMeasured } from '../../../../shared/document/proof/reclocked.ts';

const PROVED: AsBuilt = { clockDeg: 268, proof: { on: '2026-05-12', pressureKpa: 5250, clockDeg: 268 } };

it('two clocks are apart by the shorter way round', () => {
  expect(clocksApartDeg(350, 10)).toBe(20);
  expect(clocksApartDeg(0, 360)).toBe(0);
  expect(clocksApartDeg(90, 270)).toBe(180);
});

it('a proved hose is not clocked again; one that is not proved, or whose clock nobody wrote down, may be', () => {
  expect(clockRefusal(PROVED, 270)).toContain('proof-tested on 2026-05-12 with its clock at 268 degrees');
  expect(clockRefusal(PROVED, 268)).toBeUndefined();
  expect(clockRefusal({ clockDeg: 268 }, 270)).toBeUndefined();
  expect(clockRefusal({ proof: { on: '2026-05-12', pressureKpa: 5250 } }, 270)).toBeUndefined();
  expect(clockRefusal(undefined, 270)).toBeUndefined();
});

it('what is measured goes on the record, and the proof test keeps the clock of its day', () => {
  expect(withMeasured(PROVED, { clockDeg: 270 })).toHaveProperty('refused');
  expect(withMeasured(PROVED, { cutLengthMm: 655 })).toEqual({ built: { ...PROVED, cutLengthMm: 655 } });
  const proof = { on: '2026-05-12', pressureKpa: 5250 };
  expect(withMeasured({ clockDeg: 268 }, { proof })).toEqual({
    built: { clockDeg: 268, proof: { ...proof, clockDeg: 268 } },
  });
  expect(withMeasured(undefined, { proof }, 271)).toEqual({ built: { proof: { ...proof, clockDeg: 271 } } });
  expect(withMeasured(undefined, { proof })).toEqual({ built: { proof } });
});
