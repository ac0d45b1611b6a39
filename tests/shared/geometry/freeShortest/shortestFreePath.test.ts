import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { add, distance, scale, turnAbout, type Vec3 } from '../../../../shared/base/vec3.ts';
import { connectWithShortTurns } from '../../../../shared/geometry/arcLineConnector.ts';
import { type Pose, pathEnd, pathLengthMm, tightestRadiusMm } from '../../../../shared/geometry/arcLinePath.ts';
import { freePaths, shortestFreePath } from '../../../../shared/geometry/freeShortest/shortestFreePath.ts';
import { anyDirection, posePairs } from '../../../arbitraries/posePairs.ts';
import { planarDubins } from '../../../oracles/planarDubins.ts';
import { shortestExtremal } from '../../../oracles/shortestExtremal.ts';

/** What the chain of arcs may lose against the smooth minimiser. */
const LOSS = 1.004;

function lengthOf(from: Pose, to: Pose, radiusMm: number): number {
  const path = shortestFreePath(from, to, radiusMm);
  return path ? pathLengthMm(path) : Number.POSITIVE_INFINITY;
}

const START: Pose = { point: [0, 0, 0], direction: [1, 0, 0] };
const NEAR_PAIRS = posePairs(5, 60).filter(({ from, to }) => !connectWithShortTurns(from, to, 1));

describe('shortest curve in free space', () => {
  it('turns back in a half circle onto a port two radii beside it: pi R', () => {
    const to: Pose = { point: [0, 150, 0], direction: [-1, 0, 0] };
    expect(lengthOf(START, to, 75) / (75 * Math.PI)).toBeGreaterThan(1 - 1e-9);
    expect(lengthOf(START, to, 75) / (75 * Math.PI)).toBeLessThan(1.001);
  });

  it('is never longer than the best of all six words of Dubins for ends in one plane', () => {
    const random = seededRandom(41);
    for (let i = 0; i < 60; i++) {
      const away = 0.5 * 20 ** random();
      const [bearing, heading] = [2 * Math.PI * random(), 2 * Math.PI * random()];
      const [x, y] = [away * Math.cos(bearing), away * Math.sin(bearing)];
      const to: Pose = { point: [x, y, 0], direction: [Math.cos(heading), Math.sin(heading), 0] };
      const planar = planarDubins(x, y, heading, 1, true).lengthMm;
      expect(lengthOf(START, to, 1) / planar, `${x} ${y} ${heading}`).toBeLessThan(LOSS);
    }
  });

  it('leaves the plane where that is shorter: ports three radii apart, looking the same way at 60 degrees to the line between', () => {
    const to: Pose = { point: [1.5, 1.5 * Math.sqrt(3), 0], direction: [1, 0, 0] };
    const length = lengthOf(START, to, 1);
    expect(planarDubins(1.5, 1.5 * Math.sqrt(3), 0, 1, true).lengthMm).toBeGreaterThan(9);
    expect(length / (shortestExtremal(START, to, 60, 1)?.length as number)).toBeLessThan(LOSS);
    expect(length).toBeLessThan(5.2);
  });

  it('is no shorter than the straight between the ends, nor than the turn between their directions', () => {
    for (const { from, to, apart } of posePairs(8, 80)) {
      const length = lengthOf(from, to, 1);
      expect(length).toBeGreaterThanOrEqual(apart - 1e-9);
      expect(length).toBeGreaterThanOrEqual(distance(from.direction, to.direction) - 1e-9);
    }
  });

  it('is as long in a bay that is moved and turned, mirrored, made larger, and from the far end', () => {
    expect(NEAR_PAIRS.length).toBeGreaterThan(15);
    const random = seededRandom(2);
    for (const { from, to } of NEAR_PAIRS.slice(0, 15)) {
      const length = lengthOf(from, to, 1);
      const [axis, shift, angle] = [anyDirection(random), scale(anyDirection(random), 9), 6 * random()];
      const moved = ({ point, direction }: Pose): Pose => ({
        point: add(scale(turnAbout(point, axis, angle), 75), shift),
        direction: turnAbout(direction, axis, angle),
      });
      expect(Math.abs(lengthOf(moved(from), moved(to), 75) / 75 / length - 1)).toBeLessThan(LOSS - 1);
      const mirrored = ({ point: [x, y, z], direction: [u, v, w] }: Pose): Pose => ({
        point: [x, y, -z],
        direction: [u, v, -w],
      });
      expect(Math.abs(lengthOf(mirrored(from), mirrored(to), 1) / length - 1)).toBeLessThan(LOSS - 1);
      const back = ({ point, direction }: Pose): Pose => ({ point, direction: scale(direction, -1) });
      expect(Math.abs(lengthOf(back(to), back(from), 1) / length - 1)).toBeLessThan(LOSS - 1);
    }
  });

  it('offers other short curves after the shortest, all of which end where they should and keep the radius', () => {
    let several = 0;
    for (const { from, to } of NEAR_PAIRS) {
      const paths = freePaths(from, to, 1);
      if (paths.length > 1) several++;
      for (const [i, path] of paths.entries()) {
        if (i > 0) expect(pathLengthMm(path)).toBeGreaterThanOrEqual(pathLengthMm(paths[i - 1] as typeof path));
        expect(distance(pathEnd(path).point, to.point)).toBeLessThan(1e-7);
        expect(distance(pathEnd(path).direction, to.direction)).toBeLessThan(1e-7);
        expect(tightestRadiusMm(path)).toBeGreaterThanOrEqual(1);
      }
    }
    expect(several).toBeGreaterThan(NEAR_PAIRS.length / 2);
  });

  it('answers the same twice', () => {
    const [{ from, to }] = NEAR_PAIRS as [(typeof NEAR_PAIRS)[number]];
    expect(shortestFreePath(from, to, 1)).toEqual(shortestFreePath(from, to, 1));
  });

  it('copes with ends in one line, at one place and back to back', () => {
    const cases: [Vec3, Vec3][] = [
      [
        [0, 0, 0],
        [-1, 0, 0],
      ],
      [
        [0, 0, 0],
        [0, 1, 0],
      ],
      [
        [-1, 0, 0],
        [1, 0, 0],
      ],
      [
        [-1, 0, 0],
        [-1, 0, 0],
      ],
      [
        [1, 0, 0],
        [-1, 0, 0],
      ],
      [
        [0, 1, 0],
        [1, 0, 0],
      ],
      [
        [0, 1, 0],
        [-1, 0, 0],
      ],
    ];
    for (const [point, direction] of cases) {
      const path = shortestFreePath(START, { point, direction }, 1);
      expect(path, `${point} ${direction}`).toBeDefined();
      if (!path) continue;
      expect(distance(pathEnd(path).point, point)).toBeLessThan(1e-7);
      expect(distance(pathEnd(path).direction, direction)).toBeLessThan(1e-7);
      expect(pathLengthMm(path)).toBeLessThan(9);
    }
  });
});
