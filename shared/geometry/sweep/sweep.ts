import type { Vec3 } from '../../base/vec3.ts';

/** How a part moves from where it was scanned, which is 0. mm, rad, bay frame; directions of any length above zero. */
export type Sweep =
  | {
      readonly kind: 'turn';
      /** a place on the axis */
      readonly point: Vec3;
      readonly axis: Vec3;
      /** right-handed about the axis; a whole turn or more goes all round */
      readonly fromRad: number;
      readonly toRad: number;
    }
  | { readonly kind: 'stroke'; readonly direction: Vec3; readonly fromMm: number; readonly toMm: number };
