import { describe, expect, it } from 'vitest';
import { add, addScaled, anySquareTo, distance, dot, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { HandChange, HandShape } from '../../../../shared/document/hand/handChange.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { outsideDiameterMm } from '../../../../shared/document/parts/outsideDiameter.ts';
import type { ResolvedProject, ResolvedRun } from '../../../../shared/document/project/resolve.ts';
import type { Run } from '../../../../shared/document/project/schema.ts';
import { curveAt, curveLengthMm, splineThrough } from '../../../../shared/geometry/cubicCurve.ts';
import type { BayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { type HandLay, openHandLay } from '../../../../shared/solve/handLay/handLay.ts';
import { runSetting } from '../../../../shared/solve/layRun/runLimits.ts';
import { tubesOf } from '../../../../shared/solve/layRun/tubesOf.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { relaxRod } from '../../../../shared/solve/rod/index.ts';
import { blockBay } from '../../../arbitraries/blockBays.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';
import { bruteForceDistance } from '../../../oracles/bruteForceDistance.ts';

interface Laid {
  readonly resolved: ResolvedProject;
  readonly bay: BayIndex;
  readonly lays: readonly Lay[];
}

async function lay(resolved: ResolvedProject, bay: BayIndex): Promise<Laid> {
  const lays = await layRuns({ project: resolved.project, bay }, resolved, resolved.runs, [], UNWATCHED);
  return { resolved, bay, lays };
}

/** The run number `i` in the hand. */
function take({ resolved, bay, lays }: Laid, i = 0): { hand: HandLay; lay: Lay; run: ResolvedRun } {
  const run = resolved.runs[i]!;
  const taken = lays.find((l) => l.run === run.run.id)!;
  const others = tubesOf(resolved, new Map(lays.map((l) => [l.run, l])), run.run.id);
  const hand = openHandLay({ project: resolved.project, bay }, run, taken, others, UNWATCHED);
  if (hand === undefined) throw new Error('take: the lay cannot be taken');
  return { hand, lay: taken, run };
}

/** A hose with a bend in free space. moved: everything stands aside by this. */
function bent(more: Partial<Run> = {}, moved: Vec3 = [0, 0, 0]): Promise<Laid> {
  const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const hose = exampleHose({ minBendRadiusMm: 60 });
  const at = (p: Vec3): [number, number, number] => [...add(p, moved)] as [number, number, number];
  const a = examplePort('a', { seatPoint: at([0, 0, 0]), axis: [1, 0, 0], up: [0, 0, 1] });
  const b = examplePort('b', { seatPoint: at([380, 240, 60]), axis: [0, -1, 0], up: [0, 0, 1] });
  return lay(oneRunProject([a, b], [end, end], hose, more), emptyBay());
}

/** A hose between two ports that face each other in line. */
function facing(more: Partial<Run> = {}): Promise<Laid> {
  const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const a = examplePort('a', { seatPoint: [0, 0, 0], axis: [1, 0, 0], up: [0, 0, 1] });
  const b = examplePort('b', { seatPoint: [500, 0, 0], axis: [-1, 0, 0], up: [0, 0, 1] });
  return lay(oneRunProject([a, b], [end, end], exampleHose({ minBendRadiusMm: 60 }), more), emptyBay());
}

/** Greatest distance of a line's points from another line, at the same share of its length. */
function apart(a: Lay['centreline'], b: Lay['centreline'], moved: Vec3 = [0, 0, 0]): number {
  const total = b.arcLengthMm.at(-1)!;
  const end = (k: number): Vec3 => b.points.at(k)!;
  const curve = splineThrough(
    Float64Array.from(b.points.flat()),
    total / (b.points.length - 1),
    unit(addScaled(end(1), end(0), -1)),
    unit(addScaled(end(-1), end(-2), -1)),
  );
  return Math.max(
    ...a.points.map((p, i) => {
      const share = a.arcLengthMm[i]! / a.arcLengthMm.at(-1)!;
      return distance(add(p, moved), curveAt(curve, share * curveLengthMm(curve)).point);
    }),
  );
}

function middle({ centreline }: Lay): { arcLengthMm: number; point: Vec3; along: Vec3 } {
  const i = Math.floor(centreline.points.length / 2);
  const along = unit(addScaled(centreline.points[i + 1]!, centreline.points[i - 1]!, -1));
  return { arcLengthMm: centreline.arcLengthMm[i]!, point: centreline.points[i]!, along };
}

/** A drag of the middle to `by` mm aside, in steps of 2 mm as a pointer makes them. */
function drag(hand: HandLay, of: Lay, by: number, more: HandChange = {}): HandShape {
  const { arcLengthMm, point, along } = middle(of);
  const side = anySquareTo(along);
  let shape: HandShape | undefined;
  for (let d = 0; d <= by; d += 2) {
    const to = addScaled(point, side, d);
    shape = hand.move({ ...more, pull: { arcLengthMm, to } }, UNWATCHED);
  }
  return shape!;
}

describe('a run in the hand', () => {
  it.each([1, 3, 5, 7])('lies as it was laid where nothing is changed, in seeded bay %d', async (seed) => {
    const made = blockBay(seed, 6, 3);
    const all = await lay(made.project, made.bay);
    all.lays.forEach((laid, i) => {
      if (laid.outcome !== 'laid') return;
      const { hand } = take(all, i);
      const shape = hand.move({}, UNWATCHED);
      // The hand's rod has half as many edges as the lay's: 0.007 mm seen, 0.028 mm where a hose bends to 76 mm. With edges half as
      // long a twelfth of that was seen.
      expect(apart(laid.centreline, shape.centreline)).toBeLessThan(0.04);
      expect(Math.abs(shape.cutLengthMm - laid.cutLengthMm)).toBeLessThan(0.01);
      expect(shape.minRadius.radiusMm / laid.minRadius.radiusMm).toBeCloseTo(1, 1);
      if (laid.clock.kind === 'angle' && shape.clock.kind === 'angle')
        expect(Math.abs(((shape.clock.deg - laid.clock.deg + 540) % 360) - 180)).toBeLessThan(0.5);
    });
  });

  it('pulled to where it lies anyway, lies as it did; pulled aside and let go, again', async () => {
    const { hand, lay: laid } = take(await bent());
    const rest = hand.move({}, UNWATCHED);
    const { arcLengthMm, point } = middle(laid);
    const held = hand.move({ pull: { arcLengthMm, to: point } }, UNWATCHED);
    expect(apart(held.centreline, rest.centreline)).toBeLessThan(0.1);
    expect(held.hold!.forceN).toBeLessThan(0.5);
    drag(hand, laid, 40);
    expect(apart(hand.move({}, UNWATCHED).centreline, rest.centreline)).toBeLessThan(1e-4);
  });

  it('is where the hand has it, and tells the axis that a clamp would have there', async () => {
    const { hand, lay: laid } = take(await bent());
    const { hold, centreline, cutLengthMm } = drag(hand, laid, 40);
    expect(hold!.offMm).toBeLessThan(0.2);
    const i = centreline.arcLengthMm.findIndex((s) => s > hold!.arcLengthMm);
    const chord = unit(addScaled(centreline.points[i]!, centreline.points[i - 1]!, -1));
    expect(dot(chord, hold!.axis)).toBeGreaterThan(0.999);
    expect(centreline.arcLengthMm.at(-1)).toBeCloseTo(cutLengthMm, 6);
  });

  it('is the same hose as a fine rod let go from far off, held at the same place', async () => {
    const all = await bent();
    const { hand, lay: laid, run } = take(all);
    const shape = drag(hand, laid, 30);
    const setting = runSetting(all.resolved.project, run);
    const tail = laid.straightTailMm.a;
    const { a, b } = shape.ends;
    const lengthMm = shape.liveLengthMm - 2 * tail;
    const from = run.a.end.shoulderToMouthMm + tail;
    const fraction = (shape.hold!.arcLengthMm - from) / lengthMm;
    // So many edges that a node stands where the hand is.
    const off = (n: number): number => Math.abs(fraction * n - Math.round(fraction * n)) / n;
    const edges = Array.from({ length: 100 }, (_, i) => 350 + i).reduce((a, b) => (off(b) < off(a) ? b : a));
    const fine = relaxRod({
      edges,
      lengthMm,
      a: { kind: 'held', point: addScaled(a.mouthPoint, a.hoseAxis, tail), direction: a.hoseAxis },
      b: {
        kind: 'held',
        point: addScaled(b.mouthPoint, b.hoseAxis, tail),
        direction: [-b.hoseAxis[0], -b.hoseAxis[1], -b.hoseAxis[2]],
      },
      stiffnessNmm2: setting.stiffnessNmm2,
      weightNPerMm: setting.weightNPerMm,
      down: [0, 0, -1],
      pulls: [{ node: Math.round(fraction * edges), point: shape.hold!.point, stiffnessNPerMm: 2000 }],
      guess: Float64Array.from([...a.mouthPoint, ...shape.hold!.point, ...b.mouthPoint]),
    });
    expect(fine.outcome).toBe('converged');
    const gaps = shape.centreline.points.flatMap((p, i) => {
      const share = ((shape.centreline.arcLengthMm[i]! - from) / lengthMm) * edges;
      if (share < 0 || share > edges) return [];
      const k = Math.min(edges - 1, Math.floor(share));
      const node = (n: number): Vec3 => [fine.nodes[3 * n]!, fine.nodes[3 * n + 1]!, fine.nodes[3 * n + 2]!];
      return [distance(p, addScaled(node(k), addScaled(node(k + 1), node(k), -1), share - k))];
    });
    expect(Math.max(...gaps)).toBeLessThan(0.3);
  });

  it('moves with its ports when both move alike', async () => {
    const by: Vec3 = [30, -20, 10];
    const all = await bent();
    const { hand, lay: laid, run } = take(all);
    const ports = [run.a.port, run.b.port].map((p) => ({
      ...p,
      seatPoint: [...add(p.seatPoint, by)] as [number, number, number],
    }));
    const shape = hand.move({ ports }, UNWATCHED);
    expect(apart(laid.centreline, shape.centreline, by)).toBeLessThan(0.3);
    expect(shape.ends.b.seatPoint).toEqual(ports[1]!.seatPoint);
    expect(shape.outcome).toBe('laid');
  });

  it('gets longer by the way a port goes back, and keeps its length where it is cut', async () => {
    const back = (run: ResolvedRun) => ({
      ...run.b.port,
      seatPoint: [...add(run.b.port.seatPoint, [40, 0, 0])] as [number, number, number],
    });
    const free = take(await facing());
    const grown = free.hand.move({ ports: [back(free.run)] }, UNWATCHED);
    // Two ports in line: all of the way is hose, and 5 % slack with it.
    expect(grown.cutLengthMm - free.lay.cutLengthMm).toBeCloseTo(42, 1);
    const cut = take(await facing({ cutLengthMm: free.lay.cutLengthMm + 30 }));
    const kept = cut.hand.move({ ports: [back(cut.run)] }, UNWATCHED);
    expect(kept.cutLengthMm).toBeCloseTo(cut.lay.cutLengthMm, 1);
    expect(drag(cut.hand, cut.lay, 20).cutLengthMm).toBeCloseTo(cut.lay.cutLengthMm, 1);
  });

  it('clamped where it lies, lies as it did; the clamp moved, the hose goes with it', async () => {
    const { hand, lay: laid } = take(await bent());
    const { point, along, arcLengthMm } = middle(laid);
    const clamp = { id: 'by-hand', kind: 'clamp' as const, point: [...point], axis: [...along] };
    const supports = [clamp] as unknown as NonNullable<HandChange['supports']>;
    const held = hand.move({ supports }, UNWATCHED);
    expect(apart(laid.centreline, held.centreline)).toBeLessThan(0.3);
    expect(held.supports).toMatchObject([{ id: 'by-hand', proposed: false }]);
    expect(held.supports[0]!.at.arcLengthMm).toBeCloseTo(arcLengthMm, 0);
    const moved = [{ ...clamp, point: [...addScaled(point, anySquareTo(along), 12)] }];
    const shape = hand.move({ supports: moved as unknown as NonNullable<HandChange['supports']> }, UNWATCHED);
    const near = Math.min(...shape.centreline.points.map((p) => distance(p, moved[0]!.point as unknown as Vec3)));
    expect(near).toBeLessThan(2.1);
  });

  it('keeps a locked stretch as it lies while the rest is dragged', async () => {
    const { hand, lay: laid } = take(await bent());
    const { points, arcLengthMm } = laid.centreline;
    const [from, to] = [Math.floor(points.length * 0.55), Math.floor(points.length * 0.8)];
    const axis = (i: number): [number, number, number] =>
      [...unit(addScaled(points[i + 1]!, points[i - 1]!, -1))] as [number, number, number];
    const lock = { id: 'stays', points: points.slice(from, to + 1), startAxis: axis(from), endAxis: axis(to) };
    const quarter = Math.floor(points.length / 3);
    const aside = addScaled(points[quarter]!, anySquareTo(axis(quarter)), 15);
    const pull = { arcLengthMm: arcLengthMm[quarter]!, to: aside };
    const shape = hand.move({ locks: [lock], pull }, UNWATCHED);
    expect(shape.hold!.offMm).toBeLessThan(0.3);
    for (const p of lock.points) {
      const near = Math.min(...shape.centreline.points.map((q) => distance(p, q)));
      expect(near).toBeLessThan(2.1);
    }
    // Nobody can pull the locked stretch itself.
    const vain = hand.move(
      { locks: [lock], pull: { arcLengthMm: arcLengthMm[from + 3]!, to: addScaled(points[from + 3]!, [0, 0, 1], 30) } },
      UNWATCHED,
    );
    expect(vain.outcome).toBe('near-miss');
    expect(vain.hold!.offMm).toBeGreaterThan(25);
  });
});

describe('what is told of a hose in the hand', () => {
  it('is the exact distance at the tightest place, and no place along the hose is nearer', async () => {
    const made = blockBay(4, 7, 3);
    const all = await lay(made.project, made.bay);
    let looked = 0;
    all.lays.forEach((laid, i) => {
      if (laid.outcome !== 'laid') return;
      const { hand, run } = take(all, i);
      const shape = drag(hand, laid, 12);
      const { tightest } = shape;
      if (tightest === undefined || tightest.to.kind !== 'skin') return;
      looked++;
      const radius = outsideDiameterMm(run.hose, run.sleeve) / 2;
      expect(bruteForceDistance(made.mesh, tightest.at.point) - radius).toBeCloseTo(tightest.clearanceMm, 3);
      const held = [run.a.port.seatPoint, run.b.port.seatPoint];
      const { points, arcLengthMm } = shape.centreline;
      const live = [run.a.end.shoulderToMouthMm, shape.cutLengthMm - run.b.end.shoulderToMouthMm] as const;
      const margin = tightest.clearanceMm - tightest.requiredMm;
      points.forEach((p, k) => {
        if (arcLengthMm[k]! < live[0] || arcLengthMm[k]! > live[1]) return;
        const asked = Math.min(radius + 12, 0.5 * Math.min(...held.map((h) => distance(p, h))));
        expect(bruteForceDistance(made.mesh, p) - asked).toBeGreaterThan(margin - 0.6);
      });
    });
    expect(looked).toBeGreaterThan(0);
  });

  it('is an honest near miss for pulls that no hose follows', async () => {
    const made = blockBay(2, 6, 2);
    const all = await lay(made.project, made.bay);
    const { hand, lay: laid } = take(all);
    const { arcLengthMm, point } = middle(laid);
    const pulls: Vec3[] = [
      [1e5, 0, 0],
      [-1e4, -1e4, 1e4],
      [720, point[1], point[2]],
      addScaled(point, [0, 0, 1], 1500),
    ];
    for (const to of pulls) {
      const shape = hand.move({ pull: { arcLengthMm, to } }, UNWATCHED);
      expect(shape.outcome).toBe('near-miss');
      expect(shape.reason).toBeTruthy();
      expect(shape.centreline.points.flat().every(Number.isFinite)).toBe(true);
    }
    for (const at of [0, laid.cutLengthMm, -50, 1e4]) {
      const shape = hand.move({ pull: { arcLengthMm: at, to: addScaled(point, [0, 0, 1], 50) } }, UNWATCHED);
      expect(shape.outcome).toBe('near-miss');
      expect(shape.hold!.forceN).toBe(0);
    }
    expect(apart(hand.move({}, UNWATCHED).centreline, laid.centreline)).toBeLessThan(0.5);
  });

  it('says where a drain no longer falls', async () => {
    const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
    const a = examplePort('a', { seatPoint: [0, 0, 300], axis: [0, 0, -1], up: [1, 0, 0] });
    const b = examplePort('b', { seatPoint: [260, 0, 0], axis: [-0.8, 0, 0.6], up: [0, 1, 0] });
    const resolved = oneRunProject([a, b], [end, end], exampleHose({ minBendRadiusMm: 60 }));
    const [run] = resolved.runs;
    const service = { ...run!.run.service, purpose: 'turbo-oil-drain' as const };
    const drain = { ...run!, run: { ...run!.run, service } };
    const { hand, lay: laid } = take(
      await lay({ project: { ...resolved.project, runs: [drain.run] }, runs: [drain] }, emptyBay()),
    );
    expect(laid.outcome).toBe('laid');
    const { arcLengthMm, point } = middle(laid);
    let lowered = hand.move({}, UNWATCHED);
    for (let down = 0; down < 150 && lowered.outcome === 'laid'; down += 3)
      lowered = hand.move({ pull: { arcLengthMm, to: addScaled(point, [0, 0, 1], -down) } }, UNWATCHED);
    expect(lowered.outcome).toBe('near-miss');
    expect(lowered.reason).toMatch(/falls -?[\d.]+ degrees/);
  });

  it('says by how much a cut hose is too short', async () => {
    const { run, lay: laid } = take(await bent());
    const cut = take(await bent({ cutLengthMm: laid.cutLengthMm }));
    const far = { ...run.b.port, seatPoint: [...add(run.b.port.seatPoint, [300, 0, 0])] as [number, number, number] };
    const shape = cut.hand.move({ ports: [far] }, UNWATCHED);
    expect(shape.outcome).toBe('near-miss');
    expect(shape.reason).toMatch(/too short by \d+/);
  });
});
