import { scale as scaled, triple, unit, type Vec3 } from '../../base/vec3.ts';
import { levelled, unlevelled } from '../../geometry/meshImport/squareUp.ts';
import type { Project, SkinSweep } from './schema.ts';

type Place = (point: Vec3) => Vec3;

/**
 * The project with its bay `factor` times as large, by a length that is known: 300.0 in truth over 299.5 as the bay has
 * it. All places in the bay go along; directions and the makers' sizes of parts stay. factor above 0. Exact to rounding.
 */
export function rescaleBay(project: Project, factor: number): Project {
  const moved = placed(
    project,
    (point) => scaled(point, factor),
    (direction) => direction,
  );
  return { ...moved, bay: { ...moved.bay, scale: (project.bay.scale ?? 1) * factor } };
}

/**
 * The project with its bay turned level: `up` is what is truly up in the bay as it stands now, not zero. All places and
 * directions turn along. The ranges of bodies' motion stay about the axes of the bay. Exact to rounding.
 */
export function levelBay(project: Project, up: Vec3): Project {
  const before = project.bay.level;
  const level = unit(unlevelled(up, before));
  const turn: Place = (v) => levelled(unlevelled(v, before), level);
  const moved = placed(project, turn, turn);
  return { ...moved, bay: { ...moved.bay, level: triple(level) } };
}

/** A stroke keeps its millimetres, as shifts of bodies do. */
function sweepAlong(
  sweep: SkinSweep,
  at: (v: Vec3) => [number, number, number],
  along: (v: Vec3) => [number, number, number],
): SkinSweep {
  return sweep.kind === 'turn'
    ? { ...sweep, point: at(sweep.point), axis: along(sweep.axis) }
    : { ...sweep, direction: along(sweep.direction) };
}

/** Every place and direction of the project taken along. */
function placed(project: Project, point: Place, direction: Place): Project {
  const at = (v: Vec3): [number, number, number] => triple(point(v));
  const along = (v: Vec3): [number, number, number] => triple(direction(v));
  return {
    ...project,
    bay: {
      ...project.bay,
      ...(project.bay.oilLevel === undefined ? {} : { oilLevel: at(project.bay.oilLevel) }),
      skins: project.bay.skins.map((skin) =>
        skin.sweep === undefined ? skin : { ...skin, sweep: sweepAlong(skin.sweep, at, along) },
      ),
      bodies: project.bay.bodies.map((body) =>
        body.motion === undefined ? body : { ...body, motion: { ...body.motion, pivot: at(body.motion.pivot) } },
      ),
    },
    ports: project.ports.map((port) => ({
      ...port,
      seatPoint: at(port.seatPoint),
      axis: along(port.axis),
      up: along(port.up),
    })),
    runs: project.runs.map((run) => ({
      ...run,
      supports: run.supports.map((support) => ({
        ...support,
        point: at(support.point),
        ...(support.axis === undefined ? {} : { axis: along(support.axis) }),
      })),
      ...(run.locks === undefined
        ? {}
        : {
            locks: run.locks.map((lock) => ({
              ...lock,
              points: lock.points.map(at),
              startAxis: along(lock.startAxis),
              endAxis: along(lock.endAxis),
            })),
          }),
    })),
  };
}
