import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { UNWATCHED } from '../../shared/base/watch.ts';
import { PLAIN_SKIN } from '../../shared/document/project/schema.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';
import { type BayIndex, buildBayIndex } from '../../shared/solve/bay/bayIndex.ts';

/**
 * Large bays for measuring. They are made, not kept: `python3 ../shared/meshes/tools/make-bay.py .tmp/bays/bay-1e6.bin 1e6`
 * (and 1e5, 5e6), and `motorBike.obj` out of Debian's package openfoam-examples, unpacked beside them.
 */
const folder = path.resolve('.tmp/bays');

export type PlanningBay = 'bay-1e5' | 'bay-1e6' | 'bay-5e6' | 'motorBike';

function fileOf(bay: PlanningBay): string {
  return path.join(folder, bay === 'motorBike' ? 'motorBike.obj' : `${bay}.bin`);
}

/** Whether a bay was made; measures of one that was not are left out, and say so. */
export function hasBay(bay: PlanningBay): boolean {
  return existsSync(fileOf(bay));
}

const opened = new Map<PlanningBay, BayIndex>();

/** A bay with its index, opened once. */
export function openBay(bay: PlanningBay): BayIndex {
  const known = opened.get(bay);
  if (known) return known;
  const mesh = bay === 'motorBike' ? readObj(fileOf(bay), 1000) : readBin(fileOf(bay));
  const index = buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED);
  opened.set(bay, index);
  return index;
}

/** u32 vertices, u32 triangles, f32 xyz, u32 ijk; little endian. */
function readBin(file: string): TriMesh {
  const bytes = readFileSync(file);
  const [vertices, triangles] = [bytes.readUInt32LE(0), bytes.readUInt32LE(4)];
  const from = bytes.byteOffset + 8;
  return {
    positions: new Float32Array(bytes.buffer.slice(from, from + 12 * vertices)),
    indices: new Uint32Array(bytes.buffer.slice(from + 12 * vertices, from + 12 * (vertices + triangles))),
    parts: [{ name: 'bay', firstTriangle: 0, triangleCount: triangles }],
  };
}

function readObj(file: string, mmPerUnit: number): TriMesh {
  const positions: number[] = [];
  const indices: number[] = [];
  for (const line of readFileSync(file, 'utf8').split('\n')) {
    const [word, ...rest] = line.trim().split(/\s+/);
    if (word === 'v') positions.push(...rest.slice(0, 3).map((number) => Number(number) * mmPerUnit));
    if (word !== 'f') continue;
    const corners = rest.map((corner) => Number.parseInt(corner, 10) - 1);
    for (let i = 2; i < corners.length; i++)
      indices.push(corners[0] as number, corners[i - 1] as number, corners[i] as number);
  }
  return {
    positions: Float32Array.from(positions),
    indices: Uint32Array.from(indices),
    parts: [{ name: 'motorbike', firstTriangle: 0, triangleCount: indices.length / 3 }],
  };
}
