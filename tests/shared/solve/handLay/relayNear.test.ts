import { describe, expect, it } from 'vitest';
import { addScaled, anySquareTo, distance, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { HandShape } from '../../../../shared/document/hand/handChange.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import type { Support } from '../../../../shared/document/project/schema.ts';
import { openHandLay } from '../../../../shared/solve/handLay/handLay.ts';
import { relayNear } from '../../../../shared/solve/handLay/relayNear.ts';
import { tubesOf } from '../../../../shared/solve/layRun/tubesOf.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { type BlockBay, blockBay } from '../../../arbitraries/blockBays.ts';
import { layBreaches } from '../../../oracles/layInvariants.ts';

/** Plain clearance and spacing of the rule pack: 12 mm each (JTM001-1 13.3.4, 0.47 in printed as 12 mm); the bays are certain. */
const ASKED = { clearanceMm: 12, spacingMm: 12 };

function layAll({ bay, project }: BlockBay): Promise<Lay[]> {
  return layRuns({ project: project.project, bay }, project, project.runs, [], UNWATCHED);
}

/** Greatest distance of a lay's points from the points of another, which are up to 4 mm apart. */
function apart(a: readonly Vec3[], b: readonly Vec3[]): number {
  return Math.max(...a.map((p) => Math.min(...b.map((q) => distance(p, q)))));
}

/** The run pulled 16 mm aside a little before its middle, to the side on which it lies cleaner. */
function pulled(made: BlockBay, lays: readonly Lay[], i: number): HandShape {
  const run = made.project.runs[i]!;
  const lay = lays.find((l) => l.run === run.run.id)!;
  const others = tubesOf(made.project, new Map(lays.map((l) => [l.run, l])), run.run.id);
  const { points, arcLengthMm } = lay.centreline;
  const k = Math.floor(points.length * 0.45);
  const side = anySquareTo(unit(addScaled(points[k + 1]!, points[k - 1]!, -1)));
  const shapes = [16, -16].map((most) => {
    const hand = openHandLay({ project: made.project.project, bay: made.bay }, run, lay, others, UNWATCHED)!;
    let shape = hand.move({}, UNWATCHED);
    for (let step = 1; step <= 8; step++) {
      const to = addScaled(points[k]!, side, (most * step) / 8);
      shape = hand.move({ pull: { arcLengthMm: arcLengthMm[k]!, to } }, UNWATCHED);
    }
    return shape;
  });
  return shapes.find((s) => s.outcome === 'laid') ?? shapes[0]!;
}

/** The project with a clamp where the hand held the hose. */
function clamped(project: ResolvedProject, i: number, { hold }: HandShape): ResolvedProject {
  const clamp: Support = { id: 'by-hand', kind: 'clamp', point: [...hold!.point], axis: [...hold!.axis] };
  const runs = project.runs.map((r, n) => (n === i ? { ...r, run: { ...r.run, supports: [clamp] } } : r));
  return { project: { ...project.project, runs: runs.map((r) => r.run) }, runs };
}

describe('a run laid again near where it lies', () => {
  it.each([1, 4, 6])('is the same lay where nothing changed, in seeded bay %d', async (seed) => {
    const made = blockBay(seed, 6, 3);
    const lays = await layAll(made);
    const context = { project: made.project.project, bay: made.bay };
    made.project.runs.forEach((run, i) => {
      const before = lays[i]!;
      if (before.outcome !== 'laid') return;
      const again = relayNear(context, made.project, run, lays, before.centreline.points, UNWATCHED);
      expect(again.map((l) => l.run)).toEqual(lays.map((l) => l.run));
      const lay = again[i]!;
      expect(lay.outcome).toBe('laid');
      expect(apart(lay.centreline.points, before.centreline.points)).toBeLessThan(10);
      expect(Math.abs(lay.slack - before.slack)).toBeLessThan(0.04);
      for (const other of again)
        if (other.run !== lay.run) expect(other.centreline).toBe(lays.find((l) => l.run === other.run)!.centreline);
    });
  });

  it.each([1, 2, 3, 4, 5, 6])(
    'keeps everything where it is called laid after a clamp was put by hand, by brute force, in bay %d',
    async (seed) => {
      const made = blockBay(seed, 5, 3);
      const lays = await layAll(made);
      made.project.runs.forEach((_, i) => {
        if (lays[i]!.outcome === 'no-way') return;
        const shape = pulled(made, lays, i);
        const project = clamped(made.project, i, shape);
        const context = { project: project.project, bay: made.bay };
        const after = relayNear(context, project, project.runs[i]!, lays, shape.centreline.points, UNWATCHED);
        const lay = after[i]!;
        expect(lay.supports.map((s) => s.id)).toContain('by-hand');
        expect(distance(lay.supports.find((s) => s.id === 'by-hand')!.at.point, shape.hold!.point)).toBeLessThan(1e-6);
        if (lay.outcome !== 'laid') {
          expect(lay.reason).toBeTruthy();
          return;
        }
        const others = after.filter((o) => o.run !== lay.run);
        expect(layBreaches(lay, project.runs[i]!, made.mesh, others, ASKED)).toEqual([]);
        // What was seen in the hand is what is laid, or a hose with the wanted slack beside it.
        expect(apart(lay.centreline.points, shape.centreline.points)).toBeLessThan(40);
      });
    },
  );

  it('asks for no clamp where one is stated near by, and keeps one that stands alone', async () => {
    const made = blockBay(1, 6, 3);
    const lays = await layAll(made);
    const i = lays.findIndex(({ outcome, supports }) => outcome === 'laid' && supports.length === 0);
    const lay = lays[i]!;
    const { points, arcLengthMm } = lay.centreline;
    const clampAt = (k: number) => {
      const along = unit(addScaled(points[k + 1]!, points[k - 1]!, -1));
      return { point: [...points[k]!] as [number, number, number], axis: [...along] as [number, number, number] };
    };
    const middle = Math.floor(points.length / 2);
    const { point, axis } = clampAt(middle);
    const at = { arcLengthMm: arcLengthMm[middle]!, point };
    const asked = [{ id: 'proposed-1', kind: 'clamp' as const, proposed: true, at, axis }];
    const before = lays.map((one) => (one === lay ? { ...lay, supports: asked } : one));
    const laidWith = (supports: Support[]): Lay => {
      const runs = made.project.runs.map((r, n) => (n === i ? { ...r, run: { ...r.run, supports } } : r));
      const project = { project: { ...made.project.project, runs: runs.map((r) => r.run) }, runs };
      return relayNear({ project: project.project, bay: made.bay }, project, runs[i]!, before, points, UNWATCHED)[i]!;
    };
    const near = laidWith([{ id: 'own', kind: 'clamp', ...clampAt(middle + 3) }]);
    expect(near.supports.map(({ id, proposed }) => [id, proposed])).toEqual([['own', false]]);
    expect(laidWith([]).supports.map(({ proposed }) => proposed)).toEqual([true]);
  });

  it('gives the same answer twice, to the byte', async () => {
    const made = blockBay(5, 5, 2);
    const lays = await layAll(made);
    const context = { project: made.project.project, bay: made.bay };
    const line = lays[0]!.centreline.points;
    const once = () =>
      JSON.stringify(
        relayNear(context, made.project, made.project.runs[0]!, lays, line, UNWATCHED).map((l) => ({
          ...l,
          timingsMs: {},
        })),
      );
    expect(once()).toBe(once());
  });
});
