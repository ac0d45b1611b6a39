import { BufferAttribute, BufferGeometry } from 'three';
import type { OpenDocument } from '../../state/documentStore.ts';
import { creasedMesh } from './creasedMesh.ts';

type BayPicture = NonNullable<OpenDocument['bay']>;

/** Triangles up to which rounds are smoothed and edges drawn; a denser scan looks round by itself. */
const CREASED_TRIANGLES = 250_000;

export interface PartGeometry {
  readonly name: string;
  readonly skin: string;
  readonly surface: BufferGeometry;
  readonly edges: BufferGeometry | null;
}

export interface BayGeometry {
  /** whether the shader has to find the normals of the facets itself */
  readonly flat: boolean;
  readonly parts: readonly PartGeometry[];
  dispose(): void;
}

/** The bay's picture as geometries, one per part, all cut from shared arrays. */
export function bayGeometry(bay: BayPicture): BayGeometry {
  const flat = bay.indices.length / 3 > CREASED_TRIANGLES;
  const parts = bay.parts.map((part): PartGeometry => {
    const indices = bay.indices.subarray(part.firstTriangle * 3, (part.firstTriangle + part.triangleCount) * 3);
    return { name: part.name, skin: part.skin, ...(flat ? flatPart(bay, indices) : creasedPart(bay, indices)) };
  });
  const dispose = (): void => {
    for (const part of parts) {
      part.surface.dispose();
      part.edges?.dispose();
    }
  };
  return { flat, parts, dispose };
}

function flatPart(bay: BayPicture, indices: Uint32Array): Pick<PartGeometry, 'surface' | 'edges'> {
  const surface = new BufferGeometry();
  surface.setAttribute('position', new BufferAttribute(bay.positions, 3));
  surface.setIndex(new BufferAttribute(indices, 1));
  return { surface, edges: null };
}

function creasedPart(bay: BayPicture, indices: Uint32Array): Pick<PartGeometry, 'surface' | 'edges'> {
  const { positions, local } = ownVertices(bay.positions, indices);
  const creased = creasedMesh(positions, local);
  const surface = new BufferGeometry();
  surface.setAttribute('position', new BufferAttribute(creased.positions, 3));
  surface.setAttribute('normal', new BufferAttribute(creased.normals, 3));
  surface.setIndex(new BufferAttribute(creased.indices, 1));
  const edges = new BufferGeometry();
  edges.setAttribute('position', new BufferAttribute(creased.edges, 3));
  return { surface, edges };
}

/** The stretch of the vertices that a part uses, with its indices counted from there: parts mostly stand together. */
function ownVertices(positions: Float32Array, indices: Uint32Array): { positions: Float32Array; local: Uint32Array } {
  let low = Number.POSITIVE_INFINITY;
  let high = -1;
  for (const vertex of indices) {
    if (vertex < low) low = vertex;
    if (vertex > high) high = vertex;
  }
  if (high < 0) return { positions: new Float32Array(), local: indices };
  const local = new Uint32Array(indices.length);
  for (let i = 0; i < local.length; i++) local[i] = (indices[i] as number) - low;
  return { positions: positions.subarray(low * 3, (high + 1) * 3), local };
}
