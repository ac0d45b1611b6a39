import { describe, expect, it } from 'vitest';
import { assemblySteps } from '../../../../shared/document/assembly/assemblySteps.ts';
import { inTheBaySteps } from '../../../../shared/document/assembly/inTheBaySteps.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import type { HoseClamps, Port, Service, Vehicle } from '../../../../shared/document/project/schema.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleRun } from '../../../arbitraries/projects.ts';

const lengths = { both: (mm: number) => `${mm.toFixed(2)} mm`, cut: (mm: number) => `${mm.toFixed(1)} mm` };
const PETROL: Service = { purpose: 'fuel', fluid: 'petrol', pressureKpa: 30, temperatureC: 40 };
const EXHAUST: Service = { purpose: 'wet-exhaust', fluid: 'exhaust-water', pressureKpa: 5, temperatureC: 80 };
const COOLANT: Service = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 150, temperatureC: 95 };

interface Fitting {
  readonly service?: Service;
  readonly marking?: string;
  readonly joint?: End['joint'];
  readonly hoseClamps?: HoseClamps;
  readonly port?: Partial<Port>;
}

function hoseOf({ service = PETROL, marking, joint = 'crimp', hoseClamps, port }: Fitting) {
  const clamps = hoseClamps === undefined ? {} : { hoseClamps };
  const ends = { end: sampleEnd({ joint }), port: samplePort(port) };
  return {
    run: sampleRun({ service, a: { port: 'p1', end: 'end-8-0', ...clamps } }),
    hose: sampleHose({ core: 'synthetic-rubber', ...(marking === undefined ? {} : { marking }) }),
    a: ends,
    b: { ...ends, end: sampleEnd() },
  };
}

const inTheBay = (fitting: Fitting, vehicle?: Vehicle) => inTheBaySteps(hoseOf(fitting), vehicle, lengths);
const ids = (fitting: Fitting, vehicle?: Vehicle): string[] => inTheBay(fitting, vehicle).map(({ id }) => id);

describe('what is asked of a hose once it is in the bay', () => {
  it('is nothing of most hoses', () => {
    expect(inTheBay({ service: COOLANT }, 'boat')).toEqual([]);
    expect(inTheBay({}, 'car')).toEqual([]);
    expect(inTheBay({})).toEqual([]);
  });

  it('is marking, test and access of petrol on a boat, each with its source', () => {
    expect(ids({}, 'boat')).toEqual(['marking', 'system-test', 'access']);
    const [marking, test, access] = inTheBay({ marking: 'USCG TYPE A1-15' }, 'boat');
    // 33 CFR 183.540(h): at intervals of 12 inches or less
    expect(marking?.words).toContain('304.80 mm: USCG TYPE A1-15');
    expect(inTheBay({}, 'boat')[0]?.words).toContain('USCG TYPE A1');
    expect(test?.words).toContain('20.7 kPa');
    expect(test?.caution).toContain('no spark');
    expect(access?.words).toContain('a saw');
    expect(access?.source).toContain('proboat.com');
  });

  it('is the test and access of an exhaust, but no marking', () => {
    expect(ids({ service: EXHAUST }, 'boat')).toEqual(['system-test', 'access']);
    expect(inTheBay({ service: EXHAUST }, 'boat')[0]?.words).toContain('27.6 kPa (4 psi) for 5 minutes');
  });

  it('is the clamp of a rigid fuel line that ends there, 4 in from it', () => {
    const [line] = inTheBay({ port: { rigidLine: {} } }, 'car');
    expect(line).toMatchObject({ id: 'rigid-line-a', words: expect.stringContaining('101.60 mm') });
    expect(ids({ port: { rigidLine: {} }, service: COOLANT }, 'car')).toEqual([]);
  });

  it('is a turn more of its hose clamps after the first heat', () => {
    expect(ids({ service: COOLANT, joint: 'clamped' }, 'car')).toEqual(['clamps-again']);
  });
});

describe('a hose held by hose clamps, at the bench', () => {
  const bench = (fitting: Fitting) => assemblySteps(hoseOf(fitting), straightLay(), lengths);
  const words = (id: string, fitting: Fitting): string => bench(fitting).find((step) => step.id === id)?.words ?? '';

  it('gets them before its barb, and they sit as stated with a quarter of an inch of hose beyond', () => {
    const order = bench({ joint: 'clamped' }).map(({ id }) => id);
    expect(order.indexOf('hose-clamps')).toBeGreaterThan(-1);
    expect(order.indexOf('hose-clamps')).toBeLessThan(order.indexOf('end-a'));
    expect(words('clamps-a', { joint: 'clamped' })).toContain('at least 6.35 mm of hose beyond');
    const stated = { count: 2, fromHoseEndMm: 8, bandMm: 13.5 };
    expect(words('clamps-a', { joint: 'clamped', hoseClamps: stated })).toContain(
      '2 hose clamps 13.50 mm wide, the nearest 8.00 mm from the end of the hose',
    );
    expect(words('clamps-b', { joint: 'clamped' })).toBe('');
    expect(words('clamps-a', {})).toBe('');
  });

  it('is not proof-tested by a multiple of what the hose bears, one held by crimps is', () => {
    const proof = (joint: End['joint']) => bench({ joint }).filter(({ stage }) => stage === 'proof');
    expect(proof('clamped').map(({ id }) => id)).toEqual(['proof', 'cap']);
    expect(proof('clamped')[0]?.words).toContain('Not proof-tested');
    expect(proof('crimp').map(({ id }) => id)).toEqual(['proof', 'hands-off', 'cap']);
  });
});
