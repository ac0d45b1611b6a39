import { SAME_POINT_MM } from '../../base/tolerances.ts';
import { addScaled, distance, dot, sub, type Vec3 } from '../../base/vec3.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import type { Tube } from '../bay/tubeField.ts';
import { runSetting } from './runLimits.ts';
import { type EndSetting, fittedAt, type RunSetting, tailPose } from './runSetting.ts';
import { standingAdapters } from './tubesOfLay.ts';

/**
 * What of a run stands in other hoses' way before it is laid, wherever its hose will go: the adapters on its ports, an end
 * whose clock is known with the straight hose beyond its mouth, and of an end that still turns the part along its port's
 * axis. to: the run they are obstacles to; what stands on a seat of its own is none to it.
 */
export function standingTubes(project: Project, resolved: ResolvedRun, to?: ResolvedRun): Tube[] {
  const setting = runSetting(project, resolved);
  const own = to === undefined ? [] : [to.a, to.b].map(({ port }) => port.seatPoint);
  const ends = (['a', 'b'] as const).filter((side) =>
    own.every((seat) => distance(seat, setting[side].port.seatPoint) > SAME_POINT_MM),
  );
  return [...standingAdapters(resolved, to), ...ends.flatMap((side) => standingEnd(setting, side))].map((tube) => ({
    ...tube,
    standing: true,
  }));
}

function standingEnd(setting: RunSetting, side: 'a' | 'b'): Tube[] {
  const end = setting[side];
  const { body, mouthPoint } = fittedAt(end, end.clockRad);
  const radiusMm = end.end.collarDiameterMm / 2;
  const points = end.turns ? body.slice(0, 2).filter((p) => isOnAxis(end, p)) : body;
  const tail: Tube = {
    run: setting.run,
    points: [mouthPoint, tailPose(end, side, setting.tailMm, end.clockRad).point],
    radiusMm: setting.outsideRadiusMm,
  };
  return [{ run: setting.run, points, radiusMm }, ...(end.turns ? [] : [tail])];
}

function isOnAxis({ port: { seatPoint, axis } }: EndSetting, point: Vec3): boolean {
  return distance(point, addScaled(seatPoint, axis, dot(sub(point, seatPoint), axis))) < SAME_POINT_MM;
}
