import { inchesToMm, mmToInches } from '../../shared/base/units.ts';
import { length, type Vec3 } from '../../shared/base/vec3.ts';
import { useSession } from '../state/useBench.ts';
import { NumberField } from '../widgets/NumberField.tsx';
import { TripleField } from '../widgets/TripleField.tsx';

interface LengthFieldProps {
  readonly label: string;
  readonly mm: number;
  readonly lowMm: number;
  readonly highMm: number;
  readonly onSet: (mm: number) => void;
}

/** A length in the unit chosen for the window; the project keeps mm. */
export function LengthField({ label, mm, lowMm, highMm, onSet }: LengthFieldProps) {
  const inches = useSession((session) => session.units) === 'inch';
  return inches ? (
    <NumberField
      label={label}
      unit="in"
      value={mmToInches(mm)}
      low={Math.ceil(mmToInches(lowMm) * 1000) / 1000}
      high={Math.floor(mmToInches(highMm) * 1000) / 1000}
      step={0.0625}
      decimals={3}
      onSet={(value) => onSet(inchesToMm(value))}
    />
  ) : (
    <NumberField
      label={label}
      unit="mm"
      value={mm}
      low={Math.ceil(lowMm * 10) / 10}
      high={Math.floor(highMm * 10) / 10}
      step={1}
      decimals={1}
      onSet={onSet}
    />
  );
}

interface PointFieldProps {
  readonly label: string;
  readonly point: Vec3;
  readonly onSet: (point: Vec3) => void;
}

/** A place of the bay in the unit chosen for the window. */
export function PointField({ label, point, onSet }: PointFieldProps) {
  const inches = useSession((session) => session.units) === 'inch';
  const map = (v: Vec3, change: (n: number) => number): Vec3 => [change(v[0]), change(v[1]), change(v[2])];
  return inches ? (
    <TripleField
      label={label}
      unit="in"
      value={map(point, mmToInches)}
      decimals={3}
      step={0.0625}
      onSet={(value) => onSet(map(value, inchesToMm))}
    />
  ) : (
    <TripleField label={label} unit="mm" value={point} decimals={1} step={1} onSet={onSet} />
  );
}

interface DirectionFieldProps {
  readonly label: string;
  readonly direction: Vec3;
  /** why a direction will not do, in a sentence, beside being none */
  readonly refuse?: (direction: Vec3) => string | undefined;
  readonly onSet: (direction: Vec3) => void;
}

/** A direction in the bay: only where it points counts. */
export function DirectionField({ label, direction, refuse, onSet }: DirectionFieldProps) {
  return (
    <TripleField
      label={label}
      unit=""
      value={direction}
      decimals={3}
      step={0.05}
      refuse={(value) => (length(value) < 1e-3 ? 'Expected a direction, not 0, 0, 0.' : refuse?.(value))}
      onSet={onSet}
    />
  );
}
