import type { Fall } from '../search/fall.ts';
import type { NoCrest } from '../search/noCrest.ts';

/** What a service, or the project itself, asks of a hose's shape beyond radius and clearance. */
export interface Character {
  /** a drain runs downhill all along */
  readonly fall?: Fall;
  /** coolant has no high point in which air stays */
  readonly crest?: CrestLimit;
  /** suction has no tight bend near its pump */
  readonly calm?: CalmLimit;
  /** stretches that lie in one plane each */
  readonly planes: readonly PlaneLimit[];
}

export interface CrestLimit extends NoCrest {
  /** mm, depth of a hump that is let pass */
  readonly mostMm: number;
  /** true = an end that faces upwards gives the hose a crest whatever its way: it is kept low, not asked away */
  readonly forced: boolean;
}

export interface CalmLimit {
  /** the end at the pump */
  readonly side: 'a' | 'b';
  /** mm of hose from that end's mouth */
  readonly lengthMm: number;
  /** mm, least centreline radius there */
  readonly radiusMm: number;
}

export interface PlaneLimit {
  /** where the stretch begins: `a` for END A, or the id of a support; it goes on to the next place that holds the hose */
  readonly from: string;
  /** mm, how far it may lie off its plane */
  readonly mostMm: number;
}

export const NO_CHARACTER: Character = { planes: [] };

export function hasCharacter({ fall, crest, calm, planes }: Character): boolean {
  return fall !== undefined || crest !== undefined || calm !== undefined || planes.length > 0;
}
