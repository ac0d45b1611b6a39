import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { add, distance, dot, rejectFrom, scale, turnAbout, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import {
  type ContactField,
  materialAtEnd,
  type RodEnd,
  type RodProblem,
  type RodShape,
  type RodTwist,
  relaxRod,
  twistBetween,
} from '../../../../shared/solve/rod/index.ts';
import { carriedTwist } from '../../../oracles/carriedTwist.ts';

const START = unit([1, 0.3, 0.4] as Vec3);
const END = unit([0.8, -0.5, 0.2] as Vec3);

const FREE: RodProblem = {
  edges: 64,
  lengthMm: 460,
  a: { kind: 'held', point: [10, -20, 30], direction: START },
  b: { kind: 'held', point: [390, 60, -40], direction: END },
  stiffnessNmm2: 1.5e5,
  weightNPerMm: 0.004,
  down: [0, 0, -1],
  guess: new Float64Array([10, -20, 30, 390, 60, -40]),
};
const free = relaxRod(FREE);
const TORSIONAL_NMM2 = 1e5;
const MATERIAL_A = unit(rejectFrom([0, 0, 1], START));
/** Tightened at rest: the lay line where the untwisted hose has it. */
const MATERIAL_B = materialAtEnd(free, MATERIAL_A, 0);

function twistBy(turnRad: number): RodTwist {
  return {
    torsionalStiffnessNmm2: TORSIONAL_NMM2,
    materialA: MATERIAL_A,
    materialB: turnAbout(MATERIAL_B, END, turnRad),
    nearRad: turnRad,
  };
}

/** The hose tightened at rest, then end B turned about its own direction. */
function wrung(turnRad: number, more: Partial<RodProblem> = {}): RodProblem {
  return { ...FREE, guess: free.nodes, twist: twistBy(turnRad), ...more };
}

function nodesOf(shape: RodShape): Vec3[] {
  return Array.from(
    { length: shape.nodes.length / 3 },
    (_, k): Vec3 => [shape.nodes[3 * k]!, shape.nodes[3 * k + 1]!, shape.nodes[3 * k + 2]!],
  );
}

function furthestApart(p: readonly Vec3[], q: readonly Vec3[]): number {
  return Math.max(...p.map((point, i) => distance(point, q[i]!)));
}

/** The problem with every place and every direction mapped. */
function mapped(problem: RodProblem, place: (p: Vec3) => Vec3, turn: (d: Vec3) => Vec3): RodProblem {
  const end = (e: RodEnd): RodEnd => {
    const moved = { ...e, point: place(e.point), direction: turn(e.direction) };
    return moved.kind === 'held' ? moved : { ...moved, axisPoint: place(moved.axisPoint), axis: turn(moved.axis) };
  };
  const guess = new Float64Array(problem.guess.length);
  for (let i = 0; i < guess.length; i += 3) {
    guess.set(place([problem.guess[i]!, problem.guess[i + 1]!, problem.guess[i + 2]!]), i);
  }
  const { a, b, down, twist } = problem;
  const turned = twist && { ...twist, materialA: turn(twist.materialA), materialB: turn(twist.materialB) };
  return { ...problem, a: end(a), b: end(b), down: turn(down), guess, ...(turned && { twist: turned }) };
}

const SIXTY = Math.PI / 3;
const sixty = relaxRod(wrung(SIXTY));

describe('where the untwisted hose comes out again', () => {
  test('tightened at rest: no twist, no torque, the same shape', () => {
    const shape = relaxRod(wrung(0));
    expect(shape.outcome).toBe('converged');
    expect(Math.abs(shape.twistRad)).toBeLessThan(1e-9);
    expect(Math.abs(shape.torqueNmm)).toBeLessThan(1e-6);
    expect(furthestApart(nodesOf(shape), nodesOf(free))).toBeLessThan(1e-5);
    expect(shape.energyNmm).toBeCloseTo(free.energyNmm, 8);
  });
  test('and cold, from the chord', () => {
    const shape = relaxRod({ ...wrung(0), guess: FREE.guess });
    expect(Math.abs(shape.twistRad)).toBeLessThan(1e-6);
    expect(furthestApart(nodesOf(shape), nodesOf(free))).toBeLessThan(1e-4);
  });
  test('no torsional stiffness: the same steps to the same shape, with the twist it would have', () => {
    const shape = relaxRod({ ...FREE, twist: { ...twistBy(2), torsionalStiffnessNmm2: 0 } });
    expect(shape.nodes).toEqual(free.nodes);
    expect(shape.energyNmm).toBe(free.energyNmm);
    expect(shape.twistRad).toBeCloseTo(2, 8);
    expect(shape.torqueNmm).toBe(0);
    expect(shape.twistingNmm).toBe(0);
  });
  test('without a twist given, none is answered', () => {
    // After a twisted one, whose workspace it takes over; in an odd and in an even number of steps.
    for (const maxIterations of [1, 2, 200]) {
      relaxRod(wrung(2));
      const again = relaxRod({ ...FREE, maxIterations });
      expect([again.twistRad, again.torqueNmm, again.twistingNmm]).toEqual([0, 0, 0]);
    }
  });
});

describe('an end turned by 60 degrees after tightening', () => {
  test('the hose gives way sideways: less twist and less energy than if it had kept its shape', () => {
    expect(sixty.outcome).toBe('converged');
    expect(sixty.stable).toBe(true);
    expect(sixty.twistRad).toBeGreaterThan(0);
    expect(sixty.twistRad).toBeLessThan(SIXTY);
    expect(furthestApart(nodesOf(sixty), nodesOf(free))).toBeGreaterThan(0.5);
    const kept = free.energyNmm + (0.5 * TORSIONAL_NMM2 * SIXTY ** 2) / FREE.lengthMm;
    expect(sixty.energyNmm).toBeLessThan(kept);
  });
  test('twist is what is left between the frames, carried along the shape by rotation matrices', () => {
    const { materialA, materialB } = twistBy(SIXTY);
    expect(sixty.twistRad).toBeCloseTo(carriedTwist(sixty, materialA, materialB), 10);
    expect(sixty.twistRad).toBeCloseTo(twistBetween(sixty, materialA, materialB, 1), 10);
  });
  test('energy and torque are those of a bar of this twist (Saint-Venant: GJ Tw / L)', () => {
    expect(sixty.torqueNmm).toBeCloseTo((TORSIONAL_NMM2 * sixty.twistRad) / FREE.lengthMm, 9);
    expect(sixty.twistingNmm).toBeCloseTo((0.5 * TORSIONAL_NMM2 * sixty.twistRad ** 2) / FREE.lengthMm, 9);
  });
  test('turning the end a little more costs torque times angle: by differences of the energy', () => {
    const h = 1e-3;
    const slope = (relaxRod(wrung(SIXTY + h)).energyNmm - relaxRod(wrung(SIXTY - h)).energyNmm) / (2 * h);
    expect(sixty.torqueNmm / slope).toBeCloseTo(1, 5);
  });
  test('moving the end a little costs force times way: by differences of the energy', () => {
    const h = 0.01;
    for (const axis of [0, 1, 2]) {
      const at = (by: number): number => {
        const point = FREE.b.point.map((c, i) => (i === axis ? c + by : c)) as unknown as Vec3;
        return relaxRod(wrung(SIXTY, { b: { kind: 'held', point, direction: END } })).energyNmm;
      };
      expect((at(h) - at(-h)) / (2 * h)).toBeCloseTo(sixty.endForceN[axis]!, 5);
    }
  });
  test('a plane hose leaves its plane, to opposite sides for opposite turns', () => {
    const plane: RodProblem = {
      ...FREE,
      lengthMm: 400,
      weightNPerMm: 0,
      a: { kind: 'held', point: [0, 0, 0], direction: [0, 1, 0] },
      b: { kind: 'held', point: [200, 0, 0], direction: unit([0.3, -1, 0]) },
      guess: new Float64Array([0, 0, 0, 100, 150, 0, 200, 0, 0]),
    };
    const turned = (by: number): RodShape =>
      relaxRod({
        ...plane,
        twist: {
          torsionalStiffnessNmm2: TORSIONAL_NMM2,
          materialA: [0, 0, 1],
          materialB: turnAbout([0, 0, 1], plane.b.direction, by),
          nearRad: by,
        },
      });
    const up = turned(SIXTY);
    const down = turned(-SIXTY);
    const flat = turned(0);
    expect(Math.max(...nodesOf(flat).map((p) => Math.abs(p[2])))).toBeLessThan(1e-6);
    expect(Math.max(...nodesOf(up).map((p) => Math.abs(p[2])))).toBeGreaterThan(1);
    expect(up.twistRad).toBeLessThan(SIXTY - 0.01);
    expect(down.twistRad).toBeCloseTo(-up.twistRad, 6);
    const mirrored = nodesOf(down).map((p): Vec3 => [p[0], p[1], -p[2]]);
    expect(furthestApart(nodesOf(up), mirrored)).toBeLessThan(1e-4);
  });
});

describe('what may not matter', () => {
  test.each([0.4, -2, 3])('which end is A: the same shape and the same twist, turned by %f', (turnRad) => {
    const problem = wrung(turnRad);
    const back = (e: RodEnd): RodEnd => ({ ...e, direction: scale(e.direction, -1) });
    const { materialA, materialB } = problem.twist!;
    const there = relaxRod(problem);
    const again = relaxRod({
      ...problem,
      a: back(problem.b),
      b: back(problem.a),
      twist: { ...problem.twist!, materialA: materialB, materialB: materialA },
      guess: new Float64Array(nodesOf(free).reverse().flat()),
    });
    expect(there.outcome).toBe('converged');
    expect(again.twistRad).toBeCloseTo(there.twistRad, 7);
    expect(furthestApart(nodesOf(again).reverse(), nodesOf(there))).toBeLessThan(1e-4);
  });
  test('where and how the whole stands', () => {
    const axis = unit([0.3, -0.8, 0.5] as Vec3);
    const turn = (d: Vec3): Vec3 => turnAbout(d, axis, 1.9);
    const place = (p: Vec3): Vec3 => add(turn(p), [700, -300, 55]);
    const moved = relaxRod(mapped(wrung(SIXTY), place, turn));
    expect(moved.twistRad).toBeCloseTo(sixty.twistRad, 8);
    expect(furthestApart(nodesOf(moved), nodesOf(sixty).map(place))).toBeLessThan(1e-4);
  });
  test('a mirror: the mirrored mismatch gives the mirrored shape and the opposite twist', () => {
    const mirror = (p: Vec3): Vec3 => [p[0], -p[1], p[2]];
    const problem = mapped(wrung(SIXTY), mirror, mirror);
    const shape = relaxRod({ ...problem, twist: { ...problem.twist!, nearRad: -SIXTY } });
    expect(shape.twistRad).toBeCloseTo(-sixty.twistRad, 8);
    expect(furthestApart(nodesOf(shape), nodesOf(sixty).map(mirror))).toBeLessThan(1e-4);
  });
  test('size: lengths by 3, with the stiffnesses by 3^3 under the same weight per length', () => {
    const problem = mapped(
      wrung(SIXTY),
      (p) => scale(p, 3),
      (d) => d,
    );
    const shape = relaxRod({
      ...problem,
      lengthMm: 3 * FREE.lengthMm,
      stiffnessNmm2: 27 * FREE.stiffnessNmm2,
      twist: { ...problem.twist!, torsionalStiffnessNmm2: 27 * TORSIONAL_NMM2 },
    });
    expect(shape.twistRad).toBeCloseTo(sixty.twistRad, 8);
    expect(
      furthestApart(
        nodesOf(shape),
        nodesOf(sixty).map((p) => scale(p, 3)),
      ),
    ).toBeLessThan(1e-3);
  });
  test('small nudges of the start: 20 seeded ones fall back to the same shape', () => {
    const random = seededRandom(8);
    for (let i = 0; i < 20; i++) {
      const guess = Float64Array.from(sixty.nodes);
      for (let j = 3; j < guess.length - 3; j++) guess[j] = guess[j]! + 4 * (random() - 0.5);
      const nudged = relaxRod(wrung(SIXTY, { guess }));
      expect(nudged.outcome).toBe('converged');
      expect(furthestApart(nodesOf(nudged), nodesOf(sixty))).toBeLessThan(1e-3);
    }
  });
});

describe('whole turns', () => {
  test('350 degrees and -10 have the same ends and are not the same', () => {
    const degrees = Math.PI / 180;
    const { twist } = wrung(-10 * degrees);
    const little = relaxRod(wrung(-10 * degrees));
    const much = relaxRod(wrung(0, { twist: { ...twist!, nearRad: 350 * degrees } }));
    expect(little.twistRad / degrees).toBeGreaterThan(-10);
    expect(little.twistRad / degrees).toBeLessThan(0);
    expect(much.outcome).toBe('converged');
    expect(much.twistRad / degrees).toBeGreaterThan(200);
    expect(much.energyNmm).toBeGreaterThan(little.energyNmm);
  });
  test('end B turned on by 10 degrees at a time, 36 times: twist and energy go on without a jump', () => {
    let shape = relaxRod(wrung(0));
    for (let i = 1; i <= 36; i++) {
      const turn = (i * Math.PI) / 18;
      const next = relaxRod(wrung(0, { guess: shape.nodes, twist: { ...twistBy(turn), nearRad: shape.twistRad } }));
      expect(next.outcome).toBe('converged');
      expect(next.twistRad - shape.twistRad).toBeGreaterThan(0);
      expect(next.twistRad - shape.twistRad).toBeLessThan(Math.PI / 9);
      expect(next.energyNmm).toBeGreaterThan(shape.energyNmm);
      shape = next;
    }
    const whole = relaxRod(wrung(2 * Math.PI));
    expect(shape.twistRad).toBeCloseTo(whole.twistRad, 5);
  });
});

describe('ends that turn', () => {
  test('an end free to turn about its own direction lets all twist out', () => {
    const b: RodEnd = { kind: 'turning', axisPoint: FREE.b.point, axis: END, ...pose(FREE.b), clockRad: 0 };
    const shape = relaxRod(wrung(SIXTY, { b }));
    expect(shape.outcome).toBe('converged');
    expect(Math.abs(shape.twistRad)).toBeLessThan(1e-7);
    expect(shape.clockBRad).toBeCloseTo(-SIXTY, 6);
    expect(furthestApart(nodesOf(shape), nodesOf(free))).toBeLessThan(1e-4);
  });
  test('so does one at A, turned against the other way about', () => {
    const a: RodEnd = { kind: 'turning', axisPoint: FREE.a.point, axis: START, ...pose(FREE.a), clockRad: 0 };
    const shape = relaxRod(wrung(SIXTY, { a }));
    expect(Math.abs(shape.twistRad)).toBeLessThan(1e-7);
    expect(shape.clockARad).toBeCloseTo(SIXTY, 6);
  });
  test('an angled end that turns stands where neither bend nor twist turns it on', () => {
    const axis = unit([0.1, 0.2, 1] as Vec3);
    const b: RodEnd = { kind: 'turning', axisPoint: [360, 80, -40], axis, ...pose(FREE.b), clockRad: 0 };
    const shape = relaxRod(wrung(SIXTY, { b }));
    expect(shape.outcome).toBe('converged');
    expect(shape.stable).toBe(true);
    const c = shape.clockBRad;
    const at = (clock: number): number => {
      const point = add(b.axisPoint, turnAbout(add(b.point, scale(b.axisPoint, -1)), axis, clock));
      const direction = turnAbout(END, axis, clock);
      const twist = { ...twistBy(SIXTY), materialB: turnAbout(twistBy(SIXTY).materialB, axis, clock) };
      const held: RodEnd = { kind: 'held', point, direction };
      const there = relaxRod(
        wrung(SIXTY, { b: held, guess: shape.nodes, twist: { ...twist, nearRad: shape.twistRad } }),
      );
      return there.energyNmm;
    };
    expect(at(c)).toBeCloseTo(shape.energyNmm, 5);
    expect(at(c + 0.02)).toBeGreaterThan(shape.energyNmm);
    expect(at(c - 0.02)).toBeGreaterThan(shape.energyNmm);
    expect(Math.abs(dot(shape.endDirection, turnAbout(END, axis, c)) - 1)).toBeLessThan(1e-12);
  });
});

describe('a wrung hose on a floor', () => {
  const floorZ = -60;
  const LYING = { weightNPerMm: 0.02, lengthMm: 560 };
  const floor: ContactField = {
    gapAt(_x, _y, z, out) {
      out.gapMm = z - floorZ;
      out.nx = 0;
      out.ny = 0;
      out.nz = 1;
    },
  };
  const lying = relaxRod(wrung(2, { contact: floor, ...LYING }));

  test('lies on it, wrung, at a minimum', () => {
    expect(Math.min(...nodesOf(relaxRod(wrung(2, LYING))).map((p) => p[2]))).toBeLessThan(floorZ - 3);
    expect(lying.outcome).toBe('converged');
    expect(lying.stable).toBe(true);
    expect(lying.contacts.length).toBeGreaterThan(1);
    expect(lying.pressedMm).toBeLessThan(0.1);
    expect(lying.twistRad).toBeGreaterThan(0.5);
  });
  test('and still costs torque times angle to turn on: by differences of the energy', () => {
    const h = 1e-3;
    const at = (by: number): number => relaxRod(wrung(2 + by, { contact: floor, ...LYING })).energyNmm;
    expect(lying.torqueNmm / ((at(h) - at(-h)) / (2 * h))).toBeCloseTo(1, 4);
  });
});

describe('what is asked', () => {
  test('a taut straight hose keeps all its twist', () => {
    const shape = relaxRod({
      ...FREE,
      lengthMm: 300,
      a: { kind: 'held', point: [0, 0, 0], direction: [1, 0, 0] },
      b: { kind: 'held', point: [300, 0, 0], direction: [1, 0, 0] },
      twist: { torsionalStiffnessNmm2: TORSIONAL_NMM2, materialA: [0, 1, 0], materialB: [0, 0, 1], nearRad: 8 },
    });
    expect(shape.outcome).toBe('converged');
    expect(shape.twistRad).toBeCloseTo(2.5 * Math.PI, 12);
    expect(shape.energyNmm - shape.twistingNmm).toBeLessThan(1e-9);
  });
  test('a material direction along the hose, or a negative stiffness, is no question', () => {
    expect(() => relaxRod({ ...FREE, twist: { ...twistBy(0), materialA: START } })).toThrow('square');
    expect(() => relaxRod({ ...FREE, twist: { ...twistBy(0), torsionalStiffnessNmm2: -1 } })).toThrow('below 0');
  });
});

function pose(end: RodEnd): { point: Vec3; direction: Vec3 } {
  return { point: end.point, direction: end.direction };
}
