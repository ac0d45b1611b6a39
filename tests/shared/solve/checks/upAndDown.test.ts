import { describe, expect, it } from 'vitest';
import { degreesToRadians } from '../../../../shared/base/units.ts';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { Finding, Lay } from '../../../../shared/document/lay/schema.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import { layAlong } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const DRAIN = { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 0, temperatureC: 130 } as const;
const COOLANT = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 100, temperatureC: 95 } as const;

/** A drain of the sample parts in size -10 whose outlet, port 1, points `tiltDeg` off straight down. */
function drain(tiltDeg = 0, end: Partial<End> = {}, dash = 10): ResolvedProject {
  const tilt = degreesToRadians(tiltDeg);
  return resolved(
    {
      ports: [
        samplePort({ dash, axis: [Math.sin(tilt), 0, -Math.cos(tilt)], up: [0, 1, 0] }),
        samplePort({ id: 'p2', dash, axis: [0, 0, 1], up: [0, 1, 0] }),
      ],
      runs: [sampleRun({ service: DRAIN })],
    },
    { hoses: [sampleHose({ dash })], ends: [sampleEnd({ dash, ...end })] },
  );
}

/** A straight way down at a fall of `deg`, 400 mm long. */
function falling(deg: number): Vec3[] {
  const a = degreesToRadians(deg);
  return [
    [0, 0, 0],
    [400 * Math.cos(a), 0, -400 * Math.sin(a)],
  ];
}

function fallFindings(corners: readonly Vec3[], tiltDeg = 0): Finding[] {
  return findingsOf('drainFall', drain(tiltDeg), layAlong(corners));
}

describe('drainFall', () => {
  it('passes a drain that falls all the way', () => {
    expect(fallFindings(falling(60))).toEqual([]);
  });

  it('looks at a shallow fall and stops a level one', () => {
    expect(fallFindings(falling(5.01))).toEqual([]);
    expect(fallFindings(falling(4.99))).toMatchObject([{ severity: 'look', rule: 'drain-least-fall', limit: 5 }]);
    expect(fallFindings(falling(4.99))[0]?.measured).toBeCloseTo(4.99, 6);
    expect(fallFindings(falling(0.11))).toMatchObject([{ severity: 'look' }]);
    expect(fallFindings(falling(0.09))).toMatchObject([{ severity: 'stop', rule: 'drain-no-rise' }]);
    expect(fallFindings(falling(0))).toMatchObject([{ severity: 'stop' }]);
  });

  it('finds the rising stretch of a drain that sags, its height and its place', () => {
    // Down 200, then up 30 over 40 across (50 long), then down again: the rise begins 200 mm along.
    const [finding] = fallFindings([
      [0, 0, 0],
      [0, 0, -200],
      [40, 0, -170],
      [40, 0, -400],
    ]);
    expect(finding).toMatchObject({ severity: 'stop', rule: 'drain-no-rise', unit: 'deg' });
    expect(finding?.measured).toBeCloseTo(-36.8699, 3);
    expect(finding?.message).toContain('Rises 30.0 mm (1.18 in) over 50.0 mm (1.97 in), beginning 200.0 mm');
    expect(finding?.at?.point[2]).toBeLessThan(-165);
  });

  it('reads the same drain the same, whichever end is A', () => {
    const down: Vec3[] = [
      [0, 0, 0],
      [0, 0, -200],
      [40, 0, -170],
      [40, 0, -400],
    ];
    const up = [...down].reverse();
    const project = drain();
    const turned: ResolvedProject = { ...project, runs: project.runs.map((r) => ({ ...r, a: r.b, b: r.a })) };
    const one = findingsOf('drainFall', project, layAlong(down));
    const two = findingsOf('drainFall', turned, layAlong(up));
    expect(two[0]?.measured).toBeCloseTo(one[0]?.measured ?? 0, 6);
    expect(two.map((f) => f.rule)).toEqual(one.map((f) => f.rule));
  });

  it('sees a rise inside an end, which the hose itself does not show', () => {
    const lay = layAlong(falling(60));
    const b = lay.ends.b;
    const hooked: Lay = {
      ...lay,
      ends: { ...lay.ends, b: { ...b, seatPoint: [b.bendPoint[0], b.bendPoint[1], b.bendPoint[2] + 20] } },
    };
    const [finding] = findingsOf('drainFall', drain(), hooked);
    expect(finding).toMatchObject({ severity: 'stop' });
    expect(finding?.at?.arcLengthMm).toBeCloseTo(400, 6);
    expect(finding?.message).toContain('inside END B');
  });

  it('holds the outlet to 15 degrees (look) and 35 degrees (stop)', () => {
    // garrettmotion.com: within 15 degrees of gravity; leaks past 35.
    const rules = (deg: number): string[] => fallFindings(falling(60), deg).map((f) => `${f.severity} ${f.rule}`);
    expect(rules(14.99)).toEqual([]);
    expect(rules(15)).toEqual([]);
    expect(rules(15.1)).toEqual(['look drain-outlet-tilt']);
    expect(rules(35)).toEqual(['look drain-outlet-tilt']);
    expect(rules(35.1)).toEqual(['stop drain-outlet-limit']);
    expect(rules(180)).toEqual(['stop drain-outlet-limit']);
  });

  it('is for turbo drains only', () => {
    expect(findingsOf('drainFall', resolved(), layAlong(falling(0)))).toEqual([]);
  });
});

describe('turboDrainEnds', () => {
  const found = (project: ResolvedProject): string[] =>
    findingsOf('turboDrainEnds', project, layAlong(falling(60))).map((f) => `${f.severity} ${f.rule} ${f.measured}`);

  it('looks at every angled end, and at a size under -10', () => {
    expect(found(drain())).toEqual([]);
    expect(found(drain(0, { bendAngleDeg: 45 }))).toEqual(['look drain-end-angle 45', 'look drain-end-angle 45']);
    expect(found(drain(0, {}, 8))).toEqual(['look drain-least-dash 8']);
    expect(found(resolved())).toEqual([]);
  });
});

describe('coolantHighPoint', () => {
  const project = resolved({ runs: [sampleRun({ service: COOLANT })] });
  const humps = (corners: readonly Vec3[], p = project): Finding[] =>
    findingsOf('coolantHighPoint', p, layAlong(corners));
  const over = (height: number, farEnd: number): Vec3[] => [
    [0, 0, 0],
    [200, 0, 0],
    [300, 0, height],
    [400, 0, farEnd],
    [500, 0, farEnd],
  ];

  it('finds the crest and the lesser of its two falls', () => {
    const [finding] = humps(over(30, 10));
    expect(finding).toMatchObject({ severity: 'look', rule: 'coolant-high-point', unit: 'mm', limit: 5 });
    expect(finding?.measured).toBeCloseTo(20, 6);
    expect(finding?.at?.point).toEqual([300, 0, 30]);
  });

  it('turns at 5 mm', () => {
    expect(humps(over(5, 0))).toEqual([]);
    expect(humps(over(5.01, 0))).toHaveLength(1);
  });

  it('passes a hose that climbs all the way, and one that only sags', () => {
    expect(humps(over(30, 60))).toEqual([]);
    expect(humps(over(-30, 0))).toEqual([]);
  });

  it('finds a hump on the way up to a higher end', () => {
    const [finding] = humps([
      [0, 0, 0],
      [100, 0, 40],
      [200, 0, 25],
      [300, 0, 100],
    ]);
    expect(finding?.measured).toBeCloseTo(15, 6);
  });

  it('leaves oil alone', () => {
    expect(humps(over(30, 0), resolved())).toEqual([]);
  });
});
