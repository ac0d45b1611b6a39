import type { Clamp, End, Hose, PartTables, Sleeve } from '../../shared/document/parts/schema.ts';
import {
  type Port,
  PROJECT_FORMAT,
  PROJECT_VERSION,
  type Project,
  type Run,
} from '../../shared/document/project/schema.ts';

/** A -8 hose, invented for tests: braided, 15.8 mm outside, least radius 100 mm to the inside of the bend. */
export function sampleHose(changes: Partial<Hose> = {}): Hose {
  return {
    id: 'hose-8',
    name: 'Sample hose -8',
    construction: 'smooth PTFE under steel braid',
    core: 'ptfe-smooth',
    conductiveCore: true,
    cover: 'steel-braid',
    dash: 8,
    insideDiameterMm: 10.3,
    outsideDiameterMm: 15.8,
    minBendRadiusMm: 100,
    minBendRadiusDatum: 'inside',
    maxPressureKpa: 10000,
    minTemperatureC: -55,
    maxTemperatureC: 230,
    provenance: 'example',
    source: 'invented for tests',
    ...changes,
  };
}

/** A straight -8 end, invented for tests. */
export function sampleEnd(changes: Partial<End> = {}): End {
  return {
    id: 'end-8-0',
    name: 'Sample straight end -8',
    seat: 'flare-37',
    dash: 8,
    bendAngleDeg: 0,
    seatToBendMm: 10,
    bendToShoulderMm: 13.6,
    shoulderToMouthMm: 20,
    collarDiameterMm: 22,
    joint: 'screw-together',
    material: 'aluminium',
    turning: 'swivel',
    provenance: 'example',
    source: 'invented for tests',
    ...changes,
  };
}

/** A sleeve that goes over the sample hose, invented for tests. */
export function sampleSleeve(changes: Partial<Sleeve> = {}): Sleeve {
  return {
    id: 'sleeve-16',
    name: 'Sample sleeve',
    insideDiameterMm: 16,
    outsideDiameterMm: 22,
    maxTemperatureC: 260,
    weightKgPerM: 0.2,
    provenance: 'example',
    source: 'invented for tests',
    ...changes,
  };
}

/** A clamp that holds the bare sample hose, invented for tests. */
export function sampleClamp(changes: Partial<Clamp> = {}): Clamp {
  return {
    id: 'p',
    name: 'P clamp',
    holdsFromMm: 15,
    holdsToMm: 16,
    standOffMm: 12,
    widthMm: 12,
    material: 'steel, cushioned',
    maxTemperatureC: 200,
    provenance: 'example',
    source: 'invented for tests',
    ...changes,
  };
}

export function sampleTables(): PartTables {
  return { hoses: [sampleHose()], ends: [sampleEnd()], sleeves: [sampleSleeve()], adapters: [], clamps: [], rolls: [] };
}

export function samplePort(changes: Partial<Port> = {}): Port {
  return {
    id: 'p1',
    name: 'Port 1',
    seatPoint: [0, 0, 0],
    axis: [1, 0, 0],
    up: [0, 0, 1],
    seat: 'flare-37',
    dash: 8,
    ...changes,
  };
}

export function sampleRun(changes: Partial<Run> = {}): Run {
  return {
    id: 'r1',
    name: 'Run 1',
    a: { port: 'p1', end: 'end-8-0' },
    b: { port: 'p2', end: 'end-8-0' },
    service: { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 120 },
    hose: 'hose-8',
    slack: 0.05,
    supports: [],
    ...changes,
  };
}

/** A sound project with two ports, one run and one skin of every kind. */
export function sampleProject(changes: Partial<Project> = {}): Project {
  return {
    format: PROJECT_FORMAT,
    version: PROJECT_VERSION,
    name: 'Sample',
    exampleData: true,
    bay: {
      meshes: [{ path: 'bay.stl', sha256: 'a'.repeat(64), unit: 'mm', upAxis: '+z' }],
      scanUncertaintyMm: 0,
      skins: [
        { id: 'exhaust', name: 'Exhaust', kind: 'hot', parts: ['exhaust*'], surfaceTemperatureC: 600 },
        { id: 'tub', name: 'Tub', kind: 'composite', parts: ['tub'] },
        { id: 'bracket', name: 'Bracket', kind: 'sharp-edge', parts: ['*bracket*'] },
        { id: 'belt', name: 'Belt', kind: 'moving', parts: ['belt'] },
      ],
      bodies: [{ id: 'engine', name: 'Engine', parts: ['engine*', 'exhaust*'] }],
    },
    tables: { hoses: ['hoses.csv'], ends: ['ends.csv'], sleeves: ['sleeves.csv'] },
    ports: [samplePort(), samplePort({ id: 'p2', name: 'Port 2', seatPoint: [500, 0, 0], axis: [-1, 0, 0] })],
    runs: [sampleRun()],
    overrides: [],
    seed: 1,
    ...changes,
  };
}
