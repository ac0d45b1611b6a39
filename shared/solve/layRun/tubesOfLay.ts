import { SAME_POINT_MM } from '../../base/tolerances.ts';
import { distance } from '../../base/vec3.ts';
import { type EndPlaces, endBody } from '../../document/lay/endBody.ts';
import type { AdapterPose, Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { buildTubeField, type Tube, type TubeField } from '../bay/tubeField.ts';
import { adapterPose } from './endsOfLay.ts';

/** What of a lay stands in other hoses' way. */
export interface StandingHose extends Pick<Lay, 'run' | 'centreline' | 'outsideDiameterMm'> {
  readonly ends: Readonly<Record<'a' | 'b', EndPlaces>>;
}

/**
 * A hose, its two ends and the adapters under them as obstacles to others. run: whose ends they are. to: the run they are
 * obstacles to; what stands on the seat of one of its own ports (the tee that both share) is none to it.
 */
export function tubesOfLay(lay: StandingHose, run: ResolvedRun, to?: ResolvedRun): Tube[] {
  const { ends } = lay;
  return [
    { run: lay.run, points: lay.centreline.points, radiusMm: lay.outsideDiameterMm / 2 },
    ...(['a', 'b'] as const).flatMap((side): Tube[] => [
      { run: lay.run, points: endBody(ends[side]), radiusMm: run[side].end.collarDiameterMm / 2 },
      ...tubesOfAdapters(lay.run, ends[side].adapters ?? [], to),
    ]),
  ];
}

const fields = new WeakMap<StandingHose, WeakMap<ResolvedRun, TubeField>>();

/** The same as a field; built once for a lay and the run that it is an obstacle to. run: the run of the lay. */
export function fieldOfLay(lay: StandingHose, run: ResolvedRun, to: ResolvedRun): TubeField {
  const known = fields.get(lay) ?? new WeakMap<ResolvedRun, TubeField>();
  fields.set(lay, known);
  const field = known.get(to) ?? buildTubeField(tubesOfLay(lay, run, to));
  known.set(to, field);
  return field;
}

/** The adapters of a run that is not laid (yet): they stand on their ports all the same. */
export function standingAdapters({ run, a, b }: ResolvedRun, to?: ResolvedRun): Tube[] {
  return [a, b].flatMap(({ stack }) => tubesOfAdapters(run.id, (stack?.fitted ?? []).map(adapterPose), to));
}

function tubesOfAdapters(run: string, adapters: readonly AdapterPose[], to: ResolvedRun | undefined): Tube[] {
  const seat = adapters[0]?.points[0];
  const isShared = [to?.a, to?.b].some(
    (end) =>
      end !== undefined &&
      seat !== undefined &&
      distance((end.stack?.bare ?? end.port).seatPoint, seat) < SAME_POINT_MM,
  );
  if (isShared) return [];
  return adapters.flatMap(({ points, branch, diameterMm }) =>
    [points, ...(branch === undefined ? [] : [branch])].map((line) => ({
      run,
      points: line,
      radiusMm: diameterMm / 2,
    })),
  );
}
