import { distance, lengthOf, lerp, type Vec3 } from '../../base/vec3.ts';
import { endBody } from '../../document/lay/endBody.ts';
import type { Lay, Thing } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { flareNutHexMm, NUT_LENGTH } from './wrench.ts';

/** A round stretch of a hose, an end or an adapter: balls close together that hold it. mm, bay frame. */
export interface Ball {
  readonly centre: Vec3;
  readonly radiusMm: number;
  readonly thing: Thing;
}

/** mm. Balls along a line stand this far apart at most. */
const STEP_MM = 2;

/** All of a laid run: its hose, both ends with their nuts, and the adapters under them. */
export function ballsOfRun(run: ResolvedRun, lay: Lay): Ball[] {
  const thing: Thing = { kind: 'run', id: lay.run };
  return [
    ...along(lay.centreline.points, lay.outsideDiameterMm / 2, thing),
    ...(['a', 'b'] as const).flatMap((side) => ballsOfEnd(run, lay, side)),
  ];
}

/** An end from its seat to its mouth at its collar's radius, its nut at the hex's corners, and the adapters it stands on. */
export function ballsOfEnd(run: ResolvedRun, lay: Lay, side: 'a' | 'b'): Ball[] {
  const { end } = run[side];
  const pose = lay.ends[side];
  const thing: Thing = { kind: 'run', id: lay.run };
  const body = endBody(pose);
  const hexMm = end.hexMm ?? flareNutHexMm(end.dash);
  const nut = (end.form ?? 'nut') === 'nut' ? along(nutLine(body, hexMm), hexMm / Math.sqrt(3), thing) : [];
  const adapters = (pose.adapters ?? []).flatMap(({ points, branch, diameterMm }) => [
    ...along(points, diameterMm / 2, thing),
    ...along(branch ?? [], diameterMm / 2, thing),
  ]);
  return [...along(body, end.collarDiameterMm / 2, thing), ...nut, ...adapters];
}

/** From the seat along the end as far as its nut is long. */
function nutLine([seat, next]: readonly Vec3[], hexMm: number): Vec3[] {
  if (seat === undefined || next === undefined) return [];
  const lengthMm = distance(seat, next);
  return [seat, lengthMm > 0 ? lerp(seat, next, Math.min(1, (NUT_LENGTH * hexMm) / lengthMm)) : next];
}

/** The own end beyond its bend, where it may come back beside its nut, and the adapters under it. */
export function ballsBesideNut(run: ResolvedRun, lay: Lay, side: 'a' | 'b'): Ball[] {
  const pose = lay.ends[side];
  const thing: Thing = { kind: 'run', id: lay.run };
  return [
    ...along(endBody(pose).slice(1), run[side].end.collarDiameterMm / 2, thing),
    ...(pose.adapters ?? []).flatMap(({ points, branch, diameterMm }) => [
      ...along(points, diameterMm / 2, thing),
      ...along(branch ?? [], diameterMm / 2, thing),
    ]),
  ];
}

/** Balls that hold the round rod along a line: their radius is that of a ball through the rod's skin half way to the next. */
function along(points: readonly Vec3[], radiusMm: number, thing: Thing): Ball[] {
  return points.slice(1).flatMap((to, i) => {
    const from = points[i] as Vec3;
    const count = Math.max(1, Math.ceil(distance(from, to) / STEP_MM));
    const holds = lengthOf(radiusMm, distance(from, to) / count / 2);
    return Array.from({ length: count + 1 }, (_, k) => ({ centre: lerp(from, to, k / count), radiusMm: holds, thing }));
  });
}
