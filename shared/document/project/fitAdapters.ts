import { degreesToRadians } from '../../base/units.ts';
import { add, addScaled, cross, scale, turnAbout, unit, type Vec3 } from '../../base/vec3.ts';
import type { Adapter } from '../parts/schema.ts';
import type { AdapterUse } from './schema.ts';

/** Where something is screwed on and how it faces, mm, bay frame: unit axis out of the part, unit `up` square to it. */
export interface SeatFrame {
  readonly seatPoint: Vec3;
  readonly axis: Vec3;
  readonly up: Vec3;
}

/** An adapter with how it is used. */
export interface StackedAdapter {
  readonly adapter: Adapter;
  readonly use: AdapterUse;
}

/** An adapter as it stands on what it is screwed on. */
export interface FittedAdapter {
  readonly adapter: Adapter;
  readonly clockDeg: number;
  /** what it is screwed on */
  readonly from: SeatFrame;
  /** what it offers, on the outlet that is gone on from */
  readonly to: SeatFrame;
  /** middle of its body: seat it stands on, bend, seat it offers */
  readonly points: readonly Vec3[];
  /** of a tee: from where its axes meet to its other outlet */
  readonly branch?: readonly Vec3[];
}

/**
 * Where adapters that are stacked on a port stand, from the part outwards; the `to` of the last is the seat of the hose end.
 * Each goes portToBend out along the axis it is screwed on along, turns there by its bend angle b to the side that its
 * clock says, and goes on by bendToSeat. Its clock is read as that of an end: from 12 o'clock (`up`), clockwise for an eye
 * behind the part that looks out along the axis.
 *
 *             ^ new axis = cos b axis + sin b e
 *             |
 *   bendToSeat|   e = cos c up + sin c (axis x up)
 *             |
 *   part |===o+ - - - > axis
 *       portToBend
 *
 * The seat's 12 o'clock is carried along by the same turn, the one about axis x e that brings the old axis to the new: at clock
 * 0 a bend of 90 degrees sends `up` to minus the old axis, at clock 90 it leaves `up` as it is; a straight adapter changes
 * nothing but the place, whatever its clock. So clocks stay readable up the stack: 0 bends on in the same plane the same way,
 * 180 bends back. Of a tee, `straight` is the outlet at b and `branch` the one at branchAngle (90 where not stated) and
 * branchToSeat. A taper thread stands at the middle of its range. Exact. clocksDeg: clocks by place in the stack, instead
 * of those of the uses.
 */
export function fitAdapters(
  port: SeatFrame,
  stack: readonly StackedAdapter[],
  clocksDeg: readonly (number | undefined)[] = [],
): FittedAdapter[] {
  let from = port;
  return stack.map(({ adapter, use }, i) => {
    const clockDeg = clocksDeg[i] ?? clockOfUse(use);
    const fitted = fitAdapter(from, adapter, use.outlet, clockDeg);
    from = fitted.to;
    return fitted;
  });
}

/** deg. Where an adapter stands: as stated, in the middle of a taper's range, else at 0. */
export function clockOfUse({ clockDeg, clockRangeDeg }: AdapterUse): number {
  return clockRangeDeg === undefined ? (clockDeg ?? 0) : (clockRangeDeg[0] + clockRangeDeg[1]) / 2;
}

function fitAdapter(from: SeatFrame, adapter: Adapter, outlet: AdapterUse['outlet'], clockDeg: number): FittedAdapter {
  const bend = addScaled(from.seatPoint, from.axis, adapter.portToBendMm);
  const clockRad = degreesToRadians(clockDeg);
  const straight = outletAt(from, bend, adapter.bendAngleDeg, adapter.bendToSeatMm, clockRad);
  if (adapter.form !== 'tee')
    return { adapter, clockDeg, from, to: straight, points: [from.seatPoint, bend, straight.seatPoint] };
  const aside = outletAt(from, bend, adapter.branchAngleDeg ?? 90, adapter.branchToSeatMm ?? 0, clockRad);
  const [to, other] = outlet === 'branch' ? [aside, straight] : [straight, aside];
  const points = [from.seatPoint, bend, to.seatPoint];
  return { adapter, clockDeg, from, to, points, branch: [bend, other.seatPoint] };
}

function outletAt(from: SeatFrame, bend: Vec3, bendDeg: number, toSeatMm: number, clockRad: number): SeatFrame {
  const side = add(scale(from.up, Math.cos(clockRad)), scale(cross(from.axis, from.up), Math.sin(clockRad)));
  const about = cross(from.axis, side);
  const bendRad = degreesToRadians(bendDeg);
  const axis = bendDeg === 0 ? from.axis : unit(turnAbout(from.axis, about, bendRad));
  const up = bendDeg === 0 ? from.up : unit(turnAbout(from.up, about, bendRad));
  return { seatPoint: addScaled(bend, axis, toSeatMm), axis, up };
}
