import type { End, Hose } from '../../../shared/document/parts/schema.ts';
import type { Port } from '../../../shared/document/project/schema.ts';
import { formatDash } from '../../../shared/sheets/format/index.ts';
import { endsFor, hosesFor } from '../../state/edits/newRun.ts';
import { type AskedOfHose, hoseMisfits, seatsOn } from '../../state/edits/partFit.ts';
import { Choice, type ChoiceOption } from '../../widgets/Choice.tsx';
import { misfitWords, offHoseWords, offPortWords } from './fitWords.ts';

const NOT_FITTING = 'These do not fit, and why';

interface HoseChoiceProps {
  readonly hoses: readonly Hose[];
  readonly value: string;
  readonly asked: AskedOfHose;
  readonly onChoose: (id: string) => void;
}

/** Every hose of the tables: what fits the run first, then the rest, each with what is against it. It may still be taken. */
export function HoseChoice({ hoses, value, asked, onChoose }: HoseChoiceProps) {
  const fits = (hose: Hose): boolean => hoseMisfits(hose, asked).length === 0;
  const sorted = hosesFor(hoses, asked);
  const optionOf = (hose: Hose): ChoiceOption => {
    const against = hoseMisfits(hose, asked).map(misfitWords);
    const dash = formatDash(hose.dash);
    const name = hose.name.endsWith(dash) ? hose.name : `${hose.name} (${dash})`;
    return { value: hose.id, label: against.length === 0 ? name : `${name}: ${against.join('; ')}` };
  };
  return (
    <Choice
      label="Hose"
      value={value}
      options={sorted.filter(fits).map(optionOf)}
      apart={{ heading: NOT_FITTING, options: sorted.filter((hose) => !fits(hose)).map(optionOf) }}
      onChoose={onChoose}
    />
  );
}

interface EndChoiceProps {
  readonly label: string;
  readonly ends: readonly End[];
  readonly value: string;
  readonly hose: Hose | undefined;
  readonly port: Port | undefined;
  readonly onChoose: (id: string) => void;
}

/** Every end of the tables: those that seat on the port, those that need an adapter, and, not to be taken, those of no such hose. */
export function EndChoice({ label, ends, value, hose, port, onChoose }: EndChoiceProps) {
  const onHose = endsFor(ends, hose, port);
  const seated = onHose.filter((end) => port === undefined || seatsOn(end, port));
  const optionOf = (end: End): ChoiceOption => {
    if (hose !== undefined && end.dash !== hose.dash)
      return { value: end.id, label: `${end.name}: ${offHoseWords(end, hose)}`, disabled: true };
    const isSeated = port === undefined || seatsOn(end, port);
    return { value: end.id, label: isSeated ? end.name : `${end.name}: ${offPortWords(end, port)}` };
  };
  const others = [...onHose, ...endsFor(ends, undefined, port)].filter((end) => !seated.includes(end));
  return (
    <Choice
      label={label}
      value={value}
      options={seated.map(optionOf)}
      apart={{ heading: NOT_FITTING, options: [...new Set(others)].map(optionOf) }}
      onChoose={onChoose}
    />
  );
}
