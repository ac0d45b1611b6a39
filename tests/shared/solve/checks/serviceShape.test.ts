import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { Finding, LaySupport } from '../../../../shared/document/lay/schema.ts';
import type { Run } from '../../../../shared/document/project/schema.ts';
import { layAlong } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const SUCTION = { purpose: 'oil-suction', fluid: 'engine-oil', pressureKpa: -20, temperatureC: 100 } as const;

/** 300 mm along +X, a quarter turn of this radius to +Y, then straight for `rest` mm: END B is `rest` after the bend. */
function quarterTurn(radiusMm: number, rest: number): Vec3[] {
  const steps = Math.ceil((radiusMm * Math.PI) / 2 / 2);
  const bend = Array.from({ length: steps + 1 }, (_, i): Vec3 => {
    const u = (Math.PI / 2) * (i / steps);
    return [300 + radiusMm * Math.sin(u), radiusMm * (1 - Math.cos(u)), 0];
  });
  return [[0, 0, 0], ...bend, [300 + radiusMm, radiusMm + rest, 0]];
}

describe('suctionBend', () => {
  // The sample hose: 10.3 mm bore, 100 mm inside and 15.8 outside: 107.9 mm at the centreline. Five bores are 51.5 mm from
  // the mouth, which lies 20 mm inside shoulder B; 1.25 x 107.9 = 134.875 mm.
  const hose = sampleHose();
  const bends = (corners: readonly Vec3[], run: Partial<Run> = {}): Finding[] =>
    findingsOf(
      'suctionBend',
      resolved({ runs: [sampleRun({ service: SUCTION, ...run })] }, { hoses: [hose] }),
      layAlong(corners),
    );

  it('looks at a bend under 1.25 times the hose limit within five bores of the pump', () => {
    const [finding] = bends(quarterTurn(120, 40));
    expect(finding).toMatchObject({ severity: 'look', rule: 'suction-calm-radius', unit: 'mm' });
    expect(finding?.limit).toBeCloseTo(134.875, 9);
    expect(finding?.measured).toBeCloseTo(120, 2);
    expect(finding?.message).toContain('END B');
  });

  it('turns at the radius', () => {
    expect(bends(quarterTurn(134, 40))).toHaveLength(1);
    expect(bends(quarterTurn(136, 40))).toEqual([]);
  });

  it('turns at the length: a bend further off is let be', () => {
    // 51.5 + 20 mm before shoulder B.
    expect(bends(quarterTurn(120, 66))).toHaveLength(1);
    expect(bends(quarterTurn(120, 74))).toEqual([]);
  });

  it('looks at the end the fluid goes to', () => {
    const reversed = [...quarterTurn(120, 40)].reverse();
    expect(bends(reversed)).toEqual([]);
    expect(bends(reversed, { flow: 'b-to-a' })).toHaveLength(1);
    expect(bends(quarterTurn(120, 40), { flow: 'b-to-a' })).toEqual([]);
  });

  it('is for suction, whatever the fluid: any hose under the pressure of the bay', () => {
    const service = { purpose: 'fuel', fluid: 'petrol', temperatureC: 30 } as const;
    expect(bends(quarterTurn(120, 40), { service: { ...service, pressureKpa: -5 } })).toHaveLength(1);
    expect(bends(quarterTurn(120, 40), { service: { ...service, pressureKpa: 0 } })).toEqual([]);
  });

  it('looks at an end of more than 45 degrees at the pump, not at the other end', () => {
    const angled = (deg: number, side: 'a' | 'b'): Finding[] =>
      findingsOf(
        'suctionBend',
        resolved(
          { runs: [sampleRun({ service: SUCTION, [side]: { port: side === 'a' ? 'p1' : 'p2', end: 'angled' } })] },
          { ends: [sampleEnd(), sampleEnd({ id: 'angled', bendAngleDeg: deg })] },
        ),
        layAlong([
          [0, 0, 0],
          [500, 0, 0],
        ]),
      );
    expect(angled(45, 'b')).toEqual([]);
    expect(angled(60, 'b')).toMatchObject([{ severity: 'look', rule: 'suction-end-angle', measured: 60, limit: 45 }]);
    expect(angled(60, 'a')).toEqual([]);
  });

  it('takes an override, and says so', () => {
    const project = resolved({
      runs: [sampleRun({ service: SUCTION })],
      overrides: [{ rule: 'suction-calm-radius', value: 1, reason: 'gravity head of 600 mm' }],
    });
    const found = findingsOf('suctionBend', project, layAlong(quarterTurn(120, 40)));
    expect(found).toMatchObject([{ severity: 'note', overrideReason: 'gravity head of 600 mm' }]);
  });
});

describe('onePlane', () => {
  const clamp = (id: string, arcLengthMm: number, proposed = false): LaySupport => ({
    id,
    kind: 'clamp',
    proposed,
    at: { arcLengthMm, point: [0, 0, 0] },
    axis: [1, 0, 0],
  });
  const support = {
    id: 'c1',
    kind: 'clamp' as const,
    point: [0, 0, 0] as [number, number, number],
    axis: [1, 0, 0] as [number, number, number],
  };
  const off = (corners: readonly Vec3[], onePlane: string[], supports: LaySupport[] = []): Finding[] =>
    findingsOf(
      'onePlane',
      resolved({ runs: [sampleRun({ onePlane, supports: [support] })] }),
      layAlong(corners, { supports }),
    );
  /** An L in the XY plane whose last leg then rises by `rise` over 200 mm. */
  const bent = (rise: number): Vec3[] => [
    [0, 0, 0],
    [200, 0, 0],
    [200, 200, 0],
    [200, 200, rise],
  ];

  it('passes what lies in one plane, in whatever plane', () => {
    expect(off(bent(0.001), ['a'])).toEqual([]);
    // The same L in a plane that leans: every point has z = (x + y) / 2.
    expect(
      off(
        [
          [0, 0, 0],
          [200, 0, 100],
          [200, 200, 200],
        ],
        ['a'],
      ),
    ).toEqual([]);
  });

  it('finds how far a hose lies off the plane laid best through it, and that its ends stand turned', () => {
    const [finding] = off(bent(200), ['a']);
    expect(finding).toMatchObject({ severity: 'look', rule: 'one-plane', limit: 5, unit: 'mm' });
    expect(finding?.measured).toBeGreaterThan(30);
    // Chord (200, 200, 200); ends along X and Z: square to the chord they stand 120 degrees apart, so 60 as planes.
    expect(finding?.message).toContain('60.0 degrees');
  });

  it('turns at 5 mm off', () => {
    // A zigzag of height h over the XY plane, square to an L: far points h/2 to either side of the plane between them.
    const wave = (h: number): Vec3[] => [
      [0, 0, 0],
      [100, 0, h],
      [200, 0, 0],
      [300, 0, h],
      [300, 300, h / 2],
    ];
    expect(off(wave(8), ['a'])).toEqual([]);
    expect(off(wave(16), ['a'])).toHaveLength(1);
  });

  it('asks nothing where nothing is asked, and only of the stretch that is named', () => {
    expect(off(bent(200), [])).toEqual([]);
    const supports = [clamp('c1', 200)];
    // From END A to the clamp it is straight; from the clamp on it is an L in a plane of its own.
    expect(off(bent(200), ['a', 'c1'], supports)).toEqual([]);
    const early = [clamp('c1', 100)];
    expect(off(bent(200), ['a'], early)).toEqual([]);
    expect(off(bent(200), ['c1'], early)).toHaveLength(1);
  });

  it('lets a hose change its plane at a proposed clamp', () => {
    expect(off(bent(200), ['a'])).toHaveLength(1);
    expect(off(bent(200), ['a'], [clamp('proposed-1', 300, true)])).toEqual([]);
  });
});

describe('a coolant hose with a bleed', () => {
  it('turns the high point into a note of where the bleed belongs', () => {
    const service = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 100, temperatureC: 95 } as const;
    const over: Vec3[] = [
      [0, 0, 0],
      [200, 0, 60],
      [400, 0, 0],
    ];
    const found = (run: Partial<Run>): Finding[] =>
      findingsOf('coolantHighPoint', resolved({ runs: [sampleRun({ service, ...run })] }), layAlong(over));
    expect(found({})).toMatchObject([{ severity: 'look' }]);
    expect(found({ bledAtCrest: true })).toMatchObject([
      { severity: 'note', at: { arcLengthMm: expect.closeTo(208.8, 0) } },
    ]);
  });
});
