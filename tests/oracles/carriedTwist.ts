/**
 * The slow twin of the rod's twist: A's whole frame carried from edge to edge by rotation matrices (Rodrigues, angle and
 * axis), and the angle left at B, in (-pi, pi] rad.
 */
export interface CarriedLine {
  readonly nodes: Float64Array;
  readonly startDirection: readonly number[];
  readonly endDirection: readonly number[];
}

function cross(a: readonly number[], b: readonly number[]): number[] {
  return [a[1]! * b[2]! - a[2]! * b[1]!, a[2]! * b[0]! - a[0]! * b[2]!, a[0]! * b[1]! - a[1]! * b[0]!];
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
}

function rotated(v: readonly number[], from: readonly number[], to: readonly number[]): number[] {
  const axis = cross(from, to);
  const sine = Math.hypot(...axis);
  if (sine === 0) return [...v];
  const k = axis.map((c) => c / sine);
  const angle = Math.atan2(sine, dot(from, to));
  const side = cross(k, v);
  return v.map((c, i) => c * Math.cos(angle) + side[i]! * Math.sin(angle) + k[i]! * dot(k, v) * (1 - Math.cos(angle)));
}

/** @param line a rod's centreline; materialA, materialB unit, square to its ends */
export function carriedTwist(line: CarriedLine, materialA: readonly number[], materialB: readonly number[]): number {
  const row: (readonly number[])[] = [line.startDirection];
  for (let i = 3; i < line.nodes.length; i += 3) {
    const edge = [0, 1, 2].map((c) => line.nodes[i + c]! - line.nodes[i + c - 3]!);
    row.push(edge.map((c) => c / Math.hypot(...edge)));
  }
  row.push(line.endDirection);
  let carried = materialA;
  for (let i = 1; i < row.length; i++) carried = rotated(carried, row[i - 1]!, row[i]!);
  return Math.atan2(dot(line.endDirection, cross(carried, materialB)), dot(carried, materialB));
}
