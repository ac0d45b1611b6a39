import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../../../shared/document/project/resolve.ts';
import type { Run } from '../../../../shared/document/project/schema.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { type BlockBay, blockBay } from '../../../arbitraries/blockBays.ts';
import { layBreaches } from '../../../oracles/layInvariants.ts';
import { humpMm, leastRadiusMm, offPlaneMm } from '../../../oracles/serviceShape.ts';

const SERVICES = {
  coolant: { purpose: 'coolant', fluid: 'coolant', pressureKpa: 100, temperatureC: 95 },
  suction: { purpose: 'oil-suction', fluid: 'engine-oil', pressureKpa: -20, temperatureC: 100 },
  oil: { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 300, temperatureC: 100 },
} as const;

function changed({ project }: BlockBay, change: Partial<Run>): ResolvedProject {
  const runs = project.runs.map((r): ResolvedRun => ({ ...r, run: { ...r.run, ...change } }));
  return { project: { ...project.project, runs: runs.map((r) => r.run) }, runs };
}

/** Each run of a seeded bay by itself, with what an independent look finds wrong with it as a hose. */
function lays(seed: number, change: Partial<Run>): { lay: Lay; run: ResolvedRun; breaches: string[] }[] {
  const made = blockBay(seed, 10, 3);
  const resolved = changed(made, change);
  return resolved.runs.map((run) => {
    const lay = layRun({ project: resolved.project, bay: made.bay }, run, buildTubeField([]), UNWATCHED);
    const breaches = layBreaches(lay, run, made.mesh, [], { clearanceMm: 12, spacingMm: 12 });
    return { lay, run, breaches: lay.outcome === 'laid' ? breaches : [] };
  });
}

const gaveUp = (lay: Lay, wish: string): boolean => lay.givenUp?.some((g) => g.wish === wish) === true;
const SEEDS = [11, 12, 13];

describe.each(SEEDS)('in the seeded bay %d, by an independent look', (seed) => {
  it('every coolant hose has no high point over 5 mm, or says that it has', () => {
    for (const { lay, breaches } of lays(seed, { service: SERVICES.coolant })) {
      expect(breaches).toEqual([]);
      if (lay.outcome === 'laid') expect(humpMm(lay) > 5.1).toBe(gaveUp(lay, 'no-crest'));
    }
  });

  it('every suction hose bends no tighter than asked before its pump, or says that it does', () => {
    for (const { lay, run, breaches } of lays(seed, { service: SERVICES.suction })) {
      expect(breaches).toEqual([]);
      // 45 inside and 10 outside: 50 at the centreline, 62.5 asked over five bores of 6 mm from the mouth.
      const least = leastRadiusMm(lay, run.b.end.shoulderToMouthMm, 30, 'b');
      if (lay.outcome === 'laid' && !gaveUp(lay, 'calm-suction')) expect(least).toBeGreaterThan(62.5 * 0.98);
      if (gaveUp(lay, 'calm-suction')) expect(least).toBeLessThan(62.5 * 1.02);
    }
  });

  it('every hose that is to lie in one plane does between what holds it, or says that it does not', () => {
    for (const { lay, breaches } of lays(seed, { service: SERVICES.oil, onePlane: ['a'] })) {
      expect(breaches).toEqual([]);
      if (lay.outcome !== 'laid' || gaveUp(lay, 'one-plane')) continue;
      const cuts = [0, ...lay.supports.map((s) => s.at.arcLengthMm).sort((p, q) => p - q), lay.cutLengthMm];
      cuts.slice(1).forEach((to, i) => {
        const within = (s: number): boolean => s >= cuts[i]! - 1e-6 && s <= to + 1e-6;
        const piece = lay.centreline.points.filter((_, k) => within(lay.centreline.arcLengthMm[k]!));
        expect(offPlaneMm(piece)).toBeLessThanOrEqual(5);
      });
    }
  });
});

describe('what the service asks changes the lay', () => {
  it('coolant humps less than oil does between the same ports', () => {
    const all = SEEDS.flatMap((seed) => {
      const oil = lays(seed, { service: SERVICES.oil });
      return lays(seed, { service: SERVICES.coolant }).map(({ lay }, i) => [humpMm(oil[i]!.lay), humpMm(lay)] as const);
    });
    expect(all.filter(([oil, coolant]) => coolant > oil + 5.1)).toEqual([]);
    const total = (humps: readonly number[]): number => humps.reduce((sum, mm) => sum + mm, 0);
    expect(total(all.map(([oil]) => oil))).toBeGreaterThan(total(all.map(([, coolant]) => coolant)));
  });
});
