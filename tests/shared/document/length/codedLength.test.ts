import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { codedLength, looksCoded, readCodedLength } from '../../../../shared/document/length/codedLength.ts';
import { readLength } from '../../../../shared/document/parts/readLength.ts';

it('reads 0244 both ways and prefers neither: 24-4/8 in = 622.3 mm (trade story 5), or 2.44 in', () => {
  const [eighths, hundredths, ...more] = readCodedLength('0244');
  expect(eighths).toMatchObject({ kind: 'eighths', words: '0244 in inches and eighths = 24-4/8 in' });
  expect(eighths!.mm).toBeCloseTo(622.3, 9);
  expect(hundredths).toMatchObject({ kind: 'hundredths', words: '0244 in hundredths of an inch = 2.44 in' });
  expect(hundredths!.mm).toBeCloseTo(61.976, 9);
  expect(more).toEqual([]);
});

it('reads 01250 as 12.50 in by the catalogue that counts hundredths, among others', () => {
  const found = readCodedLength('01250');
  expect(found.map((reading) => reading.mm)).toEqual([125 * 25.4, 12.5 * 25.4]);
});

it('has no eighths where the last digit cannot be one', () => {
  expect(readCodedLength('0248').map((reading) => reading.kind)).toEqual(['hundredths']);
  for (const text of ['244', '024.4', '0244 mm', '012500', '']) expect(readCodedLength(text)).toEqual([]);
});

it('writes with the words beside it, upward', () => {
  expect(codedLength(622.3, 'eighths')).toMatchObject({
    code: '0244',
    words: '0244 in inches and eighths = 24-4/8 in',
  });
  expect(codedLength(622.31, 'eighths')?.code).toBe('0245');
  expect(codedLength(317.5, 'hundredths')).toMatchObject({
    code: '01250',
    words: '01250 in hundredths of an inch = 12.50 in',
  });
  expect(codedLength(26000, 'eighths')).toBeUndefined();
});

it('reads back what it wrote, long by less than a step', () => {
  const random = seededRandom(5);
  for (let i = 0; i < 300; i++) {
    const mm = random() * 20000;
    for (const kind of ['eighths', 'hundredths'] as const) {
      const { code } = codedLength(mm, kind)!;
      const back = readCodedLength(code).find((reading) => reading.kind === kind)!.mm;
      expect(back - mm).toBeGreaterThan(-1e-3);
      expect(back - mm).toBeLessThan(25.4 / (kind === 'eighths' ? 8 : 100));
    }
  }
});

it('is asked about where a length is typed, in either unit', () => {
  for (const unit of ['mm', 'in'] as const) {
    const read = readLength('0244', unit);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.readings?.map((reading) => reading.kind)).toEqual(['eighths', 'hundredths']);
  }
  expect(readLength('0244 mm', 'in')).toEqual({ ok: true, mm: 244 });
  expect(readLength('244', 'mm')).toEqual({ ok: true, mm: 244 });
  expect(readLength('24 3/8', 'mm')).toEqual({ ok: true, mm: 619.125 });
  expect(readLength('24-3/8"', 'mm')).toEqual({ ok: true, mm: 619.125 });
  expect(readLength('620mm', 'in')).toEqual({ ok: true, mm: 620 });
  expect(looksCoded('0.244')).toBe(false);
});
