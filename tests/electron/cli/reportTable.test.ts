import { expect, test } from 'vitest';
import { reportTable } from '../../../electron/cli/reportTable.ts';
import { rockWith } from '../../arbitraries/lays.ts';
import { exampleFinding, exampleLay, exampleReport } from '../exampleReport.ts';

test('a row of mm and a row of inches for each run, and the clearance with the least room', () => {
  const lines = reportTable(exampleReport([exampleLay], [])).split('\n');
  const row = lines.find((line) => line.startsWith('feed')) ?? '';
  // Lengths to cut are rounded up, radii and clearances down, so that print never promises more than there is.
  expect(row).toMatch(
    /laid +420\.1 mm +440\.1 mm +270° ± 2° +5\.2 % +80\.0 mm of 75\.0 mm +60\.0 mm of 55\.0 mm to manifold \(hot\)/,
  );
  // 420.03 mm is 16.537 in: 16 9/16 is the next sixteenth above.
  expect(lines[lines.indexOf(row) + 1]).toMatch(/^ +16 9\/16 in +17 3\/8 in/);
  expect(lines).toContain('No findings.');
  expect(lines[1]).toContain('EXAMPLE DATA');
});

test('findings stand in the order of how much they matter, with limit, measure and source', () => {
  const note = { ...exampleFinding, severity: 'note' as const, message: 'a note' };
  const look = {
    ...exampleFinding,
    severity: 'look' as const,
    message: 'a look',
    overrideReason: 'a shield stands there',
  };
  const text = reportTable(exampleReport([exampleLay], [note, look, exampleFinding]));
  expect(text.match(/^(STOP|LOOK|NOTE)/gm)).toEqual(['STOP', 'LOOK', 'NOTE']);
  expect(text).toContain('STOP  feed: nearer to the manifold than the rule allows (300.0 mm from shoulder A)');
  expect(text).toContain('measured 40.0 mm');
  const unstated = { ...exampleFinding, unit: 'count', limit: 1, measured: 0, margin: -1, message: 'not stated' };
  expect(reportTable(exampleReport([exampleLay], [unstated]))).not.toContain('measured 0');
  expect(text).toContain('[clearance-hot; invented for a test]');
  expect(text).toContain('overridden: a shield stands there');
});

test('a run with no way says why and shows no numbers', () => {
  const none = { ...exampleLay, outcome: 'no-way' as const, reason: 'the manifold closes every way round' };
  const text = reportTable(exampleReport([none], []));
  expect(text).toMatch(/^feed +no-way$/m);
  expect(text).toContain('feed: the manifold closes every way round');
});

test('hoses that the motion of bodies works stand in the order in which they go tight', () => {
  const never = { ...exampleLay, run: 'never', rock: rockWith({ slackLeftMm: 12.34, twistDeg: -7.5, tensionN: 3.2 }) };
  const early = {
    ...exampleLay,
    run: 'early',
    rock: rockWith(
      { slackLeftMm: -4, missingMm: 6, outcome: 'too-short' },
      { tightAt: { share: 0.679, extreme: 1 }, worst: { slackLeft: 1 } },
    ),
  };
  const carried = { ...exampleLay, run: 'along', rock: rockWith({}, { carried: true }) };
  const lines = reportTable(exampleReport([never, carried, early], [])).split('\n');
  const from = lines.findIndex((line) => line.startsWith('WHEN BODIES MOVE'));
  expect(lines[from + 2]).toMatch(/^early +67 % of motion +-6\.0 mm .* cannot be laid +engine at roll \+3 degrees$/);
  expect(lines[from + 3]).toMatch(/^never +not within 200 % +12\.3 mm .*7\.5° +about 4 N +engine at roll \+3 degrees$/);
  expect(lines[from + 4]).toBe('carried along whole, so never tight: along');
  expect(reportTable(exampleReport([exampleLay], []))).not.toContain('WHEN BODIES MOVE');
});

test('adapters are told from the part outwards, with the clocks of those that bend', () => {
  const straight = {
    id: 'union',
    clockDeg: 0,
    points: [point(0, 0, 0), point(0, 0, 10), point(0, 0, 25)],
    diameterMm: 20,
  };
  const elbow = {
    id: 'elbow',
    clockDeg: 70,
    points: [point(0, 0, 25), point(0, 0, 40), point(20, 0, 40)],
    diameterMm: 20,
  };
  const ends = { ...exampleLay.ends, b: { ...exampleLay.ends.b, adapters: [straight, elbow] } };
  const lines = reportTable(exampleReport([{ ...exampleLay, ends }], [])).split('\n');
  expect(lines).toContain('ON ADAPTERS');
  expect(lines.find((line) => line.includes('union'))).toMatch(/^feed +B +union, then elbow at 70°$/);
  expect(reportTable(exampleReport([exampleLay], []))).not.toContain('ON ADAPTERS');
});

test('hoses on taper threads show the worst over their clocks, each with its clock', () => {
  const pose = (clockDeg: number, slackLeftMm: number, radiusMm: number) => ({
    name: `elbow at END A at ${clockDeg} degrees`,
    clocks: [{ end: 'a' as const, adapter: 'elbow', clockDeg }],
    outcome: 'lies' as const,
    slackLeftMm,
    minRadius: { provenAtLeastMm: radiusMm, at: { arcLengthMm: 5, point: point(5, 0, 0) } },
    ownClockDeg: { a: 0, b: 0 },
    room: {},
  });
  const taper = {
    ranges: [{ end: 'a' as const, adapter: 'elbow', fromDeg: -15, toDeg: 15, laidAtDeg: 0 }],
    poses: [pose(-15, 3.25, 90), pose(0, 9, 95), pose(15, 8, 80.04)],
    worst: { slackLeft: 0, minRadius: 2 },
  };
  const lines = reportTable(exampleReport([{ ...exampleLay, taper }], [])).split('\n');
  const start = lines.findIndex((line) => line.startsWith('ON TAPER THREADS'));
  // Rounded down, as all that must not be less than is said: 3.25 mm is 0.128 in, 80.04 mm is 3.151 in.
  expect(lines[start + 2]).toMatch(
    /^feed +elbow -15° to 15° +3\.2 mm \(1\/8 in\) at -15° +80\.0 mm \(3 1\/8 in\) at 15° +- +-$/,
  );
});

function point(x: number, y: number, z: number): [number, number, number] {
  return [x, y, z];
}
