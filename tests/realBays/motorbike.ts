import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { partTableCsv } from '../../shared/document/parts/partTableCsv.ts';
import type { Project } from '../../shared/document/project/schema.ts';
import { serialiseProject } from '../../shared/document/project/serialiseProject.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';

/** A real motorbike round its engine, 86,677 triangles in metres, +Z up; kept beside the checkout, never in it. */
export const MESH = path.resolve(import.meta.dirname, '../../../shared/meshes/motorbike-engine-bay.obj');
export const hasMesh = existsSync(MESH);
export const SKIPPED = 'skipped: meshes not beside the checkout';

const HOSE = exampleHose({
  id: 'coolant-10',
  name: 'Example coolant hose -10',
  construction: 'rubber, textile braid',
  core: 'epdm',
  cover: 'textile-braid',
  dash: 10,
  insideDiameterMm: 16,
  outsideDiameterMm: 22,
  minBendRadiusMm: 45,
  maxPressureKpa: 700,
});
const END = exampleEnd(0, {
  dash: 10,
  seatToBendMm: 0,
  bendToShoulderMm: 18,
  shoulderToMouthMm: 16,
  collarDiameterMm: 28,
});

/**
 * Two coolant runs. The first joins the pump's open spout (boundary loop of group water-pump: centre (560.0, 71.2, 281.4),
 * radius 8 to 10 mm, measured on the mesh) with the radiator where the bike's own pipe meets it; that pipe is left out,
 * and so are the doubled shadow groups. The second joins an opening in the radiator's right side tank with one in the head's
 * side, each 25 mm out of the surface. The exhaust is hot; the bike itself leads water nearer to it than 3 in, so the
 * skin states its own clearance.
 */
function motorbikeProject(sha256: string): Project {
  const port = (id: string, seatPoint: [number, number, number], axis: [number, number, number]) => ({
    id,
    name: id,
    seatPoint,
    axis,
    up: [0, 0, 1] as [number, number, number],
    seat: END.seat,
    dash: 10,
  });
  const run = (id: string, a: string, b: string) => ({
    id,
    name: id,
    a: { port: a, end: END.id },
    b: { port: b, end: END.id },
    service: { purpose: 'coolant' as const, fluid: 'coolant' as const, pressureKpa: 110, temperatureC: 95 },
    hose: HOSE.id,
    slack: 0.05,
    supports: [],
  });
  return {
    format: 'hosewright-project',
    version: 1,
    name: 'Motorbike, two coolant hoses',
    exampleData: true,
    bay: {
      meshes: [{ path: 'bay.obj', sha256, unit: 'm', upAxis: '+z' }],
      scanUncertaintyMm: 1,
      leftOut: ['water-pipe*', '*shadow*'],
      skins: [
        { id: 'exhaust', name: 'Exhaust', kind: 'hot', parts: ['exhaust*'], surfaceTemperatureC: 500, clearanceMm: 25 },
      ],
      bodies: [],
    },
    tables: { hoses: ['hoses.csv'], ends: ['ends.csv'], sleeves: [] },
    ports: [
      port('pump-spout', [560, 71.2, 281.4], [-0.064, 0.989, 0.131]),
      port('radiator-left', [404, 197, 474], [0.98, -0.14, -0.15]),
      port('radiator-right', [345, -195, 600], [0, -1, 0]),
      port('head-right', [560, -217, 540], [0, -1, 0]),
    ],
    runs: [
      run('pump-to-radiator', 'pump-spout', 'radiator-left'),
      run('head-to-radiator', 'head-right', 'radiator-right'),
    ],
    overrides: [],
    seed: 1,
  };
}

/** Writes the project with its mesh and tables into a new folder outside the checkout, and answers the folder. */
export function motorbikeFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'hosewright-motorbike-'));
  mkdirSync(folder, { recursive: true });
  copyFileSync(MESH, path.join(folder, 'bay.obj'));
  const sha256 = createHash('sha256').update(readFileSync(MESH)).digest('hex');
  writeFileSync(path.join(folder, 'project.json'), serialiseProject(motorbikeProject(sha256)));
  writeFileSync(path.join(folder, 'hoses.csv'), partTableCsv('hoses', [HOSE]));
  writeFileSync(path.join(folder, 'ends.csv'), partTableCsv('ends', [END]));
  return folder;
}
