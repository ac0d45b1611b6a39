import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { torsionalStiffness } from '../../../../shared/document/parts/torsionalStiffness.ts';
import type { Run } from '../../../../shared/document/project/schema.ts';
import { builtHose, plannedHose } from '../../../../shared/solve/asBuilt/builtHose.ts';
import { builtLays } from '../../../../shared/solve/asBuilt/builtLays.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const HOSE = exampleHose({ minBendRadiusMm: 60 });
const STRAIGHT = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 25, shoulderToMouthMm: 15 });

/** A run between two ports that face each other, 600 mm apart, with ends of a bend angle; turned so that both lie in one plane. */
function laid(bendAngleDeg: number, turning: 'swivel' | 'fixed', run: Partial<Run> = {}) {
  const end =
    bendAngleDeg === 0
      ? STRAIGHT
      : exampleEnd(bendAngleDeg, { seatToBendMm: 30, bendToShoulderMm: 25, shoulderToMouthMm: 15, turning });
  type Triple = [number, number, number];
  // Ports lean from facing each other by the bend, and 12 o'clock is where the hose leaves when both lie in one plane.
  const bend = (bendAngleDeg * Math.PI) / 180;
  const axisA: Triple = [Math.cos(bend), 0, Math.sin(bend)];
  const axisB: Triple = [-Math.cos(bend), 0, Math.sin(bend)];
  const upA: Triple = bendAngleDeg === 0 ? [0, 0, 1] : [Math.sin(bend), 0, -Math.cos(bend)];
  const upB: Triple = bendAngleDeg === 0 ? [0, 0, 1] : [-Math.sin(bend), 0, -Math.cos(bend)];
  const ports = [
    examplePort('a', { axis: axisA, up: upA }),
    examplePort('b', { seatPoint: [600, 0, 0], axis: axisB, up: upB }),
  ];
  const resolved = oneRunProject([ports[0]!, ports[1]!], [end, end], HOSE, { slack: 0.05, ...run });
  const bay = emptyBay();
  const lay = layRun({ project: resolved.project, bay }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
  expect(lay.outcome).toBe('laid');
  const made = (as: { cutLengthMm?: number; clockDeg?: number }) => {
    const planned = plannedHose({ resolved, bay }, resolved.runs[0]!, lay, new Map([[lay.run, lay]]));
    if (planned === undefined) throw new Error('no hose to make');
    return builtHose(planned, { name: 'x', cutLengthMm: lay.cutLengthMm, ...as }, UNWATCHED);
  };
  return { resolved, bay, lay, made };
}

describe('a hose made to its plan', () => {
  it('lies as planned: its line, its slack, no twist', () => {
    const { lay, made } = laid(0, 'swivel');
    const built = made({});
    expect(built.outcome).toBe('lies');
    expect(built.slackLeftMm).toBeCloseTo(lay.liveLengthMm - lay.tautLengthMm, 6);
    expect(built.twistDeg).toBe(0);
    const middle = (points: Lay['centreline']['points']) => points[points.length >> 1]!;
    const [p, q] = [middle(built.centreline!.points), middle(lay.centreline.points)];
    // The report's points are 4 mm apart, so the middle ones may be half of that apart along the hose.
    expect(Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])).toBeLessThan(2.1);
  });
});

describe('a hose cut otherwise', () => {
  it('has so much more or less slack, and goes tight when that is gone', () => {
    const { lay, made } = laid(0, 'swivel');
    const slackMm = lay.liveLengthMm - lay.tautLengthMm;
    expect(made({ cutLengthMm: lay.cutLengthMm + 6 }).slackLeftMm).toBeCloseTo(slackMm + 6, 6);
    const just = made({ cutLengthMm: lay.cutLengthMm - slackMm + 0.5 });
    expect(just.outcome).toBe('lies');
    const short = made({ cutLengthMm: lay.cutLengthMm - slackMm - 3 });
    // Ports that face each other: the shortest lay is the straight line, which this hose does not span by 3 mm.
    expect(short.outcome).toBe('too-short');
    expect(short.missingMm).toBeCloseTo(3, 1);
    expect(short.centreline).toBeUndefined();
  });

  it('a longer one bends tighter, a shorter one gentler', () => {
    const { lay, made } = laid(0, 'swivel');
    const radius = (mm: number) => made({ cutLengthMm: lay.cutLengthMm + mm }).minRadius!.provenAtLeastMm;
    expect(radius(10)).toBeLessThan(radius(0));
    expect(radius(-10)).toBeGreaterThan(radius(0));
  });
});

describe('a hose clocked otherwise', () => {
  it('between two fixed ends is wrung by what it was missed by, with GJ times that over its length', () => {
    const { lay, resolved, made } = laid(90, 'fixed');
    if (lay.clock.kind !== 'angle') throw new Error('the hose has no clock');
    for (const miss of [-12, 5, 20]) {
      const built = made({ clockDeg: lay.clock.deg + miss });
      // A plane hose wrung a little leaves its plane and lets part of the twist out into writhe: never more than what was missed.
      expect(Math.abs(built.twistDeg!)).toBeLessThanOrEqual(Math.abs(miss) + 0.01);
      expect(Math.sign(built.twistDeg!)).toBe(Math.sign(miss));
      const { valueNmm2 } = torsionalStiffness(resolved.runs[0]!.hose);
      const torque = (valueNmm2 * built.twistDeg! * Math.PI) / 180 / lay.liveLengthMm;
      expect(built.torqueNmm).toBeCloseTo(torque, 6);
    }
    const small = made({ clockDeg: lay.clock.deg + 1 });
    expect(Math.abs(small.twistDeg!)).toBeGreaterThan(0.5);
  });

  it('a loose swivel takes up what turning about its port turns the hose about itself: of 45 degree ends some, of square ends nothing', () => {
    const left = (bendAngleDeg: number, turning: 'swivel' | 'fixed'): number => {
      const { lay, made } = laid(bendAngleDeg, turning);
      if (lay.clock.kind !== 'angle') throw new Error('the hose has no clock');
      return Math.abs(made({ clockDeg: lay.clock.deg + 8 }).twistDeg!);
    };
    expect(left(45, 'swivel')).toBeLessThan(left(45, 'fixed') - 0.2);
    // A square end's port axis is square to the hose: turning about it does not turn the hose about itself.
    expect(left(90, 'swivel')).toBeGreaterThan(7.5);
  });

  it('is none where an end is straight', () => {
    const { made } = laid(0, 'swivel');
    expect(made({ clockDeg: 77 })).toMatchObject({ twistDeg: 0, torqueNmm: 0 });
  });
});

describe('what is told of a lay', () => {
  it('its tolerances of cut and clock, each laid anew; the hose as measured only where the project has it', () => {
    const { resolved, bay, lay } = laid(90, 'fixed');
    const [told] = builtLays({ resolved, bay }, [lay], UNWATCHED);
    // RMA table 4-8: +/- 3/16 in from 12 to 24 in, 1/4 in to 36 in.
    expect(told!.tolerance!.lengthMm).toBeCloseTo(lay.cutLengthMm <= 609.6 ? 4.7625 : 6.35, 9);
    expect(told!.tolerance!.poses).toHaveLength(4);
    expect(told!.built).toBeUndefined();
  });

  it('a measured hose that does not fit is a stop, one that does says nothing', () => {
    const findings = (asBuilt: Run['asBuilt']) => {
      const { resolved, bay, lay } = laid(0, 'swivel', asBuilt === undefined ? {} : { asBuilt });
      const lays = builtLays({ resolved, bay }, [lay], UNWATCHED);
      return runChecks(resolved, lays).filter((f) => f.check === 'asBuilt');
    };
    const { lay } = laid(0, 'swivel');
    const slackMm = lay.liveLengthMm - lay.tautLengthMm;
    expect(findings({ cutLengthMm: lay.cutLengthMm - slackMm + 1 })).toEqual([]);
    const [short] = findings({ cutLengthMm: lay.cutLengthMm - slackMm - 1 });
    expect(short).toMatchObject({ severity: 'stop', rule: 'built-slack', unit: 'mm' });
    expect(short!.measured).toBeCloseTo(-1, 3);
    expect(short!.mend).toContain('after it never');
  });

  it('a fixed pair clocked 8 degrees off is looked at, 6 degrees off is not', () => {
    const twists = (miss: number) => {
      const { resolved, bay, lay } = laid(90, 'fixed');
      if (lay.clock.kind !== 'angle') throw new Error('the hose has no clock');
      const run = {
        ...resolved.runs[0]!,
        run: { ...resolved.runs[0]!.run, asBuilt: { clockDeg: lay.clock.deg + miss } },
      };
      const measured = { ...resolved, runs: [run] };
      const lays = builtLays({ resolved: measured, bay }, [lay], UNWATCHED);
      return runChecks(measured, lays).filter((f) => f.rule === 'built-twist' && f.check === 'asBuilt');
    };
    expect(twists(5)).toEqual([]);
    expect(twists(30)).toMatchObject([{ severity: 'look', unit: 'deg' }]);
  });
});
