import { describe, expect, it } from 'vitest';
import { hosePlace, orderAt, supportAt } from '../../../../renderer/state/supportPlaces.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import type { Run, Support } from '../../../../shared/document/project/schema.ts';
import { relayNear } from '../../../../shared/solve/handLay/relayNear.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { tubesOf } from '../../../../shared/solve/layRun/tubesOf.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { type BlockBay, blockBay } from '../../../arbitraries/blockBays.ts';

/** A run with the clamps that its lay proposes put where they are proposed, as the window puts them. */
function withClampsPut(project: ResolvedProject, lay: Lay): Run {
  let run = project.runs.find((r) => r.run.id === lay.run)!.run;
  for (const { at } of lay.supports.filter((s) => s.proposed)) {
    const support = supportAt(run, 'clamp', hosePlace(project.project, run, lay, at.arcLengthMm)!);
    const order = orderAt(run, lay, at.arcLengthMm);
    run = { ...run, supports: [...run.supports.slice(0, order), support, ...run.supports.slice(order)] };
  }
  return run;
}

function withRun(project: ResolvedProject, run: Run): ResolvedProject {
  return {
    project: { ...project.project, runs: project.project.runs.map((r) => (r.id === run.id ? run : r)) },
    runs: project.runs.map((r) => (r.run.id === run.id ? { ...r, run } : r)),
  };
}

/** One run of a bay laid anew among the others as they lie, and laid again near where it lay. */
function again({ bay, project }: BlockBay, lays: readonly Lay[], run: Run): { anew: Lay; near: Lay } {
  const changed = withRun(project, run);
  const context = { project: changed.project, bay };
  const resolved = changed.runs.find((r) => r.run.id === run.id)!;
  const others = tubesOf(changed, new Map(lays.map((l) => [l.run, l])), run.id);
  const { points } = lays.find((l) => l.run === run.id)!.centreline;
  return {
    anew: layRun(context, resolved, others, UNWATCHED),
    near: relayNear(context, changed, resolved, lays, points, UNWATCHED).find((l) => l.run === run.id)!,
  };
}

const isTaut = ({ breathing = [] }: Lay): boolean => breathing.some((b) => b.taut);

describe('clamps that a clean lay proposes, put where they are proposed', () => {
  it.each([2003, 2005, 2007, 2012, 3000, 3003, 3008, 6012])(
    'leave the hose clean, with the slack that was told, in seeded bay %d',
    async (seed) => {
      const made = blockBay(seed, 22, 3);
      const { project, bay } = made;
      const lays = await layRuns({ project: project.project, bay }, project, project.runs, [], UNWATCHED);
      const clamped = lays.filter((l) => l.outcome === 'laid' && l.supports.some((s) => s.proposed));
      expect(clamped.length).toBeGreaterThan(0);
      for (const lay of clamped) {
        const ids = lay.supports.map((s) => s.id);
        expect(ids).toEqual([...new Set(ids)]);
        const { anew, near } = again(made, lays, withClampsPut(project, lay));
        for (const lain of [anew, near]) {
          expect(lain.outcome).toBe('laid');
          expect(lain.minRadius.provenAtLeastMm).toBeGreaterThan(0.999 * lain.minRadius.limitMm);
          expect(isTaut(lain)).toBe(isTaut(lay));
        }
        // Drawn taut the hose is stopped by clamps whoever put them. A little is left for what a search finds shorter than another.
        expect(Math.abs(near.tautLengthMm - lay.tautLengthMm)).toBeLessThan(0.01 * lay.tautLengthMm);
        expect(Math.abs(near.slack - lay.slack)).toBeLessThan(0.016);
        expect(anew.slack).toBeGreaterThan(Math.min(lay.slack, 0.05) - 0.005);
      }
    },
  );
});

describe('three clamps put by hand on a hose that needs none', () => {
  it.each([2001, 3002])(
    '80 and 50 mm apart leave it clean in seeded bay %d: the short stretches take little of the slack',
    async (seed) => {
      const made = blockBay(seed, 22, 3);
      const { project, bay } = made;
      const lays = await layRuns({ project: project.project, bay }, project, project.runs, [], UNWATCHED);
      const lay = lays.find((l) => l.outcome === 'laid' && l.supports.length === 0)!;
      const { run } = project.runs.find((r) => r.run.id === lay.run)!;
      const middleMm = lay.cutLengthMm / 2;
      const supports = [-80, 0, 50].map((mm, i): Support => {
        const put = supportAt(run, 'clamp', hosePlace(project.project, run, lay, middleMm + mm)!);
        return { ...put, id: `own-${i}` };
      });
      const { anew } = again(made, lays, { ...run, supports });
      expect(anew.outcome).toBe('laid');
      expect(anew.slack).toBeGreaterThan(0.05 - 1e-6);
      const [first, second, third] = anew.supports.filter((s) => !s.proposed).map((s) => s.at.arcLengthMm);
      expect(second! - first!).toBeLessThan(83);
      expect(third! - second!).toBeLessThan(51.5);
    },
  );
});
