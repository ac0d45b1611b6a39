import type { Problem } from '../../base/result.ts';
import { isInTurn } from '../../base/turnRange.ts';
import { degreesToRadians } from '../../base/units.ts';
import type { Adapter, End, PartTables } from '../parts/schema.ts';
import { shortJson } from '../problems/shortJson.ts';
import type { StackedAdapter } from './fitAdapters.ts';
import type { Port, RunEnd } from './schema.ts';

/** A thread or seat with its size. */
export interface SeatKind {
  readonly seat: string;
  readonly dash: number;
}

/** The seat that an adapter offers at the outlet that is gone on from. */
export function outletOf({ adapter, use }: StackedAdapter): SeatKind {
  if (adapter.form !== 'tee' || use.outlet === 'straight') return { seat: adapter.seat, dash: adapter.dash };
  return { seat: adapter.branchSeat ?? adapter.seat, dash: adapter.branchDash ?? adapter.dash };
}

/** Whether two seat on each other: the same thread or seat, and the same size. */
export function seatsOn(a: SeatKind, b: SeatKind): boolean {
  return a.seat === b.seat && a.dash === b.dash;
}

/** Adapters of a table that join a port to an end by themselves, in its order, straight ones before angled and tees last. */
export function adaptersBetween(port: SeatKind, end: SeatKind, table: readonly Adapter[]): Adapter[] {
  const bother = ({ form, bendAngleDeg }: Adapter): number => (form === 'tee' ? 1000 : bendAngleDeg);
  return table
    .filter((a) => seatsOn(port, { seat: a.portSeat, dash: a.portDash }) && seatsOn(end, a))
    .sort((p, q) => bother(p) - bother(q));
}

/** What cannot be: an outlet that an adapter has not, a range of an adapter that does not need one. path: of the stack. */
export function adapterProblems(stack: readonly StackedAdapter[], path: string): Problem[] {
  return stack.flatMap(({ adapter, use }, i) => [
    ...when(
      use.outlet === 'branch' && adapter.form !== 'tee',
      `${path}[${i}].outlet`,
      `only a tee has a branch; ${adapter.id} is ${adapter.form}`,
      use.outlet,
    ),
    ...when(
      use.clockRangeDeg !== undefined && adapter.turning !== 'taper',
      `${path}[${i}].clockRangeDeg`,
      `only a taper thread comes tight in a range; ${adapter.id} is ${adapter.turning}: state its clockDeg`,
      use.clockRangeDeg,
    ),
  ]);
}

/** What to look at in a stack: seats that do not meet, a taper elbow with no range. port: the port itself. */
export function adapterWarnings(port: Port, stack: readonly StackedAdapter[], path: string): Problem[] {
  return stack.flatMap((one, i) => {
    const { adapter, use } = one;
    const below =
      i === 0
        ? { ...port, name: 'the port' }
        : { ...outletOf(stack[i - 1] as StackedAdapter), name: stack[i - 1]?.adapter.id };
    const turns = adapter.bendAngleDeg > 0 || adapter.form === 'tee';
    return [
      ...when(
        !seatsOn(below, { seat: adapter.portSeat, dash: adapter.portDash }),
        `${path}[${i}].adapter`,
        `it goes in ${kindText({ seat: adapter.portSeat, dash: adapter.portDash })}; ${below.name} is ${kindText(below)}`,
        adapter.id,
      ),
      ...when(
        adapter.turning === 'taper' && turns && use.clockRangeDeg === undefined,
        `${path}[${i}]`,
        'a taper thread comes tight somewhere in a range: state its clockRangeDeg, or the hose is only known to fit at one clock',
        adapter.id,
      ),
    ];
  });
}

/**
 * What to look at where an end goes on its port (or on the last adapter of it): thread, seat or size that differ, with the
 * adapter of the tables that would join them; an end that does not turn and whose clock is not stated. port: as the end
 * meets it.
 */
export function endWarnings(port: Port, end: End, { clockDeg }: RunEnd, tables: PartTables, path: string): Problem[] {
  return [
    ...when(
      !seatsOn(port, end),
      `${path}.end`,
      `the end seats on ${kindText(end)}, its port is ${kindText(port)}: it needs an adapter on the port${suggestion(port, end, tables)}`,
      end.id,
    ),
    ...when(
      end.turning === 'fixed' && end.bendAngleDeg > 0 && clockDeg === undefined,
      path,
      `${end.id} does not turn on its port: its own clock is taken as 0; state its clockDeg`,
      end.id,
    ),
  ];
}

function suggestion(port: SeatKind, end: SeatKind, { adapters }: PartTables): string {
  const fitting = adaptersBetween(port, end, adapters).slice(0, 3);
  return fitting.length === 0
    ? '; no adapter of the tables joins the two'
    : `, such as ${fitting.map((a) => a.id).join(', ')}`;
}

/** An end that turns in a range cannot stand at a clock outside it. */
export function clockProblems(end: End, clockDeg: number | undefined, path: string): Problem[] {
  const { turning, turnFromDeg: from, turnToDeg: to } = end;
  if (turning !== 'range' || from === undefined || to === undefined || clockDeg === undefined) return [];
  const range = { fromRad: degreesToRadians(from), toRad: degreesToRadians(to) };
  const isOut = !isInTurn(range, degreesToRadians(clockDeg));
  return when(isOut, path, `${end.id} turns from ${from} to ${to} degrees only`, clockDeg);
}

function kindText({ seat, dash }: SeatKind): string {
  return `${seat} -${dash}`;
}

function when(isSo: boolean, path: string, message: string, value: unknown): Problem[] {
  const got = shortJson(value);
  return isSo ? [{ path, message, ...(got === undefined ? {} : { got }) }] : [];
}
