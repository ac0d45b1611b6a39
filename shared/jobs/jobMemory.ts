import { bad, good, type Problem, type Result } from '../base/result.ts';
import type { Watch } from '../base/watch.ts';
import type { Project } from '../document/project/schema.ts';
import { isLeftOut, skinOfPart } from '../document/project/skinOfPart.ts';
import { cutOutParts } from '../geometry/cutOutParts.ts';
import { mergeMeshes } from '../geometry/meshImport/mergeMeshes.ts';
import { openMesh } from '../geometry/meshImport/openMesh.ts';
import { placeMesh } from '../geometry/meshImport/placeMesh.ts';
import { squareUp } from '../geometry/meshImport/squareUp.ts';
import type { TriMesh } from '../geometry/triMesh.ts';
import { withoutParts } from '../geometry/withoutParts.ts';
import { type BayIndex, buildBayIndex } from '../solve/bay/bayIndex.ts';
import type { HandLay } from '../solve/handLay/handLay.ts';
import { type BodyBay, bodyBays, movingBodies } from '../solve/rock/bodyBays.ts';
import { rockPoses } from '../solve/rock/rockPoses.ts';
import type { Crew } from './crew.ts';
import { doubtsOf } from './doubtsOf.ts';
import type { ReadProject } from './readProject.ts';

/** What a worker keeps from job to job: the bay last opened and its index, which are costly and seldom change. */
export interface JobMemory {
  /** workers that lay hoses for this one, where the host has them */
  readonly crew?: Crew;
  mesh?: { key: string; mesh: TriMesh; warnings: readonly Problem[] };
  doubts?: { key: string; doubts: readonly Problem[] };
  index?: { key: string; index: BayIndex };
  bodies?: { key: string; bays: readonly BodyBay[] };
  /** runs in the hand by name, the last used last */
  hands?: Map<string, HandLay>;
}

export function newJobMemory(crew?: Crew): JobMemory {
  return crew === undefined ? {} : { crew };
}

/** The bay's meshes in the bay frame, as one. */
export async function bayMesh(
  read: ReadProject,
  memory: JobMemory,
): Promise<Result<{ mesh: TriMesh; warnings: readonly Problem[] }>> {
  const { project } = read.resolved;
  const { meshes, cutOuts, leftOut, scale, level } = project.bay;
  const key = JSON.stringify([
    cutOuts,
    leftOut,
    scale,
    level,
    ...meshes.map((m, i) => [read.meshes[i]?.sha256, m.unit, m.upAxis]),
  ]);
  if (memory.mesh?.key === key) return good(withDoubts(project, memory.mesh, memory));
  const placed: TriMesh[] = [];
  const warnings: Problem[] = [];
  const problems: Problem[] = [];
  for (const [i, mesh] of meshes.entries()) {
    const opened = await openMesh(mesh.path, (read.meshes[i] as ReadProject['meshes'][number]).bytes);
    if (!opened.ok) problems.push(...opened.problems);
    else {
      placed.push(placeMesh(opened.value.mesh, mesh.unit, mesh.upAxis));
      warnings.push(...opened.value.warnings);
    }
  }
  if (problems.length > 0) return bad(problems);
  const merged = squareUp(cutOutParts(mergeMeshes(placed), cutOuts ?? []), {
    ...(scale && { scale }),
    ...(level && { level }),
  });
  const mesh = withoutParts(merged, (part) => isLeftOut(project, part));
  if (mesh.indices.length === 0)
    return bad([
      { path: 'bay', message: 'nothing is left of the bay: its meshes are empty or all parts are left out' },
    ]);
  memory.mesh = { key, mesh, warnings };
  return good(withDoubts(project, memory.mesh, memory));
}

/** The mesh with what does not look right about it and the ports on it; a port that moves leaves the mesh as it is. */
function withDoubts(
  project: Project,
  { key, mesh, warnings }: NonNullable<JobMemory['mesh']>,
  memory: JobMemory,
): { mesh: TriMesh; warnings: readonly Problem[] } {
  const own = JSON.stringify([key, project.ports]);
  if (memory.doubts?.key !== own) memory.doubts = { key: own, doubts: doubtsOf(project, mesh) };
  return { mesh, warnings: [...warnings, ...memory.doubts.doubts] };
}

/** The index of the bay by skin; built again when a mesh or a skin's parts changed. */
export function bayIndex(read: ReadProject, mesh: TriMesh, memory: JobMemory, watch: Watch): BayIndex {
  const { project } = read.resolved;
  const key = JSON.stringify([memory.mesh?.key, project.bay.skins]);
  if (memory.index?.key !== key) {
    const index = buildBayIndex(mesh, (part) => skinOfPart(project, part), watch);
    memory.index = { key, index: memory.crew?.share(index) ?? index };
  }
  return memory.index.index;
}

/** The bay by the bodies that move; built again when a mesh, a skin, or what moves changed. */
export function bodiesOfBay(read: ReadProject, mesh: TriMesh, memory: JobMemory, watch: Watch): readonly BodyBay[] {
  const { project } = read.resolved;
  const { skins, bodies } = project.bay;
  const moving = [...movingBodies(rockPoses(project))];
  const key = JSON.stringify([memory.mesh?.key, skins, bodies.map((b) => [b.id, b.parts]), moving]);
  if (memory.bodies?.key !== key) {
    const bays = bodyBays(project, mesh, watch);
    const share = ({ body, bay }: BodyBay): BodyBay => ({ body, bay: memory.crew?.share(bay) ?? bay });
    memory.bodies = { key, bays: bays.map(share) };
  }
  return memory.bodies.bays;
}
