import type { Finding } from '../../document/lay/schema.ts';
import type { Fluid, Purpose } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

const PETROL: readonly Fluid[] = ['petrol', 'e85'];

/** As printed along the hose: USCG type A1, SAE J1527 type A1-15. */
const A1 = /\bA1(-15)?\b/i;
/** Enough for what fuel seldom stands in: a filler, a vent. */
const A1_OR_A2 = /\bA[12](-15)?\b/i;
const FILLER_OR_VENT: readonly Purpose[] = ['fuel-fill', 'fuel-vent'];

/** Allowed only where a severed hose would spill little. */
const B1 = /\bB1(-15)?\b/i;

const A1_WORDS =
  'Between pump and carburettor it must be A1, which stands fire for two and a half minutes; from the tank to the engine A1 too, or B1 where a severed hose spills little.';
const B1_WORDS =
  'B1 may lead from the tank to the engine where no more than 148 mL (5 oz) run out in two and a half minutes if it is severed at its worst; between pump and carburettor it must be A1.';
const FILLER_WORDS =
  'A filler or a vent must be A1 or A2, or B1 or B2 where no more than 148 mL (5 oz) run out in two and a half minutes if it is severed at its worst.';
const MARKING_MEND =
  'State its marking as it is printed along it, at least every 12 in with its maker and year. Race hose seldom bears one: take one marked USCG TYPE A1-15.';

/**
 * Petrol hose on a boat, where the project says that it is one: whether it is marked A1. The code asks each such hose for its marking, so
 * one that is not stated is to be settled before cutting too. A filler and a vent may be A2 as well.
 */
export function fuelMarking({ project, run }: CheckContext): Finding[] {
  const { marking } = run.hose;
  const filler = FILLER_OR_VENT.includes(run.run.service.purpose);
  const marked = filler ? A1_OR_A2 : A1;
  if (project.vehicle !== 'boat' || !PETROL.includes(run.run.service.fluid)) return [];
  const use = ruleValue(project, 'marine-fuel-marking', run.run.id);
  const said =
    marking === undefined ? 'the table does not say how this hose is marked' : `this hose is marked ${marking}`;
  return judge({
    check: 'fuelMarking',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: marking !== undefined && marked.test(marking) ? 1 : 0,
    unit: 'count',
    severity: 'look',
    message: `Petrol on a boat; ${said}. ${filler ? FILLER_WORDS : marking !== undefined && B1.test(marking) ? B1_WORDS : A1_WORDS}`,
    mend: marking === undefined ? MARKING_MEND : 'A hose marked USCG TYPE A1-15.',
  });
}
