import { createHash } from 'node:crypto';

/**
 * A rig small enough to lay in a test: a floor plate with a post on it, and one straight-ended hose over the post.
 * Invented, in mm, for testing hosts and shells only.
 */
export function smallBay(changes: Readonly<Record<string, unknown>> = {}): Record<string, string | Uint8Array> {
  const stl = boxesStl([
    { from: [-100, -150, -20], to: [700, 150, -10] },
    { from: [290, -20, -10], to: [310, 20, 20] },
  ]);
  const project = {
    format: 'hosewright-project',
    version: 1,
    name: 'Small rig',
    exampleData: true,
    bay: {
      meshes: [{ path: 'bay.stl', sha256: createHash('sha256').update(stl).digest('hex'), unit: 'mm', upAxis: '+z' }],
      scanUncertaintyMm: 0.5,
      skins: [],
      bodies: [],
    },
    tables: { hoses: ['hoses.csv'], ends: ['ends.csv'] },
    ports: [
      { id: 'left', name: 'Left', seatPoint: [0, 0, 60], axis: [1, 0, 0], up: [0, 0, 1], seat: 'flare-37', dash: 6 },
      {
        id: 'right',
        name: 'Right',
        seatPoint: [600, 0, 60],
        axis: [-1, 0, 0],
        up: [0, 0, 1],
        seat: 'flare-37',
        dash: 6,
      },
    ],
    runs: [
      {
        id: 'feed',
        name: 'Feed',
        a: { port: 'left', end: 'straight-6' },
        b: { port: 'right', end: 'straight-6' },
        service: { purpose: 'oil-pressure', fluid: 'engine-oil', pressureKpa: 600, temperatureC: 110 },
        hose: 'hose-6',
      },
    ],
    ...changes,
  };
  return { 'project.json': JSON.stringify(project, null, 2), 'bay.stl': stl, 'hoses.csv': HOSES, 'ends.csv': ENDS };
}

const HOSES = [
  'id,name,construction,core,cover,dash,inside_diameter_mm,outside_diameter_mm,min_bend_radius_mm,min_bend_radius_datum,max_pressure_kpa,min_temperature_c,max_temperature_c,provenance,source',
  'hose-6,Test hose 6,rubber with textile braid,nbr,textile-braid,6,8.7,14,65,inside,5000,-40,150,example,invented for a test',
  '',
].join('\n');

const ENDS = [
  'id,name,seat,dash,bend_angle_deg,seat_to_bend_mm,bend_to_shoulder_mm,shoulder_to_mouth_mm,collar_diameter_mm,joint,material,turning,provenance,source',
  'straight-6,Test end 6,flare-37,6,0,10,10,25,22,crimp,steel,swivel,example,invented for a test',
  '',
].join('\n');

interface Box {
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
}

/** Boxes as text STL, one solid each. */
function boxesStl(boxes: readonly Box[]): Uint8Array {
  const solids = boxes.map((box, i) => `solid box${i}\n${boxFacets(box).join('')}endsolid box${i}\n`);
  return new TextEncoder().encode(solids.join(''));
}

/** The corners of each side by number; bit 0 = far in x, bit 1 = far in y, bit 2 = far in z. */
const SIDES = [
  [0, 2, 3, 1],
  [4, 5, 7, 6],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 4, 6, 2],
  [1, 3, 7, 5],
] as const;

function boxFacets({ from, to }: Box): string[] {
  const corner = (n: number) => [0, 1, 2].map((axis) => ((n >> axis) & 1 ? to : from)[axis]).join(' ');
  const facet = (a: number, b: number, c: number) =>
    `facet normal 0 0 0\nouter loop\n${[a, b, c].map((n) => `vertex ${corner(n)}\n`).join('')}endloop\nendfacet\n`;
  return SIDES.flatMap(([a, b, c, d]) => [facet(a, b, c), facet(a, c, d)]);
}
