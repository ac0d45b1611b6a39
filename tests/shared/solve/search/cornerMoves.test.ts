import { describe, expect, it } from 'vitest';
import { distance, dot, type Vec3 } from '../../../../shared/base/vec3.ts';
import { pathEnd, pathLengthMm } from '../../../../shared/geometry/arcLinePath.ts';
import {
  CORNER_CELL_RADII,
  cornerMoves,
  HEADING_STEPS,
  HEADINGS,
} from '../../../../shared/solve/search/cornerMoves.ts';

describe('moves from node to node of a grid', () => {
  it.each([
    [75, CORNER_CELL_RADII * 75],
    [110, 12],
    [40, 31],
  ])('end on a node in a heading, at a radius of %d mm on cells of %d mm', (radiusMm, cellMm) => {
    const moves = cornerMoves(radiusMm, cellMm);
    expect(moves.length).toBe(26);
    moves.forEach((from, heading) => {
      const start = { point: [0, 0, 0] as Vec3, direction: HEADINGS[heading] as Vec3 };
      for (const { step, toHeading, lengthMm, segments } of from) {
        const path = { start, segments };
        const end = pathEnd(path);
        const node: Vec3 = [step[0] * cellMm, step[1] * cellMm, step[2] * cellMm];
        expect(distance(end.point, node)).toBeLessThan(1e-9);
        expect(distance(end.direction, HEADINGS[toHeading] as Vec3)).toBeLessThan(1e-12);
        expect(pathLengthMm(path)).toBeCloseTo(lengthMm, 9);
        for (const segment of segments) {
          if (segment.kind === 'arc') expect(segment.radiusMm).toBe(radiusMm);
          expect(segment.kind === 'arc' || segment.lengthMm > 0).toBe(true);
        }
      }
    });
  });

  it('turn to every heading at 35.3, 45, 54.7 and 60 degrees, and no further', () => {
    cornerMoves(75, 17).forEach((from, heading) => {
      const near = HEADING_STEPS.filter((_, h) => dot(HEADINGS[h] as Vec3, HEADINGS[heading] as Vec3) > 0.4999);
      expect(from.length).toBe(near.length);
    });
  });
});
