import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Result } from '../../../../shared/base/result.ts';
import { boxOfMesh } from '../../../../shared/geometry/box.ts';
import { guessUnit, type ImportedMesh, openMesh } from '../../../../shared/geometry/meshImport/index.ts';
import { triangleCount } from '../../../../shared/geometry/triMesh.ts';

const folder = new URL('../../../../../shared/meshes/', import.meta.url);
const present = existsSync(new URL('expected.json', folder));
const because = present ? '' : ' (skipped: meshes not beside the checkout)';

interface Expected {
  readonly file: string;
  readonly triangles: number;
  readonly meshes: number;
  readonly weldedVertices: number;
  readonly min: readonly number[];
  readonly max: readonly number[];
}
const expected: readonly Expected[] = present ? JSON.parse(readFileSync(new URL('expected.json', folder), 'utf8')) : [];

function open(file: string): Promise<Result<ImportedMesh>> {
  return openMesh(file, new Uint8Array(readFileSync(new URL(file, folder))));
}

async function opened(file: string): Promise<ImportedMesh> {
  const result = await open(file);
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.message).join(' '));
  return result.value;
}

describe.skipIf(!present)(`real meshes, as another program read them${because}`, () => {
  it.each([
    ['cylinder-head-cover.stl', 'stl-binary', 'mm', 0],
    ['turbo-3d-scan.ply', 'ply', 'mm', 1],
    ['motorbike-engine-bay.obj', 'obj', 'm', 0],
    ['turbo-3d-scan.meshopt.glb', 'glb', 'mm', 1],
    ['v-twin-motorcycle.glb', 'glb', 'm', 1],
  ] as const)('%s', async (file, format, unit, warnings) => {
    const there = expected.find((entry) => entry.file === file)!;
    const { mesh, ...rest } = await opened(file);
    expect(rest.format).toBe(format);
    expect(rest.warnings).toHaveLength(warnings);
    const withoutArea = warnings ? Number(/^\d+/.exec(rest.warnings[0]!.message)?.[0]) : 0;
    expect(triangleCount(mesh) + withoutArea).toBe(there.triangles);
    expect(mesh.parts).toHaveLength(there.meshes);
    const box = boxOfMesh(mesh);
    for (let axis = 0; axis < 3; axis++) {
      expect(box.min[axis]).toBeCloseTo(there.min[axis]!, 4);
      expect(box.max[axis]).toBeCloseTo(there.max[axis]!, 4);
    }
    expect(mesh.positions.length / 3).toBe(there.weldedVertices);
    expect(guessUnit(box)).toBe(unit);
    expect(new Set(mesh.parts.map((part) => part.name)).size).toBe(mesh.parts.length);
    expect(mesh.parts.reduce((sum, part) => sum + part.triangleCount, 0)).toBe(triangleCount(mesh));
  });

  it('keeps every group of the bay, shadows too', async () => {
    const { mesh } = await opened('motorbike-engine-bay.obj');
    const names = mesh.parts.map((part) => part.name);
    expect(names).toContain('engine%56');
    expect(names).toContain('radiator%53');
    expect(names.filter((name) => name.includes('-shadow'))).toHaveLength(6);
  });
});

/** Triangles read, and what the warnings say; or what the refusal says. */
const verdicts: Record<string, { triangles: number; warns?: RegExp[]; name?: string } | { refused: RegExp }> = {
  'empty.stl': { refused: /empty/ },
  'faceless.ascii.stl': { refused: /no triangles/ },
  'fourVertices.ascii.stl': { triangles: 5, warns: [/1 facet with more than three corners/] },
  'incorrectFaceCounter.bin.stl': { triangles: 4, warns: [/promises 66 triangles, the file holds 4/] },
  'missingEndsolid.ascii.stl': { triangles: 4, warns: [/no end/] },
  'missingFace.ascii.stl': { triangles: 3 },
  'missingNormal.ascii.stl': { triangles: 4 },
  'multiWordName.ascii.stl': { triangles: 4, name: 'Model with a multi word name' },
  'multiWordName.bin.stl': { refused: /saved or sent as text/ },
  'namelessSolid.ascii.stl': { triangles: 4, name: 'namelessSolid.ascii' },
  'notANumberNormal.ascii.stl': { triangles: 4 },
  'quad.ascii.stl': { triangles: 4, warns: [/1 facet with more than three/, /1 triangle was left out: no area/] },
  'singleFace.ascii.stl': { triangles: 1, name: 'faceOnly' },
  'solidNameMismatch.ascii.stl': { triangles: 4, name: 'tetrahedron' },
  'twoVertices.ascii.stl': { triangles: 3, warns: [/1 facet with fewer than three corners/] },
  'wrongHeader.bin.stl': { triangles: 12 },
  'wrongNormal.ascii.stl': { triangles: 4 },
  'wrongNormals.ascii.stl': { triangles: 4 },
};

describe.skipIf(!present)(`odd and broken STL files${because}`, () => {
  it.each(Object.entries(verdicts))('%s', async (file, verdict) => {
    const result = await open(`malformed-stl/${file}`);
    if ('refused' in verdict) {
      expect(result.ok).toBe(false);
      if (!result.ok) expect(result.problems[0]?.message).toMatch(verdict.refused);
      return;
    }
    if (!result.ok) throw new Error(result.problems[0]?.message);
    const { mesh, warnings } = result.value;
    expect(triangleCount(mesh)).toBe(verdict.triangles);
    expect(warnings).toHaveLength(verdict.warns?.length ?? 0);
    for (const [n, warns] of (verdict.warns ?? []).entries()) expect(warnings[n]?.message).toMatch(warns);
    if (verdict.name) expect(mesh.parts.map((part) => part.name)).toEqual([verdict.name]);
  });
});
