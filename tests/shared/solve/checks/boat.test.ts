import { describe, expect, it } from 'vitest';
import type { Adapter, End, Hose } from '../../../../shared/document/parts/schema.ts';
import type { AsBuilt, HoseClamps, Port, Project, Service } from '../../../../shared/document/project/schema.ts';
import { ruleById } from '../../../../shared/document/rules/index.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, samplePort, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const PETROL: Service = { purpose: 'fuel', fluid: 'petrol', pressureKpa: 30, temperatureC: 40 };
const FILLER: Service = { ...PETROL, purpose: 'fuel-fill', pressureKpa: 0 };
const EXHAUST: Service = { purpose: 'wet-exhaust', fluid: 'exhaust-water', pressureKpa: 5, temperatureC: 80 };

interface Setting {
  readonly service?: Service;
  readonly vehicle?: Project['vehicle'];
  readonly hose?: Partial<Hose>;
  readonly end?: Partial<End>;
  readonly clamps?: HoseClamps;
  readonly port?: Partial<Port>;
  readonly adapters?: readonly Adapter[];
  readonly asBuilt?: AsBuilt;
}

/** What a check finds on a straight hose of which END A is as wanted; END B is crimped. */
function found(
  check: string,
  { service = PETROL, vehicle = 'boat', hose, end, clamps, port, adapters, asBuilt }: Setting,
) {
  const run = sampleRun({
    a: { port: 'p1', end: 'end-a', ...(clamps === undefined ? {} : { hoseClamps: clamps }) },
    service,
    ...(asBuilt === undefined ? {} : { asBuilt }),
  });
  const project = resolved(
    {
      vehicle,
      runs: [run],
      ports: [
        samplePort(port),
        samplePort({ id: 'p2', name: 'P2', seatPoint: [500, 0, 0], axis: [-1, 0, 0], material: 'brass' }),
      ],
    },
    {
      hoses: [sampleHose({ core: 'synthetic-rubber', cover: 'rubber', ...hose })],
      ends: [
        sampleEnd({ material: 'brass', joint: 'crimp' }),
        sampleEnd({ id: 'end-a', material: 'brass', joint: 'clamped', ...end }),
      ],
      adapters: adapters ?? [],
    },
  );
  return findingsOf(check, project, straightLay());
}
const rules = (check: string, setting: Setting): string[] =>
  found(check, setting).map(({ rule, severity }) => `${rule} ${severity}`);

describe('hose clamps over a barb', () => {
  const at = (fromHoseEndMm: number, more: Partial<HoseClamps> = {}): Setting => ({
    clamps: { count: 1, fromHoseEndMm, ...more },
  });

  // passagemaker.com, "Hose clamp installation and use", and a clamp maker's guide (manualshelf 626025e): 1/4 in = 6.35 mm
  it('leave a quarter of an inch of hose beyond them: 3 mm is looked at, 6.3 too, 6.35 not', () => {
    expect(ruleById('hose-clamp-from-end')?.value).toBeCloseTo(6.35, 9);
    expect(found('hoseClamps', at(3))[0]).toMatchObject({
      rule: 'hose-clamp-from-end',
      severity: 'look',
      measured: 3,
      margin: expect.closeTo(-3.35, 9),
      at: { arcLengthMm: 0 },
    });
    expect(rules('hoseClamps', at(6.3))).toEqual(['hose-clamp-from-end look']);
    expect(found('hoseClamps', at(6.35))).toEqual([]);
  });

  // By hand: two bands of 12.7 from 6.35 on, 6.35 between them, reach to 38.1 mm
  it('have barb under the last of them, past which one squeezes the hose off', () => {
    const two = at(6.35, { count: 2, bandMm: 12.7 });
    expect(rules('hoseClamps', { ...two, end: { shoulderToMouthMm: 38 } })).toEqual(['hose-clamps-on-barb look']);
    expect(found('hoseClamps', { ...two, end: { shoulderToMouthMm: 38 } })[0]?.margin).toBeCloseTo(-0.1, 9);
    expect(rules('hoseClamps', { ...two, end: { shoulderToMouthMm: 38.1 } })).toEqual([]);
    expect(rules('hoseClamps', { ...two, end: { shoulderToMouthMm: 30, insertionDepthMm: 38.2 } })).toEqual([]);
    expect(rules('hoseClamps', { ...at(6.35, { bandMm: 12.7 }), end: { shoulderToMouthMm: 19.1 } })).toEqual([]);
  });

  // ABYC P-1.7.1.10.1 as quoted: at least two at each end
  it('are two on an exhaust hose, and one will do on fuel', () => {
    const exhaust = (count: number): Setting => ({ ...at(8, { count }), service: EXHAUST });
    expect(rules('hoseClamps', exhaust(1))).toEqual(['exhaust-hose-clamps look']);
    expect(found('hoseClamps', exhaust(1))[0]).toMatchObject({ limit: 2, measured: 1 });
    expect(rules('hoseClamps', exhaust(2))).toEqual([]);
    expect(rules('hoseClamps', at(8))).toEqual([]);
  });

  // 33 CFR 183.564(b)(3) and (d)(1): two adjacent ones, no narrower than half an inch = 12.7 mm; on another vehicle neither is asked
  it('are two on the fuel filler of a boat, with bands of half an inch', () => {
    const filler = (clamps: Partial<HoseClamps>, vehicle: Setting['vehicle'] = 'boat'): Setting => ({
      ...at(8, { count: 2, bandMm: 12.7, ...clamps }),
      service: FILLER,
      vehicle,
      end: { shoulderToMouthMm: 60 },
    });
    expect(rules('hoseClamps', filler({}))).toEqual([]);
    expect(rules('hoseClamps', filler({ count: 1 }))).toEqual(['filler-hose-clamps look']);
    expect(rules('hoseClamps', filler({ bandMm: 9 }))).toEqual(['filler-clamp-band look']);
    expect(rules('hoseClamps', filler({ spring: true }))).toEqual(['hose-clamps-spring look']);
    expect(rules('hoseClamps', filler({ count: 1, bandMm: 9, spring: true }, 'car'))).toEqual([]);
  });

  // 33 CFR 183.560(d): not depend solely on the spring tension of the clamp
  it('hold the fuel of a boat by more than a spring; of an exhaust that is not asked', () => {
    const sprung = at(8, { count: 2, spring: true });
    expect(rules('hoseClamps', sprung)).toEqual(['hose-clamps-spring look']);
    expect(rules('hoseClamps', { ...sprung, service: EXHAUST })).toEqual([]);
    expect(rules('hoseClamps', at(8, { count: 2, spring: false }))).toEqual([]);
  });

  it('are told of where it is not stated how they sit, and of no other joint', () => {
    expect(rules('hoseClamps', {})).toEqual(['hose-clamps-known note']);
    expect(rules('hoseClamps', { clamps: { count: 1 } })).toEqual(['hose-clamps-known note']);
    expect(rules('hoseClamps', { ...at(3), end: { joint: 'crimp' } })).toEqual([]);
    expect(rules('hoseClamps', { ...at(3), end: { joint: 'push-on' } })).toEqual([]);
  });

  // 33 CFR 183.560(a): with hose designed for clamps
  it('do not go on PTFE hose', () => {
    expect(rules('hoseClamps', { ...at(8), hose: { core: 'ptfe-smooth' } })).toEqual(['hose-clamps-on-ptfe stop']);
    expect(rules('hoseClamps', { ...at(8), hose: { core: 'nbr' } })).toEqual([]);
  });

  // forbbodiesonly.com: none on fuel lines by drag racing rules; 33 CFR 183.558(c): one of three ways on boats
  it('hold fuel hose on a boat, and are looked at on fuel elsewhere and on oil under pressure everywhere', () => {
    expect(rules('hoseClamps', { ...at(8), vehicle: 'car' })).toEqual(['hose-clamps-lifeline look']);
    const oil: Service = { purpose: 'oil-pressure', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 100 };
    expect(rules('hoseClamps', { ...at(8), service: oil })).toEqual(['hose-clamps-lifeline look']);
    const water: Service = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 100, temperatureC: 95 };
    expect(rules('hoseClamps', { ...at(8), service: water, vehicle: 'car' })).toEqual([]);
  });
});

// 33 CFR 183.558(b)(1): a vent line or fill line A1 or A2, or B1 or B2 where little runs out of it
describe('the marking of a filler and of a vent', () => {
  const marked = (purpose: Service['purpose'], marking: string) =>
    rules('fuelMarking', { service: { ...FILLER, purpose }, hose: { marking } });

  it.each(['fuel-fill', 'fuel-vent'] as const)('may be A2, which a fuel line may not: %s', (purpose) => {
    expect(marked(purpose, 'USCG TYPE A1-15')).toEqual([]);
    expect(marked(purpose, 'USCG TYPE A2')).toEqual([]);
    expect(marked('fuel', 'USCG TYPE A2')).toEqual(['marine-fuel-marking look']);
  });

  it('is looked at where it is B, with the condition that lets it pass', () => {
    const [finding] = found('fuelMarking', { service: FILLER, hose: { marking: 'USCG TYPE B2' } });
    expect(finding).toMatchObject({ severity: 'look', message: expect.stringContaining('A1 or A2, or B1 or B2') });
    expect(finding?.message).toContain('148 mL');
  });
});

describe('a wet exhaust', () => {
  it('is raw water to the metals of its ends', () => {
    const end = { material: 'aluminium', joint: 'crimp' } as const;
    expect(rules('endMetals', { service: EXHAUST, end })).toEqual(['ends-suit-fluid look']);
    expect(rules('endMetals', { service: EXHAUST, end: { ...end, material: 'stainless' } })).toEqual([]);
  });

  // SAE J2006 and ISO 13363, their scopes: hose of its own kind
  it('wants hose that is made for it: what its maker lists, else it is to be asked', () => {
    expect(rules('fluidCore', { service: EXHAUST })).toEqual(['core-suits-fluid note']);
    expect(rules('fluidCore', { service: EXHAUST, hose: { listedFluids: ['exhaust-water'] } })).toEqual([]);
    expect(rules('fluidCore', { service: EXHAUST, hose: { listedFluids: ['raw-water'] } })).toEqual([
      'core-suits-fluid look',
    ]);
  });
});

describe('a rigid fuel line', () => {
  const line = (clampMm?: number): Setting => ({
    port: { rigidLine: clampMm === undefined ? {} : { clampMm } },
    end: { joint: 'crimp' },
  });

  // 33 CFR 183.562(b): within four inches of its connection to a flexible fuel line; 101.6 mm
  it('is held within four inches of its hose on a boat: 180 mm is looked at, 102 too, 101.6 not', () => {
    expect(found('rigidLine', line(180))[0]).toMatchObject({
      rule: 'rigid-line-clamp',
      severity: 'look',
      limit: expect.closeTo(101.6, 9),
      measured: 180,
    });
    expect(rules('rigidLine', line(102))).toEqual(['rigid-line-clamp look']);
    expect(rules('rigidLine', line(101.6))).toEqual([]);
  });

  it('is a note in a car, where it is not stated, and nothing on a line that is no fuel line', () => {
    expect(rules('rigidLine', { ...line(180), vehicle: 'car' })).toEqual(['rigid-line-clamp note']);
    expect(rules('rigidLine', line())).toEqual(['rigid-line-known note']);
    expect(rules('rigidLine', { ...line(180), service: EXHAUST })).toEqual([]);
    expect(rules('rigidLine', { port: {} })).toEqual([]);
  });
});

describe('brass on the aluminium of a fuel tank', () => {
  const piece = (id: string, material: Adapter['material']): Adapter => ({
    id,
    name: id,
    form: 'straight',
    portSeat: 'flare-37',
    portDash: 8,
    seat: 'flare-37',
    dash: 8,
    bendAngleDeg: 0,
    portToBendMm: 10,
    bendToSeatMm: 10,
    turning: 'settable',
    diameterMm: 20,
    material,
    provenance: 'example',
    source: 'invented for tests',
  });
  const brass = piece('tee', 'brass');
  const stainless = piece('bushing', 'stainless');
  const tank = (...on: readonly Adapter[]): Setting => ({
    port: { material: 'aluminium', adapters: on.map(({ id }) => ({ adapter: id, outlet: 'straight' })) },
    adapters: on,
  });

  // ABYC 33.18.3.3.1 as quoted: a galvanic barrier such as 300 series stainless
  it('is looked at, the adapter by its name; with a bushing of stainless between it is as the code wants it', () => {
    const [straight] = found('endMetals', tank(brass));
    expect(straight).toMatchObject({ rule: 'copper-off-aluminium', severity: 'look' });
    expect(straight?.message).toContain('tee of brass');
    expect(rules('endMetals', tank(stainless, brass))).toEqual([]);
    expect(rules('endMetals', tank(stainless))).toEqual([]);
  });

  it('is told by the series where no fuel is in it: stainless on aluminium 270 mV apart', () => {
    const oil: Service = { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 300, temperatureC: 100 };
    expect(rules('endMetals', { ...tank(stainless, brass), service: oil })).toEqual(['galvanic-apart note']);
  });

  it('is the brass end itself where it goes straight on the tank, and a matter of salt water only', () => {
    expect(rules('endMetals', tank())).toEqual(['copper-off-aluminium look']);
    expect(rules('endMetals', { ...tank(), vehicle: 'car' })).toEqual([]);
  });
});

describe('tests of a hose that hose clamps hold', () => {
  const record = { on: '2026-05-12', pressureKpa: 27.6 };
  const tested = (service: Service, vehicle: Project['vehicle'], systemTest = record): Setting => ({
    service,
    vehicle,
    clamps: { count: 2, fromHoseEndMm: 8 },
    asBuilt: { systemTest, proof: { on: '2026-05-12', pressureKpa: 100 } },
  });

  it('are of the system it belongs to, by what is asked of that; none is asked of coolant', () => {
    expect(rules('systemTested', tested(EXHAUST, 'boat'))).toEqual([]);
    expect(rules('systemTested', tested(EXHAUST, 'boat', { ...record, pressureKpa: 20.7 }))).toEqual([
      'exhaust-test-pressure look',
    ]);
    expect(rules('systemTested', tested(PETROL, 'boat', { ...record, pressureKpa: 20.7 }))).toEqual([]);
    const water: Service = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 100, temperatureC: 95 };
    expect(rules('systemTested', tested(water, 'boat', { ...record, pressureKpa: 1 }))).toEqual([]);
  });

  it('are no proof by the multiple of what the hose bears, as they are of a crimped one', () => {
    expect(rules('proof', tested(PETROL, 'boat'))).toEqual([]);
    expect(rules('proof', { ...tested(PETROL, 'boat'), end: { joint: 'crimp' } })).toEqual(['proof-multiple look']);
  });
});
