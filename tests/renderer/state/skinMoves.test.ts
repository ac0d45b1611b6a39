import { expect, test } from 'vitest';
import { changeSkin } from '../../../renderer/state/edits/skinEdits.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import type { Project, SkinSweep } from '../../../shared/document/project/schema.ts';
import { sampleProject } from '../../arbitraries/projects.ts';

const SWEEP: SkinSweep = { kind: 'turn', point: [1, 2, 3], axis: [0, 0, 1] };
const belt = (project: Project) => project.bay.skins.find(({ id }) => id === 'belt');

test('a moving skin is told how it moves, and one that is no longer moving sweeps nothing', () => {
  const moves = changeSkin(sampleProject(), 'belt', { sweep: SWEEP });
  expect(belt(moves)?.sweep).toEqual(SWEEP);
  expect(belt(changeSkin(moves, 'belt', { name: 'Fan' }))?.sweep).toEqual(SWEEP);
  expect(belt(changeSkin(moves, 'belt', { sweep: null }))).not.toHaveProperty('sweep');
  const plain = changeSkin(moves, 'belt', { kind: 'plain' });
  expect(belt(plain)).not.toHaveProperty('sweep');
  expect(parseProject(JSON.stringify(plain)).ok).toBe(true);
});

test('a material is stated and taken back', () => {
  const made = changeSkin(sampleProject(), 'belt', { material: 'aluminium' });
  expect(belt(made)?.material).toBe('aluminium');
  expect(belt(changeSkin(made, 'belt', { material: null }))).not.toHaveProperty('material');
});
