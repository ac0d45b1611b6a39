import { seededRandom } from '../../shared/base/random.ts';
import { turnAbout, type Vec3 } from '../../shared/base/vec3.ts';
import { UNWATCHED } from '../../shared/base/watch.ts';
import type { End, Hose } from '../../shared/document/parts/schema.ts';
import type { ResolvedEnd, ResolvedProject, ResolvedRun } from '../../shared/document/project/resolve.ts';
import { PLAIN_SKIN, type Port } from '../../shared/document/project/schema.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';
import { type BayIndex, buildBayIndex } from '../../shared/solve/bay/bayIndex.ts';

/** A bay of one plain skin with its runs. */
export interface PlainBay {
  readonly mesh: TriMesh;
  readonly bay: BayIndex;
  readonly project: ResolvedProject;
}

function changed(
  { mesh, project }: PlainBay,
  point: (p: Vec3) => Vec3,
  direction: (d: Vec3) => Vec3,
  parts: { hose(h: Hose): Hose; end(e: End): End } = { hose: (h) => h, end: (e) => e },
  clearanceMm?: number,
): PlainBay {
  const positions = mesh.positions.slice();
  for (let i = 0; i < positions.length; i += 3)
    positions.set(point([positions[i]!, positions[i + 1]!, positions[i + 2]!]), i);
  const port = (p: Port): Port => ({
    ...p,
    seatPoint: [...point(p.seatPoint)],
    axis: [...direction(p.axis)],
    up: [...direction(p.up)],
  });
  const end = (e: ResolvedEnd): ResolvedEnd => ({ ...e, port: port(e.port), end: parts.end(e.end) });
  const runs = project.runs.map((r): ResolvedRun => ({ ...r, a: end(r.a), b: end(r.b), hose: parts.hose(r.hose) }));
  const skin = clearanceMm === undefined ? PLAIN_SKIN : { ...PLAIN_SKIN, clearanceMm };
  const moved = { ...mesh, positions };
  return {
    mesh: moved,
    bay: buildBayIndex(moved, () => skin, UNWATCHED),
    project: { project: { ...project.project, ports: project.project.ports.map(port) }, runs },
  };
}

export function movedBay(made: PlainBay, [x, y, z]: Vec3): PlainBay {
  return changed(
    made,
    (p) => [p[0] + x, p[1] + y, p[2] + z],
    (d) => d,
  );
}

/** Turned about an axis through the origin. About Z gravity stays what it is. */
export function turnedBay(made: PlainBay, axis: Vec3, angleRad: number): PlainBay {
  const turn = (v: Vec3): Vec3 => turnAbout(v, axis, angleRad);
  return changed(made, turn, turn);
}

/** END A and END B of every run change places. */
export function reversedRuns(made: PlainBay): PlainBay {
  const runs = made.project.runs.map(
    (r): ResolvedRun => ({ ...r, run: { ...r.run, a: r.run.b, b: r.run.a }, a: r.b, b: r.a }),
  );
  return { ...made, project: { project: { ...made.project.project, runs: runs.map((r) => r.run) }, runs } };
}

/** The same triangles of each part in another order, with the corners of each begun at another one. */
export function shuffledBay(made: PlainBay, seed: number): PlainBay {
  const random = seededRandom(seed);
  const indices = made.mesh.indices.slice();
  for (const { firstTriangle, triangleCount } of made.mesh.parts) {
    const triangles = Array.from({ length: triangleCount }, (_, i) => firstTriangle + i);
    for (let i = triangles.length - 1; i > 0; i--) {
      const j = Math.floor(random() * (i + 1));
      [triangles[i], triangles[j]] = [triangles[j]!, triangles[i]!];
    }
    triangles.forEach((from, i) => {
      const first = Math.floor(random() * 3);
      for (let k = 0; k < 3; k++)
        indices[3 * (firstTriangle + i) + k] = made.mesh.indices[3 * from + ((first + k) % 3)]!;
    });
  }
  const mesh = { ...made.mesh, indices };
  return { ...made, mesh, bay: buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED) };
}

/** Stiffness and dry weight stated, and nothing that weighs in the hose, so that they can be scaled. */
export function withStatedHose(made: PlainBay, bendingStiffnessNmm2: number, weightKgPerM: number): PlainBay {
  const runs = made.project.runs.map((r): ResolvedRun => {
    const service = { ...r.run.service, fluid: 'air' as const };
    return { ...r, run: { ...r.run, service }, hose: { ...r.hose, bendingStiffnessNmm2, weightKgPerM } };
  });
  return { ...made, project: { project: { ...made.project.project, runs: runs.map((r) => r.run) }, runs } };
}

/**
 * Every length times `by`, clearance too, with the rod similar to itself: its equilibrium, EI t' x t'' and so on balanced by the weight
 * above, holds only w L^3 / EI without dimension (dimensional analysis of the elastica with weight; Landau and Lifshitz, Theory of
 * Elasticity, section 19), so EI goes with the fourth power as a wall's does, and the weight a length with the first.
 */
export function scaledBay(made: PlainBay, by: number, clearanceMm: number): PlainBay {
  const scaledVec = (v: Vec3): Vec3 => [by * v[0], by * v[1], by * v[2]];
  const hose = (h: Hose): Hose => ({
    ...h,
    insideDiameterMm: by * h.insideDiameterMm,
    outsideDiameterMm: by * h.outsideDiameterMm,
    minBendRadiusMm: by * h.minBendRadiusMm,
    ...(h.bendingStiffnessNmm2 === undefined ? {} : { bendingStiffnessNmm2: by ** 4 * h.bendingStiffnessNmm2 }),
    ...(h.weightKgPerM === undefined ? {} : { weightKgPerM: by * h.weightKgPerM }),
  });
  const end = (e: End): End => ({
    ...e,
    seatToBendMm: by * e.seatToBendMm,
    bendToShoulderMm: by * e.bendToShoulderMm,
    shoulderToMouthMm: by * e.shoulderToMouthMm,
    collarDiameterMm: by * e.collarDiameterMm,
  });
  return changed(made, scaledVec, (d) => d, { hose, end }, by * clearanceMm);
}
