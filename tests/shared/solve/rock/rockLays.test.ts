import { describe, expect, it } from 'vitest';
import { Cancelled, UNWATCHED } from '../../../../shared/base/watch.ts';
import { Rock } from '../../../../shared/document/lay/schema.ts';
import { bodyBays } from '../../../../shared/solve/rock/bodyBays.ts';
import { rockLays } from '../../../../shared/solve/rock/rockLays.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { emptyBay } from '../../../arbitraries/rig.ts';
import { extremeAt, RIG_STIFFNESS_NMM2, rockRig } from '../../../arbitraries/rockRig.ts';

const ALONG = { engine: { shiftMm: { x: [-10, 10] as [number, number] } } };

describe('slack left', () => {
  // Mouths 500 mm apart, live 525 mm: 25 mm of slack. Facing ends that go apart by d leave 25 - d: a straight line.
  it('is live length less the new straight line', () => {
    const { rock, lay } = rockRig({ bodyB: 'engine', motions: ALONG });
    expect(lay.liveLengthMm).toBeCloseTo(525, 1);
    expect(rock?.extremes.map((e) => e.pose.name)).toEqual(['at rest', 'engine at x -10 mm', 'engine at x +10 mm']);
    expect(rock?.extremes.map((e) => e.outcome)).toEqual(['lies', 'lies', 'lies']);
    expect(extremeAt(rock, 'at rest').slackLeftMm).toBeCloseTo(25, 2);
    expect(extremeAt(rock, 'engine at x +10 mm').slackLeftMm).toBeCloseTo(15, 2);
    expect(extremeAt(rock, 'engine at x -10 mm').slackLeftMm).toBeCloseTo(35, 2);
    expect(rock?.worst.slackLeft).toBe(2);
    expect(rock?.tightAt).toBeUndefined();
    expect(Rock.safeParse(rock).error).toBeUndefined();
  });

  it('is used up at the share of the motion that takes it, beyond the motion too', () => {
    const within = rockRig({ bodyB: 'engine', motions: { engine: { shiftMm: { x: [-5, 40] } } } }).rock;
    expect(within?.tightAt?.share).toBeCloseTo(25 / 40, 3);
    expect(within?.extremes[within.tightAt?.extreme ?? 0]?.pose.name).toBe('engine at x +40 mm');
    // 525 mm of hose over 540 mm: 15 mm are missing.
    expect(extremeAt(within, 'engine at x +40 mm')).toMatchObject({ outcome: 'too-short' });
    expect(extremeAt(within, 'engine at x +40 mm').missingMm).toBeCloseTo(15, 2);
    expect(extremeAt(within, 'engine at x +40 mm').minRadius).toBeUndefined();
    const beyond = rockRig({ bodyB: 'engine', motions: { engine: { shiftMm: { x: [0, 20] } } } }).rock;
    expect(beyond?.tightAt?.share).toBeCloseTo(25 / 20, 3);
  });

  // A dry-sump inlet: 480 mm from mouth to mouth, hose cut with 484 mm live, engine rolling 3 degrees at 350 mm from the
  // crank: the end goes 350 sin 3 = 18.3 mm away, so the hose is 14.3 mm short.
  it('runs out on a hose cut from the distance at rest alone', () => {
    const seat = 480 + 70;
    const { rock, lay } = rockRig({
      apart: 480,
      bodyB: 'engine',
      pivot: [seat, 0, -350],
      motions: { engine: { pitchDeg: [-3, 3] } },
      run: { cutLengthMm: 484 + 30 },
    });
    expect(lay.liveLengthMm).toBeCloseTo(484, 2);
    const away = extremeAt(rock, 'engine at pitch +3 degrees');
    expect(away.outcome).toBe('too-short');
    expect(away.missingMm).toBeGreaterThan(13.5);
    expect(away.missingMm).toBeLessThan(15.1);
    expect(rock?.tightAt?.share).toBeGreaterThan(0.15);
    expect(rock?.tightAt?.share).toBeLessThan(4 / 18.3 + 0.02);
  });

  it('is shared by a clamp: the stretch that is worked has only its own', () => {
    const clamp = {
      id: 'c',
      kind: 'clamp' as const,
      point: [285, 0, 0] as [number, number, number],
      axis: [1, 0, 0] as [number, number, number],
    };
    const { rock, lay } = rockRig({ bodyB: 'engine', motions: ALONG, run: { supports: [clamp] } });
    // Two stretches in line of 250 mm share the slack; the far one gives 10 of its half.
    const half = (lay.liveLengthMm - 500) / 2;
    expect(half).toBeGreaterThan(12);
    expect(extremeAt(rock, 'at rest').slackLeftMm).toBeCloseTo(half, 1);
    expect(extremeAt(rock, 'engine at x +10 mm').slackLeftMm).toBeCloseTo(half - 10, 1);
    expect(rock?.holds.map((h) => h.body)).toEqual(['chassis', 'chassis', 'engine']);
    const onEngine = rockRig({ bodyB: 'engine', motions: ALONG, run: { supports: [{ ...clamp, body: 'engine' }] } });
    expect(onEngine.rock?.holds.map((h) => h.body)).toEqual(['chassis', 'engine', 'engine']);
    expect(extremeAt(onEngine.rock, 'engine at x +10 mm').slackLeftMm).toBeCloseTo(half - 10, 1);
  });
});

describe('pull and twist', () => {
  // Euler: a rod clamped at both ends and hardly bowed pushes with 4 pi^2 EI / L^2 (Timoshenko, Theory of Elastic Stability, 2.2).
  it('pushes with the buckling load of a clamped rod when it is hardly bowed', () => {
    const { rock, lay } = rockRig({ slack: 0.002, bodyB: 'engine', motions: { engine: { rollDeg: [0, 1] } } });
    const load = (4 * Math.PI ** 2 * RIG_STIFFNESS_NMM2) / lay.liveLengthMm ** 2;
    expect((extremeAt(rock, 'at rest').tensionN ?? 0) / -load).toBeCloseTo(1, 2);
  });

  // A straight hose whose far end turns about its own axis is wrung by just that; the moment is GJ t / L.
  it('is wrung by what one end turns about the hose, right-handed from A to B', () => {
    const { rock, lay } = rockRig({ slack: 0.001, bodyB: 'engine', motions: { engine: { rollDeg: [-7, 7] } } });
    const right = extremeAt(rock, 'engine at roll +7 degrees');
    const left = extremeAt(rock, 'engine at roll -7 degrees');
    expect(extremeAt(rock, 'at rest').twistDeg).toBeCloseTo(0, 6);
    expect(right.twistDeg).toBeCloseTo(7, 1);
    expect(left.twistDeg).toBeCloseTo(-7, 1);
    // GJ = 2/3 EI where the table gives no more.
    const moment = ((2 / 3) * RIG_STIFFNESS_NMM2 * ((right.twistDeg ?? 0) * Math.PI)) / 180 / lay.liveLengthMm;
    expect((right.torqueNmm ?? 0) / moment).toBeCloseTo(1, 4);
    expect(right.slackLeftMm).toBeCloseTo(0.5, 2);
  });

  it('is wrung alike from either end', () => {
    const engine = { engine: { rollDeg: [0, 5] as [number, number], shiftMm: { y: [0, 12] as [number, number] } } };
    const pose = 'engine at roll +5 degrees, y +12 mm';
    const there = extremeAt(rockRig({ bodyB: 'engine', motions: engine }).rock, pose);
    const back = extremeAt(rockRig({ bodyB: 'engine', motions: engine, reversed: true }).rock, pose);
    expect(back.twistDeg).toBeCloseTo(there.twistDeg ?? 0, 2);
    expect((back.minRadius?.provenAtLeastMm ?? 0) / (there.minRadius?.provenAtLeastMm ?? 1)).toBeCloseTo(1, 3);
    expect((back.tensionN ?? 0) / (there.tensionN ?? 1)).toBeCloseTo(1, 3);
  });
});

describe('what does not change', () => {
  it('nothing, when both ends move as one', () => {
    const moves = { rollDeg: [0, 4] as [number, number], shiftMm: { x: [0, 20] as [number, number] } };
    const pose = 'engine at roll +4 degrees, x +20 mm; gearbox at roll +4 degrees, x +20 mm';
    const { rock } = rockRig({ bodyA: 'gearbox', bodyB: 'engine', motions: { engine: moves, gearbox: moves } });
    const [rest, together] = [extremeAt(rock, 'at rest'), extremeAt(rock, pose)];
    expect(together.slackLeftMm).toBeCloseTo(rest.slackLeftMm, 6);
    expect(together.twistDeg).toBeCloseTo(0, 3);
    expect((together.tensionN ?? 0) / (rest.tensionN ?? 1)).toBeCloseTo(1, 3);
    expect((together.minRadius?.provenAtLeastMm ?? 0) / (rest.minRadius?.provenAtLeastMm ?? 1)).toBeCloseTo(1, 3);
  });

  it('the shape of a hose that one body carries', () => {
    const { rock, lay } = rockRig({
      bodyA: 'engine',
      bodyB: 'engine',
      motions: { engine: { rollDeg: [-3, 3], shiftMm: { z: [-5, 5] } } },
    });
    expect(rock?.carried).toBe(true);
    for (const extreme of rock?.extremes ?? []) {
      expect(extreme.outcome).toBe('lies');
      expect(extreme.minRadius?.provenAtLeastMm).toBe(lay.minRadius.provenAtLeastMm);
      expect(extreme.slackLeftMm).toBeCloseTo(lay.liveLengthMm - lay.tautLengthMm, 9);
      expect(extreme.twistDeg).toBeUndefined();
    }
    expect(rock?.tightAt).toBeUndefined();
  });

  it('anything, when bay and motion are turned together about the plumb line', () => {
    const here = rockRig({
      bodyB: 'engine',
      motions: { engine: { rollDeg: [0, 4], pitchDeg: [0, 2], shiftMm: { x: [0, 6], y: [0, 9] } } },
    }).rock;
    // A quarter turn: X goes to Y, Y to -X.
    const there = rockRig({
      bodyB: 'engine',
      motions: { engine: { pitchDeg: [0, 4], rollDeg: [-2, 0], shiftMm: { y: [0, 6], x: [-9, 0] } } },
      move: ([x, y, z]) => [-y + 300, x - 150, z + 80],
    }).rock;
    const pairs = [
      ['engine at roll +4 degrees', 'engine at pitch +4 degrees'],
      ['engine at x +6, y +9 mm', 'engine at x -9, y +6 mm'],
      ['engine at pitch +2 degrees, y +9 mm', 'engine at roll -2 degrees, x -9 mm'],
    ] as const;
    expect(here?.extremes.length).toBe(16);
    for (const [mine, theirs] of pairs) {
      const [p, q] = [extremeAt(here, mine), extremeAt(there, theirs)];
      expect(q.slackLeftMm).toBeCloseTo(p.slackLeftMm, 2);
      expect(q.twistDeg ?? 0).toBeCloseTo(p.twistDeg ?? 0, 1);
      expect((q.tensionN ?? 0) / (p.tensionN ?? 1)).toBeCloseTo(1, 2);
      expect((q.minRadius?.provenAtLeastMm ?? 0) / (p.minRadius?.provenAtLeastMm ?? 1)).toBeCloseTo(1, 2);
    }
  });

  it('a lay whose bodies stand still has no rock', () => {
    expect(rockRig({ motions: {} }).rock).toBeUndefined();
    expect(rockRig({ bodyB: 'engine', motions: { engine: {} } }).rock).toBeUndefined();
  });
});

describe('clearance', () => {
  // A straight hose 15.7 mm thick under a plate whose face is 60 mm off its middle.
  const mesh = meshOfBlocks([
    { min: [150, -200, 60], max: [420, 200, 80] },
    { min: [-600, -600, -600], max: [-590, -590, -590] },
    { min: [1200, 600, 600], max: [1210, 610, 610] },
  ]);
  const plate = { engine: ['block-0'] };
  const taut = { slack: 0.0001, mesh };

  it('goes down by what a body comes nearer to a hose that stands', () => {
    const { rock } = rockRig({ ...taut, parts: plate, motions: { engine: { shiftMm: { z: [-8, 3] } } } });
    const clear = (pose: string) => extremeAt(rock, pose).tightest;
    const atRest = clear('at rest')?.clearanceMm ?? 0;
    expect(Math.abs(atRest - (60 - 15.7 / 2))).toBeLessThan(6);
    expect(clear('engine at z -8 mm')?.clearanceMm).toBeCloseTo(atRest - 8, 1);
    expect(clear('engine at z +3 mm')?.clearanceMm).toBeCloseTo(atRest + 3, 1);
    expect(clear('engine at z -8 mm')?.to.part).toBe('block-0');
    expect(clear('engine at z -8 mm')?.onThing[2]).toBeCloseTo(52, 6);
  });

  it('goes down as much when the hose comes nearer to a body that stands', () => {
    const on = { bodyA: 'engine', bodyB: 'engine' };
    const { rock } = rockRig({ ...taut, ...on, motions: { engine: { shiftMm: { z: [-3, 8] } } } });
    const clear = (pose: string) => extremeAt(rock, pose).tightest?.clearanceMm ?? 0;
    expect(clear('engine at z +8 mm')).toBeCloseTo(clear('at rest') - 8, 1);
    expect(clear('engine at z -3 mm')).toBeCloseTo(clear('at rest') + 3, 1);
  });

  it('is not told of what goes along', () => {
    const on = { bodyA: 'engine', bodyB: 'engine', parts: plate };
    const { rock } = rockRig({ ...taut, ...on, motions: { engine: { shiftMm: { z: [-8, 8] } } } });
    for (const { tightest } of rock?.extremes ?? []) expect(tightest?.to.part).not.toBe('block-0');
  });

  it('is below nothing where a body goes into a hose that stands', () => {
    const { rock } = rockRig({ ...taut, parts: plate, motions: { engine: { shiftMm: { z: [-56, 0] } } } });
    expect(extremeAt(rock, 'engine at z -56 mm').tightest?.clearanceMm).toBeLessThan(0);
    expect(extremeAt(rock, 'engine at z -56 mm').tightest?.to.part).toBe('block-0');
  });

  it('is what is left when a body pushes a hose that is worked aside', () => {
    // END B goes along with the plate, which comes 53 mm down on the hose: it gives way and lies against it.
    const { rock } = rockRig({
      mesh,
      slack: 0.05,
      bodyB: 'engine',
      parts: plate,
      motions: { engine: { shiftMm: { z: [-80, 0] } } },
    });
    const pushed = extremeAt(rock, 'engine at z -80 mm');
    expect(pushed.tightest?.clearanceMm).toBeGreaterThan(-0.25);
  });
});

describe('work', () => {
  it('ends at motions far beyond any mount', () => {
    const engine = {
      rollDeg: [-45, 45] as [number, number],
      yawDeg: [-45, 45] as [number, number],
      shiftMm: { x: [-300, 300] as [number, number] },
    };
    const { rock } = rockRig({ bodyB: 'engine', motions: { engine } });
    expect(rock?.extremes.length).toBe(27);
    for (const extreme of rock?.extremes ?? []) {
      if (extreme.outcome === 'lies') expect(extreme.minRadius?.provenAtLeastMm).toBeGreaterThan(0);
      if (extreme.outcome === 'too-short') expect(extreme.missingMm).toBeGreaterThan(0);
    }
    expect(rock?.tightAt?.share).toBeLessThan(1);
  });

  it('stops when it is told to', () => {
    const { resolved, lay } = rockRig({ bodyB: 'engine', motions: ALONG });
    const bays = bodyBays(resolved.project, emptyBay().mesh, UNWATCHED);
    expect(() => rockLays(resolved, bays, [lay], { ...UNWATCHED, isCancelled: () => true })).toThrow(Cancelled);
  });

  it('says how far it has come, never back', () => {
    const { resolved, lay } = rockRig({ bodyB: 'engine', motions: ALONG });
    const seen: number[] = [];
    const watch = { ...UNWATCHED, report: ({ fraction }: { fraction: number }) => void seen.push(fraction) };
    rockLays(resolved, bodyBays(resolved.project, emptyBay().mesh, UNWATCHED), [lay], watch);
    expect(seen.length).toBeGreaterThan(3);
    expect(seen).toEqual([...seen].sort((p, q) => p - q));
  });

  it('gives the same answer again, and leaves lays alone that show no hose', () => {
    const { resolved, lay } = rockRig({ bodyB: 'engine', motions: ALONG });
    const bays = bodyBays(resolved.project, emptyBay().mesh, UNWATCHED);
    const [once] = rockLays(resolved, bays, [lay], UNWATCHED);
    const [twice] = rockLays(resolved, bays, once === undefined ? [] : [once], UNWATCHED);
    expect(twice).toEqual(once);
    const none = { ...lay, outcome: 'no-way' as const };
    expect(rockLays(resolved, bays, [none], UNWATCHED)).toEqual([none]);
  });
});

describe('room round the ends', () => {
  // END A stands on the frame, 35 mm from seat to mouth, its collar 22 mm thick. A block of the engine stands 40 mm beside
  // its axis and comes nearer as the engine shifts.
  const beside = (shiftMm: number) => {
    const mesh = meshOfBlocks([
      { min: [30, 40, -10], max: [34, 60, 10] },
      { min: [-900, -900, -900], max: [-899, -899, -899] },
    ]);
    const parts = { engine: ['block-0'] };
    const { rock } = rockRig({ mesh, parts, bodyB: 'engine', motions: { engine: { shiftMm: { y: [-shiftMm, 0] } } } });
    return extremeAt(rock, `engine at y -${shiftMm} mm`).endRoom;
  };

  it('is the distance to the body that moves, less half of the collar', () => {
    const room = beside(10);
    expect(room).toMatchObject({ end: 'a', part: 'block-0' });
    expect(room?.roomMm).toBeCloseTo(40 - 10 - 22 / 2, 6);
  });

  it('is below nothing where the body comes into the end', () => {
    expect(beside(36)?.roomMm).toBeCloseTo(4 - 22 / 2, 6);
  });
});
