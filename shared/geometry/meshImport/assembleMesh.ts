import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { lengthOf } from '../../base/vec3.ts';
import { stopIfCancelled, UNWATCHED, type Watch } from '../../base/watch.ts';
import type { MeshPart } from '../triMesh.ts';
import type { ImportedMesh, RawMesh, RawPart } from './importedMesh.ts';
import { uniqueNames } from './uniqueNames.ts';
import { newVertexWelder, type VertexWelder } from './vertexWelder.ts';

/** Share of a mesh's size that float32 may round its vertices by before the user is told. */
const COARSE_SHARE = 1e-5;
const FLOAT32_STEP = 2 ** -23;

/** Where parts are gathered into one mesh, with counts of what stayed out. */
interface Assembly {
  readonly welder: VertexWelder;
  readonly indices: Uint32Array;
  readonly watch: Watch;
  /** triangles looked at, those left out too */
  looked: number;
  filled: number;
  notFinite: number;
  withoutArea: number;
}

/**
 * Makes one mesh of what a reader found: vertices brought to float32 and welded where equal; triangles with a vertex that
 * is not a finite number, or without area, left out and counted in a warning; parts named uniquely, empty ones left out.
 * Refused when no triangle is left.
 */
export function assembleMesh(fileName: string, raw: RawMesh, watch: Watch = UNWATCHED): Result<ImportedMesh> {
  const most = raw.parts.reduce((sum, part) => sum + part.indices.length, 0);
  const assembly: Assembly = {
    welder: newVertexWelder(),
    indices: new Uint32Array(most),
    watch,
    looked: 0,
    filled: 0,
    notFinite: 0,
    withoutArea: 0,
  };
  const parts = addParts(assembly, raw.parts);
  const warnings = [...raw.warnings, ...leftOut(assembly)];
  if (assembly.filled === 0)
    return bad(asProblems(fileName, ['The file holds no triangle that can be used.', ...warnings]));
  const positions = assembly.welder.positions();
  const mesh = { positions, indices: assembly.indices.slice(0, assembly.filled), parts };
  warnings.push(...coarseness(positions));
  return good({ mesh, format: raw.format, warnings: asProblems(fileName, warnings) });
}

export function asProblems(fileName: string, sentences: readonly string[]): Problem[] {
  return sentences.map((message) => ({ path: fileName, message }));
}

function addParts(assembly: Assembly, rawParts: readonly RawPart[]): MeshPart[] {
  const names = uniqueNames(rawParts.map((part) => part.name));
  const weldedOf = new Map<ArrayLike<number>, Int32Array>();
  const parts: MeshPart[] = [];
  rawParts.forEach((part, n) => {
    const welded = weldedOf.get(part.positions) ?? new Int32Array(part.positions.length / 3).fill(UNSEEN);
    weldedOf.set(part.positions, welded);
    const firstTriangle = assembly.filled / 3;
    addPart(assembly, part, welded);
    const triangleCount = assembly.filled / 3 - firstTriangle;
    if (triangleCount > 0) parts.push({ name: names[n]!, firstTriangle, triangleCount });
  });
  return parts;
}

const UNSEEN = -1;
const NOT_FINITE = -2;

/** Triangles between two looks whether it is still wanted. */
const LOOK_EVERY = 4096;

function tellProgress({ watch, looked, indices }: Assembly): void {
  stopIfCancelled(watch);
  watch.report({ fraction: (3 * looked) / indices.length, doing: 'joining its triangles' });
}

function addPart(assembly: Assembly, part: RawPart, welded: Int32Array): void {
  const { positions, indices } = part;
  for (let at = 0; at + 2 < indices.length; at += 3) {
    if (assembly.looked++ % LOOK_EVERY === 0) tellProgress(assembly);
    const p = indices[at]!;
    const q = indices[at + 1]!;
    const r = indices[at + 2]!;
    const a = weld(assembly, positions, welded, p);
    const b = weld(assembly, positions, welded, q);
    const c = weld(assembly, positions, welded, r);
    if (a < 0 || b < 0 || c < 0) assembly.notFinite++;
    else if (a === b || b === c || c === a || hasNoArea(positions, p, q, r)) assembly.withoutArea++;
    else {
      assembly.indices[assembly.filled++] = a;
      assembly.indices[assembly.filled++] = b;
      assembly.indices[assembly.filled++] = c;
    }
  }
}

function weld(assembly: Assembly, positions: ArrayLike<number>, welded: Int32Array, vertex: number): number {
  const known = welded[vertex]!;
  if (known !== UNSEEN) return known;
  const x = Math.fround(positions[3 * vertex]!);
  const y = Math.fround(positions[3 * vertex + 1]!);
  const z = Math.fround(positions[3 * vertex + 2]!);
  const finite = Number.isFinite(x) && Number.isFinite(y) && Number.isFinite(z);
  const number = finite ? assembly.welder.numberOf(x, y, z) : NOT_FINITE;
  welded[vertex] = number;
  return number;
}

/** Exactly: float32 corners make the products exact in float64, so no tolerance is needed. */
function hasNoArea(positions: ArrayLike<number>, p: number, q: number, r: number): boolean {
  const from = (v: number, axis: number) =>
    Math.fround(positions[3 * v + axis]!) - Math.fround(positions[3 * p + axis]!);
  const ux = from(q, 0);
  const uy = from(q, 1);
  const uz = from(q, 2);
  const vx = from(r, 0);
  const vy = from(r, 1);
  const vz = from(r, 2);
  return uy * vz === uz * vy && uz * vx === ux * vz && ux * vy === uy * vx;
}

function leftOut(assembly: Assembly): string[] {
  const sentences: string[] = [];
  const { notFinite, withoutArea } = assembly;
  if (notFinite > 0)
    sentences.push(`${triangles(notFinite)} left out: a corner is not a finite number. The mesh may have holes there.`);
  if (withoutArea > 0)
    sentences.push(
      `${triangles(withoutArea)} left out: no area (corners together or on one line). No surface is lost.`,
    );
  return sentences;
}

function triangles(count: number): string {
  return count === 1 ? '1 triangle was' : `${count} triangles were`;
}

/** A mesh small beside its distance from the origin loses detail to rounding: say so rather than lay hoses on steps. */
function coarseness(positions: Float32Array): string[] {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  positions.forEach((value, at) => {
    const axis = at % 3;
    if (value < low[axis]!) low[axis] = value;
    if (value > high[axis]!) high[axis] = value;
  });
  const size = lengthOf(high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!);
  const farthest = Math.max(...high.map(Math.abs), ...low.map(Math.abs));
  if (farthest * FLOAT32_STEP <= size * COARSE_SHARE) return [];
  return [
    'The mesh lies so far from its origin that its details are rounded away. Move it to the origin in the program it comes from, and export it again.',
  ];
}
