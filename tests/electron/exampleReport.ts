import type { Finding, Lay, LayReport } from '../../shared/document/lay/schema.ts';

const end = {
  seatPoint: [0, 0, 0],
  bendPoint: [0, 0, 0],
  shoulderPoint: [10, 0, 0],
  mouthPoint: [30, 0, 0],
  outletAxis: [-1, 0, 0],
  up: [0, 0, 1],
  hoseAxis: [1, 0, 0],
  ownClockDeg: 0,
  ownClockChosen: false,
} satisfies Lay['ends']['a'];

/** A lay of a straight hose, invented for tests of printing and of exit codes. */
export const exampleLay: Lay = {
  run: 'feed',
  outcome: 'laid',
  centreline: {
    points: [
      [10, 0, 0],
      [430, 0, 0],
    ],
    arcLengthMm: [0, 420],
  },
  outsideDiameterMm: 12,
  ends: { a: end, b: end },
  supports: [],
  cutLengthMm: 420.03,
  liveLengthMm: 380,
  tautLengthMm: 361,
  overallLengthMm: 440.03,
  cutOffMm: { a: 10, b: 10 },
  slack: 0.0526,
  clock: { kind: 'angle', deg: 270, toleranceDeg: 2 },
  minRadius: { radiusMm: 80.06, provenAtLeastMm: 80, limitMm: 75, at: { arcLengthMm: 200, point: [210, 0, 0] } },
  straightTailMm: { a: 30, b: 30 },
  clearances: [
    {
      to: { kind: 'skin', id: 'plain', part: 'bracket' },
      clearanceMm: 20,
      provenAtLeastMm: 19.9,
      requiredMm: 5,
      at: { arcLengthMm: 100, point: [110, 0, 0] },
      onThing: [110, 0, 26],
    },
    {
      to: { kind: 'skin', id: 'hot', part: 'manifold' },
      clearanceMm: 60.04,
      provenAtLeastMm: 60,
      requiredMm: 55,
      at: { arcLengthMm: 300, point: [310, 0, 0] },
      onThing: [310, 0, 66],
    },
  ],
  residual: 0,
  timingsMs: {},
};

export const exampleFinding: Finding = {
  check: 'clearance',
  run: 'feed',
  severity: 'stop',
  rule: 'clearance-hot',
  limit: 55,
  measured: 40,
  margin: -15,
  unit: 'mm',
  at: { arcLengthMm: 300, point: [310, 0, 0] },
  source: 'invented for a test',
  message: 'nearer to the manifold than the rule allows',
};

export function exampleReport(lays: readonly Lay[], findings: readonly Finding[]): LayReport {
  return {
    format: 'hosewright-lay-report',
    version: 1,
    solverVersion: '0',
    seed: 1,
    project: { name: 'Test rig', exampleData: true, inputHash: '0'.repeat(64) },
    lays: [...lays],
    findings: [...findings],
  };
}
