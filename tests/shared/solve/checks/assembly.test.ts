import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { Support } from '../../../../shared/document/project/schema.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleRun, sampleSleeve } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const hose = sampleHose({ outsideDiameterMm: 15 });

describe('a sleeve', () => {
  const found = (insideDiameterMm: number) => {
    const sleeve = sampleSleeve({ insideDiameterMm, outsideDiameterMm: insideDiameterMm + 6 });
    const project = resolved({ runs: [sampleRun({ sleeve: sleeve.id })] }, { hoses: [hose], sleeves: [sleeve] });
    return findingsOf('assembly', project, straightLay());
  };

  it('goes over its hose, or is looked at: 15 mm outside, 14.9 inside', () => {
    expect(found(15)).toEqual([]);
    expect(found(14.9)[0]).toMatchObject({
      severity: 'look',
      rule: 'sleeve-goes-over',
      margin: expect.closeTo(-0.1, 9),
    });
  });
});

describe('the hole of a pass-through', () => {
  const found = (more: Partial<Support>, hexMm?: number) => {
    const support: Support = { id: 'g', kind: 'pass-through', point: [250, 0, 0], axis: [1, 0, 0], ...more };
    const end = sampleEnd({ collarDiameterMm: 21, ...(hexMm === undefined ? {} : { hexMm }) });
    const project = resolved({ runs: [sampleRun({ supports: [support] })] }, { hoses: [hose], ends: [end] });
    const lay = straightLay({ outsideDiameterMm: 15 });
    const point = lay.centreline.points[3] as Vec3;
    const at = { arcLengthMm: 20, point: [...point] as [number, number, number] };
    const axis: [number, number, number] = [1, 0, 0];
    const supports = [{ id: 'g', kind: 'pass-through' as const, proposed: false, at, axis }];
    return findingsOf('assembly', project, { ...lay, supports }).map(({ rule, severity }) => `${rule} ${severity}`);
  };

  it('lets the hose through, or nothing is cut: hose of 15', () => {
    expect(found({ holeMm: 14.9 })).toEqual(['hole-over-hose stop']);
    expect(found({ holeMm: 15 })).toEqual(['hole-over-end look']);
  });

  it('lets a finished end through, or the hose is threaded before: socket of 21', () => {
    expect(found({ holeMm: 20.9 })).toEqual(['hole-over-end look']);
    expect(found({ holeMm: 21 })).toEqual([]);
  });

  it('is measured against a nut across its corners: 19 mm across flats is 21.94', () => {
    // 19 x 2 / sqrt(3) = 21.939
    expect(found({ holeMm: 21.9 }, 19)).toEqual(['hole-over-end look']);
    expect(found({ holeMm: 21.95 }, 19)).toEqual([]);
  });

  it('is not guessed where it is not stated', () => {
    expect(found({})).toEqual([]);
  });
});
