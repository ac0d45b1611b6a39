import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import { PLAIN_SKIN, type Run, type Service } from '../../../../shared/document/project/schema.ts';
import { type BayIndex, buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';
import { humpMm, leastRadiusMm, offPlaneMm } from '../../../oracles/serviceShape.ts';

const OIL: Service = { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 300, temperatureC: 100 };
const COOLANT: Service = { purpose: 'coolant', fluid: 'coolant', pressureKpa: 100, temperatureC: 95 };
const SUCTION: Service = { purpose: 'oil-suction', fluid: 'engine-oil', pressureKpa: -20, temperatureC: 100 };
const STRAIGHT = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });
const ANGLED = exampleEnd(45, { seatToBendMm: 25, bendToShoulderMm: 20, shoulderToMouthMm: 15 });
const HOSE = exampleHose({ insideDiameterMm: 10, outsideDiameterMm: 16, minBendRadiusMm: 60 });

type Block = Parameters<typeof meshOfBlocks>[0][number];
const FAR: Block[] = [
  { min: [-200, -500, -500], max: [-199, -499, -499] },
  { min: [900, 499, 499], max: [901, 500, 500] },
];

function bayOf(blocks: readonly Block[]): BayIndex {
  return buildBayIndex(meshOfBlocks([...FAR, ...blocks]), () => PLAIN_SKIN, UNWATCHED);
}

interface Side {
  readonly at: Vec3;
  readonly axis: Vec3;
  readonly end?: End;
  readonly clockDeg?: number;
}

function lie(bay: BayIndex, a: Side, b: Side, run: Partial<Run>, hose = HOSE): { lay: Lay; checks: string[] } {
  const up = (axis: Vec3): [number, number, number] => (Math.abs(axis[2]) > 0.9 ? [0, 1, 0] : [0, 0, 1]);
  const port = (id: string, s: Side) => examplePort(id, { seatPoint: [...s.at], axis: [...s.axis], up: up(s.axis) });
  const ends: [End, End] = [a.end ?? STRAIGHT, b.end ?? STRAIGHT];
  const project = oneRunProject([port('a', a), port('b', b)], ends, hose, {
    ...run,
    a: { port: 'a', end: ends[0].id, ...(a.clockDeg === undefined ? {} : { clockDeg: a.clockDeg }) },
    b: { port: 'b', end: ends[1].id, ...(b.clockDeg === undefined ? {} : { clockDeg: b.clockDeg }) },
  });
  const lay = layRun({ project: project.project, bay }, project.runs[0]!, buildTubeField([]), UNWATCHED);
  return { lay, checks: runChecks(project, [lay]).map((f) => `${f.severity} ${f.check}`) };
}

describe('a coolant hose', () => {
  const LEVEL: [Side, Side] = [
    { at: [0, 0, 0], axis: [1, 0, 0] },
    { at: [600, 0, 0], axis: [-1, 0, 0] },
  ];
  // A wall across the way: over it are 70 mm to climb, under it 150 to go down; sideways it is long.
  const WALL = bayOf([{ min: [290, -500, -120], max: [310, 500, 40] }]);

  it('goes under what oil goes over', () => {
    const oil = lie(WALL, ...LEVEL, { service: OIL });
    expect(oil.lay.outcome).toBe('laid');
    expect(humpMm(oil.lay)).toBeGreaterThan(50);
    const coolant = lie(WALL, ...LEVEL, { service: COOLANT });
    expect(coolant.lay.outcome).toBe('laid');
    expect(humpMm(coolant.lay)).toBeLessThanOrEqual(5);
    expect(coolant.lay.givenUp).toBeUndefined();
    expect(coolant.checks).not.toContain('look coolantHighPoint');
  });

  it('goes over it with a bleed', () => {
    const bled = lie(WALL, ...LEVEL, { service: COOLANT, bledAtCrest: true });
    expect(humpMm(bled.lay)).toBeGreaterThan(50);
    expect(bled.checks).toEqual(['note coolantHighPoint']);
  });

  it('over a wall that stands on the floor it is laid, and the bleed it needs is named', () => {
    const floor = bayOf([{ min: [290, -800, -800], max: [310, 800, 60] }]);
    const { lay, checks } = lie(floor, ...LEVEL, { service: COOLANT });
    expect(lay.outcome).toBe('laid');
    expect(lay.givenUp).toMatchObject([{ wish: 'no-crest', reason: expect.stringContaining('needs a bleed') }]);
    expect(lay.givenUp![0]!.at.point[2]).toBeGreaterThan(60);
    expect(checks).toContain('look coolantHighPoint');
  });

  it('climbs all the way from a low port to a high one, whichever is END A', () => {
    const low: Side = { at: [0, 0, 0], axis: [0, 1, 0] };
    const high: Side = { at: [350, 260, 240], axis: [-1, 0, 0] };
    for (const [a, b] of [
      [low, high],
      [high, low],
    ] as const) {
      const { lay, checks } = lie(bayOf([]), a, b, { service: COOLANT });
      expect(lay.outcome).toBe('laid');
      expect(humpMm(lay)).toBeLessThanOrEqual(5);
      expect(checks).toEqual([]);
    }
  });

  it('from a high port that faces up it has a crest, which is kept low and said to be the end of it', () => {
    const up: Side = { at: [0, 0, 300], axis: [0, 0, 1] };
    const { lay } = lie(bayOf([]), up, { at: [400, 0, 0], axis: [0, 0, 1] }, { service: COOLANT });
    expect(lay.outcome).toBe('laid');
    expect(lay.givenUp).toMatchObject([{ wish: 'no-crest', reason: expect.stringContaining('faces upwards') }]);
    // End 40, tail 32 and a quarter turn of 68 above the seat is the least.
    expect(humpMm(lay)).toBeGreaterThanOrEqual(40 + 32 + 68);
    expect(humpMm(lay)).toBeLessThan(260);
  });
});

describe('a suction hose', () => {
  // 25 mm bore, 32 outside, 100 inside: 116 at the centreline, 145 wanted over 125 mm before the pump, 64 of them its tail.
  const hose = exampleHose({ insideDiameterMm: 25, outsideDiameterMm: 32, minBendRadiusMm: 100 });
  const tank: Side = { at: [0, 0, 0], axis: [1, 0, 0] };

  it('keeps its last five bores before the pump gentle, where oil under pressure bends', () => {
    const pump: Side = { at: [406, 272, 0], axis: [0.555, -0.832, 0] };
    const oil = lie(bayOf([]), tank, pump, { service: OIL }, hose);
    expect(leastRadiusMm(oil.lay, 15, 125, 'b')).toBeLessThan(140);
    const suction = lie(bayOf([]), tank, pump, { service: SUCTION }, hose);
    expect(suction.lay.outcome).toBe('laid');
    expect(leastRadiusMm(suction.lay, 15, 125, 'b')).toBeGreaterThanOrEqual(145 * 0.99);
    expect(suction.lay.givenUp).toBeUndefined();
    expect(suction.checks).not.toContain('look suctionBend');
    const turned = lie(bayOf([]), pump, tank, { service: SUCTION, flow: 'b-to-a' }, hose);
    expect(leastRadiusMm(turned.lay, 15, 125, 'a')).toBeGreaterThanOrEqual(145 * 0.99);
  });

  it('in a corner too tight for it is laid, and says so', () => {
    // Some 380 by 230 mm: room for a bend of the hose's own radius, none for one as gentle as is wished. A few mm nearer there is none for its slack.
    const pump: Side = { at: [384, 234, 0], axis: [0, -1, 0] };
    const { lay, checks } = lie(bayOf([]), tank, pump, { service: SUCTION }, hose);
    expect(lay.outcome).toBe('laid');
    expect(lay.givenUp).toMatchObject([{ wish: 'calm-suction' }]);
    expect(checks).toContain('look suctionBend');
  });
});

describe('a stretch in one plane', () => {
  it('turns a swivel end to where the hose lies in one plane', () => {
    const a: Side = { at: [0, 0, 0], axis: [1, 0, 0], end: ANGLED };
    const b: Side = { at: [420, 150, 130], axis: [-0.6, 0, 0.8], end: STRAIGHT };
    const free = lie(bayOf([]), a, b, { service: OIL });
    const flat = lie(bayOf([]), a, b, { service: OIL, onePlane: ['a'] });
    expect(flat.lay.outcome).toBe('laid');
    expect(offPlaneMm(flat.lay.centreline.points)).toBeLessThanOrEqual(5);
    expect(flat.lay.givenUp).toBeUndefined();
    expect(flat.checks).toEqual([]);
    expect(offPlaneMm(free.lay.centreline.points)).toBeGreaterThan(offPlaneMm(flat.lay.centreline.points));
  });

  it('that cannot be gets a clamp where it changes its plane', () => {
    const a: Side = { at: [0, 0, 0], axis: [1, 0, 0] };
    const b: Side = { at: [420, 260, 300], axis: [0, 0, -1] };
    const free = lie(bayOf([]), a, b, { service: OIL });
    expect(offPlaneMm(free.lay.centreline.points)).toBeGreaterThan(15);
    const { lay, checks } = lie(bayOf([]), a, b, { service: OIL, onePlane: ['a'] });
    expect(lay.outcome).toBe('laid');
    expect(lay.supports.filter((s) => s.proposed).length).toBeGreaterThan(0);
    expect(checks).not.toContain('look onePlane');
    const cuts = [0, ...lay.supports.map((s) => s.at.arcLengthMm).sort((p, q) => p - q), lay.cutLengthMm];
    cuts.slice(1).forEach((to, i) => {
      const piece = lay.centreline.points.filter((_, k) => {
        const s = lay.centreline.arcLengthMm[k]!;
        return s >= cuts[i]! && s <= to;
      });
      expect(offPlaneMm(piece)).toBeLessThanOrEqual(5);
    });
    expect(distance(lay.centreline.points[0]!, lay.ends.a.shoulderPoint)).toBeLessThan(1e-6);
  });
});
