import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import type { Bundle } from '../../../../shared/document/project/schema.ts';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const END = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });
const HOSE = exampleHose({ insideDiameterMm: 10, outsideDiameterMm: 16, minBendRadiusMm: 60 });
const BAY = emptyBay();
type Seats = readonly [at: Vec3, axis: Vec3, to: Vec3, toAxis: Vec3];

function project(seats: readonly Seats[], bundle?: Partial<Bundle>): ResolvedProject {
  const all = seats.map(([at, axis, to, toAxis], i) =>
    oneRunProject(
      [
        examplePort(`a${i}`, { seatPoint: [...at], axis: [...axis] }),
        examplePort(`b${i}`, { seatPoint: [...to], axis: [...toAxis] }),
      ],
      [END, END],
      HOSE,
      { id: `r${i}`, a: { port: `a${i}`, end: END.id }, b: { port: `b${i}`, end: END.id } },
    ),
  );
  const bundles =
    bundle === undefined ? [] : [{ id: 'x', name: 'Side by side', runs: all.map((_, i) => `r${i}`), ...bundle }];
  return {
    project: {
      ...all[0]!.project,
      ports: all.flatMap((p) => p.project.ports),
      runs: all.flatMap((p) => p.project.runs),
      bundles,
    },
    runs: all.flatMap((p) => p.runs),
  };
}

function lie(resolved: ResolvedProject): Promise<Lay[]> {
  return layRuns({ project: resolved.project, bay: BAY }, resolved, resolved.runs, [], UNWATCHED);
}

/** Least distance of the hoses' surfaces, and the share of the first that lies within `withinMm` of the second. */
function beside(one: Lay, other: Lay, withinMm: number): { leastMm: number; share: number } {
  const gaps = one.centreline.points.map((p) => Math.min(...other.centreline.points.map((q) => distance(p, q))) - 16);
  return { leastMm: Math.min(...gaps), share: gaps.filter((g) => g <= withinMm).length / gaps.length };
}

const PARALLEL: Seats[] = [
  [
    [0, 0, 0],
    [1, 0, 0],
    [700, 0, 0],
    [-1, 0, 0],
  ],
  [
    [0, 120, 0],
    [1, 0, 0],
    [700, 120, 0],
    [-1, 0, 0],
  ],
];

describe('hoses of a bundle', () => {
  it('lie side by side, tied, where by themselves they would stay apart; both lays are clean', async () => {
    const [one, two] = (await lie(project(PARALLEL))) as [Lay, Lay];
    expect(beside(two, one, 10).share).toBe(0);
    const resolved = project(PARALLEL, {});
    const [first, second] = (await lie(resolved)) as [Lay, Lay];
    expect([first.outcome, second.outcome]).toEqual(['laid', 'laid']);
    const { leastMm, share } = beside(second, first, 10);
    expect(leastMm).toBeGreaterThan(0);
    expect(share).toBeGreaterThan(0.25);
    expect(second.supports.map((s) => s.id)).toContain('tie-1');
    expect(second.supports.every((s) => s.proposed)).toBe(true);
    expect(second.givenUp).toBeUndefined();
    const found = runChecks(resolved, [first, second]).map((f) => `${f.severity} ${f.check}`);
    // 700 mm without a clamp is too long for any hose; nothing else is wrong.
    expect(found.filter((f) => !f.startsWith('note') && f !== 'look clampSpacing')).toEqual([]);
  });

  it('keep the gap that the bundle asks', async () => {
    const [first, second] = (await lie(project(PARALLEL, { gapMm: 8 }))) as [Lay, Lay];
    const { leastMm, share } = beside(second, first, 18);
    expect(leastMm).toBeGreaterThanOrEqual(8 - 0.1);
    expect(share).toBeGreaterThan(0.2);
  });

  it('are tied also where they are stated the other way round', async () => {
    const [[a, aa, b, bb]] = [PARALLEL[1]!];
    const [first, second] = (await lie(project([PARALLEL[0]!, [b, bb, a, aa]], {}))) as [Lay, Lay];
    expect(beside(second, first, 10).share).toBeGreaterThan(0.25);
  });

  it('that go different ways are laid apart, and it is said', async () => {
    const crossing: Seats[] = [
      PARALLEL[0]!,
      [
        [350, -300, 200],
        [0, 1, 0],
        [350, 300, 200],
        [0, -1, 0],
      ],
    ];
    const [first, second] = (await lie(project(crossing, {}))) as [Lay, Lay];
    expect([first.outcome, second.outcome]).toEqual(['laid', 'laid']);
    expect(second.supports).toEqual([]);
    expect(second.givenUp).toMatchObject([{ wish: 'bundle' }]);
    expect(second.givenUp![0]!.reason).toContain('goes its own way');
  });

  it('three of them keep their gap each from each', async () => {
    const three: Seats[] = [
      ...PARALLEL,
      [
        [0, 60, 100],
        [1, 0, 0],
        [700, 60, 100],
        [-1, 0, 0],
      ],
    ];
    const lays = await lie(project(three, {}));
    expect(lays.map((l) => l.outcome)).toEqual(['laid', 'laid', 'laid']);
    for (const one of lays)
      for (const other of lays) if (one !== other) expect(beside(one, other, 1).leastMm).toBeGreaterThan(-0.2);
  });
});
