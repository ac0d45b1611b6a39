import { cross, dot, lengthOf, signedAngleAbout, turnAbout, type Vec3 } from '../../base/vec3.ts';

/** A rod's centreline as the relaxation answers it: any `RodShape` is one. */
export interface RodLine {
  /** x, y, z of each node, mm; at least two, none on the one before */
  readonly nodes: Float64Array;
  /** unit, along A to B */
  readonly startDirection: Vec3;
  readonly endDirection: Vec3;
}

/** v turned by the least rotation that brings unit vector `from` to unit vector `to`; they must not be opposite. */
function carriedAcross(v: Vec3, from: Vec3, to: Vec3): Vec3 {
  const axis = cross(from, to);
  const cosine = dot(from, to);
  const along = dot(axis, v) / (1 + cosine);
  const side = cross(axis, v);
  return [
    cosine * v[0] + side[0] + along * axis[0],
    cosine * v[1] + side[1] + along * axis[1],
    cosine * v[2] + side[2] + along * axis[2],
  ];
}

/** Direction of edge k of the line. */
function edgeOf(nodes: Float64Array, k: number): Vec3 {
  const x = nodes[3 * k + 3]! - nodes[3 * k]!;
  const y = nodes[3 * k + 4]! - nodes[3 * k + 1]!;
  const z = nodes[3 * k + 5]! - nodes[3 * k + 2]!;
  const chord = lengthOf(x, y, z);
  return [x / chord, y / chord, z / chord];
}

/**
 * The material direction at B of a rod that lies on a line and has material direction `materialA` at A and a given
 * twist: where its surface line comes out. With twist 0 it is how a hose lies that was tightened at rest.
 * @param line mm, bay frame; for a rod on its way from A to B
 * @param materialA unit, square to `startDirection`
 * @param twistRad right-handed about the rod's direction
 * Carries from edge to edge by the least rotation, half cells at the ends included, exactly as the energy of `relaxRod`
 * has it; against a smooth curve the error falls with the square of the edges.
 */
export function materialAtEnd(line: RodLine, materialA: Vec3, twistRad: number): Vec3 {
  let carried = materialA;
  let from = line.startDirection;
  for (let k = 0; k < line.nodes.length / 3 - 1; k++) {
    const to = edgeOf(line.nodes, k);
    carried = carriedAcross(carried, from, to);
    from = to;
  }
  carried = carriedAcross(carried, from, line.endDirection);
  return turnAbout(carried, line.endDirection, twistRad);
}

/**
 * The twist of a rod that lies on a line, as `RodTwist` defines it: of all angles that differ by whole turns the one
 * nearest to `nearRad`, rad.
 * @param line mm, bay frame
 * @param materialA, materialB unit, square to the line's direction at A and at B
 */
export function twistBetween(line: RodLine, materialA: Vec3, materialB: Vec3, nearRad: number): number {
  const twist = signedAngleAbout(line.endDirection, materialAtEnd(line, materialA, 0), materialB);
  return twist + 2 * Math.PI * Math.round((nearRad - twist) / (2 * Math.PI));
}
