import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { distance, type Vec3 } from '../../../../shared/base/vec3.ts';
import { type LainHose, UNWATCHED, type Watch } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import { PLAIN_SKIN, type Run } from '../../../../shared/document/project/schema.ts';
import { type BayIndex, buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { crewOfOne, type LayCrew, type LayTask } from '../../../../shared/solve/layRuns/layTask.ts';
import { blockBay, meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';
import { laysAsText } from '../../../oracles/laysAsText.ts';

const END = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });
const HOSE = exampleHose({ insideDiameterMm: 10, outsideDiameterMm: 16, minBendRadiusMm: 60 });
const THICK = exampleHose({ id: 'thick', insideDiameterMm: 16, outsideDiameterMm: 24, minBendRadiusMm: 90 });

interface Stated {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly hose?: typeof HOSE;
  readonly more?: Partial<Run>;
}

/** Straight ends that face each other along x, in free space. */
function facing(all: readonly Stated[]): ResolvedProject {
  const one = all.map(({ from, to, hose = HOSE, more = {} }, i) =>
    oneRunProject(
      [
        examplePort(`a${i}`, { seatPoint: [...from], axis: [1, 0, 0] }),
        examplePort(`b${i}`, { seatPoint: [...to], axis: [-1, 0, 0] }),
      ],
      [END, END],
      hose,
      { ...more, id: `r${i}`, a: { port: `a${i}`, end: END.id }, b: { port: `b${i}`, end: END.id } },
    ),
  );
  const first = (one[0] as ResolvedProject).project;
  return {
    project: { ...first, ports: one.flatMap((p) => p.project.ports), runs: one.flatMap((p) => p.project.runs) },
    runs: one.flatMap((p) => p.runs),
  };
}

/** Lays, with what was asked of the crew. */
async function lie(
  resolved: ResolvedProject,
  bay = emptyBay(),
  watch: Watch = UNWATCHED,
): Promise<{ lays: Lay[]; asked: LayTask[] }> {
  const context = { project: resolved.project, bay };
  const asked: LayTask[] = [];
  const crew: LayCrew = {
    doEach: (tasks, watchOf) => {
      asked.push(...tasks);
      return crewOfOne(context).doEach(tasks, watchOf);
    },
  };
  return { lays: await layRuns(context, resolved, resolved.runs, [], watch, crew), asked };
}

function apartMm(one: Lay, other: Lay): number {
  const gaps = one.centreline.points.flatMap((p) => other.centreline.points.map((q) => distance(p, q)));
  return Math.min(...gaps) - (one.outsideDiameterMm + other.outsideDiameterMm) / 2;
}

describe('runs laid in rounds', () => {
  it('begins with the run whose ends are furthest apart, and answers each as itself', async () => {
    const reachesMm = [200, 500, 300];
    const apart = reachesMm.map((mm, i): Stated => ({ from: [0, 200 * i, 0], to: [mm, 200 * i, 0] }));
    const { lays, asked } = await lie(facing(apart));
    expect(asked.map(({ run }) => run.run.id)).toEqual(['r1', 'r2', 'r0']);
    expect(lays.map(({ run }) => run)).toEqual(['r0', 'r1', 'r2']);
    // From seat to shoulder 25 mm, from shoulder to mouth 15 mm, at either end.
    for (const [i, lay] of lays.entries()) expect(lay.tautLengthMm).toBeCloseTo((reachesMm[i] as number) - 2 * 40, 0);
  });

  it('that are far from each other are laid once each', async () => {
    const { lays, asked } = await lie(facing([0, 300, 600].map((y) => ({ from: [0, y, 0], to: [600, y, 0] }))));
    expect(lays.map((l) => l.outcome)).toEqual(['laid', 'laid', 'laid']);
    expect(asked.map(({ how, run }) => `${how} ${run.run.id}`)).toEqual(['as-asked r0', 'as-asked r1', 'as-asked r2']);
  });

  it('that cross are laid round each other: the thick one as it lies alone, the thin one again', async () => {
    const thin: Stated = { from: [0, 200, 0], to: [700, -200, 0] };
    const thick: Stated = { from: [0, -200, 0], to: [700, 200, 0], hose: THICK };
    const { lays, asked } = await lie(facing([thin, thick]));
    const [first, second] = lays as [Lay, Lay];
    expect([first.outcome, second.outcome]).toEqual(['laid', 'laid']);
    expect(asked.slice(0, 3).map(({ run }) => run.run.id)).toEqual(['r1', 'r0', 'r0']);
    expect(apartMm(first, second)).toBeGreaterThanOrEqual(12);
    const told = (one: Lay, of: Lay) => one.clearances.find((c) => c.to.id === of.run)!;
    for (const [one, other] of [
      [first, second],
      [second, first],
    ] as const) {
      expect(told(one, other).provenAtLeastMm).toBeLessThanOrEqual(apartMm(one, other) + 1e-6);
      expect(told(one, other).clearanceMm).toBeCloseTo(apartMm(one, other), 0);
      // The profile tells of it too, on whichever of them it was not known.
      const near = one.profile!.near.find((n) => n.to.id === other.run)!;
      expect(Math.min(...near.clearanceMm)).toBeGreaterThanOrEqual(told(one, other).provenAtLeastMm - 0.1);
      expect(Math.min(...near.clearanceMm)).toBeLessThan(told(one, other).clearanceMm + 4);
    }
  });

  it('are told as they are found, in between and at last as they come to lie', async () => {
    const found: LainHose[] = [];
    const watch: Watch = { ...UNWATCHED, report: ({ lain }) => lain && found.push(lain) };
    const thin: Stated = { from: [0, 200, 0], to: [700, -200, 0] };
    const thick: Stated = { from: [0, -200, 0], to: [700, 200, 0], hose: THICK };
    const { lays } = await lie(facing([thin, thick]), emptyBay(), watch);
    expect(found.slice(0, 3).map(({ run }) => run)).toEqual(['r1', 'r0', 'r0']);
    expect(found[1]?.points).not.toEqual(found[2]?.points);
    for (const { run, centreline, outsideDiameterMm } of lays)
      expect(found.findLast((lain) => lain.run === run)).toEqual({ run, points: centreline.points, outsideDiameterMm });
  });

  it('a near miss that stays as first tried is told its clearance to runs laid beside it, and they theirs to it', async () => {
    const short: Stated = { from: [0, 0, 0], to: [600, 0, 0], more: { cutLengthMm: 500 } };
    const { lays, asked } = await lie(facing([short, { from: [0, 70, 0], to: [600, 70, 0] }]));
    const [miss, laid] = lays as [Lay, Lay];
    expect([miss.outcome, laid.outcome]).toEqual(['near-miss', 'laid']);
    // It was laid once, without a look at the other.
    expect(asked.filter(({ run }) => run.run.id === 'r0')).toHaveLength(1);
    for (const [one, other] of [
      [miss, laid],
      [laid, miss],
    ] as const) {
      const told = one.clearances.filter((c) => c.to.kind === 'run');
      expect(told.map((c) => c.to.id)).toEqual([other.run]);
      // The collars of the other's ends stand 3 mm further out than its hose.
      expect(told[0]!.clearanceMm).toBeGreaterThan(apartMm(one, other) - 3.1);
      expect(told[0]!.provenAtLeastMm).toBeLessThanOrEqual(apartMm(one, other) + 1e-6);
    }
  });

  it('keep from the ends of runs that do not lie yet, so that both lie clean as each of them sees it', async () => {
    // The way of the first goes straight over the port of the second, whose hose leaves sideways to it.
    const over = facing([{ from: [0, 0, 0], to: [700, 0, 0], hose: THICK }]);
    const across = oneRunProject(
      [
        examplePort('c', { seatPoint: [350, -40, 0], axis: [0, 0, 1], up: [1, 0, 0] }),
        examplePort('d', { seatPoint: [350, -40, 500], axis: [0, 0, -1], up: [1, 0, 0] }),
      ],
      [END, END],
      HOSE,
      { id: 'up', a: { port: 'c', end: END.id }, b: { port: 'd', end: END.id } },
    );
    const resolved: ResolvedProject = {
      project: {
        ...over.project,
        ports: [...over.project.ports, ...across.project.ports],
        runs: [...over.project.runs, ...across.project.runs],
      },
      runs: [...over.runs, ...across.runs],
    };
    const { lays } = await lie(resolved);
    expect(lays.map((l) => l.outcome)).toEqual(['laid', 'laid']);
    for (const lay of lays)
      for (const c of lay.clearances)
        expect(c.clearanceMm, `${lay.run} to ${c.to.id}`).toBeGreaterThan(c.requiredMm - 0.1);
  });
});

/** A closed box of 700 mm with a plate across its middle that has two holes: at y = 0 of 60 mm, at y = 92 of 44 mm. */
function twoHoles(): BayIndex {
  const block = (min: Vec3, max: Vec3) => ({ min, max });
  const [y, z] = [250, 150];
  const mesh = meshOfBlocks([
    block([-20, -y, -z], [0, y, z]),
    block([700, -y, -z], [720, y, z]),
    block([0, -y - 20, -z], [700, -y, z]),
    block([0, y, -z], [700, y + 20, z]),
    block([0, -y, -z - 20], [700, y, -z]),
    block([0, -y, z], [700, y, z + 20]),
    block([345, -y, -z], [355, y, -30]),
    block([345, -y, 30], [355, y, z]),
    block([345, -y, -30], [355, -30, 30]),
    block([345, 30, -30], [355, 70, 30]),
    block([345, 70, -30], [355, 114, -22]),
    block([345, 70, 22], [355, 114, 30]),
    block([345, 114, -30], [355, y, 30]),
  ]);
  return buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED);
}

/** y where a lay passes the plate, mm. */
function atPlate({ centreline: { points } }: Lay): number {
  return points.find(([x]) => x >= 350)![1];
}

describe('room for a run whose only way is taken', () => {
  const stiff = exampleHose({ id: 'stiff', insideDiameterMm: 4, outsideDiameterMm: 8, minBendRadiusMm: 80 });
  const wide = exampleHose({ id: 'wide', insideDiameterMm: 16, outsideDiameterMm: 24, minBendRadiusMm: 60 });
  const first: Stated = { from: [0, 40, 0], to: [700, 40, 0], hose: stiff };
  const second: Stated = { from: [0, -40, 0], to: [700, -40, 0], hose: wide };

  it('is made by the one that has another: it goes through the hole that only it fits', async () => {
    const bay = twoHoles();
    // By itself the stiff hose, which comes first, takes the large hole: it is nearer.
    expect(Math.abs(atPlate((await lie(facing([first]), bay)).lays[0]!))).toBeLessThan(20);
    const { lays, asked } = await lie(facing([first, second]), bay);
    expect(lays.map((l) => l.outcome)).toEqual(['laid', 'laid']);
    expect(atPlate(lays[0]!)).toBeGreaterThan(80);
    expect(Math.abs(atPlate(lays[1]!))).toBeLessThan(10);
    // Both alone, the wide one round the stiff one in vain, the stiff one round the wide one.
    expect(asked.map(({ run, how }) => `${run.run.id} ${how}`)).toEqual([
      'r0 as-asked',
      'r1 as-asked',
      'r1 beside',
      'r0 as-asked',
    ]);
  });
});

describe('the order of runs in the project', () => {
  it.each([5, 11])('changes no lay, in seeded bay %d', async (seed) => {
    const { bay, project } = blockBay(seed, 8, 5);
    const byRun = async (resolved: ResolvedProject): Promise<string> => {
      const lays = await layRuns({ project: resolved.project, bay }, resolved, resolved.runs, [], UNWATCHED);
      const things = (all: Lay['clearances']) => [...all].sort((p, q) => (p.to.id < q.to.id ? -1 : 1));
      const near = ({ profile }: Lay) => [...profile!.near].sort((p, q) => (p.to.id < q.to.id ? -1 : 1));
      return laysAsText(
        [...lays]
          .sort((p, q) => (p.run < q.run ? -1 : 1))
          .map((l) => ({ ...l, clearances: things(l.clearances), profile: { ...l.profile!, near: near(l) } })),
      );
    };
    const random = seededRandom(seed);
    const runs = [...project.runs].map((run) => ({ run, at: random() })).sort((p, q) => p.at - q.at);
    const shuffled = { ...project, runs: runs.map(({ run }) => run) };
    expect(shuffled.runs).not.toEqual(project.runs);
    expect(await byRun(shuffled)).toBe(await byRun(project));
  });
});
