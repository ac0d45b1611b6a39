import { expect, test } from 'vitest';
import { flowTable } from '../../../electron/cli/flowTable.ts';
import type { Flow } from '../../../shared/document/lay/schema.ts';
import { sampleLay } from '../../renderer/sampleBench.ts';

const FLOW: Flow = {
  speedMPerS: 1.4801,
  reynolds: 2600,
  regime: 'either',
  dropKpa: { low: 3.04, likely: 4.1, high: 6.11 },
  hoseKpa: 3,
  bendsKpa: 0.6,
  endsKpa: 0.5,
  headKpa: -1.2,
  basis: ['viscosity as stated'],
};

test('each hose with a flow has a row, its band rounded outwards; without a flow there is no table', () => {
  expect(flowTable([sampleLay('a')])).toEqual([]);
  const text = flowTable([sampleLay('a'), sampleLay('b', { flow: FLOW })]).join('\n');
  expect(text).toContain('1.49 m/s');
  // 4.1 kPa over 6.894757 kPa a psi is 0.59.
  expect(text).toContain('about 4.1 kPa (0.6 psi), between 3.0 and 6.2 kPa');
  expect(text).toContain('-1.2 kPa');
  expect(text).toContain('taken: viscosity as stated');
});
