import { addScaled, triple, type Vec3 } from '../../base/vec3.ts';
import type { ReachPlace } from '../../document/lay/hands.ts';
import { leakyJoints } from '../../document/lay/leakyJoints.ts';
import type { Clearance, Lay, Place, Thing } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Project, SkinKind } from '../../document/project/schema.ts';
import { type Box, boxOfMesh } from '../../geometry/box.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { mouthPlace, sideText } from '../checks/places.ts';
import { isRodFree } from './rodRoom.ts';

/** mm. A finger, a hand with its arm, and how far an arm reaches in: common practice, no source. */
const FINGER_RADIUS_MM = 12;
const FINGER_MM = 80;
const ARM_RADIUS_MM = 45;
const ARM_MM = 650;
/** Ways from which an arm is tried, evenly over the sphere. */
const WAYS = 90;
/** Places told of a hose at most. */
const MOST_PLACES = 6;
/** mm. What is further off than this and twice what is asked needs no looking at. */
const NEAR_MM = 25;
/** mm. Places nearer to each other along the hose are one. */
const SAME_PLACE_MM = 40;

/**
 * Where a hand belongs when a hose is looked over again, and whether one comes there: joints that leak first, the tightest place to each kind of
 * thing that harms (hot, sharp, moving, composite, another hose), the clamps, and the tightest bend. A straight arm is tried
 * from 90 ways: a finger 80 mm long and 24 thick that touches the hose, behind it hand and arm 90 mm thick until they are out
 * of the box round the bay or 650 mm long (common practice, no source). Hoses are let be, a hand bends them aside; an arm that
 * bends at the elbow may come where this says mirror.
 */
export function reachPlaces(run: ResolvedRun, lay: Lay, bay: BayIndex, project: Project): ReachPlace[] {
  const box = boxOfMesh(bay.mesh);
  return wantedPlaces(run, lay, project).map(({ at, why, thing, joint }) => {
    const from = armTo(at.point, lay.outsideDiameterMm / 2, bay, box);
    return {
      at,
      why,
      ...(thing === undefined ? {} : { thing }),
      ...(joint === undefined ? {} : { joint }),
      by: from === undefined ? 'mirror' : 'hand',
      ...(from === undefined ? {} : { from: triple(from) }),
    };
  });
}

interface Wanted {
  readonly at: Place;
  readonly why: string;
  readonly thing?: Thing;
  readonly joint?: 'a' | 'b';
}

function wantedPlaces(run: ResolvedRun, lay: Lay, project: Project): Wanted[] {
  const joints = leakyJoints(run, project.vehicle).map(
    (joint): Wanted => ({ at: mouthPlace(lay, joint), why: `joint of ${sideText(joint)}`, joint }),
  );
  const kindOf = (thing: Thing) => project.bay.skins.find((skin) => skin.id === thing.id)?.kind ?? 'plain';
  const near = lay.clearances
    .filter(({ to }) => to.kind === 'run' || kindOf(to) !== 'plain')
    .filter(({ clearanceMm, requiredMm }) => clearanceMm <= 2 * requiredMm + NEAR_MM)
    .toSorted((a, b) => roomOf(a) - roomOf(b))
    .map(({ to, at, clearanceMm }): Wanted => {
      const name = to.part ?? to.id;
      const kind = to.kind === 'run' ? 'another hose' : HARMS[kindOf(to)];
      return { at, why: `${clearanceMm.toFixed(0)} mm from ${name} (${kind})`, thing: to };
    });
  const clamps = lay.supports
    .filter(({ kind, proposed }) => kind !== 'waypoint' && !proposed)
    .map(({ kind, at }): Wanted => ({ at, why: kind === 'clamp' ? 'under the clamp' : 'in the pass-through' }));
  const bend: Wanted = { at: lay.minRadius.at, why: 'back of the tightest bend' };
  const all = [...joints, ...near, ...clamps, bend];
  return all
    .filter((one, i) => all.slice(0, i).every((before) => farFrom(one, before)))
    .slice(0, MOST_PLACES)
    .toSorted((a, b) => a.at.arcLengthMm - b.at.arcLengthMm);
}

const HARMS: Readonly<Record<SkinKind, string>> = {
  hot: 'hot',
  'sharp-edge': 'sharp',
  composite: 'composite',
  moving: 'moving',
  wiring: 'wiring',
  plain: 'plain',
};

function roomOf({ clearanceMm, requiredMm }: Clearance): number {
  return clearanceMm - requiredMm;
}

function farFrom(a: Wanted, b: Wanted): boolean {
  return Math.abs(a.at.arcLengthMm - b.at.arcLengthMm) >= SAME_PLACE_MM;
}

/** Where a straight arm comes from to a place, unit, the first of the ways that is free; undefined = none. */
export function armTo(point: Vec3, hoseRadiusMm: number, bay: BayIndex, box: Box): Vec3 | undefined {
  const bvhs = bay.skins.map(({ bvh }) => bvh);
  return ARM_WAYS.find((way) => {
    const at = (mm: number): Vec3 => addScaled(point, way, mm);
    const tip = hoseRadiusMm + FINGER_RADIUS_MM;
    const hand = tip + FINGER_MM + ARM_RADIUS_MM - FINGER_RADIUS_MM;
    const outMm = outOf(box, point, way) + ARM_RADIUS_MM;
    if (outMm > hand + ARM_MM) return false;
    const finger = { from: at(tip), to: at(tip + FINGER_MM), radiusMm: FINGER_RADIUS_MM };
    const arm = { from: at(hand), to: at(Math.max(hand, outMm)), radiusMm: ARM_RADIUS_MM };
    return isRodFree(finger, bvhs) && isRodFree(arm, bvhs);
  });
}

/** From above first, since that is where a hand comes from: points on a spiral of equal areas (Vogel 1979). */
const ARM_WAYS: readonly Vec3[] = Array.from({ length: WAYS }, (_, i) => {
  const z = 1 - (2 * i + 1) / WAYS;
  const turn = i * Math.PI * (3 - Math.sqrt(5));
  const flat = Math.sqrt(1 - z * z);
  return [flat * Math.cos(turn), flat * Math.sin(turn), z];
});

/** How far along a way from a point the box ends, mm; 0 outside of it. */
function outOf({ min, max }: Box, point: Vec3, way: Vec3): number {
  const exits = way.map((w, i) => (w === 0 ? Infinity : ((w > 0 ? max[i]! : min[i]!) - point[i]!) / w));
  return Math.max(0, Math.min(...exits));
}
