import { expect, it } from 'vitest';
import { cutOut, putBack } from '../../../renderer/state/edits/cutOutEdits.ts';
import { Project } from '../../../shared/document/project/schema.ts';
import { SAMPLE_PROJECT } from '../sampleBench.ts';

const BOX = { low: [0, 0, 0], high: [10, 20, 40] } as const;

it('makes a piece a part, lying as the meshes do, and puts it back', () => {
  const bay = { ...SAMPLE_PROJECT.bay, scale: 2 };
  const first = cutOut({ ...SAMPLE_PROJECT, bay }, { name: ' Exhaust ', ...BOX });
  expect(first.bay.cutOuts).toEqual([
    {
      name: 'Exhaust',
      corner: [0, 0, 0],
      edges: [
        [5, 0, 0],
        [0, 10, 0],
        [0, 0, 20],
      ],
    },
  ]);
  const second = cutOut(first, { name: 'Flange', of: 'Exhaust', ...BOX });
  expect(Project.safeParse(second).success).toBe(true);
  expect(putBack(second, 0).bay.cutOuts?.map(({ name }) => name)).toEqual(['Flange']);
  expect(putBack(putBack(second, 0), 0).bay).toEqual(bay);
});
