import { inchesToMm } from '../../base/units.ts';
import { asksForAccess } from '../lay/leakyJoints.ts';
import { FUELS } from '../parts/fluids.ts';
import type { End, Hose } from '../parts/schema.ts';
import type { Port, Run, Vehicle } from '../project/schema.ts';
import { systemTest } from '../proof/systemTest.ts';
import { ruleById } from '../rules/index.ts';
import type { AssemblyStep, StepLengths } from './assemblyStep.ts';
import { clampsAgain } from './hoseClampSteps.ts';

/** A hose with the ports it goes on. */
export interface FittedHose {
  readonly run: Pick<Run, 'service' | 'a' | 'b'>;
  readonly hose: Pick<Hose, 'marking'>;
  readonly a: { readonly end: End; readonly port: Pick<Port, 'rigidLine'> };
  readonly b: { readonly end: End; readonly port: Pick<Port, 'rigidLine'> };
}

/**
 * What is looked at and tested of this hose once it is in the bay, in order: rigid lines held near it, its marking, the test of its
 * whole system, whether its joints can be come at, hose clamps tightened again. Only what a code or a handbook asks; none for most hoses.
 */
export function inTheBaySteps(
  hose: FittedHose,
  vehicle: Vehicle | undefined,
  lengths: StepLengths,
): readonly AssemblyStep[] {
  return [
    ...rigidLines(hose, lengths),
    ...marking(hose, vehicle, lengths),
    ...tested(hose, vehicle),
    ...access(hose, vehicle),
    ...clampsAgain(hose),
  ];
}

function step(id: string, words: string, source: string): AssemblyStep {
  return { id, stage: 'in-the-bay', words, source };
}

function rigidLines(hose: FittedHose, { both }: StepLengths): AssemblyStep[] {
  const rule = ruleById('rigid-line-clamp');
  if (rule === undefined || !FUELS.includes(hose.run.service.fluid)) return [];
  return (['a', 'b'] as const)
    .filter((side) => hose[side].port.rigidLine !== undefined)
    .map((side) =>
      step(
        `rigid-line-${side}`,
        `END ${side.toUpperCase()}: the rigid line is held to the structure within ${both(rule.value)} of the hose.`,
        rule.source,
      ),
    );
}

function marking({ run, hose }: FittedHose, vehicle: Vehicle | undefined, { both }: StepLengths): AssemblyStep[] {
  if (systemTest(run.service, vehicle)?.system !== 'fuel system') return [];
  const wanted = hose.marking ?? 'USCG TYPE A1, its maker, its year';
  const every = both(inchesToMm(12));
  return [
    step(
      'marking',
      `Its marking can be read where it lies, at least every ${every}: ${wanted}.`,
      '33 CFR 183.540(e) to (h)',
    ),
  ];
}

function tested({ run }: FittedHose, vehicle: Vehicle | undefined): AssemblyStep[] {
  const test = systemTest(run.service, vehicle);
  return test === undefined ? [] : [{ ...step('system-test', test.words, test.source), caution: test.caution }];
}

function access(hose: FittedHose, vehicle: Vehicle | undefined): AssemblyStep[] {
  if (!asksForAccess(hose, vehicle)) return [];
  const words =
    'Every joint can be seen and come at with common hand tools: a hatch or a panel with screws will do; what takes a saw to open is to be changed.';
  return [step('access', words, ruleById('joint-access')?.source ?? '')];
}
