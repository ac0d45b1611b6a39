import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../shared/base/random.ts';
import { add, addScaled, angleBetween, cross, distance, scale, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { fitRim } from '../../../shared/geometry/fitRim.ts';
import type { TriMesh } from '../../../shared/geometry/triMesh.ts';

type Corner = readonly [Vec3, Vec3, Vec3];

/** A mesh of triangles that share no vertex, as an STL file gives it. */
function soup(triangles: readonly Corner[]): TriMesh {
  const positions = new Float32Array(triangles.flatMap((t) => t.flatMap((p) => [...p])));
  const indices = Uint32Array.from({ length: triangles.length * 3 }, (_, i) => i);
  return { positions, indices, parts: [{ name: 'all', firstTriangle: 0, triangleCount: triangles.length }] };
}

const quad = (a: Vec3, b: Vec3, c: Vec3, d: Vec3): Corner[] => [
  [a, b, c],
  [a, c, d],
];

/** A frame to build in: where its origin lies and how it is turned. */
interface Frame {
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly w: Vec3;
}

const STRAIGHT: Frame = { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 1, 0], w: [0, 0, 1] };
const W = unit([0.3, -0.5, 0.8]);
const U = unit(cross(W, [0.2, 0.9, 0.1]));
const TURNED: Frame = { origin: [412, -73, 288], u: U, v: cross(W, U), w: W };

const at = ({ origin, u, v, w }: Frame, x: number, y: number, z: number): Vec3 =>
  addScaled(addScaled(addScaled(origin, u, x), v, y), w, z);

function ring(frame: Frame, radius: number, z: number, sides: number): Vec3[] {
  return Array.from({ length: sides }, (_, i) => {
    const angle = (2 * Math.PI * i) / sides;
    return at(frame, radius * Math.cos(angle), radius * Math.sin(angle), z);
  });
}

const band = (lower: readonly Vec3[], upper: readonly Vec3[]): Corner[] =>
  lower.flatMap((_, i) => {
    const next = (i + 1) % lower.length;
    return quad(lower[i]!, lower[next]!, upper[next]!, upper[i]!);
  });

/** A flat face 60 mm across with a bore in its middle, 15 mm deep, its far end open. */
const boredFace = (frame: Frame, radius: number, sides: number): Corner[] => [
  ...band(ring(frame, radius, 0, sides), ring(frame, 30, 0, sides)),
  ...band(ring(frame, radius, 0, sides), ring(frame, radius, -15, sides)),
];

function expectRim(rim: ReturnType<typeof fitRim>, frame: Frame, radius: number, offMm: number, offDeg: number): void {
  if (rim === undefined) throw new Error('no rim was found');
  expect(distance(rim.centre, frame.origin)).toBeLessThan(offMm);
  expect((angleBetween(rim.axis, frame.w) * 180) / Math.PI).toBeLessThan(offDeg);
  expect(Math.abs(rim.radiusMm - radius)).toBeLessThan(offMm);
}

describe('fitRim', () => {
  // Exact: the vertices lie on the circle by construction; what remains is the rounding of float32 at some hundred mm.
  for (const [name, frame] of [
    ['as built', STRAIGHT],
    ['moved and turned', TURNED],
  ] as const)
    for (const sides of [12, 24, 64])
      it(`finds a bore of ${sides} sides in a flat face, ${name}`, () => {
        const mesh = soup(boredFace(frame, 7.5, sides));
        const rim = fitRim(mesh, at(frame, 11, 2, 0), frame.w);
        expectRim(rim, frame, 7.5, 1e-3, 0.01);
        expect(rim?.roundShare).toBe(1);
        expect(rim?.roughnessMm).toBeLessThan(1e-3);
      });

  it('looks the way it is told to, and answers the same twice', () => {
    const mesh = soup(boredFace(STRAIGHT, 7.5, 24));
    const [one, two] = [1, -1].map((sign) => fitRim(mesh, [9, 0, 0], [0.2, 0, sign]));
    expect(one?.axis[2]).toBeCloseTo(1, 6);
    expect(two?.axis[2]).toBeCloseTo(-1, 6);
    expect(fitRim(mesh, [9, 0, 0], [0.2, 0, 1])).toEqual(one);
  });

  it('does not mind how triangles are wound', () => {
    const random = seededRandom(5);
    const wound = boredFace(TURNED, 6, 24).map((t): Corner => (random() < 0.5 ? [t[0], t[2], t[1]] : t));
    expectRim(fitRim(soup(wound), at(TURNED, 9, 0, 0), TURNED.w), TURNED, 6, 1e-3, 0.01);
  });

  it('finds the end of an open tube, the nearer of its two', () => {
    const tube = band(ring(TURNED, 9, 0, 32), ring(TURNED, 9, -40, 32));
    expectRim(fitRim(soup(tube), at(TURNED, 9, 0, -3), TURNED.w), TURNED, 9, 1e-3, 0.01);
    const far = fitRim(soup(tube), at(TURNED, 0, 9, -37), TURNED.w);
    expect(distance(far?.centre ?? [0, 0, 0], at(TURNED, 0, 0, -40))).toBeLessThan(1e-3);
  });

  it('takes the edge pointed at where there are two in one face', () => {
    const stepped = [
      ...band(ring(STRAIGHT, 5, 0, 32), ring(STRAIGHT, 10, 0, 32)),
      ...band(ring(STRAIGHT, 5, 0, 32), ring(STRAIGHT, 5, -15, 32)),
      ...band(ring(STRAIGHT, 10, 0, 32), ring(STRAIGHT, 10, -15, 32)),
    ];
    expect(fitRim(soup(stepped), [5.5, 0, 0], [0, 0, 1])?.radiusMm).toBeCloseTo(5, 3);
    expect(fitRim(soup(stepped), [9.5, 0, 0], [0, 0, 1])?.radiusMm).toBeCloseTo(10, 3);
  });

  it('a place deep on the wall of a bore is left by the mouth that is seen, a place on the wall of a tube by its nearest end', () => {
    // A plate 12 mm thick with a hole through it, looked at from above into the hole, near its lower edge.
    const plate = soup([
      ...band(ring(TURNED, 9, 0, 48), ring(TURNED, 30, 0, 48)),
      ...band(ring(TURNED, 9, 0, 48), ring(TURNED, 9, -12, 48)),
      ...band(ring(TURNED, 9, -12, 48), ring(TURNED, 30, -12, 48)),
    ]);
    const eye = unit(addScaled(TURNED.w, TURNED.u, 0.6));
    const deep = at(TURNED, -9, 0, -10);
    expectRim(fitRim(plate, deep, eye, { normal: TURNED.u }), TURNED, 9, 1e-3, 0.01);
    const lower = fitRim(plate, deep, eye);
    expect(lower === undefined ? 0 : distance(lower.centre, TURNED.origin)).toBeCloseTo(12, 2);
    const tube = soup(band(ring(TURNED, 9, 0, 48), ring(TURNED, 9, -12, 48)));
    const end = fitRim(tube, at(TURNED, 9, 0, -10), eye, { normal: TURNED.u });
    expect(end === undefined ? 0 : distance(end.centre, TURNED.origin)).toBeCloseTo(12, 2);
  });

  it('finds a scanned bore with a broken edge, to a tenth of a millimetre and a degree', () => {
    for (const seed of [1, 2, 3]) {
      const mesh = scannedBore(TURNED, 8, 0.04, seed);
      const rim = fitRim(mesh, at(TURNED, 11, 0, 0), TURNED.w);
      if (rim === undefined) throw new Error(`seed ${seed}: no rim was found`);
      // The edge is broken by 0.4 mm: the rim may lie anywhere on that round.
      const off = scale(add(rim.centre, scale(TURNED.origin, -1)), 1);
      const along = off[0] * W[0] + off[1] * W[1] + off[2] * W[2];
      expect(Math.abs(along)).toBeLessThan(0.4);
      expect(distance(addScaled(off, W, -along), [0, 0, 0])).toBeLessThan(0.08);
      expect((angleBetween(rim.axis, W) * 180) / Math.PI).toBeLessThan(1);
      expect(rim.radiusMm).toBeGreaterThan(7.9);
      expect(rim.radiusMm).toBeLessThan(8.5);
    }
  });

  it('finds none on a flat face, on a ball, on a square hole and round a hexagon', () => {
    const flat = quad([-30, -30, 0], [30, -30, 0], [30, 30, 0], [-30, 30, 0]);
    expect(fitRim(soup(flat), [0, 0, 0], [0, 0, 1])).toBeUndefined();
    const ball = Array.from({ length: 15 }, (_, i) => (Math.PI * (i + 0.5)) / 16).flatMap((polar) => {
      const next = polar + Math.PI / 16;
      return band(
        ring(STRAIGHT, 30 * Math.sin(polar), 30 * Math.cos(polar), 32),
        ring(STRAIGHT, 30 * Math.sin(next), 30 * Math.cos(next), 32),
      );
    });
    expect(fitRim(soup(ball), [30, 0, 0], [1, 0, 0], { reachMm: 20 })).toBeUndefined();
    expect(fitRim(soup(boredFace(STRAIGHT, 8, 4)), [10, 0, 0], [0, 0, 1])).toBeUndefined();
    expect(fitRim(soup(boredFace(STRAIGHT, 8, 6)), [10, 0, 0], [0, 0, 1])).toBeUndefined();
  });

  it('finds a rim from the middle of its bore, and not from a place that means another', () => {
    const mesh = soup(boredFace(STRAIGHT, 7.5, 24));
    expect(fitRim(mesh, [0, 0, -3], [0, 0, 1])?.radiusMm).toBeCloseTo(7.5, 3);
    expect(fitRim(mesh, [18, 0, 0], [0, 0, 1], { mostRadiusMm: 20 })).toBeUndefined();
  });

  it('finds none where there is no mesh, and none beyond its reach', () => {
    expect(fitRim(soup([]), [0, 0, 0], [0, 0, 1])).toBeUndefined();
    expect(fitRim(soup(boredFace(STRAIGHT, 7.5, 24)), [500, 0, 0], [0, 0, 1])).toBeUndefined();
  });
});

/** A bored face as a scanner gives it: 0.8 mm triangles, a broken edge, every vertex off by some noise (normal, mm). */
function scannedBore(frame: Frame, radius: number, noiseMm: number, seed: number): TriMesh {
  const random = seededRandom(seed);
  const noise = (): number => noiseMm * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const sides = 64;
  // Down the bore, round the broken edge, out over the face: radius and height of each ring.
  const bore = Array.from({ length: 12 }, (_, i): [number, number] => [radius, -9.4 + 0.8 * i]);
  const edge: [number, number][] = [
    [radius + 0.12, -0.12],
    [radius + 0.4, 0],
  ];
  const face = Array.from({ length: 16 }, (_, i): [number, number] => [radius + 1.2 + 0.8 * i, 0]);
  const rings = [...bore, ...edge, ...face].map(([r, z]) =>
    ring(frame, r, z, sides).map((p) => add(p, [noise(), noise(), noise()])),
  );
  return soup(rings.slice(1).flatMap((upper, i) => band(rings[i]!, upper)));
}
