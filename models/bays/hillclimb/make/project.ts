import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { Motion, Project } from '../../../../shared/document/project/schema.ts';
import { engineBodyParts } from './bay.ts';
import { ADAPTERS, PORTS } from './ports.ts';
import { RUNS } from './runs.ts';

export const MESH_FILE = 'hillclimb-bay.glb';

/** Tubes pushed over hoses, and what holds them: they may touch what they hold. */
const HOLDERS = ['fuel-grommet', 'loom-grommet', 'throttle-grommet', 'water-return-clamp'];

/** Bare stainless tube, a little blue: 304 at 215 to 490 C has 0.36 to 0.44 (infrared instrument manual, Trotec IC). */
const STAINLESS = 0.45;
/** A cast turbine housing 0.92: Clean Technol. 2022, 4(2), 329. */
const TURBINE_HOUSING = 0.92;

const SKINS: Project['bay']['skins'] = [
  {
    id: 'manifold',
    name: 'Exhaust manifold',
    kind: 'hot',
    parts: ['exhaust-*'],
    surfaceTemperatureC: 750,
    emissivity: STAINLESS,
  },
  {
    id: 'turbine',
    name: 'Turbine housing',
    kind: 'hot',
    parts: ['turbine-housing'],
    surfaceTemperatureC: 700,
    emissivity: TURBINE_HOUSING,
  },
  {
    id: 'downpipe',
    name: 'Downpipe',
    kind: 'hot',
    parts: ['downpipe'],
    surfaceTemperatureC: 550,
    emissivity: STAINLESS,
  },
  {
    id: 'wastegate',
    name: 'Wastegate and its pipe',
    kind: 'hot',
    parts: ['wastegate', 'wastegate-pipe'],
    surfaceTemperatureC: 600,
    emissivity: STAINLESS,
  },
  {
    id: 'composite',
    name: 'Tub, firewall, engine cover',
    kind: 'composite',
    parts: ['tub-rear', 'firewall', 'engine-cover', 'engine-cover-ribs'],
  },
  { id: 'tabs', name: 'Tabs and brackets, edges as sawn', kind: 'sharp-edge', parts: ['frame-tabs', 'engine-mounts'] },
  {
    id: 'moving',
    name: 'Belts, pulleys, shafts',
    kind: 'moving',
    parts: ['*-belt', '*-pulley', 'drive-shafts', 'dry-sump-pump-shaft', 'radiator-fan'],
  },
  { id: 'holders', name: 'Grommets and hose clamps', kind: 'plain', parts: HOLDERS, clearanceMm: 0 },
];

/** Rubber mounts, invented: the engine rolls about its crankshaft, which lies along X, and gives a little sideways and down. */
const ENGINE_MOTION: Motion = {
  pivot: [575, 0, 215],
  rollDeg: [-2, 2],
  pitchDeg: [0, 0],
  yawDeg: [0, 0],
  shiftMm: { x: [0, 0], y: [-2, 2], z: [-3, 3] },
};

/** The project of the example bay, for the mesh whose bytes are given. */
export function hillclimbProject(mesh: Uint8Array): Project {
  return {
    format: 'hosewright-project',
    version: 1,
    name: 'Hill-climb single-seater, example bay',
    exampleData: true,
    note: 'Invented for learning: bay, parts and figures belong to no real car. Some runs are traps; see README.md.',
    bay: {
      meshes: [{ path: MESH_FILE, sha256: bytesToHex(sha256(mesh)), unit: 'm', upAxis: '+y' }],
      scanUncertaintyMm: 1,
      airTemperatureC: 45,
      airSpeedMPerS: 5,
      soakAirTemperatureC: 60,
      oilLevel: [575, 0, 130],
      attitudes: [
        { name: 'braking', gradeDeg: { x: 0, y: 0 }, accelerationG: { x: 1.2, y: 0 } },
        { name: 'a left-hand bend', gradeDeg: { x: 0, y: 0 }, accelerationG: { x: 0, y: -0.7 } },
      ],
      skins: SKINS,
      bodies: [engineBody(), { id: 'chassis', name: 'Chassis', parts: [] }],
    },
    tables: {
      hoses: ['parts/hoses.example.csv'],
      ends: ['parts/ends.example.csv'],
      sleeves: ['parts/sleeves.example.csv'],
      adapters: ['parts/adapters.example.csv'],
      clamps: ['parts/clamps.example.csv'],
      rolls: ['parts/rolls.example.csv'],
    },
    ports: PORTS.map(({ id, name, seatPoint, axis, up, dash, body }) => ({
      id,
      name,
      seatPoint: [...seatPoint],
      axis: [...axis],
      up: [...up],
      seat: 'flare-37',
      dash,
      body,
      ...ADAPTERS[id],
    })),
    runs: RUNS.map((run) => run),
    overrides: ['turbo-water-feed', 'turbo-water-return'].map((run) => ({
      rule: 'clearance-hot',
      run,
      value: 32,
      reason: 'sleeved over its whole length, water inside; 1.25 in is the least any source found gives',
    })),
    seed: 1,
  };
}

function engineBody(): Project['bay']['bodies'][number] {
  const unions = PORTS.filter((p) => p.body === 'engine').map((p) => `${p.id}-union`);
  return {
    id: 'engine',
    name: 'Engine, turbocharger and gearbox',
    parts: [...engineBodyParts().map((p) => p.name), ...unions],
    motion: ENGINE_MOTION,
  };
}

/** The project as the text of its file: two spaces, short number lists on one line, a newline at the end. */
export function projectText(project: Project): string {
  const text = JSON.stringify(project, null, 2);
  const short = text.replace(
    /\[\s+((?:-?[\d.e+-]+,\s+){1,2}-?[\d.e+-]+)\s+\]/g,
    (_, numbers: string) => `[${numbers.replace(/,\s+/g, ', ')}]`,
  );
  return `${short}\n`;
}
