import { addScaled, type Vec3 } from '../../shared/base/vec3.ts';
import { type Frame, frameAt, place } from './frame.ts';
import { inset, roundedRectangle } from './outline.ts';
import { skin } from './skin.ts';
import type { Solid } from './solid.ts';

export interface BoxOptions {
  /** radius of the four upright corners, mm; default 6 */
  readonly corner?: number;
  /** rounding of the top and bottom edges, mm; default 3 */
  readonly edge?: number;
  /** pieces in each rounding; default 2 */
  readonly steps?: number;
}

/** A box about the frame's point, [side, up, axis] sizes in mm, with rounded corners and edges. */
export function boxOn(frame: Frame, size: Vec3, options: BoxOptions = {}): Solid {
  const corner = Math.min(options.corner ?? 6, size[0] / 2 - 0.01, size[1] / 2 - 0.01);
  const edge = Math.min(options.edge ?? 3, corner * 0.95, size[2] / 2 - 0.01);
  const steps = options.steps ?? 2;
  const outline = roundedRectangle(size[0], size[1], corner, steps);
  const half = size[2] / 2;
  const layers: (readonly [number, number])[] = [];
  for (let k = 0; k <= steps; k++) {
    const a = ((Math.PI / 2) * k) / steps;
    layers.push([half - edge + edge * Math.sin(a), edge * (1 - Math.cos(a))]);
  }
  const all = [...layers.map(([h, by]) => [-h, by] as const).reverse(), ...layers];
  return skin(all.map(([h, by]) => inset(outline, by).map(([u, v]) => place(frame, h, u, v))));
}

/** A rounded box standing level: `from` and `to` are opposite corners. */
export function box(from: Vec3, to: Vec3, options: BoxOptions = {}): Solid {
  const size: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const middle = addScaled(from, size, 0.5);
  // With the axis up and up along +Y, side is -X: a box does not mind.
  return boxOn(frameAt(middle, [0, 0, 1], [0, 1, 0]), size, options);
}
