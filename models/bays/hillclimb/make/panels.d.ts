import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { type Part } from '../../../shapes/part.ts';
/** Holes through the firewall: where, and the bore of the grommet in each, mm. */
export declare const GROMMETS: readonly {
  readonly name: string;
  readonly at: Vec3;
  readonly boreMm: number;
}[];
export declare function panelParts(): Part[];
