import type { End } from '../parts/schema.ts';
import { NO_SOURCE } from '../rules/rule.ts';
import type { AssembledHose, AssemblyStep, StepLengths } from './assemblyStep.ts';
import { BALL_SOURCE, ballMm } from './ballTest.ts';
import { clampedEnds, clampsInPlace, NO_PROOF_WORDS } from './hoseClampSteps.ts';
import { jointGap } from './jointGap.ts';

const SIDES = ['a', 'b'] as const;
const MOVED_SOURCE = 'no loosening or change of position of an end on the hose: MIL-DTL-8790F 3.5.3';

/** What is measured once both ends are on, and what belongs to the proof test; in order. */
export function finishedSteps(hose: AssembledHose, lengths: StepLengths): readonly AssemblyStep[] {
  return [
    ...SIDES.flatMap((side) => jointSteps(hose, side, lengths)),
    step('push-out', 'Both insertion marks still at the mouths: what crept out is made again.', MOVED_SOURCE),
    ...ball(hose, lengths),
    step('flush', 'Bore blown through and flushed clean, dried, looked through against the light.', NO_SOURCE),
    ...(clampedEnds(hose).length > 0 ? [UNPROVEN] : PROVEN),
    { ...step('cap', 'Both ends capped, tag filled in.', NO_SOURCE), stage: 'proof' },
  ];
}

const PROVEN: readonly AssemblyStep[] = [
  {
    ...step('proof', 'Proof-tested with liquid, by the makers of hose and ends.', NO_SOURCE),
    stage: 'proof',
    caution: 'Nobody in line with the ends; restrained or boxed in.',
  },
  {
    ...step(
      'hands-off',
      'Gap and clock are not touched again: an end turned after its proof is not proven.',
      NO_SOURCE,
    ),
    stage: 'proof',
  },
];

const UNPROVEN: AssemblyStep = { ...step('proof', NO_PROOF_WORDS, NO_SOURCE), stage: 'proof' };

function step(id: string, words: string, source: string, more: Partial<AssemblyStep> = {}): AssemblyStep {
  return { id, stage: 'both-ends-on', words, source, ...more };
}

function jointSteps(hose: AssembledHose, side: 'a' | 'b', lengths: StepLengths): readonly AssemblyStep[] {
  const { end } = hose[side];
  const name = `END ${side.toUpperCase()}`;
  if (end.joint === 'crimp') return [crimp(end, name, side)];
  if (end.joint === 'push-on')
    return [
      step(`pushed-${side}`, `${name}: hose pushed up to the collar all round, no clamp over the barbs.`, NO_SOURCE),
    ];
  if (end.joint === 'clamped') return clampsInPlace(hose, side, lengths);
  const gap = jointGap(end, hose.hose.core);
  if (gap === undefined) return [];
  const most = gap.sense === 'at-most' ? 'at most' : 'at least';
  const words = `${name}: gap ${most} ${lengths.both(gap.gapMm)} between ${gap.between}; the end maker's own figure comes first.`;
  return [step(`gap-${side}`, words, gap.source)];
}

const CRIMP_SOURCE =
  "where a crimp is measured: a crimping machine's manual, p. 8; three readings and their mean: trade (from memory)";

function crimp(end: End, name: string, side: string): AssemblyStep {
  const { crimpFromMm, crimpToMm } = end;
  const finished =
    crimpFromMm === undefined || crimpToMm === undefined
      ? "to the maker's card"
      : `${crimpFromMm.toFixed(2)} to ${crimpToMm.toFixed(2)} mm`;
  return step(
    `crimp-${side}`,
    `${name}: crimp measured on the flats, halfway between the ridges and halfway along, never on a ridge or a stamp, three times: ${finished}.`,
    CRIMP_SOURCE,
  );
}

/** The ball goes through what is narrowest, where that is known. */
function ball({ hose, a, b }: AssembledHose, { both }: StepLengths): AssemblyStep[] {
  const bores = [hose.insideDiameterMm, a.end.boreMm, b.end.boreMm].filter((bore) => bore !== undefined);
  const mm = ballMm(hose.dash, Math.min(...bores));
  if (mm === undefined || a.end.boreMm === undefined || b.end.boreMm === undefined)
    return [step('bore', 'Bore looked through at both ends: no flap, no step, no flat.', NO_SOURCE)];
  return [
    step(
      'ball',
      `A ball of ${both(mm)} falls through freely, the hose bent as it will lie: no flap, no kink.`,
      BALL_SOURCE,
    ),
  ];
}
