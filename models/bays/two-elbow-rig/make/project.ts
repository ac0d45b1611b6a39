import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { Project } from '../../../../shared/document/project/schema.ts';

export const MESH_FILE = 'two-elbow-rig.glb';

/** The rig's project, for the mesh whose bytes are given. */
export function twoElbowProject(mesh: Uint8Array): Project {
  return {
    format: 'hosewright-project',
    version: 1,
    name: 'Two-elbow rig, known answer',
    exampleData: true,
    note: 'Overall 514.159 mm, cut 420.159 mm, clock 270 degrees, in closed form; see README.md.',
    bay: {
      meshes: [{ path: MESH_FILE, sha256: bytesToHex(sha256(mesh)), unit: 'm', upAxis: '+y' }],
      scanUncertaintyMm: 0,
      skins: [],
      bodies: [],
    },
    tables: { hoses: ['parts/hoses.csv'], ends: ['parts/ends.csv'], sleeves: [] },
    ports: [
      {
        id: 'port-a',
        name: 'END A',
        seatPoint: [0, 0, 30],
        axis: [0, 0, -1],
        up: [1, 0, 0],
        seat: 'flare-37',
        dash: 8,
      },
      {
        id: 'port-b',
        name: 'END B',
        seatPoint: [180, 300, 150],
        axis: [-1, 0, 0],
        up: [0, 0, -1],
        seat: 'flare-37',
        dash: 8,
      },
    ],
    runs: [
      {
        id: 'two-elbow',
        name: 'Two elbows out of plane',
        a: { port: 'port-a', end: 'rig-90', clockDeg: 0 },
        b: { port: 'port-b', end: 'rig-90', clockDeg: 0 },
        service: { purpose: 'other', fluid: 'air', pressureKpa: 0, temperatureC: 20 },
        hose: 'rig-hose-8',
        slack: 0,
        supports: [
          { id: 'bend-1-in', kind: 'clamp', point: [50, 0, 0], axis: [1, 0, 0] },
          { id: 'bend-1-out', kind: 'clamp', point: [150, 100, 0], axis: [0, 1, 0] },
          { id: 'bend-2-in', kind: 'clamp', point: [150, 200, 0], axis: [0, 1, 0] },
          { id: 'bend-2-out', kind: 'clamp', point: [150, 300, 100], axis: [0, 0, 1] },
        ],
      },
    ],
    overrides: [
      {
        rule: 'slack-least',
        run: 'two-elbow',
        value: 0,
        reason: 'the known answer is the taut hose itself; a hose to build has slack',
      },
      {
        rule: 'breathing-shorter',
        run: 'two-elbow',
        value: 0,
        reason: 'the rig carries no pressure',
      },
      {
        rule: 'straight-tail',
        run: 'two-elbow',
        value: 0,
        reason: 'the textbook case leaves 3 mm of straight hose before each bend: geometry, not a hose to build',
      },
    ],
    seed: 1,
  };
}
