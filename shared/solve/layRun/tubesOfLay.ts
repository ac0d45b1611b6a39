import type { EndPose, Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Tube } from '../bay/tubeField.ts';

/** What of a lay stands in other hoses' way. */
export interface StandingHose extends Pick<Lay, 'run' | 'centreline' | 'outsideDiameterMm'> {
  readonly ends: Readonly<Record<'a' | 'b', Pick<EndPose, 'seatPoint' | 'bendPoint' | 'shoulderPoint' | 'mouthPoint'>>>;
}

/** A hose and its two ends as obstacles to others. run: whose ends they are. */
export function tubesOfLay(lay: StandingHose, run: ResolvedRun): Tube[] {
  const collar = (side: 'a' | 'b'): Tube => {
    const pose = lay.ends[side];
    return {
      run: lay.run,
      points: [pose.seatPoint, pose.bendPoint, pose.shoulderPoint, pose.mouthPoint],
      radiusMm: run[side].end.collarDiameterMm / 2,
    };
  };
  return [
    { run: lay.run, points: lay.centreline.points, radiusMm: lay.outsideDiameterMm / 2 },
    collar('a'),
    collar('b'),
  ];
}
