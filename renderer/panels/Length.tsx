import { formatInches, formatMm, type InchDenominator, type Rounding } from '../../shared/sheets/format/index.ts';
import { useSession } from '../state/useBench.ts';

interface LengthProps {
  readonly mm: number;
  readonly rounding?: Rounding;
  readonly denominator?: InchDenominator;
  /** both units, the chosen one first: wherever a number gets cut */
  readonly both?: boolean;
}

/** A length in the unit chosen for the window. */
export function Length({ mm, rounding = 'nearest', denominator = 16, both = false }: LengthProps) {
  const units = useSession((session) => session.units);
  const metric = formatMm(mm, rounding);
  const inches = formatInches(mm, rounding, denominator);
  const [first, second] = units === 'mm' ? [metric, inches] : [inches, metric];
  return (
    <span className="length">
      <span className="figure">{first}</span>
      {both && <span className="figure figure-second"> {second}</span>}
    </span>
  );
}
