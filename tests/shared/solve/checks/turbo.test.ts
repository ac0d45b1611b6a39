import { describe, expect, it } from 'vitest';
import { psiToKpa } from '../../../../shared/base/units.ts';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { Bay, Port, Service } from '../../../../shared/document/project/schema.ts';
import { heightAboveOil } from '../../../../shared/solve/checks/drainEntry.ts';
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

  it('asks for the bearing, and of no other hose', () => {
    expect(rules({})).toEqual(['note bearing-known']);
    expect(rules({ purpose: 'oil-pressure' })).toEqual([]);
  });

  it('holds a ball bearing to 40 to 45 psi, or asks for a restrictor and a measured pressure after it', () => {
    // pulsarturbobenelux.com, kinugawaturbosystems.com, arashidynamics.com: 40 to 45 psi at the turbo, 2.76 to 3.10 bar.
    const ball = { bearing: 'ball' } as const;
    expect(rules({ ...ball, pressureKpa: psiToKpa(45) })).toEqual([]);
    expect(rules({ ...ball, pressureKpa: psiToKpa(45.1) })).toEqual(['look ball-feed-pressure']);
    const [bare] = found({ ...ball, pressureKpa: psiToKpa(85) });
    expect(bare?.message).toMatch(/276 kPa.*310 kPa/);
    expect(bare?.mend).toContain('0.040 in');
    const restricted = found({ ...ball, pressureKpa: psiToKpa(85), restrictorMm: 1.016 });
    expect(restricted.map((f) => f.severity)).toEqual(['note']);
    expect(restricted[0]?.message).toContain('verify after the restrictor');
  });

  it('holds its restrictor to 1.0 to 1.5 mm', () => {
    const ball = { bearing: 'ball', pressureKpa: 300 } as const;
    expect(rules({ ...ball, restrictorMm: 0.99 })).toEqual(['look ball-restrictor-least']);
    expect(rules({ ...ball, restrictorMm: 1 })).toEqual([]);
    expect(rules({ ...ball, restrictorMm: 1.5 })).toEqual([]);
    expect(rules({ ...ball, restrictorMm: 1.51 })).toEqual(['look ball-restrictor-most']);
  });

  it('asks for no restrictor and a -4 feed of a journal bearing, and shows who says otherwise', () => {
    const journal = { bearing: 'journal' } as const;
    expect(rules({ ...journal, pressureKpa: psiToKpa(85) })).toEqual([]);
    expect(rules(journal, 3)).toEqual(['look journal-least-dash']);
    const [finding] = found({ ...journal, restrictorMm: 1.2 });
    expect(finding).toMatchObject({ severity: 'look', rule: 'journal-restrictor' });
    expect(finding?.dissent).toContain('fit one anyway');
  });
});

describe('heightAboveOil', () => {
  const mouth = (
    seatPoint: [number, number, number],
    axis: [number, number, number],
  ): Pick<Port, 'seatPoint' | 'axis'> => ({
    seatPoint,
    axis,
  });

  it('is the height of the lower edge at rest', () => {
    expect(heightAboveOil(mouth([0, 100, 50], [0, 1, 0]), 8, [0, 0, 20], [0, 0, 0])).toBeCloseTo(22, 12);
    // A hole that looks straight up has its whole edge at one height.
    expect(heightAboveOil(mouth([0, 100, 50], [0, 0, 1]), 8, [0, 0, 20], [0, 0, 0])).toBeCloseTo(30, 12);
  });

  it('tilts the oil up in front when the vehicle brakes: at 1 g by 45 degrees, closed form', () => {
    // X rearward: braking accelerates to +X, the oil climbs at -X as much as it lies ahead of the middle.
    const ahead = heightAboveOil(mouth([-100, 0, 112], [0, 1, 0]), 0, [0, 0, 0], [1, 0, 0]);
    expect(ahead).toBeCloseTo((112 - 100) / Math.SQRT2, 12);
    const behind = heightAboveOil(mouth([100, 0, 112], [0, 1, 0]), 0, [0, 0, 0], [1, 0, 0]);
    expect(behind).toBeCloseTo((112 + 100) / Math.SQRT2, 12);
  });

  it('answers the same for bay and vehicle turned about the vertical together', () => {
    const turn = ([x, y, z]: Vec3): [number, number, number] => [-y, x, z];
    const at: [number, number, number] = [30, -70, 90];
    const before = heightAboveOil(mouth(at, [0.6, 0.8, 0]), 9, [5, 6, 7], [0.3, -0.8, 0.1]);
    const after = heightAboveOil(mouth(turn(at), turn([0.6, 0.8, 0])), 9, turn([5, 6, 7]), turn([0.3, -0.8, 0.1]));
    expect(after).toBeCloseTo(before, 12);
  });
});

describe('drainEntry', () => {
  const DRAIN = { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 0, temperatureC: 130 } as const;
  const found = (oilLevel: Bay['oilLevel']): Finding[] => {
    const { bay } = sampleProject();
    const project = resolved(
      {
        bay: { ...bay, ...(oilLevel && { oilLevel }) },
        ports: [
          samplePort({ dash: 10, axis: [0, 0, -1], up: [0, 1, 0] }),
          samplePort({ id: 'p2', dash: 10, seatPoint: [0, 0, -400], axis: [0, 0, 1], up: [0, 1, 0] }),
        ],
        runs: [sampleRun({ service: DRAIN })],
      },
      { hoses: [sampleHose({ dash: 10 })], ends: [sampleEnd({ dash: 10 })] },
    );
    return findingsOf(
      'drainEntry',
      project,
      layAlong([
        [0, 0, 0],
        [0, 0, -400],
      ]),
    );
  };

  it('asks for the oil level where it is not stated', () => {
    expect(found(undefined)).toMatchObject([{ severity: 'note', rule: 'oil-level-known' }]);
  });

  it('turns at the oil, at rest', () => {
    expect(found({ point: [0, 0, -400.1], states: [] })).toEqual([]);
    expect(found({ point: [0, 0, -399.9], states: [] })).toMatchObject([
      { severity: 'stop', rule: 'drain-entry-height', measured: expect.closeTo(-0.1, 9) },
    ]);
  });

  it('names the state that is worst', () => {
    const states: NonNullable<Bay['oilLevel']>['states'] = [
      { name: 'braking', accelerationG: [1, 0, 0] },
      { name: 'cornering', accelerationG: [0, 0.2, 0] },
    ];
    expect(found({ point: [200, 0, -410], states: states.slice(1) })).toEqual([]);
    const [finding] = found({ point: [200, 0, -410], states });
    expect(finding?.message).toContain('In "braking"');
    expect(finding?.severity).toBe('stop');
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
  const water = (temperatureC: number): Service => ({
    purpose: 'turbo-water',
    fluid: 'coolant',
    pressureKpa: 100,
    temperatureC,
  });
  /** Cold from far away to the turbo at height 0; hot from the turbo at `outletZ` to a port at `farZ`. */
  const found = (outletZ: number, farZ: number, hotC = 105): Finding[] => {
    const at = (id: string, z: number): Port => samplePort({ id, seatPoint: [0, 0, z] });
    const project = resolved({
      ports: [at('block', -300), at('in', 0), at('out', outletZ), at('far', farZ)],
      runs: [
        sampleRun({
          id: 'cold',
          name: 'Cold',
          a: { port: 'block', end: 'end-8-0' },
          b: { port: 'in', end: 'end-8-0' },
          service: water(95),
        }),
        sampleRun({
          id: 'hot',
          name: 'Hot',
          a: { port: 'far', end: 'end-8-0' },
          b: { port: 'out', end: 'end-8-0' },
          flow: 'b-to-a',
          service: water(hotC),
        }),
      ],
    });
    const lay = layAlong([
      [0, 0, 0],
      [400, 0, 0],
    ]);
    return findingsOf('turboWater', project, { ...lay, run: 'hot' });
  };

  it('wants the outlet above the inlet and the return uphill', () => {
    expect(found(10, 200)).toEqual([]);
    expect(found(0, 0)).toEqual([]);
    expect(found(-0.1, 200)).toMatchObject([{ severity: 'look', measured: expect.closeTo(-0.1, 9) }]);
    expect(found(10, 9.9)).toMatchObject([{ severity: 'look', measured: expect.closeTo(-0.1, 9) }]);
  });

  it('is silent where the two are said to be equally hot', () => {
    expect(found(-50, -50, 95)).toEqual([]);
  });
});
