import { expect, it } from 'vitest';
import { inchesToMm } from '../../../../shared/base/units.ts';
import { CLOCK_LONG_ABOVE_MM, clockToleranceRule } from '../../../../shared/document/rules/clockRules.ts';
import { RULES, ruleById, ruleValue } from '../../../../shared/document/rules/index.ts';
import { cutSquarenessMm, en853Tolerance, lengthTolerance } from '../../../../shared/document/rules/lengthTolerance.ts';
import { requiredRunClearance, requiredSkinClearance } from '../../../../shared/document/rules/requiredClearance.ts';
import { sampleProject } from '../../../arbitraries/projects.ts';

it('gives every rule an id of its own, a title, a source, and a value inside its band', () => {
  expect(new Set(RULES.map((r) => r.id)).size).toBe(RULES.length);
  for (const rule of RULES) {
    expect(rule.id).toMatch(/^[a-z0-9-]+$/);
    expect(rule.title.length).toBeGreaterThan(5);
    expect(rule.source.length).toBeGreaterThan(10);
    expect(rule.source.startsWith('common practice, no source')).toBe(rule.grade === 'common-practice');
    if (rule.range !== undefined) {
      expect(rule.value).toBeGreaterThanOrEqual(rule.range.low);
      expect(rule.value).toBeLessThanOrEqual(rule.range.high);
    }
  }
});

it.each([
  ['slack-wanted', 0.05, 'NAVEDTRA 14105 p. 5-11/5-12; FAA-H-8083-30 p. 7-19'],
  ['breathing-longer', 0.02, 'AC 43.13-1B Fig. 9-9'],
  ['breathing-shorter', -0.04, 'AC 43.13-1B Fig. 9-9'],
  ['straight-tail', 2, 'FAA-H-8083-30 p. 7-19'],
  ['clearance-plain', 12, 'JTM001-1 13.3.4, printed 0.47 in and 12 mm'],
  ['hose-spacing', 12, 'JTM001-1 13.3.4'],
  ['clearance-hot', inchesToMm(3), 'Street Rodder; N.J.A.C. 13:62-4.16'],
  ['heat-sleeve-within', inchesToMm(6), 'Stinson owners'],
  ['drain-outlet-tilt', 15, 'garrettmotion.com, oil drainage'],
  ['drain-outlet-limit', 35, 'garrettmotion.com, leak troubleshooting'],
  ['drain-least-dash', 10, 'bullseyepower.com'],
  ['clamp-spacing', 610, 'NAVEDTRA 14105; AL0907 p. 59: 24 in'],
  ['clock-tolerance-short', 3, 'MIL-DTL-83796/5 Fig. 3 note 3'],
  ['clock-tolerance-long', 5, 'MIL-DTL-83796/5 Fig. 3 note 3'],
  ['aluminium-end-temperature', 135, 'SAE AS1946F: 275 F'],
  ['static-conductivity', 1e-7, 'BS 5958-2:1991 19.3 as quoted'],
])('%s is the published %d (%s)', (id, value) => {
  expect(ruleById(id)?.grade).toBe('published');
  expect(ruleById(id)?.value).toBeCloseTo(value, 9);
});

it('has the handbook band of slack', () => {
  expect(ruleById('slack-wanted')?.range).toEqual({ low: 0.05, high: 0.08 });
});

it('steps the length tolerance as RMA IP-2 Table 4-8 does', () => {
  // in: up to 12, 1/8; 24, 3/16; 36, 1/4; 48, 3/8; 72, 1/2; above, 1 %. The table's mm are rounded to 0.1.
  const steps: [number, number][] = [
    [12, 3.18],
    [24, 4.8],
    [36, 6.4],
    [48, 9.5],
    [72, 12.7],
  ];
  steps.forEach(([edge, toleranceMm], i) => {
    const at = lengthTolerance(inchesToMm(edge), 'nbr').toleranceMm;
    expect(Math.abs(at - toleranceMm)).toBeLessThan(0.051);
    const next = lengthTolerance(inchesToMm(edge) + 0.01, 'nbr').toleranceMm;
    expect(Math.abs(next - (steps[i + 1]?.[1] ?? 18.288))).toBeLessThan(0.051);
  });
  expect(lengthTolerance(2000, 'nbr').toleranceMm).toBeCloseTo(20, 9);
  expect(lengthTolerance(500, 'ptfe-convoluted').applies).toBe(false);
  expect(lengthTolerance(500, 'ptfe-smooth').applies).toBe(true);
});

it('takes the closer clock tolerance up to 24 in', () => {
  expect(clockToleranceRule(CLOCK_LONG_ABOVE_MM)).toBe('clock-tolerance-short');
  expect(clockToleranceRule(CLOCK_LONG_ABOVE_MM + 0.1)).toBe('clock-tolerance-long');
});

it('goes by the Army table where the project says so: 5 degrees to 36 in (914.4 mm), 10 above', () => {
  expect(ruleById(clockToleranceRule(914.4, 'army-tm'))?.value).toBe(5);
  expect(ruleById(clockToleranceRule(914.5, 'army-tm'))?.value).toBe(10);
  expect(clockToleranceRule(700, 'mil-dtl-83796')).toBe('clock-tolerance-long');
});

it('knows how square a cut must be: 0.063 in to 3/4 in hose, 0.125 in to 2 in (RMA IP-2, same table)', () => {
  expect(cutSquarenessMm(12)).toBeCloseTo(1.6, 2);
  expect(cutSquarenessMm(16)).toBeCloseTo(3.175, 3);
  expect(cutSquarenessMm(40)).toBeUndefined();
});

it('tells the lopsided band of EN 853 Table 3 (from memory) beside it', () => {
  expect(en853Tolerance(630, 16)).toMatchObject({ overMm: 7, underMm: 3, source: 'EN 853 Table 3, from memory' });
  expect(en853Tolerance(630.1, 16)).toMatchObject({ overMm: 12, underMm: 4 });
  expect(en853Tolerance(600, 20)).toMatchObject({ overMm: 12, underMm: 4 });
  expect(en853Tolerance(2600, 8)).toMatchObject({ overMm: 39, underMm: 13 });
  expect(en853Tolerance(9000, 8)).toMatchObject({ overMm: 270, underMm: 90 });
});

it("prefers the run's own override to one for all, and says which", () => {
  const overrides = [
    { rule: 'clearance-hot', value: 60, reason: 'all shielded' },
    { rule: 'clearance-hot', run: 'r1', value: 50, reason: 'and wrapped' },
  ];
  expect(ruleValue({ overrides }, 'clearance-hot', 'r1')).toMatchObject({
    value: 50,
    override: { reason: 'and wrapped' },
  });
  expect(ruleValue({ overrides }, 'clearance-hot', 'r2')).toMatchObject({ value: 60, rule: { value: 76.2 } });
  expect(ruleValue({ overrides }, 'clearance-hot').value).toBe(60);
  expect(ruleValue({ overrides: [] }, 'clearance-hot', 'r1')).not.toHaveProperty('override');
});

it('lets no override touch a rule that takes none, and stops on a rule that is none', () => {
  const overrides = [{ rule: 'bend-radius', value: 0.5, reason: 'it bends further by hand' }];
  expect(ruleValue({ overrides }, 'bend-radius', 'r1').value).toBe(1);
  expect(() => ruleValue({ overrides }, 'made-up')).toThrow(/ruleValue/);
});

it('adds scan uncertainty to the rule or to what the skin states', () => {
  const project = sampleProject();
  project.bay.scanUncertaintyMm = 1.5;
  const [hot] = project.bay.skins;
  if (hot === undefined) throw new Error('expected a skin');
  expect(requiredSkinClearance(project, 'r1', hot).requiredMm).toBeCloseTo(77.7, 9);
  expect(requiredSkinClearance(project, 'r1', { ...hot, clearanceMm: 0 })).toMatchObject({
    requiredMm: 1.5,
    statedMm: 0,
  });
  expect(requiredRunClearance(project, 'r1', 'r2').requiredMm).toBe(13.5);
  project.overrides = [{ rule: 'hose-spacing', run: 'r2', value: 20, reason: 'hot oil' }];
  expect(requiredRunClearance(project, 'r1', 'r2').requiredMm).toBe(21.5);
  expect(requiredRunClearance(project, 'r2', 'r1').requiredMm).toBe(21.5);
});
