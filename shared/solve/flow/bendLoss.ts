/** Loss of a square bend over the turbulent friction factor, by bend radius over bore: Crane TP-410M, bends. */
const CRANE: readonly (readonly [radiusOverBore: number, times: number])[] = [
  [1, 20],
  [1.5, 14],
  [2, 12],
  [3, 12],
  [4, 14],
  [6, 17],
  [8, 24],
  [10, 30],
  [12, 34],
  [14, 38],
  [16, 42],
  [20, 50],
];

/**
 * Loss factor K of a square bend, in dynamic pressures, its own length of pipe included. radiusOverBore: centreline radius
 * over bore; held between 1 and 20. friction: Darcy's factor of the straight pipe. Crane TP-410M table, straight
 * lines between its rows. Beij (NBS RP1110, 1938): past 4 bores no figures agree, so about a third either way.
 */
export function squareBendLoss(radiusOverBore: number, friction: number): number {
  const r = Math.min(20, Math.max(1, radiusOverBore));
  const at = Math.max(
    1,
    CRANE.findIndex(([edge]) => edge >= r),
  );
  const [r0, k0] = CRANE[at - 1] as readonly [number, number];
  const [r1, k1] = CRANE[at] as readonly [number, number];
  return friction * (k0 + ((k1 - k0) * (r - r0)) / (r1 - r0));
}

/**
 * What a bend loses beyond the friction of its own length, in dynamic pressures. turnRad: the angle it turns. By the
 * square bend's excess in proportion to the angle. 0 beyond 20 bores of radius, where it is lost in the friction.
 */
export function bendExcess(turnRad: number, radiusOverBore: number, friction: number): number {
  if (radiusOverBore > 20) return 0;
  const ownLength = (Math.PI / 2) * Math.max(1, radiusOverBore) * friction;
  return (turnRad / (Math.PI / 2)) * Math.max(0, squareBendLoss(radiusOverBore, friction) - ownLength);
}
