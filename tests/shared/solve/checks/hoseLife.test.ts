import { expect, it } from 'vitest';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleHose, sampleRun } from '../../../arbitraries/projects.ts';
import { resolved } from './context.ts';

function found(madeOn: string | undefined, today: string | undefined, core: 'nbr' | 'ptfe-smooth' = 'nbr') {
  const run = sampleRun(madeOn === undefined ? {} : { madeOn });
  const project = resolved({ runs: [run] }, { hoses: [sampleHose({ core })] });
  return runChecks(project, [straightLay()], today).filter((f) => f.check === 'hoseLife');
}

// kitplanes.com "Maintenance matters" 39: rubber 5 years in an engine bay
it('looks at a rubber hose the month after it was due, and not before', () => {
  expect(found('2021-05', '2026-05-31')).toEqual([]);
  expect(found('2021-05', '2026-06-01')[0]).toMatchObject({ severity: 'look', rule: 'hose-life' });
  expect(found('2021-05', '2026-06-01')[0]?.message).toContain('due 2026-05');
});

it('says nothing where it is not said when the hose was made or what day it is, nor of PTFE', () => {
  expect(found(undefined, '2040-01-01')).toEqual([]);
  expect(found('2001-05', undefined)).toEqual([]);
  expect(found('2001-05', '2026-06-01', 'ptfe-smooth')).toEqual([]);
});
