import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { redivideChain } from '../../../../shared/geometry/freeShortest/redivideChain.ts';
import {
  COLUMN,
  endColumns,
  endMiss,
  JOINT,
  layChain,
  type TurnChain,
} from '../../../../shared/geometry/freeShortest/turnChain.ts';

const ARCS = 7;

function someChain(seed: number, size: number): TurnChain {
  const random = seededRandom(seed);
  const shares = Float64Array.from({ length: ARCS }, () => 0.5 + random());
  const sum = shares.reduce((a, b) => a + b, 0);
  return {
    bends: Float64Array.from({ length: 2 * ARCS }, () => size * (random() - 0.5)),
    shares: shares.map((share) => share / sum),
    length: 5,
  };
}

function jointsOf(chain: TurnChain): Float64Array {
  const joints = new Float64Array(JOINT * (chain.shares.length + 1));
  layChain(chain, joints);
  return joints;
}

function endOf(joints: Float64Array): { point: Vec3; direction: Vec3 } {
  const [x, y, z, u, v, w] = joints.slice(-JOINT) as unknown as [number, number, number, number, number, number];
  return { point: [x, y, z], direction: [u, v, w] };
}

describe('chain of arcs', () => {
  it('goes round a quarter circle in its plane', () => {
    const bends = Float64Array.from({ length: 2 * ARCS }, (_, i) => i % 2);
    const chain = { bends, shares: new Float64Array(ARCS).fill(1 / ARCS), length: Math.PI / 2 };
    const { point, direction } = endOf(jointsOf(chain));
    for (const [k, v] of [1, 0, 1].entries()) expect(point[k]).toBeCloseTo(v, 12);
    for (const [k, v] of [0, 0, 1].entries()) expect(direction[k]).toBeCloseTo(v, 12);
  });

  it.each([1.2, 1e-2, 0])('moves its end as its columns say, curvatures up to %s', (size) => {
    const chain = someChain(4, size);
    const joints = jointsOf(chain);
    const columns = new Float64Array(COLUMN * ARCS);
    const byLength = new Float64Array(5);
    endColumns(chain, joints, columns, byLength);
    const step = 1e-6;
    const ahead = new Float64Array(5);
    const back = new Float64Array(5);
    for (let unknown = 0; unknown <= 2 * ARCS; unknown++) {
      for (const [sign, out] of [
        [1, ahead],
        [-1, back],
      ] as const) {
        const bends = chain.bends.slice();
        if (unknown < 2 * ARCS) bends[unknown] = (bends[unknown] as number) + sign * step;
        const length = chain.length + (unknown === 2 * ARCS ? sign * step : 0);
        endMiss(joints, endOf(jointsOf({ ...chain, bends, length })), out);
      }
      const column = unknown < 2 * ARCS ? columns.subarray(5 * unknown, 5 * unknown + 5) : (byLength as Float64Array);
      for (let r = 0; r < 5; r++) {
        const difference = ((ahead[r] as number) - (back[r] as number)) / (2 * step);
        expect(column[r]).toBeCloseTo(difference, 7);
      }
    }
  });

  it('keeps its length, its most curvature and nearly its curve when divided anew', () => {
    const chain = someChain(9, 1.2);
    const fine = redivideChain(chain, 40);
    expect(fine.shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    expect(fine.shares.every((share) => share > 0)).toBe(true);
    const most = (bends: Float64Array): number =>
      Math.max(
        ...Array.from({ length: bends.length / 2 }, (_, i) =>
          Math.hypot(bends[2 * i] as number, bends[2 * i + 1] as number),
        ),
      );
    expect(most(fine.bends)).toBeLessThanOrEqual(most(chain.bends) + 1e-12);
    const miss = endMiss(jointsOf(fine), endOf(jointsOf(chain)), new Float64Array(5));
    expect(miss).toBeLessThan(0.15);
  });
});
