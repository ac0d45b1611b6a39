import { type Accessor, type mat4, type Node, Primitive } from '@gltf-transform/core';
import type { RawPart } from './importedMesh.ts';

interface Found {
  readonly parts: RawPart[];
  moving: number;
  withoutSurface: number;
}

/** All triangles under the given nodes, in world coordinates, as parts; and sentences about what was passed over. */
export function partsOfScene(nodes: readonly Node[]): { parts: RawPart[]; warnings: string[] } {
  const found: Found = { parts: [], moving: 0, withoutSurface: 0 };
  const pending = [...nodes].reverse();
  for (let node = pending.pop(); node; node = pending.pop()) {
    addNode(found, node);
    pending.push(...node.listChildren().reverse());
  }
  const warnings: string[] = [];
  if (found.moving > 0)
    warnings.push('Parts of the file can change shape (morphs or skins): they were read as they stand at rest.');
  if (found.withoutSurface > 0) warnings.push('Points and lines in the file were not read.');
  return { parts: found.parts, warnings };
}

function addNode(found: Found, node: Node): void {
  const mesh = node.getMesh();
  if (!mesh) return;
  if (node.getSkin()) found.moving++;
  const primitives = mesh.listPrimitives();
  const nodeName = node.getName() || mesh.getName();
  for (const primitive of primitives) {
    const position = primitive.getAttribute('POSITION');
    const indices = trianglesOf(primitive, position);
    if (!position || !indices) {
      found.withoutSurface++;
      continue;
    }
    if (primitive.listTargets().length > 0) found.moving++;
    const material = primitives.length > 1 ? primitive.getMaterial()?.getName() : undefined;
    const name = material ? `${nodeName} / ${material}` : nodeName;
    found.parts.push({ name, positions: placed(position, node.getWorldMatrix()), indices });
  }
}

/** Vertices moved by a column-major 4 x 4 matrix. */
function placed(position: Accessor, m: mat4): Float64Array {
  const count = position.getCount();
  const positions = new Float64Array(3 * count);
  const element = [0, 0, 0];
  for (let n = 0; n < count; n++) {
    position.getElement(n, element);
    const [x, y, z] = element as [number, number, number];
    positions[3 * n] = m[0] * x + m[4] * y + m[8] * z + m[12];
    positions[3 * n + 1] = m[1] * x + m[5] * y + m[9] * z + m[13];
    positions[3 * n + 2] = m[2] * x + m[6] * y + m[10] * z + m[14];
  }
  return positions;
}

/** Three vertex numbers a triangle for lists, strips and fans; undefined for points and lines. */
function trianglesOf(primitive: Primitive, position: Accessor | null): Uint32Array | undefined {
  if (!position) return undefined;
  const corners = cornersOf(primitive, position.getCount());
  const mode = primitive.getMode();
  if (mode === Primitive.Mode.TRIANGLES) return corners.slice(0, corners.length - (corners.length % 3));
  const isStrip = mode === Primitive.Mode.TRIANGLE_STRIP;
  if (!isStrip && mode !== Primitive.Mode.TRIANGLE_FAN) return undefined;
  const triangles: number[] = [];
  for (let n = 0; n + 2 < corners.length; n++) {
    const odd = isStrip && n % 2 === 1;
    triangles.push(corners[isStrip ? n : 0]!, corners[odd ? n + 2 : n + 1]!, corners[odd ? n + 1 : n + 2]!);
  }
  return new Uint32Array(triangles);
}

function cornersOf(primitive: Primitive, vertexCount: number): Uint32Array {
  const indices = primitive.getIndices();
  const corners = new Uint32Array(indices ? indices.getCount() : vertexCount);
  for (let n = 0; n < corners.length; n++) {
    const vertex = indices ? indices.getScalar(n) : n;
    if (!(vertex < vertexCount)) throw new Error(`a triangle names vertex ${vertex} of ${vertexCount}`);
    corners[n] = vertex;
  }
  return corners;
}
