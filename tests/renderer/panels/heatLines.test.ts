import { expect, it } from 'vitest';
import { heatLines } from '../../../renderer/panels/straightView/heatLines.ts';
import { HEAT_PLACES, heatAlong } from '../../arbitraries/heat.ts';

const COOL = heatAlong({ low: 60, likely: 70, high: 80 });
const HOT = heatAlong({ low: 100, likely: 150, high: 200 }, { low: 60, likely: 70, high: 80 });

it('draws the liner along the hose and marks its hottest place in the state that has it', () => {
  const running = heatLines({ ...COOL, running: HOT.running });
  expect(running.running).toEqual(HEAT_PLACES.map((arcLengthMm, i) => ({ arcLengthMm, value: i === 1 ? 150 : 70 })));
  expect(running.hottest).toEqual({ arcLengthMm: 250, value: 150, soaking: false });
  expect(heatLines({ ...COOL, soak: HOT.soak }).hottest).toEqual({ arcLengthMm: 250, value: 150, soaking: true });
});
