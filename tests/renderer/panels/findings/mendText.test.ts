import { expect, test } from 'vitest';
import { curedWords, titleOf } from '../../../../renderer/panels/findings/mendText.ts';

test('a change heads its row without the comma that joins it to a sentence', () => {
  expect(titleOf('A clamp, 471.0 mm from shoulder A,')).toBe('A clamp, 471.0 mm from shoulder A');
  expect(titleOf('A 45 degree end at END B')).toBe('A 45 degree end at END B');
});

test('what is cured stands as a line of its own', () => {
  expect(curedWords('cures: clamp spacing')).toBe('Cures clamp spacing');
  expect(curedWords('makes less grave: bend radius')).toBe('Makes less grave bend radius');
  expect(curedWords('keeps 26.2 mm from tub-rear')).toBe('Keeps 26.2 mm from tub-rear');
  expect(curedWords('cures: the lay itself')).toBe('A way that keeps all that is asked of the hose');
});
