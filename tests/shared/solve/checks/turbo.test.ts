import { describe, expect, it } from 'vitest';
import { psiToKpa } from '../../../../shared/base/units.ts';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { Finding, Lay } from '../../../../shared/document/lay/schema.ts';
import type { Bay, Port, Service } from '../../../../shared/document/project/schema.ts';
import { restrictorLossKpa } from '../../../../shared/solve/flow/restrictor.ts';
import { upAt } from '../../../../shared/solve/flow/upAt.ts';
import { layAlong } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleProject, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

describe('turboFeed', () => {
  const FEED: Service = { purpose: 'turbo-oil-feed', fluid: 'engine-oil', pressureKpa: 300, temperatureC: 120 };
  const found = (service: Partial<Service>, dash = 4): Finding[] =>
    findingsOf(
      'turboFeed',
      resolved(
        {
          ports: [samplePort({ dash }), samplePort({ id: 'p2', dash })],
          runs: [sampleRun({ service: { ...FEED, ...service } })],
        },
        { hoses: [sampleHose({ dash })], ends: [sampleEnd({ dash })] },
      ),
      layAlong([
        [0, 0, 0],
        [400, 0, 0],
      ]),
    );
  const rules = (service: Partial<Service>, dash?: number): string[] =>
    found(service, dash).map((f) => `${f.severity} ${f.rule}`);

  it('asks for the bearing, and of no other hose; says what holds for either', () => {
    expect(rules({})).toEqual(['note turbo-bearing-known']);
    expect(found({})[0]?.message).toMatch(/276 kPa \(40 psi\) to 310 kPa \(45 psi\).*two others fit one anyway/);
    expect(rules({ purpose: 'oil-pressure' })).toEqual([]);
  });

  it('judges the pressure measured at a ball bearing: 40 to 45 psi after the restrictor', () => {
    // pulsarturbobenelux.com and two other shops, by way of their pages on restrictors
    const ball = { bearing: 'ball', restrictorMm: 1.016 } as const;
    expect(rules({ ...ball, turboPressureKpa: psiToKpa(40) })).toEqual([]);
    expect(rules({ ...ball, turboPressureKpa: psiToKpa(45) })).toEqual([]);
    expect(rules({ ...ball, turboPressureKpa: psiToKpa(39.9) })).toEqual(['look turbo-ball-pressure-least']);
    expect(rules({ ...ball, turboPressureKpa: psiToKpa(45.1) })).toEqual(['look turbo-ball-pressure-most']);
  });

  it('asks for a gauge after the restrictor while nothing is measured, and says what is estimated', () => {
    const [plain] = found({ bearing: 'ball' });
    expect(plain).toMatchObject({ severity: 'note', rule: 'turbo-ball-pressure-known' });
    expect(plain?.message).toMatch(/after the restrictor.*1\.0 mm/);
    const [flowing] = found({ bearing: 'ball', restrictorMm: 1, pressureKpa: psiToKpa(85), flowLPerMin: 0.8 });
    expect(flowing?.message).toMatch(/after the hose, by estimate\. If 0\.8 L\/min flow, .* is left after it/);
    expect(found({ bearing: 'ball', restrictorMm: 1, flowLPerMin: 5 })[0]?.message).toContain('does not let 5.0 L/min');
  });

  it('looks at a ball bearing without a restrictor where more than 45 psi arrives', () => {
    const bare = { bearing: 'ball', restrictorMm: 0 } as const;
    expect(rules({ ...bare, pressureKpa: psiToKpa(45) })).toEqual([]);
    expect(rules({ ...bare, pressureKpa: psiToKpa(45.1) })).toEqual(['look turbo-ball-pressure-most']);
  });

  it('holds the restrictor of a ball bearing to 1.0 to 1.5 mm, its feed to -3', () => {
    const ball = { bearing: 'ball', turboPressureKpa: 300 } as const;
    expect(rules({ ...ball, restrictorMm: 0.99 })).toEqual(['look turbo-ball-restrictor-least']);
    expect(rules({ ...ball, restrictorMm: 1 })).toEqual([]);
    expect(rules({ ...ball, restrictorMm: 1.5 })).toEqual([]);
    expect(rules({ ...ball, restrictorMm: 1.51 })).toEqual(['look turbo-ball-restrictor-most']);
    expect(rules({ ...ball, restrictorMm: 1 }, 3)).toEqual([]);
    expect(rules({ ...ball, restrictorMm: 1 }, 2)).toEqual(['look turbo-ball-feed-dash']);
  });

  it('shows both statements on a restrictor at journal bearings, and is silent where none is said to be fitted', () => {
    const journal = { bearing: 'journal' } as const;
    expect(rules(journal)).toEqual(['note turbo-restrictor-known']);
    expect(rules({ ...journal, restrictorMm: 0 })).toEqual([]);
    const [finding] = found({ ...journal, restrictorMm: 1.2 });
    expect(finding).toMatchObject({ severity: 'note', rule: 'turbo-journal-restrictor' });
    expect(finding?.source).toContain('pulsarturbobenelux.com');
    expect(finding?.dissent).toContain('fit one anyway');
  });
});

it('loses in a restrictor half the density by the square of speed over coefficient, by hand', () => {
  // 0.6 L/min through 1 mm: 1e-5 m3/s over 7.854e-7 m2 = 12.732 m/s; 850/2 * (12.732/0.6)^2 = 191.4 kPa, /0.8: 107.7
  const loss = restrictorLossKpa(0.6, 1, 850);
  expect(loss.high).toBeCloseTo(191.4, 1);
  expect(loss.low).toBeCloseTo(107.7, 1);
  expect(restrictorLossKpa(1.2, 1, 850).low).toBeCloseTo(4 * loss.low, 9);
});

describe('upAt', () => {
  const none = { x: 0, y: 0 };
  it('leans by the grade, and by 45 degrees at 1 g', () => {
    expect(upAt({ gradeDeg: none, accelerationG: none })).toEqual([0, 0, 1]);
    const uphill = upAt({ gradeDeg: { x: 30, y: 0 }, accelerationG: none });
    expect(uphill[0]).toBeCloseTo(0.5, 12);
    expect(uphill[2]).toBeCloseTo(Math.sqrt(0.75), 12);
    expect(upAt({ gradeDeg: none, accelerationG: { x: 0, y: -1 } })[1]).toBeCloseTo(-Math.SQRT1_2, 12);
  });

  it('takes a grade for the acceleration of its tangent', () => {
    const tangent = Math.tan((20 * Math.PI) / 180);
    const slope = upAt({ gradeDeg: { x: 20, y: 0 }, accelerationG: none });
    upAt({ gradeDeg: none, accelerationG: { x: tangent, y: 0 } }).forEach((c, i) => {
      expect(c).toBeCloseTo(slope[i] as number, 12);
    });
  });
});

/** A drain of size -10 straight down from port 1, 400 mm high, whose lower port has a hole of 16 mm and looks along `axis`. */
function drainInto(
  axis: [number, number, number],
  oil: Pick<Bay, 'oilLevel' | 'attitudes'>,
  service: Partial<Service> = {},
  check = 'drainEntry',
  lay: Lay = layAlong([
    [0, 0, 400],
    [0, 0, 0],
  ]),
): Finding[] {
  const { bay } = sampleProject();
  const seatPoint: [number, number, number] = [0, 0, 0];
  const project = resolved(
    {
      bay: { ...bay, ...oil },
      ports: [
        samplePort({ dash: 10, axis: [0, 0, -1], up: [0, 1, 0] }),
        samplePort({ id: 'p2', dash: 10, seatPoint, axis, up: [0, 1, 0], boreMm: 16 }),
      ],
      runs: [
        sampleRun({
          service: { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 0, temperatureC: 130, ...service },
        }),
      ],
    },
    { hoses: [sampleHose({ dash: 10, insideDiameterMm: 16 })], ends: [sampleEnd({ dash: 10 })] },
  );
  return findingsOf(check, project, lay);
}

const STILL = { x: 0, y: 0 };

describe('drainEntry', () => {
  it('asks for the oil level where it is not stated', () => {
    expect(drainInto([0, 0, 1], {})).toMatchObject([{ severity: 'note', rule: 'drain-level-known' }]);
  });

  it('turns at the oil, at rest: by the middle of a hole that looks up, by the lower edge of one that looks across', () => {
    expect(drainInto([0, 0, 1], { oilLevel: [90, 0, -0.1] })).toEqual([]);
    expect(drainInto([0, 0, 1], { oilLevel: [90, 0, 0.1] })).toMatchObject([
      { severity: 'stop', rule: 'drain-above-oil', measured: expect.closeTo(-0.1, 9) },
    ]);
    expect(drainInto([1, 0, 0], { oilLevel: [90, 0, -8.1] })).toEqual([]);
    expect(drainInto([1, 0, 0], { oilLevel: [90, 0, -7.9] })).toMatchObject([{ measured: expect.closeTo(-0.1, 9) }]);
  });

  it('names the worst attitude: braking at 1 g turns the oil by 45 degrees about its middle', () => {
    // 200 mm ahead of the middle of the sump, 183 above the oil; the hole looks along Y, so its edge counts by 8 mm: (183 - 200)/sqrt2 - 8
    const braking = { name: 'braking', gradeDeg: STILL, accelerationG: { x: 1, y: 0 } };
    const slope = { name: 'a slope', gradeDeg: { x: 40, y: 0 }, accelerationG: STILL };
    const oilLevel: Vec3 = [200, 0, -183];
    const at = [...oilLevel] as [number, number, number];
    expect(drainInto([0, 1, 0], { oilLevel: at })).toEqual([]);
    const [finding, ...more] = drainInto([0, 1, 0], { oilLevel: at, attitudes: [slope, braking] });
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: 'stop', rule: 'drain-above-oil-leaning' });
    expect(finding?.measured).toBeCloseTo(-17 / Math.SQRT2 - 8, 9);
    expect(finding?.message).toContain('braking');
    const away = { ...braking, accelerationG: { x: -1, y: 0 } };
    expect(drainInto([0, 1, 0], { oilLevel: at, attitudes: [away] })).toEqual([]);
  });
});

describe('drainLean', () => {
  const sloping = (deg: number): Lay => {
    const a = (deg * Math.PI) / 180;
    return layAlong([
      [0, 0, 400 * Math.cos(a)],
      [400 * Math.sin(a), 0, 0],
    ]);
  };
  const found = (deg: number, oil: Pick<Bay, 'attitudes'> = {}, service: Partial<Service> = {}): string[] =>
    drainInto([0, 0, 1], oil, service, 'drainLean', sloping(deg)).map((f) => `${f.severity} ${f.rule}`);

  it('notes a whole drain past 15 degrees, with what both notes of the maker say', () => {
    expect(found(14.9)).toEqual([]);
    expect(found(15.1)).toEqual(['note drain-way-tilt']);
    // 210 down, 120 across: 29.7 degrees
    const [finding] = drainInto([0, 0, 1], {}, {}, 'drainLean', sloping((Math.atan2(120, 210) * 180) / Math.PI));
    expect(finding?.measured).toBeCloseTo(29.74, 1);
    expect(finding?.message).toMatch(/15\.0 degrees.*within the 35\.0 degrees.*inference/);
  });

  it('holds the shaft to 15 degrees off level', () => {
    expect(found(0, {}, { shaftTiltDeg: 15 })).toEqual([]);
    expect(found(0, {}, { shaftTiltDeg: 15.1 })).toEqual(['look drain-shaft-level']);
  });

  it('looks at a drain that rises on a grade, notes one that rises only for as long as a pull lasts', () => {
    // It falls 30 degrees towards +X: leaned 29 uphill it still falls by 1, leaned 31 it rises.
    const grade = (x: number) => ({ attitudes: [{ name: 'a slope', gradeDeg: { x, y: 0 }, accelerationG: STILL }] });
    const pull = (x: number) => ({ attitudes: [{ name: 'braking', gradeDeg: STILL, accelerationG: { x, y: 0 } }] });
    const tilt = 'note drain-way-tilt';
    expect(found(60, grade(29))).toEqual([tilt]);
    expect(found(60, grade(31))).toEqual([tilt, 'look drain-falls-leaning']);
    expect(found(60, grade(-31))).toEqual([tilt]);
    expect(found(60, pull(0.57))).toEqual([tilt]);
    expect(found(60, pull(0.59))).toEqual([tilt, 'note drain-falls-leaning']);
  });
});

describe('turboDrainEnds and the hole in the housing', () => {
  it('holds the narrowest bore to the hole', () => {
    const bores = (boreMm: number | undefined, insideDiameterMm: number, endBoreMm?: number): string[] =>
      findingsOf(
        'turboDrainEnds',
        resolved(
          {
            ports: [
              samplePort({ dash: 10, ...(boreMm === undefined ? {} : { boreMm }) }),
              samplePort({ id: 'p2', dash: 10, seatPoint: [0, 0, -400] }),
            ],
            runs: [
              sampleRun({
                service: { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 0, temperatureC: 130 },
              }),
            ],
          },
          {
            hoses: [sampleHose({ dash: 10, insideDiameterMm })],
            ends: [sampleEnd({ dash: 10, ...(endBoreMm === undefined ? {} : { boreMm: endBoreMm }) })],
          },
        ),
        layAlong([
          [0, 0, 0],
          [0, 0, -400],
        ]),
      ).map((f) => `${f.severity} ${f.rule}`);
    expect(bores(undefined, 12)).toEqual([]);
    expect(bores(14, 14)).toEqual([]);
    expect(bores(14.1, 14)).toEqual(['look drain-bore']);
    expect(bores(14, 14.3, 13.5)).toEqual(['look drain-bore']);
  });
});

describe('turboWater', () => {
  const water = (turboAt?: 'a' | 'b'): Service => ({
    purpose: 'turbo-water',
    fluid: 'coolant',
    pressureKpa: 100,
    temperatureC: 95,
    ...(turboAt === undefined ? {} : { turboAt }),
  });
  /** Cold to the turbo at height 0; hot from the turbo at `outletZ`, END B, to END A along a lay. */
  const found = (
    outletZ: number,
    corners: readonly Vec3[],
    more: Partial<Service> = {},
    side?: 'a' | 'b',
  ): string[] => {
    const at = (id: string, z: number): Port => samplePort({ id, seatPoint: [0, 0, z] });
    const ends = (a: string, b: string) => ({ a: { port: a, end: 'end-8-0' }, b: { port: b, end: 'end-8-0' } });
    const project = resolved({
      ports: [at('block', -300), at('in', 0), at('out', outletZ), at('far', 300)],
      runs: [
        sampleRun({ id: 'cold', name: 'Cold', ...ends('block', 'in'), service: water('b') }),
        sampleRun({
          id: 'hot',
          name: 'Hot',
          ...ends('far', 'out'),
          flow: 'b-to-a',
          service: { ...water(side), ...more },
        }),
      ],
    });
    return findingsOf('turboWater', project, { ...layAlong(corners), run: 'hot' }).map(
      (f) => `${f.severity} ${f.rule}`,
    );
  };
  const UP: readonly Vec3[] = [
    [0, 0, 300],
    [0, 0, 0],
  ];

  it('asks which end is at the turbo', () => {
    expect(found(10, UP)).toEqual(['note turbo-water-side-known']);
  });

  it('wants the outlet no lower than the inlet', () => {
    expect(found(0, UP, {}, 'b')).toEqual([]);
    expect(found(-0.1, UP, {}, 'b')).toEqual(['look turbo-water-outlet-above']);
    // What comes in is not asked for that.
    expect(found(-50, UP, {}, 'a')).toEqual([]);
  });

  it('wants hot water uphill all the way: no dip, no whole way down', () => {
    const dip = (mm: number): Vec3[] => [
      [0, 0, 300],
      [100, 0, 50 - mm],
      [200, 0, 50],
      [260, 0, 50],
    ];
    const down = (mm: number): Vec3[] => [
      [-60, 0, 0],
      [0, 0, 0],
      [300, 0, mm],
      [360, 0, mm],
    ];
    expect(found(10, dip(4.9), {}, 'b')).toEqual([]);
    expect(found(10, dip(5.1), {}, 'b')).toEqual(['look turbo-water-dip']);
    expect(found(10, down(4.9), {}, 'b')).toEqual([]);
    expect(found(10, down(5.1), {}, 'b')).toEqual(['look turbo-water-dip']);
  });

  it('lets the housing be turned by 20 degrees', () => {
    expect(found(10, UP, { housingTurnDeg: 20 }, 'b')).toEqual([]);
    expect(found(10, UP, { housingTurnDeg: 20.1 }, 'b')).toEqual(['look turbo-housing-turn']);
  });
});
