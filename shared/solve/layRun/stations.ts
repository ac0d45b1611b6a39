import { distance, type Vec3 } from '../../base/vec3.ts';
import type { Lock, Support } from '../../document/project/schema.ts';
import { type Pose, pathEnd } from '../../geometry/arcLinePath.ts';
import { type LockedStretch, lockedStretch } from './lockedStretch.ts';

/** A place that the hose must pass through, held or only guided. */
export interface Station {
  readonly id: string;
  readonly kind: 'clamp' | 'pass-through' | 'waypoint';
  readonly proposed: boolean;
  readonly pose: Pose;
  /** where a locked stretch begins or ends: it has its pose there, and nothing stands there that would be reported */
  readonly ofLock?: string;
  /** the hose from here to the next station stays as it lies */
  readonly locked?: LockedStretch;
  /** what holds the hose within that stretch */
  readonly within?: readonly Station[];
}

/** mm. A support nearer to a locked stretch than this stands on it. */
const ON_STRETCH_MM = 1;

/**
 * Stations of a run in order along it: its supports, with every locked stretch after the support it is said to come after
 * (before all of them where it is said of none, or of one that is not there). What stands on a locked stretch is no
 * station of its own.
 */
export function withLocks(
  stations: readonly Station[],
  supports: readonly Support[],
  locks: readonly Lock[],
): readonly Station[] {
  if (locks.length === 0) return stations;
  const known = new Set(supports.map((s) => s.id));
  const on = (lock: Lock, station: Station): boolean =>
    station.kind !== 'waypoint' && lock.points.some((_, i) => offPiece(lock, i, station.pose.point) < ON_STRETCH_MM);
  const ends = (after: string | undefined): Station[] =>
    locks
      .filter((lock) => (lock.after !== undefined && known.has(lock.after) ? lock.after : undefined) === after)
      .flatMap((lock) => {
        const within = stations.filter((s) => on(lock, s));
        return endsOf(lock, within);
      });
  const free = stations.filter((s) => locks.every((lock) => !on(lock, s)));
  return [...ends(undefined), ...supports.flatMap(({ id }) => [...free.filter((s) => s.id === id), ...ends(id)])];
}

function endsOf(lock: Lock, within: readonly Station[]): Station[] {
  const locked = lockedStretch(lock);
  const mark = { kind: 'clamp', proposed: false, ofLock: lock.id } as const;
  return [
    { ...mark, id: `${lock.id}-start`, pose: locked.path.start, locked, within },
    {
      ...mark,
      id: `${lock.id}-end`,
      pose: { point: lock.points.at(-1) as Vec3, direction: pathEnd(locked.path).direction },
    },
  ];
}

/** Distance of a place to piece `i` of a lock's points, mm; Infinity after the last. */
function offPiece({ points }: Lock, i: number, place: Vec3): number {
  const [p, q] = [points[i] as Vec3, points[i + 1]];
  if (q === undefined) return distance(p, place);
  const along = [q[0] - p[0], q[1] - p[1], q[2] - p[2]] as const;
  const square = along[0] ** 2 + along[1] ** 2 + along[2] ** 2;
  const dot = along[0] * (place[0] - p[0]) + along[1] * (place[1] - p[1]) + along[2] * (place[2] - p[2]);
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot / square));
  return distance(place, [p[0] + t * along[0], p[1] + t * along[1], p[2] + t * along[2]]);
}
