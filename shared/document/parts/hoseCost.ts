import { MM_PER } from '../../base/units.ts';
import type { End, Hose } from './schema.ts';

/**
 * What a hose of this cut length costs with both of its ends, in the user's own money: undefined where one of the three prices is
 * not stated. cutLengthMm: of the hose, mm, 0 or more.
 */
export function hoseCost(
  hose: Pick<Hose, 'pricePerM'>,
  ends: readonly Pick<End, 'price'>[],
  cutLengthMm: number,
): number | undefined {
  const prices = ends.flatMap(({ price }) => price ?? []);
  if (hose.pricePerM === undefined || prices.length < ends.length) return undefined;
  return prices.reduce((sum, price) => sum + price, (hose.pricePerM * cutLengthMm) / MM_PER.m);
}
