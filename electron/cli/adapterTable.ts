import { SAME_POINT_MM } from '../../shared/base/tolerances.ts';
import { distance, type Vec3 } from '../../shared/base/vec3.ts';
import type { Lay, TaperPose } from '../../shared/document/lay/schema.ts';
import { formatClearance, formatDegrees, formatRadius, formatTurn } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

const HEADINGS = ['RUN', 'END', 'FROM THE PART OUTWARDS'];

/** What stands between ports and ends, with the clocks it is turned to; nothing where no port has adapters. */
export function adapterTable(lays: readonly Lay[]): string[] {
  const rows = lays.flatMap((lay) =>
    (['a', 'b'] as const).flatMap((side) => {
      const adapters = lay.ends[side].adapters ?? [];
      const words = adapters.map(({ id, clockDeg, points, branch }) =>
        isStraight(points) && branch === undefined ? id : `${id} at ${formatDegrees(clockDeg)}`,
      );
      return adapters.length === 0 ? [] : [[lay.run, side.toUpperCase(), words.join(', then ')]];
    }),
  );
  return rows.length === 0 ? [] : ['', 'ON ADAPTERS', ...inColumns([HEADINGS, ...rows])];
}

/** Whether an adapter's outlet goes on the way it came: it then stands the same at every clock. */
function isStraight([seat, bend, outlet]: readonly Vec3[]): boolean {
  if (seat === undefined || bend === undefined || outlet === undefined) return true;
  return distance(seat, bend) + distance(bend, outlet) - distance(seat, outlet) < SAME_POINT_MM;
}

const TAPER_HEADINGS = ['RUN', 'TIGHT ANYWHERE IN', 'LEAST SLACK', 'LEAST RADIUS', 'LEAST CLEARANCE', 'TWIST'];

/** The hoses on taper threads: the worst over all clocks at which those may come tight, each with its clock. */
export function taperTable(lays: readonly Lay[]): string[] {
  const rows = lays.flatMap(({ run, taper }) => {
    if (taper === undefined) return [];
    const { ranges, poses, worst } = taper;
    const at = (n: number | undefined): TaperPose | undefined => (n === undefined ? undefined : poses[n]);
    const slack = at(worst.slackLeft);
    return [
      [
        run,
        ranges.map((r) => `${r.adapter} ${formatTurn(r.fromDeg)} to ${formatTurn(r.toDeg)}`).join(', '),
        slack === undefined ? '-' : `${formatClearance(slack.slackLeftMm)}${clockText(slack)}`,
        told(at(worst.minRadius), (p) =>
          p.minRadius === undefined ? undefined : formatRadius(p.minRadius.provenAtLeastMm),
        ),
        told(at(worst.clearance), ({ tightest }) =>
          tightest === undefined
            ? undefined
            : `${formatClearance(tightest.clearanceMm)} to ${tightest.to.part ?? tightest.to.id}`,
        ),
        told(at(worst.twist), (p) => (p.twistDeg === undefined ? undefined : formatTurn(Math.abs(p.twistDeg), 'up'))),
      ],
    ];
  });
  if (rows.length === 0) return [];
  return ['', 'ON TAPER THREADS: worst over all clocks looked at', ...inColumns([TAPER_HEADINGS, ...rows])];
}

function told(pose: TaperPose | undefined, text: (pose: TaperPose) => string | undefined): string {
  const words = pose === undefined ? undefined : text(pose);
  return pose === undefined || words === undefined ? '-' : `${words}${clockText(pose)}`;
}

function clockText({ clocks }: TaperPose): string {
  return ` at ${clocks.map((c) => formatTurn(c.clockDeg)).join(' and ')}`;
}
