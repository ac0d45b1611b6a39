import { type RandomSource, seededRandom } from '../../shared/base/random.ts';
import { addScaled, anySquareTo, cross, distance, scale, turnAbout, unit, type Vec3 } from '../../shared/base/vec3.ts';
import { UNWATCHED } from '../../shared/base/watch.ts';
import type { ResolvedProject } from '../../shared/document/project/resolve.ts';
import { PLAIN_SKIN } from '../../shared/document/project/schema.ts';
import {
  type ArcLinePath,
  type PathSegment,
  type Pose,
  partOfPath,
  pathEnd,
  pathLengthMm,
  poseAlongSegment,
  samplePath,
  segmentLengthMm,
} from '../../shared/geometry/arcLinePath.ts';
import { type Box, growBox } from '../../shared/geometry/box.ts';
import type { TriMesh } from '../../shared/geometry/triMesh.ts';
import { type BayIndex, buildBayIndex } from '../../shared/solve/bay/bayIndex.ts';
import { distanceToPath } from './pathDistance.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from './rig.ts';
import { block, carved, cylinder, meshOfTriangles, pipe, plate, type Triangle, torus } from './triangles.ts';

/** From much room to none but the carved tube: few things; dense things; walls with one hole each; a pipe; a crate of cells. */
export const CARVED_KINDS = ['open', 'cluttered', 'walls', 'pipe', 'crate'] as const;
export type CarvedKind = (typeof CARVED_KINDS)[number];

/** A bay with a run that can be solved by construction: the hose of `path` keeps its radius and all of its clearance. */
export interface CarvedBay {
  readonly seed: number;
  readonly kind: CarvedKind;
  /** from seat to seat, straight over ends and tails */
  readonly path: ArcLinePath;
  /** the part of it between the tails: what a search has to equal */
  readonly between: ArcLinePath;
  readonly minRadiusMm: number;
  /** hose radius and clearance: what the centreline keeps from every surface, but near its seats */
  readonly keepMm: number;
  /** how much wider than `keepMm` the tube was carved */
  readonly roomMm: number;
  readonly tailMm: number;
  readonly mesh: TriMesh;
  readonly bay: BayIndex;
  readonly project: ResolvedProject;
}

/** mm. Straight end, seat to shoulder to mouth. */
const END = { bendToShoulderMm: 20, shoulderToMouthMm: 15 };
const STRAIGHT_TAIL_DIAMETERS = 2;

/**
 * The seeded instance: a hose of 8 to 40 mm and a curve of straights and arcs, none tighter than its least radius of 40 to
 * 120 mm and 200 to 1500 mm long, is drawn first; then the bay is filled and everything nearer than the hose, its clearance and
 * `roomMm` is cut away.
 */
export function carvedBay(seed: number, kind: CarvedKind = CARVED_KINDS[seed % CARVED_KINDS.length]!): CarvedBay {
  const random = seededRandom(70_000 + seed);
  const outsideDiameterMm = between(random, 8, 40);
  const minRadiusMm = Math.max(40, Math.min(120, outsideDiameterMm * between(random, 3, 7)));
  const clearanceMm = between(random, 3, 12);
  const keepMm = outsideDiameterMm / 2 + clearanceMm;
  const roomMm = kind === 'pipe' || kind === 'crate' ? between(random, 1, 6) : 1;
  const tailMm = STRAIGHT_TAIL_DIAMETERS * outsideDiameterMm;
  const endMm = END.bendToShoulderMm + END.shoulderToMouthMm + tailMm;
  const path = soundCurve(random, minRadiusMm, keepMm + roomMm, endMm);
  const parts = { ...filled(random, kind, path, keepMm + roomMm), ...(kind === 'pipe' ? {} : { seats: bosses(path) }) };
  const mesh = meshOfTriangles(parts);
  const hose = exampleHose({
    outsideDiameterMm,
    insideDiameterMm: 0.65 * outsideDiameterMm,
    minBendRadiusMm: minRadiusMm,
    minBendRadiusDatum: 'centreline',
  });
  return {
    seed,
    kind,
    path,
    between: partOfPath(path, endMm, pathLengthMm(path) - endMm),
    minRadiusMm,
    keepMm,
    roomMm,
    tailMm,
    mesh,
    bay: buildBayIndex(mesh, () => ({ ...PLAIN_SKIN, clearanceMm }), UNWATCHED),
    project: projectOf(path, hose),
  };
}

function projectOf(path: ArcLinePath, hose: ReturnType<typeof exampleHose>): ResolvedProject {
  const { start } = path;
  const end = pathEnd(path);
  const port = (id: string, point: Vec3, axis: Vec3) =>
    examplePort(id, { seatPoint: [...point], axis: [...axis], up: [...anySquareTo(axis)] });
  const ends = exampleEnd(0, { seatToBendMm: 0, ...END });
  const ports: Parameters<typeof oneRunProject>[0] = [
    port('a', start.point, start.direction),
    port('b', end.point, scale(end.direction, -1)),
  ];
  return oneRunProject(ports, [ends, ends], hose);
}

function between(random: RandomSource, least: number, most: number): number {
  return least + (most - least) * random();
}

function directionFrom(random: RandomSource): Vec3 {
  const z = 2 * random() - 1;
  const turn = 2 * Math.PI * random();
  const flat = Math.sqrt(1 - z * z);
  return [flat * Math.cos(turn), flat * Math.sin(turn), z];
}

/** Curves are drawn until one neither touches itself nor runs over its own seats. */
function soundCurve(random: RandomSource, radiusMm: number, keepMm: number, endMm: number): ArcLinePath {
  for (;;) {
    const path = curve(random, radiusMm, endMm);
    const lengthMm = pathLengthMm(path);
    if (lengthMm - 2 * endMm >= 200 && lengthMm <= 1500 && staysApart(path, radiusMm, keepMm)) return path;
  }
}

function staysApart(path: ArcLinePath, radiusMm: number, keepMm: number): boolean {
  const stepMm = 5;
  const places = samplePath(path, stepMm).map(({ point }) => point);
  const neighbours = Math.ceil((Math.PI * radiusMm) / stepMm);
  const clearOfSeat = keepMm + 3 * BOSS_MM;
  const nearSeat = Math.ceil((2 * clearOfSeat) / stepMm);
  const farFromSeat = (seat: Vec3, i: number, j: number): boolean =>
    Math.abs(i - j) < nearSeat || distance(seat, places[j]!) > clearOfSeat;
  return places.every(
    (p, i) =>
      places.every((q, j) => Math.abs(i - j) < neighbours || distance(p, q) > 2 * keepMm) &&
      farFromSeat(places[0]!, 0, i) &&
      farFromSeat(places.at(-1)!, places.length - 1, i),
  );
}

/** Straight, bends of one of four characters, straight. */
function curve(random: RandomSource, radiusMm: number, endMm: number): ArcLinePath {
  const start: Pose = { point: [0, 0, 0], direction: directionFrom(random) };
  const segments: PathSegment[] = [];
  let pose = start;
  const add = (segment: PathSegment): void => {
    segments.push(segment);
    pose = poseAlongSegment(pose, segment, segmentLengthMm(segment));
  };
  const line = (lengthMm: number): void => add({ kind: 'line', lengthMm });
  const side = (turn: number): Vec3 => turnAbout(anySquareTo(pose.direction), pose.direction, turn);
  const arc = (angleRad: number, normal: Vec3): void =>
    add({ kind: 'arc', radiusMm: radiusMm * (1 + 1.5 * random() ** 3), angleRad, normal });
  const wantedMm = between(random, 200, 1400) - 2 * endMm;
  line(endMm);
  const character = Math.floor(4 * random());
  let normal = side(2 * Math.PI * random());
  let bentFrom = pose.direction;
  for (let doneMm = 0; doneMm < wantedMm; doneMm = segments.reduce((sum, s) => sum + segmentLengthMm(s), -endMm)) {
    if (random() < 0.5) line(between(random, 0.1, 2) * radiusMm);
    if (character === 0) {
      // a U-turn
      arc(between(random, 2.6, 3.1), side(2 * Math.PI * random()));
      line(between(random, 0.5, 2) * radiusMm);
    } else if (character === 1) {
      // an S, bend after bend in one plane
      const before = pose.direction;
      const angle = between(random, 0.4, 1.6);
      arc(angle, normal);
      normal = unit(addScaled(scale(normal, -Math.cos(angle)), before, Math.sin(angle)));
    } else if (character === 2) {
      // each bend in a plane square to the last one's
      const across = scale(cross(bentFrom, normal), random() < 0.5 ? 1 : -1);
      bentFrom = pose.direction;
      normal = across;
      arc(between(random, 0.6, 1.9), normal);
    } else arc(between(random, 0.2, 2.2), side(2 * Math.PI * random()));
  }
  line(endMm);
  return { start, segments };
}

/** mm. Half the width and depth of the boss that a port stands on. */
const BOSS_MM = 15;

function bosses(path: ArcLinePath): Triangle[] {
  const end = pathEnd(path);
  const boss = (point: Vec3, outwards: Vec3): Triangle[] =>
    cylinder(addScaled(point, outwards, -BOSS_MM), outwards, BOSS_MM, BOSS_MM);
  return [...boss(path.start.point, path.start.direction), ...boss(end.point, scale(end.direction, -1))];
}

function boxOf(path: ArcLinePath): Box {
  const places = samplePath(path, 5).map(({ point }) => point);
  const of = (pick: (...v: number[]) => number): Vec3 => [
    pick(...places.map((p) => p[0])),
    pick(...places.map((p) => p[1])),
    pick(...places.map((p) => p[2])),
  ];
  return { min: of(Math.min), max: of(Math.max) };
}

function filled(
  random: RandomSource,
  kind: CarvedKind,
  path: ArcLinePath,
  keepMm: number,
): Record<string, readonly Triangle[]> {
  const box = growBox(boxOf(path), keepMm + between(random, 40, 160));
  const away = distanceToPath(path);
  const cut = (triangles: readonly Triangle[]) => carved(triangles, away, keepMm);
  if (kind === 'open') return { things: cut(things(random, box, 5 + Math.floor(10 * random()))) };
  if (kind === 'cluttered') return { things: cut(things(random, box, 80 + Math.floor(120 * random()))) };
  if (kind === 'walls')
    return { shell: shell(box), walls: cut(walls(random, box)), things: cut(things(random, box, 20)) };
  if (kind === 'pipe') {
    // Stretches of it never meet: the curve stays two radii of the pipe from itself.
    return { pipe: pipe(samplePath(path, 4), keepMm + PIPE_FLATNESS_MM) };
  }
  return { shell: shell(box), crate: cut(crate(box, 1.6 * keepMm)) };
}

/** mm. What the flat faces of a pipe come in by along a bend. */
const PIPE_FLATNESS_MM = 0.3;

function middleOf({ min, max }: Box): Vec3 {
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
}

function halvesOf({ min, max }: Box): [Vec3, Vec3, Vec3] {
  return [
    [(max[0] - min[0]) / 2, 0, 0],
    [0, (max[1] - min[1]) / 2, 0],
    [0, 0, (max[2] - min[2]) / 2],
  ];
}

/** The bay's own outside: closed, so that there is no way round. */
function shell(box: Box): Triangle[] {
  return block(middleOf(box), halvesOf(box));
}

function things(random: RandomSource, box: Box, count: number): Triangle[] {
  return Array.from({ length: count }, () => thing(random, box)).flat();
}

function thing(random: RandomSource, { min, max }: Box): Triangle[] {
  const centre: Vec3 = [
    between(random, min[0], max[0]),
    between(random, min[1], max[1]),
    between(random, min[2], max[2]),
  ];
  const axis = directionFrom(random);
  const across = turnAbout(anySquareTo(axis), axis, 2 * Math.PI * random());
  const third = cross(axis, across);
  const half = (): number => between(random, 10, 60);
  const draw = random();
  if (draw < 0.3) return block(centre, [scale(axis, half()), scale(across, half()), scale(third, half())]);
  if (draw < 0.55) return cylinder(centre, axis, between(random, 8, 45), between(random, 20, 150));
  if (draw < 0.75) return torus(centre, axis, between(random, 40, 110), between(random, 6, 22));
  return plate(centre, scale(across, between(random, 40, 160)), scale(third, between(random, 40, 160)));
}

/** Walls right across the bay, square to one or two of its edges. */
function walls(random: RandomSource, box: Box): Triangle[] {
  const halves = halvesOf(box);
  const centre = middleOf(box);
  const across = (axis: number, at: number): Triangle[] =>
    plate(addScaled(centre, halves[axis]!, at), halves[(axis + 1) % 3]!, halves[(axis + 2) % 3]!);
  const first = Math.floor(3 * random());
  const count = 1 + Math.floor(3 * random());
  const all = Array.from({ length: count }, (_, i) => across(first, ((i + 1) / (count + 1)) * 2 - 1));
  if (random() < 0.5) all.push(across((first + 1) % 3, between(random, -0.5, 0.5)));
  return all.flat();
}

/** Cells so small that no hose's middle fits in one: only what is cut out leads on. */
function crate(box: Box, cellMm: number): Triangle[] {
  const halves = halvesOf(box);
  const centre = middleOf(box);
  return [0, 1, 2].flatMap((axis) => {
    const count = Math.ceil((2 * Math.max(...halves[axis]!)) / cellMm);
    return Array.from({ length: count - 1 }, (_, i) =>
      plate(
        addScaled(centre, halves[axis]!, (2 * (i + 1)) / count - 1),
        halves[(axis + 1) % 3]!,
        halves[(axis + 2) % 3]!,
      ),
    ).flat();
  });
}
