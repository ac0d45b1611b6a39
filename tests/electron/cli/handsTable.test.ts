import { expect, it } from 'vitest';
import { handsTable } from '../../../electron/cli/handsTable.ts';
import { handsWith, nutWith, tightNut } from '../../arbitraries/hands.ts';
import { sampleLay } from '../../renderer/sampleBench.ts';

it('tells each nut, what is reached, and says that any order does', () => {
  expect(handsTable([sampleLay('a')])).toEqual([]);
  const at = { arcLengthMm: 212.4, point: [0, 0, 0] as [number, number, number] };
  const places = [
    { at, why: 'under the clamp', by: 'mirror' as const },
    { at, why: 'back of the tightest bend', by: 'hand' as const },
  ];
  const shut = tightNut(0, { crowFoot: { widestDeg: 45 }, second: { hexMm: 22, assumed: true, fits: false } });
  const text = handsTable([
    sampleLay('a'),
    sampleLay('b', { hands: handsWith(tightNut(41.8), shut, { places }) }),
  ]).join('\n');
  expect(text).toContain('22.2 mm?');
  expect(text).toContain('41°');
  expect(text).toContain('down');
  expect(text).toContain('none; crow-foot 45°');
  expect(text).toContain('no room');
  expect(text).toContain('1 of 2; mirror: under the clamp at 212 mm');
  expect(text).toContain('order of fitting: any');
  expect(text).toContain('taken: made up');
});

it('tells the order and what has to wait', () => {
  const lay = (run: string, before: string[]) => sampleLay(run, { hands: handsWith(nutWith(), nutWith(), { before }) });
  const text = handsTable([lay('a', []), lay('b', ['a'])]).join('\n');
  expect(text).toContain('order of fitting: b, a');
  expect(text).toContain('a after b');
  expect(handsTable([lay('a', ['b']), lay('b', ['a'])]).join('\n')).toContain('neither of a, b');
});
