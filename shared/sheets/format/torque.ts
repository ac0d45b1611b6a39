import { NM_PER_INCH_POUND } from '../../base/units.ts';
import { formatNumber } from './length.ts';

/** A torque both ways, one figure or a range, from N.m: `38.4 to 47.5 N·m (340 to 420 in-lb)`. */
export function formatTorque(leastNm: number, mostNm = leastNm): string {
  const text = (factor: number, decimals: number): string =>
    leastNm === mostNm
      ? formatNumber(leastNm * factor, decimals)
      : `${formatNumber(leastNm * factor, decimals)} to ${formatNumber(mostNm * factor, decimals)}`;
  return `${text(1, 1)} N·m (${text(1 / NM_PER_INCH_POUND, 0)} in-lb)`;
}

/** Flats of a nut, one figure or a range: `1.25 to 1.75`. */
export function formatFlats(least: number, most: number): string {
  const text = (n: number): string => formatNumber(n, Number.isInteger(n) ? 0 : 2);
  return least === most ? text(least) : `${text(least)} to ${text(most)}`;
}
