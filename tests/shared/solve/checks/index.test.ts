import { expect, it } from 'vitest';
import { Finding, type Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import { RULES } from '../../../../shared/document/rules/index.ts';
import { CHECK_NAMES } from '../../../../shared/document/wording/findingWords.ts';
import { CHECKS, runChecks } from '../../../../shared/solve/checks/index.ts';
import { handsWith, nutWith, tightNut } from '../../../arbitraries/hands.ts';
import { heatAlong } from '../../../arbitraries/heat.ts';
import { clearanceTo, layAlong, rockWith, straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleRun } from '../../../arbitraries/projects.ts';
import { resolved } from './context.ts';

it('lists every check under the name of its function', () => {
  expect(Object.keys(CHECKS)).toEqual([...CHECK_NAMES]);
  for (const [name, check] of Object.entries(CHECKS)) expect(check.name).toBe(name);
});

it('finds nothing in a sound lay', () => {
  const clear = [
    clearanceTo({ kind: 'skin', id: 'plain' }, 40, 12),
    clearanceTo({ kind: 'skin', id: 'exhaust' }, 200, 76.2),
    clearanceTo({ kind: 'skin', id: 'tub' }, 60, 25),
    clearanceTo({ kind: 'run', id: 'r2' }, 30, 12),
  ];
  expect(runChecks(resolved(), [straightLay({ clearances: clear })])).toEqual([]);
});

const TIGHT_AS_BUILT = {
  name: 'as measured',
  cutLengthMm: 690,
  outcome: 'tight',
  slackLeftMm: -3,
  ownClockDeg: { a: 0, b: 0 },
  room: {},
} as const;

const TIGHT_TAPER: Lay['taper'] = {
  ranges: [{ end: 'a', adapter: 'elbow', fromDeg: 0, toDeg: 10, laidAtDeg: 5 }],
  poses: [
    {
      name: 'elbow at END A at 10 degrees',
      clocks: [{ end: 'a', adapter: 'elbow', clockDeg: 10 }],
      outcome: 'tight',
      slackLeftMm: -2,
      ownClockDeg: { a: 0, b: 0 },
      room: {},
    },
  ],
  worst: { slackLeft: 0 },
};

/** A lay spoilt in every way, of a drain full of petrol: so neither coolant nor suction, and by itself. */
function everythingWrong(): { project: ResolvedProject; lay: Lay } {
  const service = { purpose: 'turbo-oil-drain', fluid: 'petrol', pressureKpa: 20_000, temperatureC: 300 } as const;
  const project = resolved(
    { runs: [sampleRun({ service, onePlane: ['a'] })] },
    { hoses: [sampleHose({ conductiveCore: false })], ends: [sampleEnd({ maxTemperatureC: 300 })] },
  );
  const lay = layAlong(
    [
      [0, 0, 0],
      [250, 90, 0],
      [550, -90, 70],
      [800, 0, 50],
    ],
    {
      outcome: 'near-miss',
      slack: 0.01,
      straightTailMm: { a: 1, b: 2 },
      breathing: [{ change: -0.04, liveLengthMm: 700, taut: true }],
      rock: rockWith({ slackLeftMm: -3 }),
      taper: TIGHT_TAPER,
      hands: handsWith(tightNut(0), nutWith({ second: { hexMm: 22, assumed: false, fits: false } })),
      heat: heatAlong({ low: 250, likely: 320, high: 400 }),
      tolerance: { lengthMm: 4.8, poses: [TIGHT_AS_BUILT] },
      built: TIGHT_AS_BUILT,
      minRadius: { radiusMm: 50, provenAtLeastMm: 49, limitMm: 107.9, at: { arcLengthMm: 9, point: [9, 0, 0] } },
      clearances: [
        clearanceTo({ kind: 'skin', id: 'plain' }, 3, 12),
        clearanceTo({ kind: 'skin', id: 'exhaust', part: 'exhaust-left' }, 40, 76.2),
        clearanceTo({ kind: 'skin', id: 'tub' }, 3, 25),
      ],
    },
  );
  const room = { roomMm: -3, part: 'block', point: [1, 0, 0] as [number, number, number] };
  return { project, lay: { ...lay, ends: { ...lay.ends, a: { ...lay.ends.a, room } } } };
}

it('gives findings that fit the schema, name a rule, and are negative in margin where broken', () => {
  const { project, lay } = everythingWrong();
  const findings = runChecks(project, [lay]);
  const checks = new Set(findings.map((f) => f.check));
  expect([...checks]).toEqual(
    CHECK_NAMES.filter(
      (n) =>
        ![
          'coolantHighPoint',
          'suctionBend',
          'suctionPressure',
          'flowSpeed',
          'pressureDrop',
          'drainCapacity',
          'turboFeed',
          'turboWater',
          'bundlePressure',
          'vacuumKnown',
          'pushOn',
          'fluidCore',
          'drippedOn',
          'fuelMarking',
          'hoseLife',
          'endMetals',
          'selfContact',
          'wiring',
          'clampPlace',
          'clampFoot',
          'clampFits',
          'clampHeat',
          'clampPressure',
          'engineSlack',
          'passThrough',
          'jointAccess',
          'hoseClamps',
          'rigidLine',
          'systemTested',
          'assembly',
          'crimp',
          'proof',
          'firstSupport',
          'firewall',
          'inspection',
        ].includes(n),
    ),
  );
  for (const finding of findings) {
    expect(Finding.safeParse(finding).error).toBeUndefined();
    expect(RULES.map((r) => r.id)).toContain(finding.rule);
    expect(finding.margin).toBeLessThan(0);
    expect(finding.message).not.toMatch(/undefined|NaN|Infinity/);
    expect(finding.message.length).toBeGreaterThan(20);
  }
});

it('gives the same findings for the same lay, and changes nothing it is handed', () => {
  const { project, lay } = everythingWrong();
  const before = structuredClone({ project, lay });
  expect(runChecks(project, [lay])).toEqual(runChecks(project, [lay]));
  expect({ project, lay }).toEqual(before);
});

it('speaks of a run with no way, but not of its missing path', () => {
  const { project, lay } = everythingWrong();
  const empty = { ...lay, outcome: 'no-way' as const, centreline: { points: [], arcLengthMm: [] } };
  const checks = runChecks(project, [empty]).map((f) => f.check);
  expect(checks).toContain('laid');
  expect(checks).toContain('staticCharge');
  expect(checks).not.toContain('slack');
  expect(checks).not.toContain('clearance');
});

it('passes over lays of runs that the project does not have', () => {
  expect(runChecks(resolved(), [straightLay({ run: 'r9', outcome: 'near-miss' })])).toEqual([]);
});

it('judges the same when bay and lay are moved together and turned about the plumb line', () => {
  const { project, lay } = everythingWrong();
  const move = (p: readonly [number, number, number]): [number, number, number] => [-p[1] + 900, p[0] - 70, p[2] + 333];
  const turn = (v: readonly [number, number, number]): [number, number, number] => [-v[1], v[0], v[2]];
  const movedEnd = (e: (typeof lay)['ends']['a']) => ({
    ...e,
    seatPoint: move(e.seatPoint),
    bendPoint: move(e.bendPoint),
    shoulderPoint: move(e.shoulderPoint),
    mouthPoint: move(e.mouthPoint),
  });
  const movedLay = {
    ...lay,
    centreline: { ...lay.centreline, points: lay.centreline.points.map(move) },
    ends: { a: movedEnd(lay.ends.a), b: movedEnd(lay.ends.b) },
  };
  const movedRuns = project.runs.map((r) => ({
    ...r,
    a: { ...r.a, port: { ...r.a.port, axis: turn(r.a.port.axis) } },
    b: { ...r.b, port: { ...r.b.port, axis: turn(r.b.port.axis) } },
  }));
  const essence = (findings: Finding[]): unknown[] =>
    findings.map((f) => [
      f.check,
      f.rule,
      f.severity,
      Math.round(f.measured * 1e6) / 1e6,
      f.at?.arcLengthMm.toFixed(3),
    ]);
  expect(essence(runChecks({ ...project, runs: movedRuns }, [movedLay]))).toEqual(essence(runChecks(project, [lay])));
});
