import { UNWATCHED } from '../../shared/base/watch.ts';
import type { End, Hose } from '../../shared/document/parts/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../shared/document/project/resolve.ts';
import { PLAIN_SKIN, type Port, type Project, type Run } from '../../shared/document/project/schema.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';
import { type BayIndex, buildBayIndex } from '../../shared/solve/bay/bayIndex.ts';

/** A triangle and a point in far corners: a bay with nothing near its middle. */
export function emptyBay(farMm = 1200): BayIndex {
  const mesh: TriMesh = {
    positions: Float32Array.from([
      farMm,
      farMm,
      farMm,
      farMm,
      farMm + 1,
      farMm,
      farMm,
      farMm,
      farMm + 1,
      -farMm,
      -farMm,
      -farMm,
    ]),
    indices: Uint32Array.from([0, 1, 2, 3, 3, 3]),
    parts: [{ name: 'far', firstTriangle: 0, triangleCount: 2 }],
  };
  return buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED);
}

export function exampleEnd(bendAngleDeg: number, more: Partial<End> = {}): End {
  return {
    id: `end-${bendAngleDeg}`,
    name: `Example ${bendAngleDeg} degree end`,
    seat: 'flare-37',
    dash: 8,
    bendAngleDeg,
    seatToBendMm: 30,
    bendToShoulderMm: 47,
    shoulderToMouthMm: 0,
    collarDiameterMm: 22,
    joint: 'crimp',
    material: 'steel',
    turning: 'swivel',
    provenance: 'example',
    source: 'invented for tests',
    ...more,
  };
}

export function exampleHose(more: Partial<Hose> = {}): Hose {
  return {
    id: 'hose',
    name: 'Example hose',
    construction: 'smooth PTFE, stainless braid',
    core: 'ptfe-smooth',
    conductiveCore: true,
    cover: 'steel-braid',
    dash: 8,
    insideDiameterMm: 10.3,
    outsideDiameterMm: 15.7,
    minBendRadiusMm: 88.9,
    minBendRadiusDatum: 'inside',
    maxPressureKpa: 7000,
    minTemperatureC: -50,
    maxTemperatureC: 200,
    provenance: 'example',
    source: 'invented for tests',
    ...more,
  };
}

export function examplePort(id: string, more: Partial<Port>): Port {
  return { id, name: id, seatPoint: [0, 0, 0], axis: [1, 0, 0], up: [0, 0, 1], seat: 'flare-37', dash: 8, ...more };
}

/** A project of one run between two ports, with nothing but what laying reads. */
export function oneRunProject(
  ports: [Port, Port],
  ends: [End, End],
  hose: Hose,
  run: Partial<Run> = {},
): ResolvedProject {
  const [a, b] = ports;
  const whole: Run = {
    id: 'run',
    name: 'Run',
    a: { port: a.id, end: ends[0].id },
    b: { port: b.id, end: ends[1].id },
    service: { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 600, temperatureC: 110 },
    hose: hose.id,
    slack: 0.05,
    supports: [],
    ...run,
  };
  const project: Project = {
    format: 'hosewright-project',
    version: 1,
    name: 'Test',
    exampleData: true,
    bay: {
      meshes: [{ path: 'bay.stl', sha256: '0'.repeat(64), unit: 'mm', upAxis: '+z' }],
      scanUncertaintyMm: 0,
      skins: [],
      bodies: [],
    },
    tables: { hoses: ['hoses.csv'], ends: ['ends.csv'], sleeves: [] },
    ports: [a, b],
    runs: [whole],
    overrides: [],
    seed: 1,
  };
  const clock = (deg: number | undefined) => (deg === undefined ? {} : { clockDeg: deg });
  const resolvedRun: ResolvedRun = {
    run: whole,
    hose,
    a: { port: a, end: ends[0], ...clock(whole.a.clockDeg) },
    b: { port: b, end: ends[1], ...clock(whole.b.clockDeg) },
  };
  return { project, runs: [resolvedRun] };
}
