import type { TurnChain } from './turnChain.ts';

/** rad per radius; where the plane of a chain turns slower than this, its arcs are not made longer for it */
const SLOWEST_TURN_OF_PLANE = 0.5;

/**
 * A chain of `arcs` arcs along nearly the same curve, its arcs short where the plane it bends in turns fast: of all divisions into so
 * many arcs, the loss against the smooth curve ((turn of the plane within an arc)^2 times its length) is then about least, its
 * arcs going by (turn of the plane per length)^(-2/3). Curvatures are means of the old ones, so at most 1; the end moves.
 */
export function redivideChain({ bends, shares, length }: TurnChain, arcs: number): TurnChain {
  const turns = planeTurns(bends);
  const density = shares.map((share, i) => {
    const rate = ((turns[i] as number) + (turns[i + 1] as number)) / (2 * share * length);
    return share * (rate * rate + SLOWEST_TURN_OF_PLANE * SLOWEST_TURN_OF_PLANE) ** (1 / 3);
  });
  const total = density.reduce((sum, d) => sum + d, 0);
  const newShares = new Float64Array(arcs);
  const newBends = new Float64Array(2 * arcs);
  let old = 0;
  let used = 0;
  for (let i = 0; i < arcs; i++) {
    let wanted = total / arcs;
    let share = 0;
    let a = 0;
    let b = 0;
    while (wanted > 0 && old < shares.length) {
      const left = (density[old] as number) - used;
      const isLast = old === shares.length - 1 && i === arcs - 1;
      const taken = isLast ? left : Math.min(left, wanted);
      const part = ((shares[old] as number) * taken) / (density[old] as number);
      share += part;
      a += part * (bends[2 * old] as number);
      b += part * (bends[2 * old + 1] as number);
      wanted -= taken;
      used += taken;
      if (taken === left) {
        old++;
        used = 0;
      }
      if (isLast) break;
    }
    newShares[i] = share;
    newBends[2 * i] = a / share;
    newBends[2 * i + 1] = b / share;
  }
  return { bends: newBends, shares: newShares, length };
}

/** rad, by which the plane turns from each arc to the next; 0 before the first and after the last. */
function planeTurns(bends: Float64Array): Float64Array {
  const turns = new Float64Array(bends.length / 2 + 1);
  for (let i = 1; i < turns.length - 1; i++) {
    const [a, b] = [bends[2 * i - 2] as number, bends[2 * i - 1] as number];
    const [c, d] = [bends[2 * i] as number, bends[2 * i + 1] as number];
    turns[i] = Math.abs(Math.atan2(a * d - b * c, a * c + b * d));
  }
  return turns;
}
