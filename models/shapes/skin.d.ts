import { type Vec3 } from '../../shared/base/vec3.ts';
import { type Solid } from './solid.ts';
export interface SkinOptions {
  /** the last ring joins the first; default false: both ends are capped */
  readonly loop?: boolean;
  /** closes an end; default: a fan from the middle of the ring */
  readonly cap?: (ring: readonly Vec3[]) => readonly (readonly [number, number, number])[];
}
/** Triangles between neighbouring rings of equal count; a ring of one point is a pole. The result is closed and wound outward. */
export declare function skin(rings: readonly (readonly Vec3[])[], options?: SkinOptions): Solid;
