import { describe, expect, it } from 'vitest';
import { radiansToDegrees } from '../../../../shared/base/units.ts';
import { dot, triple, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Hands } from '../../../../shared/document/lay/hands.ts';
import { Hands as HandsSchema } from '../../../../shared/document/lay/hands.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import { PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { movePoint, type RigidMotion, rigidMotion, turnDirection } from '../../../../shared/geometry/rigidMotion.ts';
import type { TriMesh } from '../../../../shared/geometry/triMesh.ts';
import { type BayIndex, buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { handsOf } from '../../../../shared/solve/hands/handsOf.ts';
import { wrenchFor } from '../../../../shared/solve/hands/wrench.ts';
import { meshOfBlocks } from '../../../arbitraries/blockBays.ts';
import { layAlong } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleRun } from '../../../arbitraries/projects.ts';
import { resolved } from '../checks/context.ts';

interface Block {
  readonly min: Vec3;
  readonly max: Vec3;
}

const FAR: Block = { min: [2000, 2000, 2000], max: [2001, 2001, 2001] };
const wall = (min: Vec3, max: Vec3): Block => ({ min, max });

function bayOf(...blocks: readonly Block[]): BayIndex {
  return indexed(meshOfBlocks([...blocks, FAR]));
}

function indexed(mesh: TriMesh): BayIndex {
  return buildBayIndex(mesh, () => PLAIN_SKIN, UNWATCHED);
}

const TWO = { runs: [sampleRun(), sampleRun({ id: 'r2' })] };
/** Along X, from a seat at X = 26.4; its nut's middle lies 0.375 hex further. */
const STRAIGHT: readonly Vec3[] = [
  [50, 0, 0],
  [550, 0, 0],
];

function hands(bay: BayIndex, others: readonly Lay[] = [], project: ResolvedProject = resolved(TWO)): Hands {
  const lay = layAlong(STRAIGHT);
  return handsOf({ resolved: project, bay, lays: [lay, ...others] }, project.runs[0]!, lay);
}

// -8: 7/8 in across flats (US Army TM 55-1520-240-23-1).
const HEX = 22.225;
const { lengthMm: L, headMm, handleMm } = wrenchFor(HEX);
const R = headMm / 2;
const w = handleMm / 2;
const deg = radiansToDegrees;

it('takes the hex of a flare nut by its dash where the part states none, and says so', () => {
  const { a, basis } = hands(bayOf());
  expect(a).toMatchObject({ hexMm: HEX, hexAssumed: true });
  expect(a?.middle[0]).toBeCloseTo(26.4 + 0.375 * HEX, 9);
  expect(basis.join(' ')).toContain('by dash');
  const stated = resolved(TWO, { ends: [sampleEnd({ hexMm: 24, nutReachMm: 8 })] });
  const told = hands(bayOf(), [], stated);
  expect(told.a).toMatchObject({ hexMm: 24, hexAssumed: false });
  expect(told.a?.middle[0]).toBeCloseTo(26.4 - 8 + 9, 9);
});

it('swings all round where nothing is, with a second wrench, nobody waiting and no crow-foot', () => {
  const { a, b, before } = hands(bayOf());
  for (const nut of [a, b]) {
    expect(nut?.swing).toMatchObject({ goesOn: true, widestDeg: 360, inTheWay: [] });
    expect(nut?.second?.fits).toBe(true);
    expect(nut?.crowFoot).toBeUndefined();
  }
  expect(before).toEqual([]);
});

it('has no nut at an end without one', () => {
  const project = resolved(TWO, { ends: [sampleEnd({ form: 'banjo' })] });
  const told = hands(bayOf(), [], project);
  expect([told.a, told.b]).toEqual([undefined, undefined]);
  expect(told.basis.join(' ')).toContain('no nut at END A (banjo)');
});

describe('a wall over the nut', () => {
  it.each([30, 45, 100])('%d mm up leaves the closed form, and its middle points down', (d) => {
    const { a } = hands(bayOf(wall([-200, -400, d], [800, 400, d + 10])));
    const half = Math.acos(d / L) + Math.asin(w / L);
    const way = d < R + 1.2 * HEX ? Math.acos(d / (R + 1.2 * HEX)) + Math.asin(R / (R + 1.2 * HEX)) : 0;
    expect(a?.swing.widestDeg).toBeCloseTo(360 - 2 * deg(Math.max(half, way)), 3);
    expect(a?.swing.middle?.[2]).toBeCloseTo(-1, 6);
    expect(a?.swing.inTheWay).toEqual([{ kind: 'skin', id: 'plain', part: 'block-0' }]);
  });

  it('is let be where it stands outside the wrench’s thickness', () => {
    const edge = 26.4 + 0.375 * HEX + (0.45 * HEX) / 2;
    const swing = (from: number) => hands(bayOf(wall([from, -400, 30], [300, 400, 40]))).a?.swing.widestDeg;
    expect(swing(edge + 0.01)).toBe(360);
    expect(swing(edge - 0.01)).toBeLessThan(300);
  });
});

it('tells a slot’s swing by closed form, and a hose in it as what has to wait', () => {
  // Walls 60 mm to both sides and behind, open towards +Y: L sin(turn + asin(w / L)) = 60.
  const slot = bayOf(
    wall([-200, -60, 60], [300, 400, 70]),
    wall([-200, -60, -70], [300, 400, -60]),
    wall([-200, -70, -70], [300, -60, 70]),
  );
  const room = 2 * deg(Math.asin(60 / L) - Math.asin(w / L));
  expect(room).toBeGreaterThan(30);
  expect(hands(slot).a?.swing.widestDeg).toBeCloseTo(room, 3);
  const inSlot = layAlong(
    [
      [-100, 90, 0],
      [200, 90, 0],
    ],
    { run: 'r2' },
  );
  const told = hands(slot, [inSlot]);
  expect(told.a?.alone?.widestDeg).toBeCloseTo(room, 3);
  expect(told.a?.swing.widestDeg).toBeLessThan(30);
  expect(told.a?.blockedBy).toEqual(['r2']);
  expect(told.before).toEqual(['r2']);
  expect(told.b?.blockedBy).toBeUndefined();
});

it('tells what a hose beside the nut leaves, by closed form', () => {
  const beside = layAlong(
    [
      [-300, 0, 48],
      [700, 0, 48],
    ],
    { run: 'r2' },
  );
  const { a, before } = hands(bayOf(), [beside]);
  // The head cannot be slid on where its way meets the hose, 7.9 mm in radius; balls 2 mm apart hold it within 0.07 mm.
  const half = Math.asin((R + 7.9) / 48);
  expect(Math.abs((a?.swing.widestDeg ?? 0) - (360 - 2 * deg(half)))).toBeLessThan(0.3);
  expect(a?.alone?.widestDeg).toBe(360);
  expect(before).toEqual([]);
});

it('offers a crow-foot where the handle has no room', () => {
  const pit = (half: number) =>
    bayOf(
      wall([0, -half, half], [60, half, half + 5]),
      wall([0, -half, -half - 5], [60, half, -half]),
      wall([0, half, -half], [60, half + 5, half]),
      wall([0, -half - 5, -half], [60, -half, half]),
    );
  const wide = hands(pit(60)).a;
  expect(wide?.swing.widestDeg).toBe(0);
  expect(wide?.crowFoot?.widestDeg).toBe(360);
  const narrow = hands(pit(25)).a;
  expect(narrow?.swing.goesOn).toBe(false);
  expect(narrow?.crowFoot?.widestDeg).toBe(0);
});

it('says where no second wrench goes', () => {
  // A plate round what the nut is screwed on, behind the nut; the hole in it is smaller than a head.
  const h = 20;
  const plate = [
    wall([5, -400, h], [24, 400, 400]),
    wall([5, -400, -400], [24, 400, -h]),
    wall([5, h, -h], [24, 400, h]),
    wall([5, -400, -h], [24, -h, h]),
  ];
  const { a } = hands(bayOf(...plate));
  expect(a?.swing.widestDeg).toBe(360);
  expect(a?.second).toMatchObject({ fits: false, assumed: true });
  expect(a?.second?.holdDeg).toBeUndefined();
});

describe('reach', () => {
  const place = (told: Hands) => told.places.find(({ why }) => why.includes('bend'));

  it('is a hand in the open, a mirror in a closed box, and a hand again through a hole in its lid', () => {
    expect(place(hands(bayOf()))?.by).toBe('hand');
    const sides = [
      wall([-100, -200, -200], [-90, 200, 200]),
      wall([700, -200, -200], [710, 200, 200]),
      wall([-100, -200, -210], [710, 200, -200]),
      wall([-100, -210, -200], [710, -200, 200]),
      wall([-100, 200, -200], [710, 210, 200]),
    ];
    const closed = bayOf(...sides, wall([-100, -200, 200], [710, 200, 210]));
    expect(place(hands(closed))?.by).toBe('mirror');
    const open = indexed(meshOfBlocks(sides));
    const through = place(hands(open));
    expect(through?.by).toBe('hand');
    expect(through?.from?.[2]).toBeGreaterThan(0.5);
  });
});

it('gives the same when bay and hoses are moved and turned together', () => {
  const blocks = [
    wall([-200, -400, 45], [800, 400, 55]),
    wall([0, 60, -80], [90, 200, 30]),
    wall([500, -90, -60], [560, -40, 60]),
    FAR,
  ];
  const mesh = meshOfBlocks(blocks);
  const project = resolved(TWO);
  const lays = [
    layAlong(STRAIGHT),
    layAlong(
      [
        [-300, -60, -30],
        [700, -50, -40],
      ],
      { run: 'r2' },
    ),
  ];
  const still = handsOf({ resolved: project, bay: indexed(mesh), lays }, project.runs[0]!, lays[0]!);
  const motion = rigidMotion([100, 50, 20], 0.7, -0.4, 1.9, [300, -120, 80]);
  const moved = movedHands(motion, mesh, project, lays);
  for (const side of ['a', 'b'] as const) {
    expect(moved[side]?.swing.widestDeg).toBeCloseTo(still[side]?.swing.widestDeg ?? -1, 2);
    expect(moved[side]?.swing.middleDeg).toBeCloseTo(still[side]?.swing.middleDeg ?? -1, 2);
    expect(moved[side]?.alone?.widestDeg ?? 0).toBeCloseTo(still[side]?.alone?.widestDeg ?? 0, 2);
    expect(moved[side]?.second?.fits).toBe(still[side]?.second?.fits);
    expect(dot(moved[side]!.swing.middle!, turnDirection(motion, still[side]!.swing.middle!))).toBeCloseTo(1, 6);
  }
  expect(HandsSchema.safeParse(still).error).toBeUndefined();
});

function movedHands(motion: RigidMotion, mesh: TriMesh, project: ResolvedProject, lays: readonly Lay[]): Hands {
  const positions = Float32Array.from({ length: mesh.positions.length }, (_, i) => {
    const at = i - (i % 3);
    return movePoint(motion, [mesh.positions[at]!, mesh.positions[at + 1]!, mesh.positions[at + 2]!])[i % 3]!;
  });
  const runs = project.runs.map((run) => ({ ...run, a: turned(run.a), b: turned(run.b) }));
  function turned<E extends ResolvedProject['runs'][number]['a']>(end: E): E {
    const { port } = end;
    return {
      ...end,
      port: {
        ...port,
        axis: triple(turnDirection(motion, port.axis)),
        up: triple(turnDirection(motion, port.up)),
        seatPoint: triple(movePoint(motion, port.seatPoint)),
      },
    };
  }
  const movedLays = lays.map((lay) => ({
    ...lay,
    centreline: { ...lay.centreline, points: lay.centreline.points.map((p) => triple(movePoint(motion, p))) },
    ends: { a: movedEnd(lay.ends.a), b: movedEnd(lay.ends.b) },
  }));
  function movedEnd(end: Lay['ends']['a']): Lay['ends']['a'] {
    const places = ['seatPoint', 'bendPoint', 'shoulderPoint', 'mouthPoint'] as const;
    const ways = ['outletAxis', 'up', 'hoseAxis'] as const;
    return {
      ...end,
      ...Object.fromEntries(places.map((key) => [key, triple(movePoint(motion, end[key]))])),
      ...Object.fromEntries(ways.map((key) => [key, triple(turnDirection(motion, end[key]))])),
    };
  }
  const moved = { ...project, runs };
  return handsOf({ resolved: moved, bay: indexed({ ...mesh, positions }), lays: movedLays }, runs[0]!, movedLays[0]!);
}
