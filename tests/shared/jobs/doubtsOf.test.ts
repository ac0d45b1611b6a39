import { expect, it } from 'vitest';
import { doubtsOf } from '../../../shared/jobs/doubtsOf.ts';
import { meshOfBlocks } from '../../arbitraries/blockBays.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../arbitraries/rig.ts';

const MESH = meshOfBlocks([{ min: [0, 0, 0], max: [900, 600, 400] }]);

function project(seatB: [number, number, number]) {
  const ports: [ReturnType<typeof examplePort>, ReturnType<typeof examplePort>] = [
    examplePort('a', { seatPoint: [0, 10, 10] }),
    examplePort('b', { seatPoint: seatB, axis: [-1, 0, 0] }),
  ];
  return oneRunProject(ports, [exampleEnd(0), exampleEnd(0)], exampleHose()).project;
}

it('has no doubt about a bay of ordinary size with its ports on it', () => {
  expect(doubtsOf(project([900, 10, 10]), MESH)).toEqual([]);
});

it('doubts the unit of a bay the size of a house, and says how large it comes out', () => {
  const house = { ...MESH, positions: MESH.positions.map((v) => v * 25.4) };
  const [doubt, ...more] = doubtsOf(project([900, 10, 10]), house);
  expect(doubt?.message).toBe('the bay comes out 22860 mm across: is the mesh in mm?');
  expect(more).toEqual([]);
});

it('doubts a port that hangs in the air', () => {
  const doubts = doubtsOf(project([1050, 300, 200]), MESH);
  expect(doubts.map((d) => d.path)).toEqual(['ports[1].seatPoint']);
});

it('measures to the faces of the bay, not to their corners', () => {
  expect(doubtsOf(project([450, 300, 499]), MESH)).toEqual([]);
  expect(doubtsOf(project([450, 300, 501]), MESH).map((d) => d.path)).toEqual(['ports[1].seatPoint']);
});
