import { distance, lerp, sub, unit, type Vec3 } from '../../shared/base/vec3.ts';
import type { Clearance, EndPose, Lay, Rock, RockExtreme } from '../../shared/document/lay/schema.ts';

type Point = [number, number, number];

/** A lay along a polyline, densely sampled, with sound figures everywhere; `changes` spoil what a test wants spoilt. */
export function layAlong(corners: readonly Vec3[], changes: Partial<Lay> = {}): Lay {
  const points = dense(corners, 2);
  const arcLengthMm = arcLengths(points);
  const total = arcLengthMm.at(-1) ?? 0;
  const a = endPose(points, 20);
  const b = endPose([...points].reverse(), 20);
  const live = total - 40;
  return {
    run: 'r1',
    outcome: 'laid',
    centreline: { points, arcLengthMm },
    outsideDiameterMm: 15.8,
    ends: { a, b },
    supports: [],
    cutLengthMm: total,
    liveLengthMm: live,
    tautLengthMm: live / 1.05,
    overallLengthMm: total + 47.2,
    cutOffMm: { a: 23.6, b: 23.6 },
    slack: 0.05,
    clock: { kind: 'free', reason: 'both-straight' },
    minRadius: {
      radiusMm: 200,
      provenAtLeastMm: 199,
      limitMm: 107.9,
      at: { arcLengthMm: total / 2, point: points[Math.floor(points.length / 2)] ?? [0, 0, 0] },
    },
    straightTailMm: { a: 40, b: 40 },
    clearances: [],
    residual: 0,
    timingsMs: {},
    ...changes,
  };
}

/** A lay straight along X, 500 mm from shoulder to shoulder. */
export function straightLay(changes: Partial<Lay> = {}): Lay {
  return layAlong(
    [
      [0, 0, 0],
      [500, 0, 0],
    ],
    changes,
  );
}

/** A clearance to a skin's part or to a run, proven to 0.05 mm. */
export function clearanceTo(
  to: Clearance['to'],
  clearanceMm: number,
  requiredMm: number,
  changes: Partial<Clearance> = {},
): Clearance {
  return {
    to,
    clearanceMm,
    provenAtLeastMm: clearanceMm - 0.05,
    requiredMm,
    at: { arcLengthMm: 120, point: [120, 0, 0] },
    onThing: [120, 0, -clearanceMm],
    ...changes,
  };
}

/** A hose sound at rest and at one extreme, which `changes` spoil. */
export function rockWith(changes: Partial<RockExtreme>, more: Partial<Rock> = {}): Rock {
  const sound: RockExtreme = {
    pose: { name: 'at rest', bodies: [] },
    outcome: 'lies',
    slackLeftMm: 20,
    minRadius: { provenAtLeastMm: 199, at: { arcLengthMm: 200, point: [200, 0, 0] } },
    tensionN: 1,
    twistDeg: 0,
    torqueNmm: 0,
  };
  const pose: RockExtreme['pose'] = {
    name: 'engine at roll +3 degrees',
    bodies: [{ body: 'engine', rollDeg: 3, pitchDeg: 0, yawDeg: 0, shiftMm: [0, 0, 0] }],
  };
  return {
    carried: false,
    holds: [
      { id: 'a', body: 'engine' },
      { id: 'b', body: 'chassis' },
    ],
    extremes: [sound, { ...sound, pose, ...changes }],
    worst: { slackLeft: 1, minRadius: 1, tension: 1, twist: 1 },
    ...more,
  };
}

/** Points along a polyline, each corner kept, at most `stepMm` apart. */
function dense(corners: readonly Vec3[], stepMm: number): Point[] {
  const points: Point[] = [];
  corners.forEach((corner, i) => {
    const next = corners[i + 1];
    points.push([corner[0], corner[1], corner[2]]);
    if (next === undefined) return;
    const pieces = Math.ceil(distance(corner, next) / stepMm);
    for (let k = 1; k < pieces; k++) {
      const p = lerp(corner, next, k / pieces);
      points.push([p[0], p[1], p[2]]);
    }
  });
  return points;
}

function arcLengths(points: readonly Vec3[]): number[] {
  let total = 0;
  return points.map((p, i) => {
    const before = points[i - 1];
    if (before !== undefined) total += distance(before, p);
    return total;
  });
}

/** A straight end at the first of the points, its mouth `mouthMm` along. */
function endPose(points: readonly Vec3[], mouthMm: number): EndPose {
  const shoulder = points[0] ?? [0, 0, 0];
  const axis = unit(sub(points[1] ?? [1, 0, 0], shoulder));
  const along = (mm: number): Point => [
    shoulder[0] + axis[0] * mm,
    shoulder[1] + axis[1] * mm,
    shoulder[2] + axis[2] * mm,
  ];
  const up: Point = Math.abs(axis[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  return {
    seatPoint: along(-23.6),
    bendPoint: along(-13.6),
    shoulderPoint: along(0),
    mouthPoint: along(mouthMm),
    outletAxis: [-axis[0], -axis[1], -axis[2]],
    up,
    hoseAxis: [axis[0], axis[1], axis[2]],
    ownClockDeg: 0,
    ownClockChosen: false,
  };
}
