import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { reasonOf } from '../../../../shared/solve/layRun/reasonOf.ts';
import { runSetting } from '../../../../shared/solve/layRun/runLimits.ts';
import { carvedBay } from '../../../arbitraries/carvedBays.ts';

describe('a bay carved so close round a hose that there is no room for its slack', () => {
  it.each([4, 23])('is laid with the slack that has room, and says how much that is, in seeded bay %d', (seed) => {
    const { bay, project } = carvedBay(seed);
    const lay = layRun({ project: project.project, bay }, project.runs[0]!, buildTubeField([]), UNWATCHED);
    expect(lay.outcome).toBe('near-miss');
    const [, wanted, has] = /no room for ([\d.]+) % of slack: with ([\d.]+) %/.exec(lay.reason ?? '') ?? [];
    expect(Number(wanted)).toBe(5);
    expect(Number(has)).toBeCloseTo(100 * lay.slack, 1);
    expect(lay.slack).toBeLessThan(0.05);
    // Nothing but the slack is given up.
    expect(lay.minRadius.provenAtLeastMm).toBeGreaterThanOrEqual(0.999 * lay.minRadius.limitMm);
    for (const { provenAtLeastMm, requiredMm } of lay.clearances)
      expect(provenAtLeastMm).toBeGreaterThanOrEqual(requiredMm - 0.1);
  });
});

describe('a bend that is too tight', () => {
  const { bay, project } = carvedBay(5);
  const lay = layRun({ project: project.project, bay }, project.runs[0]!, buildTubeField([]), UNWATCHED);
  const clampAt = (id: string, arcLengthMm: number): Lay['supports'][number] => ({
    id,
    kind: 'clamp',
    proposed: false,
    at: { arcLengthMm, point: [0, 0, 0] },
    axis: [1, 0, 0],
  });
  const told = (supports: Lay['supports']): string => {
    const { at, limitMm } = lay.minRadius;
    const tight = { radiusMm: limitMm / 2, provenAtLeastMm: limitMm / 2, limitMm, at: { ...at, arcLengthMm: 150 } };
    const setting = runSetting(project.project, project.runs[0]!);
    const why = { pinchedAt: () => undefined, tautBreath: undefined };
    return reasonOf({ ...lay, clearances: [], minRadius: tight, supports }, ['limits'], setting, why);
  };

  it('names the clamps that it lies between, and how far apart they stand', () => {
    const reason = told([clampAt('clamp-1', 80), clampAt('clamp-2', 120), clampAt('clamp-3', 200)]);
    expect(reason).toContain('between clamp-2 and clamp-3');
    expect(reason).toContain('80 mm apart');
  });

  it('names none where it lies between none', () => {
    expect(told([clampAt('clamp-1', 80)])).toContain('it wants a smaller hose');
  });
});
