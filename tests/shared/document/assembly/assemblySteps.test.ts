import { describe, expect, it } from 'vitest';
import { assemblySteps } from '../../../../shared/document/assembly/assemblySteps.ts';
import { BALL_INCH, ballMm } from '../../../../shared/document/assembly/ballTest.ts';
import { jointGap } from '../../../../shared/document/assembly/jointGap.ts';
import type { End, Hose, Sleeve } from '../../../../shared/document/parts/schema.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleSleeve } from '../../../arbitraries/projects.ts';

const lengths = { both: (mm: number) => `${mm.toFixed(2)} mm`, cut: (mm: number) => `${mm.toFixed(1)} mm` };

interface Parts {
  readonly hose?: Partial<Hose>;
  readonly end?: Partial<End>;
  readonly sleeve?: Partial<Sleeve>;
  readonly supports?: ReturnType<typeof straightLay>['supports'];
}

function steps({ hose, end, sleeve, supports = [] }: Parts = {}) {
  const both = { end: sampleEnd(end) };
  const made = {
    hose: sampleHose(hose),
    a: both,
    b: both,
    ...(sleeve === undefined ? {} : { sleeve: sampleSleeve(sleeve) }),
  };
  return assemblySteps(made, straightLay({ supports }), lengths);
}
const ids = (parts: Parts = {}): string[] => steps(parts).map(({ id }) => id);
const words = (id: string, parts: Parts = {}): string => steps(parts).find((step) => step.id === id)?.words ?? '';

describe('the steps at the bench', () => {
  it('have each an id of its own, a source, and stand stage by stage', () => {
    const all = steps({ sleeve: {}, end: { joint: 'screw-together', innerOlive: true, dash: 10 } });
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    expect(all.every(({ source, words: said }) => source.length > 3 && said.length > 10)).toBe(true);
    const stages = all.map(({ stage }) => ['before-second-end', 'both-ends-on', 'proof'].indexOf(stage));
    expect(stages).toEqual([...stages].sort());
    expect(stages).toContain(2);
  });

  it('put sleeve, clamps and grommets on after END A and before END B', () => {
    const at = { arcLengthMm: 100, point: [100, 0, 0] as [number, number, number] };
    const held = { proposed: false, at, axis: [1, 0, 0] as [number, number, number] };
    const order = ids({
      sleeve: {},
      supports: [
        { id: 'c1', kind: 'clamp', ...held },
        { id: 'firewall', kind: 'pass-through', ...held },
      ],
    });
    const between = order.slice(order.indexOf('end-a') + 1, order.indexOf('end-b'));
    expect(between).toEqual(['sleeve', 'on-c1', 'on-firewall', 'flags']);
    expect(ids()).not.toContain('sleeve');
  });

  it('chop no PTFE, keep glue off textile, warn of cut wires', () => {
    expect(words('cut', { hose: { core: 'ptfe-smooth' } })).toContain('never chopped');
    expect(words('cut', { hose: { core: 'nbr' } })).not.toContain('never chopped');
    expect(words('tape', { hose: { cover: 'aramid-braid' } })).toContain('does not stick');
    expect(words('tape', { hose: { cover: 'steel-braid' } })).not.toContain('does not stick');
    const caution = (cover: Hose['cover']) => steps({ hose: { cover } }).find(({ id }) => id === 'cut')?.caution;
    expect(caution('steel-braid')).toContain('gloves');
    expect(caution('rubber')).toBeUndefined();
  });

  it('widen a hose above -8 with an olive, and one whose table says so', () => {
    const olive = { joint: 'screw-together', innerOlive: true } as const;
    expect(ids({ end: { ...olive, dash: 8 } })).toContain('olive');
    expect(ids({ end: { ...olive, dash: 8 } })).not.toContain('expander');
    expect(ids({ end: { ...olive, dash: 10 } })).toContain('expander');
    expect(ids({ end: { ...olive, dash: 10, expander: false } })).not.toContain('expander');
    expect(ids({ end: { dash: 4, expander: true } })).toContain('expander');
  });

  it('measure a crimp on the flats against the card, a screwed joint by its gap, a push-on by its collar', () => {
    expect(words('crimp-a', { end: { joint: 'crimp', crimpFromMm: 31.47, crimpToMm: 31.77 } })).toContain(
      '31.47 to 31.77 mm',
    );
    expect(words('crimp-a', { end: { joint: 'crimp' } })).toContain("maker's card");
    expect(words('pushed-b', { end: { joint: 'push-on' } })).toContain('no clamp over the barbs');
    expect(ids({ end: { joint: 'push-on' } })).not.toContain('gap-a');
    // TM 1-1500-204-23-2 p. 4-44: 1/16 in at most on rubber; p. 4-64: 0.025 in at least on PTFE
    expect(words('gap-a', { end: { joint: 'screw-together' }, hose: { core: 'nbr' } })).toContain('at most 1.59 mm');
    expect(words('gap-a', { end: { joint: 'screw-together' }, hose: { core: 'ptfe-smooth' } })).toContain(
      'at least 0.64 mm',
    );
    expect(jointGap({ joint: 'crimp' }, 'nbr')).toBeUndefined();
  });

  it('send a ball through where every bore is known and wider, AC 43.13-1B Table 9-4: -8, 9/32 in', () => {
    const bores = (boreMm: number | undefined): Parts => ({
      hose: { dash: 8, insideDiameterMm: 10.3 },
      end: { dash: 8, ...(boreMm === undefined ? {} : { boreMm }) },
    });
    expect(words('ball', bores(8))).toContain('7.14 mm');
    expect(ids(bores(7))).toContain('bore');
    expect(ids(bores(undefined))).toContain('bore');
    expect(ballMm(32)).toBeUndefined();
  });

  it('balls grow with size and stay under the bore of their own hose', () => {
    // AC 43.13-1B Table 9-3, hose ID in: -4 3/16, -8 13/32, -16 7/8
    for (const [dash, bore] of [
      [4, 3 / 16],
      [8, 13 / 32],
      [16, 7 / 8],
    ] as const)
      expect(BALL_INCH[dash]).toBeLessThan(bore);
  });

  it('say of a sleeve narrower than a socket that it has to stretch', () => {
    const sleeve = (insideDiameterMm: number) =>
      steps({ sleeve: { insideDiameterMm }, end: { collarDiameterMm: 21 } }).find(({ id }) => id === 'sleeve')?.caution;
    expect(sleeve(20.9)).toContain('END A and END B');
    expect(sleeve(21)).toBeUndefined();
  });

  it('leave the clock alone after the proof', () => {
    const order = ids();
    expect(order.indexOf('hands-off')).toBeGreaterThan(order.indexOf('proof'));
    expect(order.at(-1)).toBe('cap');
  });
});
