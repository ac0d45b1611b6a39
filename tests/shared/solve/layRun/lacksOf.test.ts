import { describe, expect, it } from 'vitest';
import { hosePlace, supportAt } from '../../../../renderer/state/supportPlaces.ts';
import { distance } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Breath, Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import type { Lock, Run } from '../../../../shared/document/project/schema.ts';
import type { BayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { relayNear } from '../../../../shared/solve/handLay/relayNear.ts';
import { BLIND, EVERYTHING, HALF_CLEARANCE, LITTLE_CLEARANCE } from '../../../../shared/solve/layRun/attempts.ts';
import { type Found, lacksOf } from '../../../../shared/solve/layRun/lacksOf.ts';
import { layIfClean } from '../../../../shared/solve/layRun/layIfClean.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { runSetting } from '../../../../shared/solve/layRun/runLimits.ts';
import { tryAttempt } from '../../../../shared/solve/layRun/tryAttempt.ts';
import { waysRound } from '../../../../shared/solve/waysRound/waysRound.ts';
import { blockBay } from '../../../arbitraries/blockBays.ts';
import { carvedBay } from '../../../arbitraries/carvedBays.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const ALONE = buildTubeField([]);
/** 5 % wanted (NAVEDTRA 14105 p. 5-11/5-12), less what a search leaves of the shortest way. */
const LEAST_SLACK = 0.05 - 0.001;
/** FAA AC 43.13-1B Fig. 9-9. */
const SHORTENED = 0.96;

/** What is wrong with a lay as it is told, by its own lengths alone; nothing where it says honestly what it lacks. */
function dishonest(lay: Lay): string[] {
  const { outcome, reason, slack, liveLengthMm, tautLengthMm, breathing = [], run } = lay;
  if (outcome !== 'laid') return reason === undefined ? [`${run}: ${outcome} without a reason`] : wrongNumbers(lay);
  const breaches: string[] = [];
  if (liveLengthMm / tautLengthMm - 1 < LEAST_SLACK - 1e-6) breaches.push(`${run}: laid with ${slack} of slack`);
  if (breathing.length !== 2) breaches.push(`${run}: laid, and not breathed`);
  const straightMm = straightThroughHolds(lay);
  if (breathing.some((b) => b.taut && b.liveLengthMm < Math.max(straightMm, tautLengthMm)))
    breaches.push(`${run}: laid, and goes taut`);
  return breaches;
}

/** From mouth to clamp to mouth, read off the report, mm: no hose between them is shorter. */
function straightThroughHolds({ centreline, supports, cutLengthMm, liveLengthMm }: Lay): number {
  const socketMm = (cutLengthMm - liveLengthMm) / 2;
  const nearest = (arcMm: number) =>
    centreline.points.reduce((p, q, i) =>
      Math.abs(centreline.arcLengthMm[i]! - arcMm) <
      Math.abs(centreline.arcLengthMm[centreline.points.indexOf(p)]! - arcMm)
        ? q
        : p,
    );
  const held = supports.filter(({ kind }) => kind !== 'waypoint').sort((p, q) => p.at.arcLengthMm - q.at.arcLengthMm);
  const places = [nearest(socketMm), ...held.map(({ at }) => at.point), nearest(cutLengthMm - socketMm)];
  // Points of the report are up to 4 mm apart.
  return places.slice(1).reduce((sum, place, i) => sum + distance(place, places[i]!), -8);
}

/** A near miss for its slack says both shares rightly. */
function wrongNumbers({ run, reason = '', slack }: Lay): string[] {
  const [, wanted, has] = /no room for ([\d.]+) % of slack: with ([\d.]+) %/.exec(reason) ?? [];
  if (wanted === undefined) return [];
  const isRight = Number(wanted) === 5 && Math.abs(Number(has) - 100 * slack) <= 0.05 + 1e-9 && slack < LEAST_SLACK;
  return isRight ? [] : [`${run}: ${reason}, and has ${slack}`];
}

/** How far the line of one lay gets from that of another, mm. */
function furthestOff(one: Lay, other: Lay): number {
  const off = (p: Lay['centreline']['points'][number]) =>
    Math.min(...other.centreline.points.map((q) => distance(p, q)));
  return Math.max(...one.centreline.points.map(off));
}

function laysOf({ bay, project }: { bay: BayIndex; project: ResolvedProject }): Lay[] {
  return project.runs.map((run) => layRun({ project: project.project, bay }, run, ALONE, UNWATCHED));
}

describe('a lay that is told to be clean', () => {
  const seeds = (first: number, count: number): number[] => Array.from({ length: count }, (_, i) => first + i);

  it.each([
    ['strewn with blocks', 'blocks', seeds(41_700, 16)],
    ['crowded with blocks', 'crowd', seeds(41_800, 8)],
    ['carved out of a few things', 'open', seeds(41_900, 20)],
    ['carved out of many things', 'cluttered', seeds(42_000, 2)],
  ] as const)('has its slack and goes nowhere taut under pressure: bays %s', (_, kind, all) => {
    const made = (seed: number) =>
      kind === 'blocks' ? blockBay(seed, 22, 3) : kind === 'crowd' ? blockBay(seed, 45, 3) : carvedBay(seed, kind);
    const lays = all.flatMap((seed) => laysOf(made(seed)).map((lay) => ({ ...lay, run: `${seed} ${lay.run}` })));
    expect(lays.flatMap(dishonest)).toEqual([]);
    expect(lays.filter(({ outcome }) => outcome === 'laid').length).toBeGreaterThan(lays.length / 2);
  });

  it('on any side of things is as clean as any', () => {
    const lays = seeds(42_300, 8).flatMap((seed) => {
      const { bay, project } = blockBay(seed, 22, 3);
      return project.runs.flatMap((run) => waysRound({ project: project.project, bay }, run, ALONE, UNWATCHED));
    });
    expect(lays.filter(({ outcome }) => outcome === 'laid').length).toBeGreaterThan(10);
    expect(lays.flatMap(dishonest)).toEqual([]);
  });

  it('for the end trial is as clean as any', () => {
    const lays = seeds(42_100, 10).flatMap((seed) => {
      const { bay, project } = blockBay(seed, 22, 3);
      return project.runs.flatMap((run) => layIfClean({ project: project.project, bay }, run, ALONE, UNWATCHED) ?? []);
    });
    expect(lays.length).toBeGreaterThan(10);
    expect(lays.flatMap(dishonest)).toEqual([]);
  });
});

describe('a hose that clamps are put on by hand', () => {
  it('stays where it was seen, and is clean only where it does not go taut so', () => {
    const moved: number[] = [];
    const near = Array.from({ length: 8 }, (_, i) => 42_200 + i).flatMap((seed) => {
      const { bay, project } = blockBay(seed, 22, 3);
      return project.runs.flatMap((r): Lay[] => {
        const lay = layRun({ project: project.project, bay }, r, ALONE, UNWATCHED);
        if (lay.outcome !== 'laid') return [];
        const supports = [0.35, 0.6].map((share) => {
          const place = hosePlace(project.project, r.run, lay, share * lay.cutLengthMm)!;
          return { ...supportAt(r.run, 'clamp', place), id: `own-${share}` };
        });
        const run: Run = { ...r.run, supports };
        const one = { ...r, run };
        const alone = { project: { ...project.project, runs: [run] }, runs: [one] };
        const context = { project: alone.project, bay };
        const [again] = relayNear(context, alone, one, [lay], lay.centreline.points, UNWATCHED);
        moved.push(furthestOff(again!, lay));
        return [again!];
      });
    });
    // A hose of 14 to 20 mm drawn over by its own thickness would be seen to lie elsewhere.
    expect(Math.max(...moved)).toBeLessThan(20);
    expect(near.filter(({ outcome }) => outcome === 'laid').length).toBeGreaterThan(3);
    for (const { outcome, breathing = [], tautLengthMm } of near)
      if (outcome === 'laid') expect(breathing.some((b) => b.taut && b.liveLengthMm < tautLengthMm)).toBe(false);
    const taut = near.filter(({ reason }) => reason?.includes('too short then'));
    expect(taut.length).toBeGreaterThan(3);
    for (const { outcome, reason, slack, liveLengthMm, tautLengthMm } of taut) {
      expect(outcome).toBe('near-miss');
      const told = /with ([\d.]+) % of slack, as it is shown, it is ([\d.]+) mm too short then/.exec(reason!)!;
      expect(Number(told[1])).toBeCloseTo(100 * slack, 0);
      expect(Math.abs(Number(told[2]) - (tautLengthMm - SHORTENED * liveLengthMm))).toBeLessThan(0.051);
      expect(SHORTENED * liveLengthMm).toBeLessThan(tautLengthMm);
    }
  });
});

describe('what a hose lacks', () => {
  const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const ports = [examplePort('a', {}), examplePort('b', { seatPoint: [470, 0, 0], axis: [-1, 0, 0] })] as const;
  const resolved = (more: Partial<Run> = {}): ResolvedProject =>
    oneRunProject([...ports], [end, end], exampleHose({ minBendRadiusMm: 60 }), more);
  const settingOf = ({ project, runs }: ResolvedProject) => runSetting(project, runs[0]!);
  const plain = resolved();
  const candidate = tryAttempt(
    { project: plain.project, bay: emptyBay() },
    settingOf(plain),
    ALONE,
    EVERYTHING,
    UNWATCHED,
  )!;
  /** The same hose as if the taut one were so long that it has this slack. */
  const withSlack = (slack: number): Found => ({
    candidate: { ...candidate, tautLiveMm: candidate.shape.liveLengthMm / (1 + slack) },
  });
  const taut: Breath = { change: -0.04, liveLengthMm: 380, taut: true };
  /** Longer than the 400 mm between the mouths: no shape was found there, and it is not surely taut. */
  const shapeless: Breath = { ...taut, liveLengthMm: 401 };
  const lacks = (found: Found, more: Partial<Run> = {}) => lacksOf(settingOf(resolved(more)), found);

  it('is nothing for a hose in free space', () => {
    expect(lacks({ candidate })).toEqual([]);
    expect(lacks({ candidate, attempt: EVERYTHING })).toEqual([]);
  });

  it('is told where its limits or rest were not had', () => {
    const { judgement, shape } = candidate;
    expect(lacks({ candidate, attempt: HALF_CLEARANCE })).toEqual(['limits']);
    expect(lacks({ candidate, attempt: LITTLE_CLEARANCE })).toEqual(['limits']);
    expect(lacks({ candidate, attempt: BLIND })).toEqual(['limits']);
    expect(lacks({ candidate: { ...candidate, judgement: { ...judgement, breaksMm: 0.3 } } })).toEqual(['limits']);
    expect(lacks({ candidate: { ...candidate, shape: { ...shape, settled: false } } })).toEqual(['rest']);
  });

  it('is slack under the wanted one, less what a search leaves', () => {
    expect(lacks(withSlack(0.0491))).toEqual([]);
    expect(lacks(withSlack(0.0489))).toEqual(['slack']);
    expect(lacks(withSlack(0.0489), { slack: 0.045 })).toEqual([]);
  });

  it('is slack under pressure, where as much is wanted as that takes', () => {
    expect(lacks({ candidate, breathing: [taut] })).toEqual(['breath']);
    expect(lacks({ candidate, breathing: [shapeless] })).toEqual([]);
    // 4 % shorter takes 1 / 0.96 - 1 = 4.17 %.
    expect(lacks({ candidate, breathing: [taut] }, { slack: 0.042 })).toEqual(['breath']);
    expect(lacks({ candidate, breathing: [taut] }, { slack: 0.041 })).toEqual([]);
  });

  it('is no slack of what the user stated: led by hand, cut already, or locked as it lies', () => {
    const byHand = { ...withSlack(0.01), byHand: true };
    expect(lacks(byHand)).toEqual([]);
    expect(lacks({ ...byHand, breathing: [taut] })).toEqual(['breath']);
    const { liveLengthMm } = candidate.shape;
    const cut = { cutLengthMm: liveLengthMm + 30 };
    expect(lacks({ ...withSlack(0.01), breathing: [taut] }, cut)).toEqual([]);
    expect(lacks(withSlack(0.01), { cutLengthMm: liveLengthMm })).toEqual(['length']);
    const lock: Lock = {
      id: 'stays',
      points: [
        [200, 0, 0],
        [240, 0, 0],
      ],
      startAxis: [1, 0, 0],
      endAxis: [1, 0, 0],
    };
    expect(lacks({ ...withSlack(0.01), breathing: [taut] }, { locks: [lock] })).toEqual([]);
  });

  it('is nothing where half a straight tail is given up: its check tells that', () => {
    expect(lacks({ candidate, attempt: { ...EVERYTHING, tailShare: 0.5 } })).toEqual([]);
  });

  it('keeps a hose that is cut already laid at its own length, with the finding of what it comes to', () => {
    const cut = resolved({ cutLengthMm: 430 + 4 });
    const lay = layRun({ project: cut.project, bay: emptyBay() }, cut.runs[0]!, ALONE, UNWATCHED);
    expect(lay.outcome).toBe('laid');
    // Mouths 400 apart and two sockets of 15.
    expect(distance(ports[0].seatPoint, ports[1].seatPoint)).toBe(470);
    expect(lay.slack).toBeCloseTo(4 / 400, 5);
    expect(lay.breathing?.some((b) => b.taut)).toBe(true);
  });
});
