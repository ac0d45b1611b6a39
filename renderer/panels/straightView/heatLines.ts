import type { Heat } from '../../../shared/document/lay/heat.ts';
import type { TrackPoint } from '../../state/layPlaces.ts';

/** The liner's temperature along the hose in both states, deg C, and where it comes nearest to its limit or furthest over. */
export interface HeatLines {
  readonly running: readonly TrackPoint[];
  readonly soak: readonly TrackPoint[];
  readonly hottest: TrackPoint & { readonly soaking: boolean };
}

export function heatLines({ arcLengthMm, running, soak }: Heat): HeatLines {
  const along = (values: readonly number[]): TrackPoint[] =>
    arcLengthMm.map((arc, i) => ({ arcLengthMm: arc, value: values[i] ?? 0 }));
  const lines = { running: along(running.liner.likely), soak: along(soak.liner.likely) };
  const most = (points: readonly TrackPoint[]): TrackPoint =>
    points.reduce((best, next) => (next.value > best.value ? next : best), points[0] ?? { arcLengthMm: 0, value: 0 });
  const [run, soaked] = [most(lines.running), most(lines.soak)];
  const soaking = soaked.value > run.value;
  return { ...lines, hottest: { ...(soaking ? soaked : run), soaking } };
}
