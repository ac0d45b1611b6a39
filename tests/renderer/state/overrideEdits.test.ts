import { expect, it } from 'vitest';
import { passingOf, setOverride, withoutOverride } from '../../../renderer/state/edits/overrideEdits.ts';
import { Finding } from '../../../shared/document/lay/schema.ts';
import { Project } from '../../../shared/document/project/schema.ts';
import { sampleProject } from '../../arbitraries/projects.ts';

const project = sampleProject();
const finding = (rule: string, limit: number, measured: number, unit: string): Finding =>
  Finding.parse({
    check: 'clearance',
    run: 'r1',
    severity: 'stop',
    rule,
    limit,
    measured,
    margin: measured - limit,
    unit,
    source: 's',
    message: 'm',
  });

it('what would just pass is told in the rule’s own unit: moved by what is missing, or in proportion', () => {
  const near = passingOf(project, finding('clearance-plain', 13, 10, 'mm'));
  expect(typeof near !== 'string' && near.wouldPass).toBe(9);
  const tight = passingOf(project, finding('straight-tail', 31.6, 15.8, 'mm'));
  expect(typeof tight !== 'string' && tight.wouldPass).toBeCloseTo(1, 9);
});

it('a rule that is nobody’s to set says so', () => {
  expect(passingOf(project, finding('pressure-rating', 100, 200, 'kPa'))).toContain('nobody');
});

it('a limit set again takes the place of the one before, for its run alone, and the project reads back', () => {
  const once = setOverride(project, { rule: 'clearance-plain', run: 'r1', value: 9, reason: 'measured by hand' });
  const twice = setOverride(once, { rule: 'clearance-plain', run: 'r1', value: 8, reason: 'measured again' });
  const other = setOverride(twice, { rule: 'clearance-plain', value: 10, reason: 'all of them' });
  expect(other.overrides.map(({ value }) => value)).toEqual([8, 10]);
  expect(Project.safeParse(other).success).toBe(true);
  expect(withoutOverride(other, { rule: 'clearance-plain', run: 'r1' }).overrides.map(({ value }) => value)).toEqual([
    10,
  ]);
});
