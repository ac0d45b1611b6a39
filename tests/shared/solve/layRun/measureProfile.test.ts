import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { blockBay } from '../../../arbitraries/blockBays.ts';
import { bruteForceDistance } from '../../../oracles/bruteForceDistance.ts';

const made = blockBay(2, 6, 3);
const lays = await layRuns(
  { project: made.project.project, bay: made.bay },
  made.project,
  made.project.runs,
  [],
  UNWATCHED,
);

describe('the profile of a lay', () => {
  it('never goes under the proven least radius, and comes near the found one', () => {
    for (const { profile, minRadius } of lays) {
      const least = Math.min(...profile!.radiusMm);
      expect(least).toBeGreaterThanOrEqual(minRadius.provenAtLeastMm - 0.01);
      expect(least).toBeLessThan(minRadius.radiusMm * 1.25);
    }
  });

  it('has, at every place, the clearance that brute force finds, capped at its reach', () => {
    const { profile, outsideDiameterMm, centreline } = lays[0]!;
    const near = profile!.near.find((n) => n.to.kind === 'skin')!;
    expect(profile!.arcLengthMm[0]).toBe(0);
    for (let i = 0; i < profile!.arcLengthMm.length; i += 7) {
      // The centreline's own points stand at other places; only those that coincide are compared.
      const at = centreline.arcLengthMm.findIndex((s) => Math.abs(s - profile!.arcLengthMm[i]!) < 0.01);
      if (at < 0) continue;
      const slow = bruteForceDistance(made.mesh, centreline.points[at]!) - outsideDiameterMm / 2;
      expect(near.clearanceMm[i]).toBeCloseTo(Math.min(profile!.reachMm, slow), 1);
    }
  });

  it('lies nowhere on the live hose under a proven clearance, away from held places', () => {
    for (const { profile, clearances, cutLengthMm } of lays)
      for (const near of profile!.near) {
        const proven = clearances.find((c) => c.to.kind === near.to.kind && c.to.id === near.to.id)!;
        near.clearanceMm.forEach((clearance, i) => {
          const s = profile!.arcLengthMm[i]!;
          // Both ends take 15 mm of hose in; inside them it is the end that stands there, not the hose.
          const live = s > 15 && s < cutLengthMm - 15;
          if (live && near.askedMm[i]! >= proven.requiredMm - 0.01)
            expect(clearance).toBeGreaterThan(Math.min(profile!.reachMm, proven.provenAtLeastMm) - 0.02);
        });
      }
  });
});
