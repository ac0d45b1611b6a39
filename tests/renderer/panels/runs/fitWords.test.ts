import { describe, expect, it } from 'vitest';
import { misfitWords, offHoseWords, offPortWords } from '../../../../renderer/panels/runs/fitWords.ts';
import { hosesFor } from '../../../../renderer/state/edits/newRun.ts';
import { type AskedOfHose, hoseMisfits, seatsOn } from '../../../../renderer/state/edits/partFit.ts';
import type { End, Hose } from '../../../../shared/document/parts/schema.ts';
import type { Port } from '../../../../shared/document/project/schema.ts';

const port = { id: 'p', name: 'P', seat: 'flare-37', dash: 6 } as Port;
const hose = {
  id: 'h',
  core: 'nbr',
  dash: 6,
  maxPressureKpa: 2000,
  minTemperatureC: -40,
  maxTemperatureC: 120,
} as Hose;
const end = { id: 'e', seat: 'flare-37', dash: 6 } as End;
const asked: AskedOfHose = { ports: [port, port], fluid: 'engine-oil', pressureKpa: 600, temperatureC: 110 };
const against = (of: Partial<Hose>, changes: Partial<AskedOfHose> = {}): string[] =>
  hoseMisfits({ ...hose, ...of }, { ...asked, ...changes }).map(misfitWords);

describe('what is against a hose', () => {
  it('is nothing where size, fluid, heat and pressure are as its table says, up to the limit itself', () => {
    expect(against({})).toEqual([]);
    expect(against({}, { pressureKpa: 2000, temperatureC: 120 })).toEqual([]);
    expect(hoseMisfits(hose, { ports: [undefined], pressureKpa: null, temperatureC: null })).toEqual([]);
  });

  it('is said reason by reason', () => {
    expect(against({ dash: 8 })).toEqual(['-8, the port is -6']);
    expect(against({}, { temperatureC: 121 })[0]).toMatch(/^to 120 °C.* only$/);
    expect(against({}, { temperatureC: -41 })[0]).toMatch(/^not below -40 °C/);
    expect(against({}, { pressureKpa: 2001 })[0]).toMatch(/^to .*2.* only$/);
    expect(against({ core: 'epdm' })).toEqual(['not for engine oil: it swells in mineral oil']);
    expect(against({ core: 'epdm', dash: 8 }, { temperatureC: 130 })).toHaveLength(3);
  });

  it('puts it behind those that have less against them', () => {
    const shelf: Hose[] = [
      { ...hose, id: 'swells', core: 'epdm' },
      { ...hose, id: 'large', dash: 8 },
      { ...hose, id: 'right' },
    ];
    expect(hosesFor(shelf, asked)[0]?.id).toBe('right');
    expect(hosesFor(shelf, { ...asked, fluid: 'coolant' })[0]?.id).toBe('swells');
  });
});

describe('what is against an end', () => {
  it('is the size of the hose, and the seat or size of the port', () => {
    expect(offHoseWords({ ...end, dash: 8 }, hose)).toBe('for -8 hose, this is -6');
    expect(seatsOn(end, port)).toBe(true);
    const banjo: End = { ...end, seat: 'banjo-m10' };
    expect(seatsOn(banjo, port)).toBe(false);
    expect(offPortWords(banjo, port)).toBe('needs an adapter: it is -6 banjo M10, the port -6 37° flare');
  });
});
