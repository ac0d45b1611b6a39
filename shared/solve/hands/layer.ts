import { add, cross, dot, scale, sub, type Vec3 } from '../../base/vec3.ts';
import type { Thing } from '../../document/lay/schema.ts';
import { visitInBox } from '../../geometry/bvhInBox.ts';
import { partOfTriangle } from '../../geometry/triMesh.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import type { Ball } from './balls.ts';

/** A layer square to an axis: where a wrench turns. mm, bay frame. */
export interface Layer {
  readonly middle: Vec3;
  readonly axis: Vec3;
  /** clock 0 */
  readonly up: Vec3;
  readonly thicknessMm: number;
  /** how far from the axis anything matters */
  readonly reachMm: number;
}

/** A point of a layer, mm from its middle: along `up`, and along axis x up, where clocks grow to. */
export interface Flat {
  readonly x: number;
  readonly y: number;
}

/** What of the bay or of a hose reaches into a layer, seen along the axis: a convex outline, or a disc. */
export type Shadow =
  | { readonly thing: Thing; readonly outline: readonly Flat[] }
  | { readonly thing: Thing; readonly centre: Flat; readonly radiusMm: number };

/** All of the bay's triangles that reach into a layer, each cut to it: exact to rounding. */
export function bayInLayer(bay: BayIndex, layer: Layer): Shadow[] {
  const box = boxOfLayer(layer);
  const side = cross(layer.axis, layer.up);
  return bay.skins.flatMap(({ skin, bvh }) => {
    const shadows: Shadow[] = [];
    visitInBox(bvh, box, (slot) => {
      const corners = [0, 3, 6].map((at) => placed(layer, side, cornerAt(bvh.corners, 9 * slot + at)));
      const outline = cutToLayer(corners, layer.thicknessMm / 2);
      if (outline.length === 0) return;
      const part = partOfTriangle(bay.mesh, bvh.triangles[slot] as number).name;
      shadows.push({ thing: { kind: 'skin', id: skin.id, part }, outline });
    });
    return shadows;
  });
}

/** The balls that reach into a layer, as discs. */
export function ballsInLayer(balls: readonly Ball[], layer: Layer): Shadow[] {
  const side = cross(layer.axis, layer.up);
  return balls.flatMap(({ centre, radiusMm, thing }): Shadow[] => {
    const { x, y, z } = placed(layer, side, centre);
    const outside = Math.max(0, Math.abs(z) - layer.thicknessMm / 2);
    if (outside >= radiusMm) return [];
    return [{ thing, centre: { x, y }, radiusMm: Math.sqrt(radiusMm ** 2 - outside ** 2) }];
  });
}

interface Placed extends Flat {
  readonly z: number;
}

function placed({ middle, axis, up }: Layer, side: Vec3, at: Vec3): Placed {
  const from = sub(at, middle);
  return { x: dot(from, up), y: dot(from, side), z: dot(from, axis) };
}

function cornerAt(corners: Float32Array, at: number): Vec3 {
  return [corners[at] as number, corners[at + 1] as number, corners[at + 2] as number];
}

/** A convex polygon cut to |z| <= half (Sutherland and Hodgman 1974), seen along z. */
function cutToLayer(corners: readonly Placed[], halfMm: number): readonly Flat[] {
  if (corners.every(({ z }) => z > halfMm) || corners.every(({ z }) => z < -halfMm)) return [];
  return cut(cut(corners, 1, halfMm), -1, halfMm);
}

function cut(corners: readonly Placed[], sign: 1 | -1, halfMm: number): Placed[] {
  return corners.flatMap((to, i) => {
    const from = corners.at(i - 1) as Placed;
    const [a, b] = [halfMm - sign * from.z, halfMm - sign * to.z];
    const crossing = a < 0 !== b < 0 ? [between(from, to, a / (a - b))] : [];
    return b < 0 ? crossing : [...crossing, to];
  });
}

function between(from: Placed, to: Placed, t: number): Placed {
  return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t, z: from.z + (to.z - from.z) * t };
}

function boxOfLayer({ middle, axis, thicknessMm, reachMm }: Layer) {
  // A disc of the layer reaches sqrt(1 - n^2) of its radius along an axis of the bay, half the thickness n of itself.
  const half = axis.map((n) => reachMm * Math.sqrt(Math.max(0, 1 - n * n)) + (thicknessMm / 2) * Math.abs(n));
  const to = half as unknown as Vec3;
  return { min: add(middle, scale(to, -1)), max: add(middle, to) };
}
