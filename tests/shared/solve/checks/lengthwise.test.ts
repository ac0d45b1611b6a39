import { describe, expect, it } from 'vitest';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { End, Hose } from '../../../../shared/document/parts/schema.ts';
import { layAlong, straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleProject, sampleRun, sampleSleeve } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

describe('laid', () => {
  it('forbids cutting from a near miss or no way, with the reason', () => {
    for (const outcome of ['near-miss', 'no-way'] as const) {
      const [finding] = findingsOf('laid', resolved(), straightLay({ outcome, reason: 'bends to 60 mm at END B' }));
      expect(finding).toMatchObject({ severity: 'stop', rule: 'laid', measured: 1, limit: 0, margin: -1 });
      expect(finding?.message).toContain('bends to 60 mm at END B');
    }
    expect(findingsOf('laid', resolved(), straightLay())).toEqual([]);
  });
});

describe('bendRadius', () => {
  const radius = (provenAtLeastMm: number): Partial<Lay> => ({
    minRadius: {
      radiusMm: provenAtLeastMm + 1,
      provenAtLeastMm,
      limitMm: 1,
      at: { arcLengthMm: 30, point: [30, 0, 0] },
    },
  });
  // A hose of 3.5 in (88.9 mm) inside and 15.7 mm outside: centreline 96.75 mm. R100 is 92.15 inside and passes;
  // R92 looks larger than 88.9 and is 84.15 inside: it fails. (Worked by hand.)
  const project = resolved({}, { hoses: [sampleHose({ minBendRadiusMm: 88.9, outsideDiameterMm: 15.7 })] });

  it('passes R100 and stops R92 at the centreline of a hose of 88.9 mm inside', () => {
    expect(findingsOf('bendRadius', project, straightLay(radius(100)))).toEqual([]);
    const [finding] = findingsOf('bendRadius', project, straightLay(radius(92)));
    expect(finding).toMatchObject({ severity: 'stop', unit: 'mm', at: { arcLengthMm: 30 } });
    expect(finding?.limit).toBeCloseTo(96.75, 9);
    expect(finding?.margin).toBeCloseTo(-4.75, 9);
    expect(finding?.message).toContain('84.2 mm (3.31 in) inside');
    expect(finding?.source).toContain('invented for tests');
  });

  it('turns at the limit, which itself is met', () => {
    expect(findingsOf('bendRadius', project, straightLay(radius(96.75)))).toEqual([]);
    // 0.1 % of 96.75 is 0.097 mm: as near as the curvature of a lay is known.
    expect(findingsOf('bendRadius', project, straightLay(radius(96.75 - 0.09)))).toMatchObject([{ severity: 'note' }]);
    expect(findingsOf('bendRadius', project, straightLay(radius(96.75 - 0.1)))).toMatchObject([{ severity: 'stop' }]);
  });

  it('takes a centreline figure as it is', () => {
    const metal = resolved({}, { hoses: [sampleHose({ minBendRadiusDatum: 'centreline' })] });
    expect(findingsOf('bendRadius', metal, straightLay(radius(100)))).toEqual([]);
    expect(findingsOf('bendRadius', resolved(), straightLay(radius(100)))).toHaveLength(1);
  });

  it('does not count the sleeve as hose', () => {
    const sleeved = resolved({ runs: [sampleRun({ sleeve: 'sleeve-16' })] }, { sleeves: [sampleSleeve()] });
    expect(findingsOf('bendRadius', sleeved, straightLay(radius(107.9)))).toEqual([]);
  });
});

describe('slack', () => {
  const severity = (slack: number, changes = {}): string[] =>
    findingsOf('slack', resolved(changes), straightLay({ slack })).map((f) => `${f.severity} ${f.rule}`);

  it('follows the handbook band of 5 to 8 %', () => {
    expect(severity(0.0299)).toEqual(['stop slack-least']);
    expect(severity(0.03)).toEqual(['look slack-wanted']);
    expect(severity(0.0499)).toEqual(['look slack-wanted']);
    expect(severity(0.05)).toEqual([]);
    expect(severity(0.08)).toEqual([]);
    expect(severity(0.0801)).toEqual(['note slack-wanted']);
    expect(severity(0.1)).toEqual(['note slack-wanted']);
    expect(severity(0.1001)).toEqual(['look slack-most']);
  });

  it('says where 4 % of shortening would draw it taut: under 4.17 %, and only under pressure', () => {
    const message = (slack: number, pressureKpa = 500): string => {
      const service = { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa, temperatureC: 120 } as const;
      const project = resolved({ runs: [sampleRun({ service })] });
      return findingsOf('slack', project, straightLay({ slack }))[0]?.message ?? '';
    };
    // 1 / 0.96 - 1 = 4.1667 %
    expect(message(0.0416)).toContain('pull taut');
    expect(message(0.0417)).not.toContain('pull taut');
    expect(message(0.04, -10)).not.toContain('pull taut');
  });

  it('says how much longer to cut', () => {
    const [finding] = findingsOf('slack', resolved(), straightLay({ slack: 0.04, tautLengthMm: 1000 }));
    expect(finding?.mend).toContain('10.0 mm (0.39 in) longer');
  });

  it('keeps the reason of an override in a note', () => {
    const overrides = [{ rule: 'slack-wanted', value: 0.04, reason: 'low pressure, proven on the last car' }];
    const [finding] = findingsOf('slack', resolved({ overrides }), straightLay({ slack: 0.045 }));
    expect(finding).toMatchObject({
      severity: 'note',
      limit: 0.04,
      overrideReason: 'low pressure, proven on the last car',
    });
    expect(finding?.margin).toBeCloseTo(0.005, 9);
    const [broken] = findingsOf('slack', resolved({ overrides }), straightLay({ slack: 0.035 }));
    expect(broken).toMatchObject({ severity: 'look', overrideReason: 'low pressure, proven on the last car' });
  });
});

describe('straightTail', () => {
  // FAA-H-8083-30 p. 7-19: 2 hose diameters; 2 x 15.8 = 31.6 mm.
  it('asks for two diameters of the bare hose at each end', () => {
    const sleeved = resolved({ runs: [sampleRun({ sleeve: 'sleeve-16' })] });
    for (const project of [resolved(), sleeved]) {
      expect(
        findingsOf(
          'straightTail',
          project,
          straightLay({ outsideDiameterMm: 22, straightTailMm: { a: 31.6, b: 31.6 } }),
        ),
      ).toEqual([]);
      const short = findingsOf(
        'straightTail',
        project,
        straightLay({ outsideDiameterMm: 22, straightTailMm: { a: 31.5, b: 31.5 } }),
      );
      expect(short.map((f) => f.at?.arcLengthMm)).toEqual([20, 480]);
      expect(short[0]?.message).toContain('END A');
      expect(short[1]).toMatchObject({ severity: 'look', rule: 'straight-tail', at: { point: [480, 0, 0] } });
    }
  });

  it('goes by an override for this run only', () => {
    const overrides = [{ rule: 'straight-tail', run: 'r1', value: 1, reason: 'swivel joint at the port' }];
    const [note] = findingsOf(
      'straightTail',
      resolved({ overrides }),
      straightLay({ straightTailMm: { a: 20, b: 40 } }),
    );
    expect(note).toMatchObject({ severity: 'note', overrideReason: 'swivel joint at the port' });
  });
});

describe('clampSpacing', () => {
  const long = (changes: Partial<Lay> = {}): Lay =>
    layAlong(
      [
        [0, 0, 0],
        [1300, 0, 0],
      ],
      changes,
    );
  const clampAt = (mm: number, kind: 'clamp' | 'waypoint' = 'clamp'): Lay['supports'][number] => ({
    id: `s${mm}`,
    kind,
    proposed: true,
    at: { arcLengthMm: mm, point: [mm, 0, 0] },
    axis: [1, 0, 0],
  });

  it('finds the longest stretch that nothing holds and its middle', () => {
    const [finding] = findingsOf('clampSpacing', resolved(), long());
    expect(finding).toMatchObject({ severity: 'look', limit: 610, unit: 'mm' });
    expect(finding?.measured).toBeCloseTo(1260, 6);
    expect(finding?.at?.point[0]).toBeCloseTo(650, 6);
  });

  it('turns at 610 mm (24 in); a waypoint holds nothing', () => {
    expect(findingsOf('clampSpacing', resolved(), long({ supports: [clampAt(630), clampAt(1240)] }))).toEqual([]);
    expect(findingsOf('clampSpacing', resolved(), long({ supports: [clampAt(630), clampAt(1240.1)] }))).toHaveLength(1);
    expect(
      findingsOf('clampSpacing', resolved(), long({ supports: [clampAt(630, 'waypoint'), clampAt(1240)] }))[0]
        ?.measured,
    ).toBeCloseTo(1220, 6);
  });

  it('asks no clamp of a short hose', () => {
    expect(findingsOf('clampSpacing', resolved(), straightLay())).toEqual([]);
  });
});

describe('staticCharge', () => {
  const charge = (fluid: 'petrol' | 'avgas' | 'diesel' | 'e85' | 'methanol' | 'engine-oil', hose = {}): string[] => {
    const run = sampleProject().runs[0] ?? sampleRun();
    const project = resolved({ runs: [{ ...run, service: { ...run.service, fluid } }] }, { hoses: [sampleHose(hose)] });
    return findingsOf('staticCharge', project, straightLay()).map((f) => f.severity);
  };

  it('stops petrol and looks at alcohols in a PTFE core not marked conductive', () => {
    expect(charge('petrol', { conductiveCore: false })).toEqual(['stop']);
    expect(charge('avgas', { conductiveCore: false, core: 'ptfe-convoluted' })).toEqual(['stop']);
    for (const fluid of ['e85', 'methanol', 'diesel'] as const)
      expect(charge(fluid, { conductiveCore: false })).toEqual(['look']);
    const { conductiveCore: _none, ...unmarked } = sampleHose();
    const project = resolved(
      { runs: [sampleRun({ service: { purpose: 'fuel', fluid: 'petrol', pressureKpa: 300, temperatureC: 40 } })] },
      { hoses: [unmarked] },
    );
    expect(findingsOf('staticCharge', project, straightLay())).toHaveLength(1);
  });

  // 10 L/min in 10.3 mm: 10 / 6e4 / (pi / 4 x 0.0103^2) = 2.0 m/s; published values 8.2 have no speed that is safe
  it('tells the speed of the fuel where a flow is stated, which lowers nothing', () => {
    const service = { purpose: 'fuel', fluid: 'petrol', pressureKpa: 400, temperatureC: 30 } as const;
    const at = (flow: object) =>
      findingsOf(
        'staticCharge',
        resolved(
          { runs: [sampleRun({ service: { ...service, ...flow } })] },
          { hoses: [sampleHose({ conductiveCore: false })] },
        ),
        straightLay(),
      )[0];
    expect(at({})?.message).toContain('The faster it runs');
    expect(at({ flowLPerMin: 10 })).toMatchObject({
      severity: 'stop',
      message: expect.stringContaining('runs at 2.00 m/s'),
    });
    expect(at({ flowLPerMin: 0.01 })?.severity).toBe('stop');
    expect(at({})?.mend).toContain('100 megohm');
  });

  it('passes conductive PTFE, rubber, and oil', () => {
    expect(charge('petrol')).toEqual([]);
    expect(charge('petrol', { conductiveCore: false, core: 'nbr' })).toEqual([]);
    expect(charge('engine-oil', { conductiveCore: false })).toEqual([]);
  });
});

describe('pressureRating and temperatureRating', () => {
  const rated = (
    check: string,
    service: { pressureKpa?: number; temperatureC?: number },
    hose: Partial<Hose> = {},
    end: Partial<End> = { material: 'steel' },
  ): string[] => {
    const run = sampleRun({
      service: { purpose: 'oil-pressure', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 100, ...service },
    });
    const project = resolved({ runs: [run] }, { hoses: [sampleHose(hose)], ends: [sampleEnd(end)] });
    return findingsOf(check, project, straightLay()).map((f) => `${f.severity} ${f.rule} ${f.margin}`);
  };

  it('holds the working pressure to the rating', () => {
    expect(rated('pressureRating', { pressureKpa: 1000 }, { maxPressureKpa: 1000 })).toEqual([]);
    expect(rated('pressureRating', { pressureKpa: 1001 }, { maxPressureKpa: 1000 })).toEqual([
      'stop pressure-rating -1',
    ]);
    expect(rated('pressureRating', { pressureKpa: -40 })).toEqual([]);
  });

  it('holds the fluid to both temperature limits of the hose', () => {
    const hose = { minTemperatureC: -40, maxTemperatureC: 120 };
    expect(rated('temperatureRating', { temperatureC: 120 }, hose)).toEqual([]);
    expect(rated('temperatureRating', { temperatureC: 121 }, hose)).toEqual(['stop temperature-rating -1']);
    expect(rated('temperatureRating', { temperatureC: -40 }, hose)).toEqual([]);
    expect(rated('temperatureRating', { temperatureC: -42 }, hose)).toEqual(['stop temperature-rating -2']);
  });

  it('looks at aluminium ends on PTFE hose over 135 deg C (275 F, SAE AS1946F)', () => {
    const look = 'look aluminium-end-temperature -1';
    expect(rated('temperatureRating', { temperatureC: 136 }, {}, { material: 'aluminium' })).toEqual([look]);
    expect(rated('temperatureRating', { temperatureC: 135 }, {}, { material: 'aluminium' })).toEqual([]);
    expect(rated('temperatureRating', { temperatureC: 136 })).toEqual([]);
    expect(rated('temperatureRating', { temperatureC: 136 }, { core: 'nbr' }, { material: 'aluminium' })).toEqual([]);
  });

  it('holds the fluid to what the maker of an end states, and then to nothing else', () => {
    const end = (maxTemperatureC: number): Partial<End> => ({ material: 'aluminium', maxTemperatureC });
    expect(rated('temperatureRating', { temperatureC: 180 }, {}, end(180))).toEqual([]);
    const past = ['stop end-temperature-rating -1', 'stop end-temperature-rating -1'];
    expect(rated('temperatureRating', { temperatureC: 181 }, {}, end(180))).toEqual(past);
    // Brass barbs, O-rings: whatever the metal, and whatever the hose bears.
    expect(rated('temperatureRating', { temperatureC: 121 }, {}, { material: 'brass', maxTemperatureC: 120 })).toEqual(
      past,
    );
  });
});
