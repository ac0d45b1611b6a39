import type { Finding } from '../../document/lay/schema.ts';
import type { Fluid } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

const PETROL: readonly Fluid[] = ['petrol', 'e85'];

/** As printed along the hose: USCG type A1, SAE J1527 type A1-15. */
const A1 = /\bA1(-15)?\b/i;

/** Petrol hose on a boat, where the project says that it is one: whether it is marked A1. A marking that is not stated is only told. */
export function fuelMarking({ project, run }: CheckContext): Finding[] {
  const { marking } = run.hose;
  if (project.vehicle !== 'boat' || !PETROL.includes(run.run.service.fluid)) return [];
  const use = ruleValue(project, 'marine-fuel-marking', run.run.id);
  const said =
    marking === undefined ? 'the table does not say how this hose is marked' : `this hose is marked ${marking}`;
  return judge({
    check: 'fuelMarking',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: marking !== undefined && A1.test(marking) ? 1 : 0,
    unit: 'count',
    severity: marking === undefined ? 'note' : 'look',
    message: `Petrol on a boat; ${said}. A1 is asked of it in places: it stands fire for two and a half minutes.`,
    mend: marking === undefined ? 'Read what is printed along it and state its marking.' : 'A hose marked A1-15.',
  });
}
