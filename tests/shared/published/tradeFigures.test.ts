import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ruleById } from '../../../shared/document/rules/index.ts';
import { CODE, PUSH_ON_C, TRADE } from './tradeFigures.ts';

describe('every figure of a rule that was read in no table', () => {
  it.each(Object.entries({ ...TRADE, ...CODE }))('%s is as it was read', (id, { printed, factor = 1 }) => {
    expect(Math.abs((ruleById(id)?.value ?? Number.NaN) * factor - printed) / printed).toBeLessThan(1e-3);
    expect(ruleById(id)?.grade).toBe('published');
  });

  it('push-on joints bear 300 F', () => {
    expect(Math.abs((ruleById('push-on-temperature')?.value ?? 0) - PUSH_ON_C.printed)).toBeLessThan(0.2);
  });

  const findings = '../shared/reference/trade.md';
  it.skipIf(!existsSync(findings))(
    'stands so where it was read (skipped: findings of the trade not beside the checkout)',
    () => {
      const text = readFileSync(findings, 'utf8');
      for (const { words } of [...Object.values(TRADE), PUSH_ON_C]) expect(text).toContain(words);
    },
  );
});
