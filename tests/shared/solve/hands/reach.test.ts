import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import { PLAIN_SKIN, type Project } from '../../../../shared/document/project/schema.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { reachPlaces } from '../../../../shared/solve/hands/reach.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { layAlong } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleRun } from '../../../arbitraries/projects.ts';
import { resolved } from '../checks/context.ts';

const PETROL = { purpose: 'fuel', fluid: 'petrol', pressureKpa: 30, temperatureC: 40 } as const;
/** END A's mouth is at X = 20, END B's at 480. */
const STRAIGHT: readonly Vec3[] = [
  [0, 0, 0],
  [500, 0, 0],
];
interface Block {
  readonly min: Vec3;
  readonly max: Vec3;
}

const FAR: Block = { min: [2000, 2000, 2000], max: [2001, 2001, 2001] };
/** A trunk 60 mm wide and high inside round the first 150 mm of the hose; its lid may be off. */
const trunk = (lid: boolean): Block[] => [
  { min: [-200, -40, -40], max: [150, 40, -30] },
  { min: [-200, -40, -30], max: [150, -30, 30] },
  { min: [-200, 30, -30], max: [150, 40, 30] },
  ...(lid ? [{ min: [-200, -40, 30], max: [150, 40, 40] } as Block] : []),
];

function joints(blocks: readonly Block[], changes: Partial<Project> = {}, end: Partial<End> = {}) {
  const project = resolved({ runs: [sampleRun({ service: PETROL })], ...changes }, { ends: [sampleEnd(end)] });
  const bay = buildBayIndex(meshOfBlocks([...blocks, FAR]), () => PLAIN_SKIN, UNWATCHED);
  const places = reachPlaces(project.runs[0]!, layAlong(STRAIGHT), bay, project.project);
  return places.filter(({ joint }) => joint !== undefined);
}

describe('the joints of a hose that has to be looked over', () => {
  it('are both of fuel on a boat, each at its mouth; in a car none', () => {
    expect(joints([], { vehicle: 'boat' })).toMatchObject([
      { joint: 'a', by: 'hand', at: { arcLengthMm: 20 } },
      { joint: 'b', by: 'hand', at: { arcLengthMm: 480 } },
    ]);
    expect(joints([], { vehicle: 'car' })).toEqual([]);
    expect(joints([], { vehicle: 'boat', runs: [sampleRun()] })).toEqual([]);
  });

  it('are those that hose clamps hold, whatever runs in it', () => {
    expect(joints([], { runs: [sampleRun()] }, { joint: 'clamped' }).map(({ joint }) => joint)).toEqual(['a', 'b']);
  });

  it('are out of reach in a closed trunk, and come at from above with its lid off where the arm has room', () => {
    const boat = { vehicle: 'boat' } as const;
    expect(joints(trunk(true), boat).map(({ by }) => by)).toEqual(['mirror', 'hand']);
    const open = joints(trunk(false), boat);
    expect(open.map(({ by }) => by)).toEqual(['hand', 'hand']);
    expect(open[0]?.from?.[2]).toBeGreaterThan(0.7);
  });
});
