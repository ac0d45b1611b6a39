import type { Rock, RockExtreme } from '../../document/lay/schema.ts';

type Measured = Omit<RockExtreme, 'pose'>;

/** Which extreme is worst in what, by number; the first of equals. Nothing measured anywhere leaves its key out. */
export function worstOf(extremes: readonly Measured[]): Rock['worst'] {
  const least = (of: (e: Measured) => number | undefined): number | undefined =>
    extremes.reduce<number | undefined>((best, e, i) => {
      const value = of(e);
      if (value === undefined) return best;
      const known = best === undefined ? undefined : of(extremes[best] as Measured);
      return known === undefined || value < known ? i : best;
    }, undefined);
  const minus = (value: number | undefined): number | undefined => (value === undefined ? undefined : -value);
  const found = {
    minRadius: least((e) => e.minRadius?.provenAtLeastMm),
    clearance: least((e) => (e.tightest === undefined ? undefined : e.tightest.clearanceMm - e.tightest.requiredMm)),
    tension: least((e) => minus(e.tensionN)),
    twist: least((e) => minus(e.twistDeg === undefined ? undefined : Math.abs(e.twistDeg))),
  };
  const { minRadius, clearance, tension, twist } = found;
  return {
    slackLeft: least((e) => e.slackLeftMm) ?? 0,
    ...(minRadius === undefined ? {} : { minRadius }),
    ...(clearance === undefined ? {} : { clearance }),
    ...(tension === undefined ? {} : { tension }),
    ...(twist === undefined ? {} : { twist }),
  };
}
