import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { Clamp } from '../../../../shared/document/parts/schema.ts';
import type { Service, Support } from '../../../../shared/document/project/schema.ts';
import { heatAlong } from '../../../arbitraries/heat.ts';
import { clearanceTo, layAlong, straightLay } from '../../../arbitraries/lays.ts';
import { motionAbout } from '../../../arbitraries/motions.ts';
import { sampleClamp, samplePort, sampleProject, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const supportAt = (arcLengthMm: number, point: Vec3, more: Partial<Lay['supports'][number]> = {}) => ({
  id: 'c',
  kind: 'clamp' as const,
  proposed: false,
  at: { arcLengthMm, point: [...point] as [number, number, number] },
  axis: [1, 0, 0] as [number, number, number],
  ...more,
});

/** An arc of so many degrees at a radius, a point every degree. */
function arc(radiusMm: number, degrees: number): Vec3[] {
  return Array.from({ length: degrees + 1 }, (_, i) => {
    const a = (i * Math.PI) / 180;
    return [radiusMm * Math.sin(a), radiusMm * (1 - Math.cos(a)), 0];
  });
}

const held: Support = { id: 'c', kind: 'clamp', point: [250, 0, 0], axis: [1, 0, 0], part: 'p' };
const clampedBy = (changes: Partial<Clamp>) =>
  resolved({ runs: [sampleRun({ supports: [held] })] }, { clamps: [sampleClamp(changes)] });

describe('a clamp', () => {
  it('on a straight stretch is let be; on an arc it turns by its width over the radius', () => {
    const straight = straightLay();
    const at = straight.centreline.points[Math.floor(straight.centreline.points.length / 2)] as Vec3;
    const half = straight.cutLengthMm / 2;
    expect(findingsOf('clampPlace', resolved(), { ...straight, supports: [supportAt(half, at)] })).toEqual([]);
    // 15 mm on a radius of 60: 14.3 degrees; on one of 120: 7.2, under the 10 of the rule
    for (const [radiusMm, found] of [
      [60, 1],
      [120, 0],
    ] as const) {
      const bent = layAlong(arc(radiusMm, 90), {});
      const mid = (Math.PI * radiusMm) / 4;
      const lay = { ...bent, supports: [supportAt(mid, arc(radiusMm, 90)[45] as Vec3)] };
      const findings = findingsOf('clampPlace', resolved(), lay);
      expect(findings).toHaveLength(found);
      if (found === 1) expect(findings[0]?.measured).toBeCloseTo((15 / 60) * (180 / Math.PI), 0);
    }
  });

  it('that is proposed over something hot alone stands on nothing; one the user put is let be', () => {
    const straight = straightLay();
    const half = straight.cutLengthMm / 2;
    const at = straight.centreline.points[Math.floor(straight.centreline.points.length / 2)] as Vec3;
    const nearTo = (id: string, mm: number) => ({
      reachMm: 150,
      arcLengthMm: [half],
      radiusMm: [10_000],
      heightMm: [0],
      near: [{ to: { kind: 'skin' as const, id }, clearanceMm: [mm], askedMm: [0], parts: [id], part: [0] }],
    });
    const proposed = { ...straight, supports: [{ ...supportAt(half, at), proposed: true }] };
    expect(findingsOf('clampFoot', resolved(), { ...proposed, profile: nearTo('tub', 80) })).toEqual([]);
    const [over] = findingsOf('clampFoot', resolved(), { ...proposed, profile: nearTo('exhaust', 80) });
    expect(over).toMatchObject({ severity: 'look', limit: 100, measured: 150 });
    expect(over?.message).toContain('more than 150');
    const own = { ...straight, supports: [supportAt(half, at)], profile: nearTo('exhaust', 80) };
    expect(findingsOf('clampFoot', resolved(), own)).toEqual([]);
  });

  it('of another size than the hose is looked at, by the figures of its own table', () => {
    const of = (holdsFromMm: number, holdsToMm: number) =>
      findingsOf('clampFits', clampedBy({ holdsFromMm, holdsToMm }), straightLay());
    // the sample hose is 15.8 mm
    expect(of(15, 16)).toEqual([]);
    expect(of(16, 18)[0]).toMatchObject({ severity: 'look', measured: 1 });
    expect(of(12, 15.7)[0]?.mend).toContain('larger');
  });
});

describe('the width of a clamp', () => {
  it('comes from its table where a run names it', () => {
    // 15 mm on a radius of 60 are 14.3 degrees; 9 mm are 8.6, under the 10 of the rule; 11 mm are 10.5
    const bent = layAlong(arc(60, 90), {});
    const lay = { ...bent, supports: [supportAt((Math.PI * 60) / 4, arc(60, 90)[45] as Vec3)] };
    expect(findingsOf('clampPlace', clampedBy({ widthMm: 9 }), lay)).toEqual([]);
    expect(findingsOf('clampPlace', clampedBy({ widthMm: 11 }), lay)).toHaveLength(1);
  });
});

describe('a clamp and the heat at its place', () => {
  const at = (arcLengthMm: number, likely: number, high: number) => {
    const cool = { low: 60, likely: 70, high: 80 };
    const heat = heatAlong({ low: 60, likely, high }, cool);
    const lay = straightLay({ heat, supports: [supportAt(arcLengthMm, [arcLengthMm, 0, 0])] });
    return findingsOf('clampHeat', clampedBy({ maxTemperatureC: 200 }), lay).map(({ severity, measured }) => [
      severity,
      measured,
    ]);
  };
  it('turns at its own limit, by the estimate where it sits', () => {
    expect(at(250, 199.9, 199.9)).toEqual([]);
    expect(at(250, 199.9, 220)).toEqual([['note', 220]]);
    expect(at(250, 200.1, 220)).toEqual([['look', 200.1]]);
    // beside the mouth it is cool
    expect(at(60, 250, 300)).toEqual([]);
  });
  it('is silent where no heat is known, and of clamps of no table', () => {
    expect(findingsOf('clampHeat', clampedBy({}), straightLay())).toEqual([]);
    const lay = straightLay({
      heat: heatAlong({ low: 300, likely: 300, high: 300 }),
      supports: [supportAt(250, [0, 0, 0])],
    });
    expect(findingsOf('clampHeat', resolved(), lay)).toEqual([]);
  });
});

describe('hoses of high and low pressure clamped together', () => {
  const told = (gapMm: number, pressureKpa: number, more: Partial<Support> = {}, tied = false) => {
    const other: Support = { ...held, id: 'd', point: [250, 15.8 + gapMm, 0], ...more };
    const project = resolved({
      runs: [
        sampleRun({ supports: [held], service: { ...sampleRun().service, pressureKpa: 500 } }),
        sampleRun({
          id: 'r2',
          name: 'Run 2',
          a: { port: 'p3', end: 'end-8-0' },
          b: { port: 'p4', end: 'end-8-0' },
          supports: [other],
          service: { ...sampleRun().service, pressureKpa },
        }),
      ],
      ports: ['p1', 'p2', 'p3', 'p4'].map((id, i) => samplePort({ id, seatPoint: [0, 100 * i, 0] })),
      ...(tied ? { bundles: [{ id: 'b', name: 'Both', runs: ['r1', 'r2'] }] } : {}),
    });
    return ['clampPressure', 'bundlePressure'].flatMap((check) =>
      findingsOf(check, project, straightLay()).map(({ check, severity }) => `${check} ${severity}`),
    );
  };
  it('are looked at; like pressures, clamps apart and clamps on another body are not', () => {
    expect(told(0, 1501)).toEqual(['clampPressure look']);
    expect(told(11.9, 1501)).toEqual(['clampPressure look']);
    expect(told(12.1, 1501)).toEqual([]);
    expect(told(0, 1499)).toEqual([]);
    expect(told(0, 1501, { kind: 'pass-through' })).toEqual([]);
  });
  it('are told once, as a bundle, where one ties them', () => {
    expect(told(0, 1501, {}, true)).toEqual(['bundlePressure look']);
  });
});

describe('a pass-through', () => {
  const support = (more: Partial<Support>): Support => ({
    id: 'g',
    kind: 'pass-through',
    point: [250, 0, 0],
    axis: [1, 0, 0],
    ...more,
  });
  const of = (more: Partial<Support>) => {
    const lay = straightLay();
    const at = lay.centreline.points[3] as Vec3;
    return findingsOf('passThrough', resolved({ runs: [sampleRun({ supports: [support(more)] })] }), {
      ...lay,
      supports: [supportAt(20, at, { id: 'g', kind: 'pass-through' })],
    });
  };
  it('is asked what seals it, and an open hole is looked at', () => {
    expect(of({})[0]?.severity).toBe('note');
    expect(of({ seal: 'none' })[0]?.severity).toBe('look');
    expect(of({ seal: 'grommet' })).toEqual([]);
  });
});

describe('slack at the engine', () => {
  const motion = motionAbout([0, 0, 0], { rollDeg: [-2, 2] });
  const { bay } = sampleProject();
  const project = (moving: boolean) =>
    resolved({
      bay: { ...bay, bodies: [{ id: 'engine', name: 'Engine', parts: [], ...(moving ? { motion } : {}) }] },
      ports: [
        samplePort({ body: 'engine' }),
        samplePort({ id: 'p2', name: 'P2', seatPoint: [500, 0, 0], axis: [-1, 0, 0] }),
      ],
    });

  it('is what the stretch has over its straight line: 1-1/2 in or it is looked at', () => {
    // US Army AL0907 p. 59: at least 1-1/2 in = 38.1 mm; a straight hose has none
    expect(findingsOf('engineSlack', project(true), straightLay())[0]).toMatchObject({ severity: 'look', limit: 38.1 });
    expect(findingsOf('engineSlack', project(false), straightLay())).toEqual([]);
    // half a circle of 150 mm radius: 471 mm over 300 across
    expect(findingsOf('engineSlack', project(true), layAlong(arc(150, 180), {}))).toEqual([]);
  });
});

describe('wiring', () => {
  const { bay } = sampleProject();
  const loom = { id: 'loom', name: 'Loom', kind: 'wiring' as const, parts: ['loom*'] };
  const at = (mm: number, fluid: Service['fluid']) => {
    const service: Service = { purpose: 'other', fluid, pressureKpa: 100, temperatureC: 80 };
    const project = resolved({ bay: { ...bay, skins: [...bay.skins, loom] }, runs: [sampleRun({ service })] });
    const lay = straightLay({ clearances: [clearanceTo({ kind: 'skin', id: 'loom' }, mm, 50.8)] });
    return [...findingsOf('clearance', project, lay), ...findingsOf('wiring', project, lay)].map(
      ({ check, severity }) => `${check} ${severity}`,
    );
  };
  it('is kept 2 in from oil and fuel at least and 6 in where it can be, and 12 mm from water', () => {
    // FAA AC 43.13-1B 11-96w: 6 in, 2 in at least
    expect(at(50, 'petrol')).toEqual(['clearance stop']);
    expect(at(51, 'engine-oil')).toEqual(['wiring note']);
    expect(at(153, 'engine-oil')).toEqual([]);
    expect(at(13, 'coolant')).toEqual([]);
    expect(at(11, 'coolant')).toEqual(['clearance stop']);
  });
});

describe('clamps that are due', () => {
  it('are named where they part a stretch evenly', () => {
    const mends = (mm: number) =>
      findingsOf(
        'clampSpacing',
        resolved(),
        layAlong([
          [0, 0, 0],
          [mm, 0, 0],
        ]),
      ).map(({ mend }) => mend);
    // mouths 20 mm inside the shoulders; 24 in = 610 mm (NAVEDTRA 14105)
    expect(mends(649)).toEqual([]);
    expect(mends(1040)[0]).toContain('520.0 mm');
    expect(mends(1340)[0]).toMatch(/453\.3 mm.* and 886\.7 mm/);
  });
});

describe('the hose against itself', () => {
  /** Once round and on beside itself, `pitchMm` higher each turn. */
  const coil = (pitchMm: number): Vec3[] =>
    Array.from({ length: 541 }, (_, i) => {
      const a = (i * Math.PI) / 180;
      return [150 * Math.cos(a), 150 * Math.sin(a), (pitchMm * i) / 360];
    });
  it('is measured surface to surface where it passes itself, and not along a bend', () => {
    const limit = {
      radiusMm: 150,
      provenAtLeastMm: 149,
      limitMm: 108,
      at: { arcLengthMm: 0, point: [0, 0, 0] as [number, number, number] },
    };
    const lay = (pitchMm: number) => layAlong(coil(pitchMm), { minRadius: limit });
    // turns of a coil stand one pitch apart; the sample hose is 15.8 mm thick
    expect(findingsOf('selfContact', resolved(), lay(15))[0]).toMatchObject({ severity: 'stop' });
    expect(findingsOf('selfContact', resolved(), lay(15))[0]?.measured).toBeCloseTo(15 - 15.8, 1);
    expect(findingsOf('selfContact', resolved(), lay(17))).toEqual([]);
    expect(findingsOf('selfContact', resolved(), layAlong(arc(150, 90), { minRadius: limit }))).toEqual([]);
  });
});
