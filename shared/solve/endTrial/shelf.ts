import type { End } from '../../document/parts/schema.ts';
import type { ResolvedEnd } from '../../document/project/resolve.ts';

/**
 * The ends that may stand in the place of one: same dash and seat, one for each bend angle, in order of angle. Of several
 * of one angle the chosen one comes first, then one of its material and joint, then of its material, then the first in
 * the table.
 */
export function shelfFor({ end, port }: ResolvedEnd, table: readonly End[]): End[] {
  const fitting = table.filter((e) => e.dash === end.dash && e.seat === port.seat);
  const likeness = (e: End): number =>
    e.id === end.id ? 3 : e.material !== end.material ? 0 : e.joint === end.joint ? 2 : 1;
  const best = new Map<number, End>();
  for (const candidate of fitting) {
    const other = best.get(candidate.bendAngleDeg);
    if (other === undefined || likeness(candidate) > likeness(other)) best.set(candidate.bendAngleDeg, candidate);
  }
  return [...best.values()].sort((a, b) => a.bendAngleDeg - b.bendAngleDeg);
}
