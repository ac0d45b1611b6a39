import type { Run } from '../../../shared/document/project/schema.ts';
import { type KnownFigure, setFigure } from '../../state/edits/runEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { NumberField } from '../../widgets/NumberField.tsx';

interface FigureFieldProps {
  readonly run: Run;
  readonly figure: KnownFigure;
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly decimals: number;
}

/** A figure of a run's service that need not be known: an emptied field is not known again. */
export function FigureField({ run, figure, label, ...range }: FigureFieldProps) {
  const { document } = useBench();
  const set = (value: number | undefined): void =>
    document.edit(label.toLowerCase(), (project) => setFigure(project, run.id, figure, value), value !== undefined);
  return (
    <NumberField
      label={label}
      {...range}
      value={run.service[figure] ?? null}
      onSet={set}
      onClear={() => set(undefined)}
    />
  );
}
