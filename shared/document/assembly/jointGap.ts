import { inchesToMm } from '../../base/units.ts';
import type { End, Hose } from '../parts/schema.ts';

/** A published limit of a finished joint, mm. */
export interface GapLimit {
  readonly sense: 'at-most' | 'at-least';
  readonly gapMm: number;
  /** from what to what */
  readonly between: string;
  readonly source: string;
}

/** What is published of the gap of screw-together ends, by the kind of hose. */
export const JOINT_GAPS: Readonly<Record<'rubber' | 'fluoropolymer', GapLimit>> = {
  rubber: {
    sense: 'at-most',
    gapMm: inchesToMm(1 / 16),
    between: 'hex of the nipple and socket',
    source: 'gap of a reusable fitting on rubber hose: US Army TM 1-1500-204-23-2 p. 4-44',
  },
  fluoropolymer: {
    sense: 'at-least',
    gapMm: inchesToMm(0.025),
    between: 'nipple and socket, else the socket is backed off until it is free',
    source: 'gap of a reusable fitting on PTFE hose: US Army TM 1-1500-204-23-2 p. 4-64',
  },
};

/** The published limit of the gap of a finished screw-together end; undefined for a crimp or a push-on joint. The end maker's own figure comes first. */
export function jointGap(end: Pick<End, 'joint'>, core: Hose['core']): GapLimit | undefined {
  if (end.joint !== 'screw-together') return undefined;
  return JOINT_GAPS[core === 'ptfe-smooth' || core === 'ptfe-convoluted' ? 'fluoropolymer' : 'rubber'];
}
