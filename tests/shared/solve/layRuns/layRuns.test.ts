import { describe, expect, it } from 'vitest';
import { distance } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { type BlockBay, blockBay } from '../../../arbitraries/blockBays.ts';
import { layBreaches } from '../../../oracles/layInvariants.ts';

/** Plain clearance and spacing of the rule pack: 12 mm each (JTM001-1 13.3.4, 0.47 in printed as 12 mm); the bays are certain. */
const ASKED = { clearanceMm: 12, spacingMm: 12 };

function layAll({ bay, project }: BlockBay): Promise<Lay[]> {
  return layRuns({ project: project.project, bay }, project, project.runs, [], UNWATCHED);
}

/** Lays as text: without what was timed, and with what depends on the order of runs in the file put in order. */
function withoutTimings(lays: readonly Lay[]): string {
  const byThing = (l: Lay) => [...l.clearances].sort((a, b) => (JSON.stringify(a.to) < JSON.stringify(b.to) ? -1 : 1));
  return JSON.stringify(lays.map((l) => ({ ...l, timingsMs: {}, clearances: byThing(l), profile: undefined })));
}

describe('layRuns on seeded bays', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'every hose of bay %d that is called laid keeps everything, by brute force',
    async (seed) => {
      const made = blockBay(seed, 4 + seed, 4);
      const lays = await layAll(made);
      expect(lays.map((l) => l.run)).toEqual(made.project.runs.map((r) => r.run.id));
      for (const lay of lays) {
        if (lay.outcome !== 'laid') {
          expect(lay.reason).toBeTruthy();
          continue;
        }
        const run = made.project.runs.find((r) => r.run.id === lay.run)!;
        const others = lays.filter((o) => o.run !== lay.run);
        expect(layBreaches(lay, run, made.mesh, others, ASKED)).toEqual([]);
      }
      // Under pressure a hose that keeps everything at rest may still touch: that is a finding of its own.
      const stops = runChecks(made.project, lays).filter((f) => f.severity === 'stop' && f.check !== 'breathing');
      const clean = new Set(lays.filter((l) => l.outcome === 'laid').map((l) => l.run));
      expect(stops.filter((f) => clean.has(f.run))).toEqual([]);
      expect(clean.size).toBeGreaterThanOrEqual(3);
    },
  );

  it('gives the same answer twice, to the byte, and whatever order the runs stand in', async () => {
    const made = blockBay(11, 6, 3);
    const lays = await layAll(made);
    expect(withoutTimings(await layAll(made))).toBe(withoutTimings(lays));
    const turned = { ...made.project, runs: [...made.project.runs].reverse() };
    const again = await layAll({ ...made, project: turned });
    expect(withoutTimings([...again].reverse())).toBe(withoutTimings(lays));
  });

  it('tells every run its clearance to every other, whichever was laid first, and never more than there is', async () => {
    const made = blockBay(5, 7, 4);
    const lays = await layAll(made);
    for (const lay of lays) {
      const others = lays.filter((o) => o !== lay);
      expect(lay.clearances.filter((c) => c.to.kind === 'run').map((c) => c.to.id)).toEqual(others.map((o) => o.run));
      const run = made.project.runs.find((r) => r.run.id === lay.run)!;
      for (const other of others) {
        const told = lay.clearances.find((c) => c.to.id === other.run)!;
        // Hose to hose, away from this run's own ports: the ends of the other run may be nearer still.
        const held = [run.a.port.seatPoint, run.b.port.seatPoint];
        const zoneMm = 2 * (told.requiredMm + lay.outsideDiameterMm / 2);
        const { points, arcLengthMm } = lay.centreline;
        const live = (s: number) => s >= 15 && s <= lay.cutLengthMm - 15;
        const open = points.filter((p, i) => live(arcLengthMm[i]!) && held.every((h) => distance(p, h) >= zoneMm));
        const gaps = open.flatMap((p) => other.centreline.points.map((q) => distance(p, q)));
        const slow = Math.min(...gaps) - (lay.outsideDiameterMm + other.outsideDiameterMm) / 2;
        expect(told.provenAtLeastMm).toBeLessThan(slow + 1e-6);
      }
    }
  });

  it('keeps lays that were not asked for as they are, and clear of them', async () => {
    const made = blockBay(3, 5, 3);
    const lays = await layAll(made);
    const [first, ...kept] = lays as [Lay, ...Lay[]];
    const chosen = made.project.runs.filter((r) => r.run.id === first.run);
    const again = await layRuns(
      { project: made.project.project, bay: made.bay },
      made.project,
      chosen,
      kept,
      UNWATCHED,
    );
    const still = again.filter((l) => l.run !== first.run);
    const shapes = (all: readonly Lay[]) => all.map((l) => [l.run, l.outcome, l.centreline, l.clock, l.cutLengthMm]);
    expect(shapes(still)).toEqual(shapes(kept));
    // Their clearances to other runs are measured anew, on the report's points: as near as its steps and chords.
    for (const lay of still)
      for (const { to, clearanceMm, provenAtLeastMm } of lay.clearances) {
        // The run laid again may lie elsewhere now.
        if (to.id === first.run) continue;
        const before = kept
          .find((k) => k.run === lay.run)!
          .clearances.find((c) => c.to.kind === to.kind && c.to.id === to.id)!;
        expect(Math.abs(clearanceMm - before.clearanceMm)).toBeLessThan(0.5);
        expect(provenAtLeastMm).toBeLessThanOrEqual(before.clearanceMm + 1e-9);
      }
    const mine = again.find((l) => l.run === first.run)!;
    expect(layBreaches(mine, chosen[0]!, made.mesh, kept, ASKED)).toEqual([]);
  });
});
