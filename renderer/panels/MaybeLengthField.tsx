import { mmToInches } from '../../shared/base/units.ts';
import { readLength } from '../../shared/document/parts/readLength.ts';
import { useSession } from '../state/useBench.ts';
import { TextField } from '../widgets/TextField.tsx';

interface MaybeLengthFieldProps {
  readonly label: string;
  /** what it means that nothing is stated */
  readonly hint: string;
  readonly mm: number | undefined;
  readonly mayBeZero?: boolean;
  readonly onSet: (mm: number | undefined) => void;
}

/** A length above zero, or zero where that may be, that need not be known; read as any length is, in the unit of the window where none is typed. */
export function MaybeLengthField({ label, hint, mm, mayBeZero = false, onSet }: MaybeLengthFieldProps) {
  const unit = useSession((session) => session.units) === 'inch' ? 'in' : 'mm';
  const shown =
    mm === undefined ? '' : unit === 'mm' ? `${Number(mm.toFixed(3))} mm` : `${mmToInches(mm).toFixed(3)} in`;
  const read = (text: string): number | undefined => {
    const length = readLength(text, unit);
    return length.ok && (length.mm > 0 || (mayBeZero && length.mm === 0)) ? length.mm : undefined;
  };
  return (
    <TextField
      label={label}
      value={shown}
      hint={hint}
      mayBeEmpty
      takes={(text) => read(text) !== undefined}
      wrongWords="Expected a length such as 1 mm or 0.040 in."
      onSet={(text) => onSet(text === '' ? undefined : read(text))}
    />
  );
}
