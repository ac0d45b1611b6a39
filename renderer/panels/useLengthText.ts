import { formatInches, formatMm, type Rounding } from '../../shared/sheets/format/index.ts';
import { useSession } from '../state/useBench.ts';

/** Lengths as text in the unit chosen for the window: mm with so many decimals, or inches to 1/32. */
export function useLengthText(): (mm: number, rounding: Rounding, decimals?: number) => string {
  const units = useSession((session) => session.units);
  return (mm, rounding, decimals = 1) =>
    units === 'mm' ? formatMm(mm, rounding, decimals) : formatInches(mm, rounding, 32);
}
