import { expect, test } from 'vitest';
import { heatTable } from '../../../electron/cli/heatTable.ts';
import { heatAlong } from '../../arbitraries/heat.ts';
import { sampleLay } from '../../renderer/sampleBench.ts';

test('each hose with heat has a row, its band rounded outwards; without there is no table', () => {
  expect(heatTable([sampleLay('a')])).toEqual([]);
  const heat = heatAlong({ low: 101.9, likely: 143.4, high: 200.1 });
  const text = heatTable([sampleLay('a'), sampleLay('b', { heat })]).join('\n');
  expect(text).toContain('143 (101 to 201)');
  expect(text).toContain('250 mm');
  expect(text).toContain('exhaust-left 80 %');
  expect(text).toContain('taken: made up');
  expect(heatTable([sampleLay('c', { heat: { ...heat, sources: [] } })]).join('\n')).toContain('nothing hot in sight');
});
