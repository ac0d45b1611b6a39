import { ROUNDING_RAD } from './tolerances.ts';

/** Part of a turn, rad: from one clock on with growing clock to another, `toRad - fromRad` of it, 0 to one turn. */
export interface TurnRange {
  readonly fromRad: number;
  readonly toRad: number;
}

const TURN_RAD = 2 * Math.PI;

/** An angle brought into [0, 2 pi), rad. */
export function wrapRadians(angleRad: number): number {
  return angleRad - TURN_RAD * Math.floor(angleRad / TURN_RAD);
}

/** Whether a clock is in a range, whole turns let be; its limits are in it, to rounding. */
export function isInTurn({ fromRad, toRad }: TurnRange, clockRad: number): boolean {
  const onRad = wrapRadians(clockRad - fromRad);
  return onRad <= toRad - fromRad + ROUNDING_RAD || onRad >= TURN_RAD - ROUNDING_RAD;
}

/** The clock of a range that is nearest round the turn, in [0, 2 pi); the clock itself, wrapped, where it is in the range. */
export function nearestInTurn(range: TurnRange, clockRad: number): number {
  if (isInTurn(range, clockRad)) return wrapRadians(clockRad);
  const beyondRad = wrapRadians(clockRad - range.toRad);
  const shortRad = wrapRadians(range.fromRad - clockRad);
  return wrapRadians(beyondRad < shortRad ? range.toRad : range.fromRad);
}

/** `count` clocks evenly over a range, both limits among them; a range of no width gives one. rad, in [0, 2 pi). */
export function clocksInTurn({ fromRad, toRad }: TurnRange, count: number): number[] {
  if (toRad - fromRad < ROUNDING_RAD) return [wrapRadians(fromRad)];
  return Array.from({ length: count }, (_, i) => wrapRadians(fromRad + ((toRad - fromRad) * i) / (count - 1)));
}
