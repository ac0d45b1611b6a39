import { type Vec3 } from '../../shared/base/vec3.ts';
/** A closed surface in the making: mm, bay frame, three vertex numbers a triangle, wound so that normals point out. */
export interface Solid {
  readonly points: Vec3[];
  readonly indices: number[];
}
/** Several solids as one, in order. */
export declare function join(...solids: readonly Solid[]): Solid;
/** Six times the enclosed volume, positive when the triangles are wound outward, mm^3. */
export declare function signedVolume6(solid: Solid): number;
/** The same solid wound outward. */
export declare function outward(solid: Solid): Solid;
