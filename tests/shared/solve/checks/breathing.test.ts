import { describe, expect, it } from 'vitest';
import type { Breath } from '../../../../shared/document/lay/schema.ts';
import { clearanceTo, straightLay } from '../../../arbitraries/lays.ts';
import { findingsOf, resolved } from './context.ts';

const PLACE = { arcLengthMm: 200, point: [200, 0, 0] as [number, number, number] };
const shorter = (more: Partial<Breath>): Breath => ({ change: -0.04, liveLengthMm: 442, taut: false, ...more });

function found(breath: Breath) {
  return findingsOf('breathing', resolved(), straightLay({ breathing: [breath] })).map((f) => [f.severity, f.unit]);
}

describe('breathing', () => {
  it('says nothing of a hose that keeps its clearance at both lengths, however it bends then', () => {
    const good = {
      minRadius: { provenAtLeastMm: 50, at: PLACE },
      tightest: clearanceTo({ kind: 'skin', id: 'plain', part: 'block' }, 20, 13),
    };
    expect(found(shorter(good))).toEqual([]);
    expect(found({ ...shorter(good), change: 0.02 })).toEqual([]);
  });

  it('stops a hose that goes taut, and says how much longer to cut it', () => {
    const lay = straightLay({ breathing: [shorter({ liveLengthMm: 430, taut: true })] });
    const [finding] = findingsOf('breathing', resolved(), lay);
    expect(finding?.severity).toBe('stop');
    // Taut 438.095 mm (460 / 1.05), under pressure 430: 8.095 mm short, 8.43 mm more before it shrinks by 4 %.
    expect(finding?.message).toMatch(/8\.1 mm/);
    expect(finding?.mend).toMatch(/8\.4 mm/);
    expect(finding?.source).toMatch(/43\.13-1B/);
  });

  it('looks at clearance under what is asked, and stops at a touch', () => {
    const near = (mm: number) =>
      shorter({ tightest: clearanceTo({ kind: 'skin', id: 'plain', part: 'block' }, mm, 13) });
    expect(found(near(13))).toEqual([]);
    expect(found(near(12.9))).toEqual([['look', 'mm']]);
    expect(found(near(0))).toEqual([['stop', 'mm']]);
  });
});
