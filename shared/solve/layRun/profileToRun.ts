import { lerp, type Vec3 } from '../../base/vec3.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { requiredRunClearance } from '../../document/rules/requiredClearance.ts';
import type { TubeField } from '../bay/tubeField.ts';
import { nearProfile } from './measureProfile.ts';
import { runNeighbour } from './neighbours.ts';
import type { RunSetting } from './runSetting.ts';

/**
 * What the profile of a lay says of one run that was laid after it, or moved since: at the profile's own places, taken
 * on the report's line (0.1 mm off the curve on bends of 40 mm). None where that run is out of reach.
 */
export function profileToRun(
  project: Project,
  setting: RunSetting,
  { centreline, profile }: Pick<Lay, 'centreline' | 'profile'>,
  run: string,
  field: TubeField,
): NonNullable<Lay['profile']>['near'] {
  if (profile === undefined) return [];
  const { requiredMm } = requiredRunClearance(project, setting.run, run);
  const places = profile.arcLengthMm.map((s) => pointAlong(centreline, s));
  return nearProfile(setting, places, runNeighbour(field, run, requiredMm));
}

function pointAlong({ points, arcLengthMm }: Lay['centreline'], alongMm: number): Vec3 {
  let i = 1;
  while (i + 1 < points.length && (arcLengthMm[i] as number) < alongMm) i++;
  const [from, to] = [arcLengthMm[i - 1] as number, arcLengthMm[i] as number];
  return lerp(points[i - 1] as Vec3, points[i] as Vec3, Math.min(1, (alongMm - from) / (to - from)));
}
