import { type RandomSource, seededRandom } from '../../shared/base/random.ts';
import { addScaled, distance, type Vec3 } from '../../shared/base/vec3.ts';
import type { ResolvedProject } from '../../shared/document/project/resolve.ts';
import { nearestDistance } from '../../shared/geometry/bvh.ts';
import type { BayIndex } from '../../shared/solve/bay/bayIndex.ts';
import { exampleEnd, exampleHose, examplePort, oneRunProject } from '../arbitraries/rig.ts';

/** mm. Ports stand this far from the bay, and have this much straight room before them. */
const ROOM_MM = 45;
const STRAIGHT_MM = 160;
const PORTS_APART_MM = 90;
/** mm. How far apart the ports of a run are, at least and at most, where nothing else is wanted. */
const APART_MM = [350, 900] as const;
/** Bounds within which ports stand, mm. */
const WITHIN = { min: [-700, -500, 60], max: [700, 500, 840] } as const;

const HOSES = [
  exampleHose({ id: 'hose-6', insideDiameterMm: 8, outsideDiameterMm: 11, minBendRadiusMm: 65 }),
  exampleHose({ id: 'hose-8', insideDiameterMm: 10.5, outsideDiameterMm: 13.5, minBendRadiusMm: 90 }),
  exampleHose({ id: 'hose-10', insideDiameterMm: 13.5, outsideDiameterMm: 16.5, minBendRadiusMm: 110 }),
] as const;
const STRAIGHT = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 30, shoulderToMouthMm: 22 });
const ANGLED = exampleEnd(45, { seatToBendMm: 25, bendToShoulderMm: 22, shoulderToMouthMm: 22 });

/** Runs between ports strewn in a bay at random, each with room about it: hoses of three sizes, straight and angled ends. */
export function strewnRuns(
  bay: BayIndex,
  seed: number,
  count: number,
  apartMm: readonly [least: number, most: number] = APART_MM,
): ResolvedProject {
  const random = seededRandom(seed);
  const taken: Vec3[] = [];
  const all = Array.from({ length: count }, (_, i) => {
    const [from, to] = portPair(bay, random, taken, apartMm);
    const hose = HOSES[i % HOSES.length] as (typeof HOSES)[number];
    const ends: [typeof STRAIGHT, typeof STRAIGHT] = [i % 2 === 0 ? STRAIGHT : ANGLED, i % 3 === 0 ? STRAIGHT : ANGLED];
    const ports = [from, to].map((port, side) =>
      examplePort(`${'ab'[side]}${i}`, {
        seatPoint: [...port.point],
        axis: [...port.axis],
        up: port.axis[2] === 0 ? [0, 0, 1] : [1, 0, 0],
      }),
    ) as [ReturnType<typeof examplePort>, ReturnType<typeof examplePort>];
    return oneRunProject(ports, ends, hose, { id: `run-${i}`, name: `Run ${i}` });
  });
  const first = (all[0] as ResolvedProject).project;
  return {
    project: { ...first, ports: all.flatMap((p) => p.project.ports), runs: all.flatMap((p) => p.project.runs) },
    runs: all.flatMap((p) => p.runs),
  };
}

interface Stand {
  readonly point: Vec3;
  readonly axis: Vec3;
}

function portPair(
  bay: BayIndex,
  random: RandomSource,
  taken: Vec3[],
  [least, most]: readonly [number, number],
): [Stand, Stand] {
  for (;;) {
    const from = stand(bay, random, taken);
    const to = stand(bay, random, taken);
    const apart = distance(from.point, to.point);
    if (apart < least || apart > most) continue;
    taken.push(from.point, to.point);
    return [from, to];
  }
}

function stand(bay: BayIndex, random: RandomSource, taken: readonly Vec3[]): Stand {
  for (;;) {
    const within = (k: 0 | 1 | 2): number => WITHIN.min[k] + random() * (WITHIN.max[k] - WITHIN.min[k]);
    const point: Vec3 = [within(0), within(1), within(2)];
    const along = Math.floor(random() * 3);
    const sign = random() < 0.5 ? -1 : 1;
    const axis: Vec3 = [along === 0 ? sign : 0, along === 1 ? sign : 0, along === 2 ? sign : 0];
    if (taken.some((other) => distance(other, point) < PORTS_APART_MM)) continue;
    const steps = [0, 0.25, 0.5, 0.75, 1].map((share) => addScaled(point, axis, share * STRAIGHT_MM));
    if (steps.every((place) => isRoomy(bay, place))) return { point, axis };
  }
}

function isRoomy(bay: BayIndex, [x, y, z]: Vec3): boolean {
  return bay.skins.every(({ bvh }) => nearestDistance(bvh, x, y, z, 2 * ROOM_MM) >= ROOM_MM);
}
