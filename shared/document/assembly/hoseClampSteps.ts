import type { HoseClamps } from '../project/schema.ts';
import { ruleById } from '../rules/index.ts';
import { NO_SOURCE } from '../rules/rule.ts';
import { CLAMP_TORQUE_SOURCE } from '../torque/clampTorque.ts';
import type { AssemblyStep, ClampedHose, StepLengths } from './assemblyStep.ts';

const SIDES = ['a', 'b'] as const;

/** The ends that hose clamps hold. */
export function clampedEnds({ a, b }: Pick<ClampedHose, 'a' | 'b'>): readonly ('a' | 'b')[] {
  return SIDES.filter((side) => (side === 'a' ? a : b).end.joint === 'clamped');
}

/** Why such a hose gets no proof test of its own. */
export const NO_PROOF_WORDS =
  'Not proof-tested at the bench: hose clamps are no match for a proof pressure, and the hose leaves its barb. It is tested in the bay, with the system it belongs to and no harder than that bears.';

const nameOf = (side: 'a' | 'b'): string => `END ${side.toUpperCase()}`;

/** Hose clamps go on before the barb. */
export function clampsFirst(hose: ClampedHose): readonly AssemblyStep[] {
  const ends = clampedEnds(hose);
  if (ends.length === 0) return [];
  const words = `Hose clamps slid on loose, before the hose goes over the barb of ${ends.map(nameOf).join(' and ')}.`;
  return [{ id: 'hose-clamps', stage: 'before-second-end', words, source: NO_SOURCE }];
}

/** How the hose clamps of an end sit; none where another joint holds it. */
export function clampsInPlace(hose: ClampedHose, side: 'a' | 'b', { both }: StepLengths): readonly AssemblyStep[] {
  if (!clampedEnds(hose).includes(side)) return [];
  const rule = ruleById('hose-clamp-from-end');
  const shown = both(rule?.value ?? 0);
  const stated = statedWords(hose.run?.[side].hoseClamps, both);
  const words = `${nameOf(side)}: ${stated} past the bead or over the serrations, the barb under the whole of each; at least ${shown} of hose beyond it; none that only springs.`;
  const source = `hose clamps over fuel hose: 33 CFR 183.560; ${rule?.source}`;
  return [{ id: `clamps-${side}`, stage: 'both-ends-on', words, source }];
}

function statedWords(clamps: HoseClamps | undefined, both: StepLengths['both']): string {
  if (clamps === undefined) return 'hose clamps';
  const { count, fromHoseEndMm, bandMm } = clamps;
  const band = bandMm === undefined ? '' : ` ${both(bandMm)} wide`;
  const from = fromHoseEndMm === undefined ? '' : `, the nearest ${both(fromHoseEndMm)} from the end of the hose,`;
  return `${count} hose clamp${count === 1 ? '' : 's'}${band}${from}`;
}

/** Once more after the first heat. */
export function clampsAgain(hose: ClampedHose): readonly AssemblyStep[] {
  const ends = clampedEnds(hose);
  if (ends.length === 0) return [];
  const words = `Hose clamps at ${ends.map(nameOf).join(' and ')} tightened once more after the first heat, to less than when the hose was new (see the torque of its clamps).`;
  return [{ id: 'clamps-again', stage: 'in-the-bay', words, source: CLAMP_TORQUE_SOURCE }];
}
