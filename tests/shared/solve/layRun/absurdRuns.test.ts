import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { PLAIN_SKIN, type Port } from '../../../../shared/document/project/schema.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';
import { block, meshOfTriangles, plate, type Triangle } from '../../../arbitraries/triangles.ts';

const END = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });

function box(centre: [number, number, number], half: number): Triangle[] {
  return block(centre, [
    [half, 0, 0],
    [0, half, 0],
    [0, 0, half],
  ]);
}

function lay(things: readonly Triangle[], a: Partial<Port>, b: Partial<Port>, outsideDiameterMm = 16): Lay {
  const mesh = meshOfTriangles({ things: [...plate([600, 0, -400], [900, 0, 0], [0, 900, 0]), ...things] });
  const bay = buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED);
  const hose = exampleHose({ outsideDiameterMm, minBendRadiusMm: 4 * outsideDiameterMm });
  const resolved = oneRunProject([examplePort('a', a), examplePort('b', b)], [END, END], hose);
  return layRun({ project: resolved.project, bay }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
}

const FAR: Partial<Port> = { seatPoint: [600, 0, 0], axis: [-1, 0, 0] };

describe('runs that cannot be', () => {
  it.each<[string, () => Lay]>([
    ['a port inside a solid', () => lay(box([0, 0, 0], 60), {}, FAR)],
    ['a port in a closed room, hose and all', () => lay(box([0, 0, 0], 120), {}, FAR)],
    ['both ports in closed rooms', () => lay([...box([0, 0, 0], 150), ...box([600, 0, 0], 150)], {}, FAR)],
    ['a port that faces a wall at once', () => lay(box([70, 0, 0], 30), {}, FAR)],
    ['a hose wider than the bay', () => lay(box([300, 0, 0], 200), {}, FAR, 400)],
  ])('%s: never called laid, and a sentence says why', (_, make) => {
    const { outcome, reason, cutLengthMm } = make();
    expect(outcome).not.toBe('laid');
    expect(reason).toMatch(/^.{20,}$/);
    expect(Number.isFinite(cutLengthMm)).toBe(true);
  });

  it.each<[string, () => Lay]>([
    ['both ports at one place', () => lay([], {}, { axis: [-1, 0, 0] })],
    ['one port given twice', () => lay([], {}, {})],
    ['ports that face away from each other', () => lay([], { axis: [-1, 0, 0] }, { ...FAR, axis: [1, 0, 0] })],
  ])('%s: an answer all the same', (_, make) => {
    const { outcome, reason, cutLengthMm } = make();
    if (outcome !== 'laid') expect(reason).toMatch(/^.{20,}$/);
    expect(Number.isFinite(cutLengthMm)).toBe(true);
  });
});
