import { describe, expect, it } from 'vitest';
import { fluidCoreCell } from '../../../../shared/document/materials/fluidCore.ts';
import { galvanicPair } from '../../../../shared/document/materials/galvanic.ts';
import type { End, Hose } from '../../../../shared/document/parts/schema.ts';
import type { Service } from '../../../../shared/document/project/schema.ts';
import { hosePressureKpa } from '../../../../shared/document/proof/assemblyPressure.ts';
import { proofTest } from '../../../../shared/document/proof/proofTest.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const OIL: Service = { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 120 };

function found(check: string, service: Partial<Service>, hose: Partial<Hose> = {}, end: Partial<End> = {}) {
  const project = resolved(
    {
      runs: [sampleRun({ service: { ...OIL, ...service } })],
      ports: [
        samplePort({ material: 'brass' }),
        samplePort({ id: 'p2', name: 'P2', seatPoint: [500, 0, 0], axis: [-1, 0, 0], material: 'brass' }),
      ],
    },
    { hoses: [sampleHose(hose)], ends: [sampleEnd(end)] },
  );
  return findingsOf(check, project, straightLay());
}

describe('the fluid in the core', () => {
  // trade.md section 8 and its sources: oil swells EPDM and melts a silicone food hose; alcohol ages rubber; PTFE bears them all
  it.each([
    ['epdm', 'engine-oil', 0],
    ['silicone', 'engine-oil', 0],
    ['silicone', 'petrol', 0],
    ['epdm', 'petrol', 0],
    ['nbr', 'engine-oil', 1],
    ['nbr', 'petrol', 0.5],
    ['cpe', 'e85', 0.5],
    ['ptfe-smooth', 'methanol', 1],
    ['ptfe-convoluted', 'petrol', 1],
    ['epdm', 'coolant', 1],
    ['silicone', 'coolant', 1],
  ] as const)('%s in %s is %d', (core, fluid, grade) => {
    expect(fluidCoreCell(core, fluid)?.grade).toBe(grade);
  });

  it('forbids what swells, lets be what is usual, and tells a condition', () => {
    expect(found('fluidCore', {}, { core: 'silicone' })[0]).toMatchObject({ severity: 'stop', measured: 0 });
    expect(found('fluidCore', {}, { core: 'nbr' })).toEqual([]);
    expect(found('fluidCore', { fluid: 'petrol' }, { core: 'nbr' })[0]?.severity).toBe('note');
  });

  it("goes by its maker's list where there is one, which does not make a wrong core right by being silent", () => {
    expect(found('fluidCore', { fluid: 'petrol' }, { core: 'nbr', listedFluids: ['petrol'] })).toEqual([]);
    expect(found('fluidCore', { fluid: 'diesel' }, { core: 'nbr', listedFluids: ['petrol'] })[0]?.severity).toBe(
      'look',
    );
    expect(found('fluidCore', {}, { core: 'silicone', listedFluids: ['coolant'] })[0]?.severity).toBe('stop');
  });

  it("lets its maker's list win over the tables, and says that it does", () => {
    const [told, ...more] = found('fluidCore', {}, { core: 'silicone', listedFluids: ['engine-oil'] });
    expect(told).toMatchObject({ severity: 'note', measured: 0, message: expect.stringContaining('Its maker lists') });
    expect(more).toEqual([]);
  });

  it('says nothing of air or of a fluid without a name', () => {
    expect(found('fluidCore', { fluid: 'air' }, { core: 'silicone' })).toEqual([]);
    expect(found('fluidCore', { fluid: 'other' }, { core: 'silicone' })).toEqual([]);
  });
});

describe('the metals of the ends', () => {
  // docslib.org/doc/8174925: Al 5086/6061 -820, mild steel -790, stainless active -550, naval brass -450 mV; 200 mV apart corrode
  it.each([
    ['aluminium', 'stainless', 270, 'aluminium'],
    ['aluminium', 'brass', 370, 'aluminium'],
    ['steel', 'aluminium', 30, 'aluminium'],
    ['stainless', 'brass', 100, 'stainless'],
  ] as const)('%s and %s stand %d mV apart', (p, q, apartMv, eaten) => {
    expect(galvanicPair(p, q)).toEqual({ apartMv, eaten });
  });

  it('are looked at in raw water: the metal itself and the pair it makes, and not in coolant', () => {
    const raw = found('endMetals', { purpose: 'raw-water', fluid: 'raw-water' }, {}, { material: 'aluminium' });
    expect(raw.map(({ rule }) => rule)).toEqual([
      'ends-suit-fluid',
      'galvanic-apart',
      'ends-suit-fluid',
      'galvanic-apart',
    ]);
    expect(found('endMetals', { fluid: 'raw-water' }, {}, { material: 'brass' })).toEqual([]);
    expect(found('endMetals', { fluid: 'coolant' }, {}, { material: 'aluminium' })).toEqual([]);
  });
});

describe('push-on joints', () => {
  // powermotiontech.com: 250 psi = 1723.7 kPa, 300 F = 148.9 C
  it('may not hold oil or fuel, nor pressure and heat beyond what push-on bears', () => {
    const pushed = { joint: 'push-on' } as const;
    const rubber = { core: 'nbr' } as const;
    expect(found('pushOn', {}, rubber, pushed).map(({ rule }) => rule)).toEqual(['push-on-lifeline']);
    const coolant = { purpose: 'coolant', fluid: 'coolant' } as const;
    expect(found('pushOn', { ...coolant, pressureKpa: 150, temperatureC: 110 }, rubber, pushed)).toEqual([]);
    expect(found('pushOn', { ...coolant, pressureKpa: 1725 }, rubber, pushed)[0]?.rule).toBe('push-on-pressure');
    expect(found('pushOn', { ...coolant, pressureKpa: 1723 }, rubber, pushed)).toEqual([]);
    expect(found('pushOn', { ...coolant, temperatureC: 150 }, rubber, pushed)[0]?.rule).toBe('push-on-temperature');
    expect(found('pushOn', {})).toEqual([]);
  });

  // the same source: not for PTFE hose
  it('do not go on PTFE hose', () => {
    const coolant = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 150, temperatureC: 110 } as const;
    const on = found('pushOn', coolant, { core: 'ptfe-smooth' }, { joint: 'push-on' });
    expect(on.map(({ rule, severity }) => [rule, severity])).toEqual([['push-on-ptfe', 'stop']]);
  });
});

describe('vacuum', () => {
  it('has to be known of a hose on suction', () => {
    const suction = { purpose: 'oil-suction', pressureKpa: -20 } as const;
    expect(found('vacuumKnown', suction)[0]?.severity).toBe('note');
    expect(found('vacuumKnown', suction, { vacuumLimitKpa: -90 })).toEqual([]);
    expect(found('vacuumKnown', {})).toEqual([]);
    expect(found('vacuumKnown', suction, { dash: 8 })[0]?.message).not.toContain('coil');
  });

  it("is held to what the hose's table says, in the run's own pressure, whether or not a flow is stated", () => {
    const at = (pressureKpa: number) =>
      found('vacuumKnown', { purpose: 'oil-suction', pressureKpa }, { vacuumLimitKpa: -40 });
    expect(at(-40)).toEqual([]);
    expect(at(-40.1)[0]).toMatchObject({ severity: 'stop', limit: -40, measured: -40.1 });
  });
});

describe('pressure', () => {
  const table: Hose['pressureByTemperature'] = [
    [20, 17000],
    [150, 13600],
    [200, 10000],
  ];
  it('at temperature lies on the straight line between the points of the table, and no higher beyond it', () => {
    const hose = sampleHose({ pressureByTemperature: table });
    expect(hosePressureKpa(hose, 85).kpa).toBeCloseTo(15300, 6);
    expect(hosePressureKpa(hose, 0).kpa).toBe(17000);
    expect(hosePressureKpa(hose, 200).kpa).toBe(10000);
    expect(hosePressureKpa(hose, 230)).toMatchObject({ kpa: 10000, note: expect.stringContaining('beyond the table') });
  });

  it('is judged at the temperature of the fluid, and of the weakest part', () => {
    const at = (pressureKpa: number, end: Partial<End> = {}) =>
      found('pressureRating', { pressureKpa, temperatureC: 85 }, { pressureByTemperature: table }, end);
    expect(at(15299)).toEqual([]);
    expect(at(15301)[0]).toMatchObject({ severity: 'stop' });
    expect(at(5000, { maxPressureKpa: 4999 })[0]?.message).toContain('END A is rated');
    expect(at(5000, { maxPressureKpa: 5001 })).toEqual([]);
  });

  // NAHAD, as quoted: fluoropolymer 1.5 x for 1 min, hydraulic 2 x for 30 to 60 s, industrial 1.5 x for 5 min, on the weakest part
  it.each([
    ['ptfe-smooth', 1.5, 60, 60],
    ['nbr', 2, 30, 60],
    ['epdm', 1.5, 300, 300],
  ] as const)('of the proof of %s is %d times its weakest part', (core, multiple, from, to) => {
    const project = resolved(
      {},
      { hoses: [sampleHose({ core, maxPressureKpa: 3500 })], ends: [sampleEnd({ maxPressureKpa: 3000 })] },
    );
    const test = proofTest(project.runs[0]!);
    expect(test).toMatchObject({ multiple, holdFromS: from, holdToS: to, pressureKpa: 3000 * multiple });
    expect(test.weakest.part).toBe('END A');
    expect(test.unrated).toEqual([]);
  });
});

describe('a proof by the hose maker', () => {
  const proof = (hose: Partial<Hose>, end: Partial<End> = {}) =>
    proofTest(resolved({}, { hoses: [sampleHose({ core: 'nbr', ...hose })], ends: [sampleEnd(end)] }).runs[0]!);

  // FAA AC 43.13-1B Table 9-3, -8: works at 2,000 psi, proof 4,000 psi, burst 8,000 psi (13,790, 27,579, 55,158 kPa)
  const STATED = { maxPressureKpa: 13790, proofPressureKpa: 27579, burstPressureKpa: 55158 };

  it('comes before the multiple, and its burst is passed on as it stands', () => {
    expect(proof({ ...STATED, proofPressureKpa: 20000 })).toMatchObject({
      pressureKpa: 20000,
      byMaker: true,
      burstKpa: 55158,
    });
    expect(proof({ maxPressureKpa: 1000 })).toMatchObject({ pressureKpa: 2000, byMaker: false });
    expect(proof({ maxPressureKpa: 1000 })).not.toHaveProperty('burstKpa');
  });

  it('is not put on an end that bears less than the hose', () => {
    expect(proof(STATED, { maxPressureKpa: 5000 })).toMatchObject({ pressureKpa: 10000, byMaker: false });
  });
});

describe('a boat', () => {
  const onBoat = (
    check: string,
    fluid: 'petrol' | 'engine-oil',
    hose: Partial<Hose> = {},
    vehicle?: 'boat' | 'car',
  ) => {
    const project = resolved(
      {
        ...(vehicle === undefined ? {} : { vehicle }),
        runs: [sampleRun({ service: { ...OIL, purpose: 'fuel', fluid } })],
        ports: [
          samplePort({ material: 'stainless' }),
          samplePort({ id: 'p2', name: 'P2', seatPoint: [500, 0, 0], axis: [-1, 0, 0], material: 'aluminium' }),
        ],
      },
      { hoses: [sampleHose(hose)], ends: [sampleEnd({ material: 'aluminium' })] },
    );
    return findingsOf(check, project, straightLay());
  };

  // 33 CFR 183.558(a): A1 between pump and carburettor; (b)(2): A1, or B1 on a condition, from tank to engine; 183.540(e): each is marked
  it('asks petrol hose for A1, looks at another marking, and at one that is not stated', () => {
    expect(onBoat('fuelMarking', 'petrol', { marking: 'USCG TYPE A1-15' }, 'boat')).toEqual([]);
    expect(onBoat('fuelMarking', 'petrol', { marking: 'B1-15' }, 'boat')[0]?.severity).toBe('look');
    expect(onBoat('fuelMarking', 'petrol', { marking: 'SAE BA10' }, 'boat')[0]?.severity).toBe('look');
    expect(onBoat('fuelMarking', 'petrol', { marking: 'USCG TYPE B1' }, 'boat')[0]?.message).toContain('148 mL');
    expect(onBoat('fuelMarking', 'petrol', {}, 'boat')[0]).toMatchObject({
      severity: 'look',
      mend: expect.stringContaining('State its marking'),
    });
    expect(onBoat('fuelMarking', 'engine-oil', {}, 'boat')).toEqual([]);
    expect(onBoat('fuelMarking', 'petrol', {}, 'car')).toEqual([]);
    expect(onBoat('fuelMarking', 'petrol')).toEqual([]);
  });

  it('is salt outside too: metals far apart are told, and in a car are not', () => {
    const told = onBoat('endMetals', 'engine-oil', {}, 'boat');
    expect(told.map(({ severity, measured }) => [severity, measured])).toEqual([['note', 270]]);
    expect(onBoat('endMetals', 'engine-oil', {}, 'car')).toEqual([]);
  });
});
