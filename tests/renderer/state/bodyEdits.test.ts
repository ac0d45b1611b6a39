import { expect, it } from 'vitest';
import { addBody, changeBody, removeBody, setPartBody, stillMotion } from '../../../renderer/state/edits/bodyEdits.ts';
import { Project } from '../../../shared/document/project/schema.ts';
import { bodyOfPart } from '../../../shared/document/project/skinOfPart.ts';
import { samplePort, sampleProject } from '../../arbitraries/projects.ts';

const PARTS = ['engine-block', 'engine-mount', 'exhaust-pipe', 'tub'];
const project = sampleProject({ ports: [samplePort({ body: 'engine' }), samplePort({ id: 'p2', name: 'Port 2' })] });

it('a part taken off a body by its pattern leaves the others of the pattern on it', () => {
  const moved = setPartBody(project, 'engine-mount', null, PARTS);
  expect(bodyOfPart(moved, 'engine-mount').id).toBe('chassis');
  expect(bodyOfPart(moved, 'engine-block').id).toBe('engine');
  expect(bodyOfPart(moved, 'exhaust-pipe').id).toBe('engine');
  expect(setPartBody(moved, 'engine-mount', null, PARTS)).toBe(moved);
});

it('a new body takes parts from others; it moves as it is told, and a project with it reads back', () => {
  const added = addBody(project, 'Gearbox');
  const filled = setPartBody(added.project, 'exhaust-pipe', added.id, PARTS);
  expect(bodyOfPart(filled, 'exhaust-pipe').name).toBe('Gearbox');
  const moving = changeBody(filled, added.id, { motion: { ...stillMotion([1, 2, 3]), rollDeg: [-2, 2] } });
  const read = Project.safeParse(moving);
  expect(read.success && read.data.bay.bodies.at(-1)?.motion?.rollDeg).toEqual([-2, 2]);
  expect(changeBody(moving, added.id, { motion: null }).bay.bodies.at(-1)?.motion).toBeUndefined();
});

it('taken away, a body leaves its ports and parts on the chassis', () => {
  const without = removeBody(project, 'engine');
  expect(without.ports[0]?.body).toBeUndefined();
  expect(bodyOfPart(without, 'engine-block').id).toBe('chassis');
});
