import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { distance } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay, Rock, RockExtreme } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import { Motion } from '../../../../shared/document/project/schema.ts';
import { movePoint, rigidMotion, turnDirection } from '../../../../shared/geometry/rigidMotion.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { bodyBays } from '../../../../shared/solve/rock/bodyBays.ts';
import { rockLays } from '../../../../shared/solve/rock/rockLays.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

type Triple = [number, number, number];
type Ranges = Partial<{ rollDeg: [number, number]; pitchDeg: [number, number]; yawDeg: [number, number] }> & {
  shiftMm?: Partial<{ x: [number, number]; y: [number, number]; z: [number, number] }>;
};

interface Rig {
  readonly apart?: number;
  readonly slack?: number;
  readonly bodyA?: string;
  readonly bodyB?: string;
  readonly pivot?: Triple;
  readonly ranges: Ranges;
  /** where all of the rig is put */
  readonly move?: (p: Vec3) => Triple;
}

/** Two straight ends that face each other along X; END B on a body that moves. A stiff light hose: weight does not count. */
function rocked({ apart = 500, slack = 0.05, bodyA, bodyB = 'engine', pivot, ranges, move = (p) => [...p] }: Rig): {
  resolved: ResolvedProject;
  lay: Lay;
  rock: Rock;
} {
  const hose = exampleHose({ minBendRadiusMm: 60, bendingStiffnessNmm2: 5e6, weightKgPerM: 0.1 });
  const end = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
  const turned = (v: Vec3): Triple => {
    const [o, p] = [move([0, 0, 0]), move(v)];
    return [p[0] - o[0], p[1] - o[1], p[2] - o[2]];
  };
  const on = (body: string | undefined) => (body === undefined ? {} : { body });
  const a = examplePort('a', {
    seatPoint: move([0, 0, 0]),
    axis: turned([1, 0, 0]),
    up: turned([0, 0, 1]),
    ...on(bodyA),
  });
  const b = examplePort('b', {
    seatPoint: move([apart + 70, 0, 0]),
    axis: turned([-1, 0, 0]),
    up: turned([0, 0, 1]),
    ...on(bodyB),
  });
  const resolved = oneRunProject([a, b], [end, end], hose, { slack });
  resolved.project.overrides.push({ rule: 'straight-tail', value: 0, reason: 'closed forms are clamped at the mouth' });
  const motion = Motion.parse({ pivot: move(pivot ?? [apart + 70, 0, 0]), ...ranges });
  resolved.project.bay.bodies.push({ id: 'engine', name: 'Engine', parts: [], motion });
  const bay = emptyBay();
  const lay = layRun({ project: resolved.project, bay }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
  const [out] = rockLays(resolved, bodyBays(resolved.project, bay.mesh, UNWATCHED), [lay], UNWATCHED);
  return { resolved, lay, rock: out!.rock as Rock };
}

function at(rock: Rock, name: string): RockExtreme {
  const found = rock.extremes.find((e) => e.pose.name === name);
  if (found === undefined) throw new Error(`no pose ${name}: ${rock.extremes.map((e) => e.pose.name).join(' | ')}`);
  return found;
}

describe('rock', () => {
  it('leaves slack over when facing ends go apart: live length less the new straight line', () => {
    // Mouths 500 apart, live 525: slack 25. At x + 10 the straight line is 510, slack 15; at x - 10, 35.
    const { rock, lay } = rocked({ ranges: { shiftMm: { x: [-10, 10] } } });
    expect(lay.liveLengthMm).toBeCloseTo(525, 1);
    expect(rock.extremes.map((e) => e.pose.name)).toEqual(['at rest', 'engine: x -10 mm', 'engine: x +10 mm']);
    expect(at(rock, 'at rest').slackLeftMm).toBeCloseTo(25, 1);
    expect(at(rock, 'engine: x +10 mm').slackLeftMm).toBeCloseTo(15, 1);
    expect(at(rock, 'engine: x -10 mm').slackLeftMm).toBeCloseTo(35, 1);
    expect(rock.extremes.map((e) => e.outcome)).toEqual(['lies', 'lies', 'lies']);
    // 25 mm of slack at 10 mm of motion: not within twice the motion.
    expect(rock.tightAt).toBeUndefined();
    expect(rock.worst.slackLeft).toBe(2);
  });
  it('lies at rest as it was laid, free of twist', () => {
    const { rock, lay } = rocked({ ranges: { shiftMm: { x: [-10, 10] } } });
    const rest = at(rock, 'at rest');
    expect(rest.minRadius!.provenAtLeastMm / lay.minRadius.provenAtLeastMm).toBeCloseTo(1, 2);
    expect(rest.twistDeg).toBeCloseTo(0, 2);
  });
  it('goes tight at the share of the motion that uses the slack up', () => {
    const { rock } = rocked({ ranges: { shiftMm: { x: [0, 20] } } });
    expect(rock.tightAt?.share).toBeCloseTo(25 / 20, 2);
    const more = rocked({ ranges: { shiftMm: { x: [0, 40] } } }).rock;
    expect(more.tightAt?.share).toBeCloseTo(25 / 40, 2);
    expect(at(more, 'engine: x +40 mm')).toMatchObject({ outcome: 'too-short' });
    expect(at(more, 'engine: x +40 mm').missingMm).toBeCloseTo(15, 1);
  });
  it('is wrung by what its far end turns about its own axis', () => {
    const { rock } = rocked({ slack: 0.001, ranges: { rollDeg: [-7, 7] } });
    expect(Math.abs(at(rock, 'engine: roll +7 degrees').twistDeg!)).toBeCloseTo(7, 1);
  });
});
