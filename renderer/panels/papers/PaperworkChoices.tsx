import { CLOCK_DIALECTS, type Paperwork } from '../../../shared/document/project/schema.ts';
import { DIALECT_WORDS } from '../../../shared/sheets/format/index.ts';
import { setPaperwork } from '../../state/edits/paperworkEdits.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Choice } from '../../widgets/Choice.tsx';

/** How the papers speak: the hose shop's way to state a clock, its tolerance, fractions, coded lengths, the size of paper. */
export function PaperworkChoices() {
  const { document } = useBench();
  const told = useDocument((state) => state.open?.history.present.paperwork) ?? {};
  const set = (change: Parameters<typeof setPaperwork>[1]): void =>
    document.edit('how the papers speak', (project) => setPaperwork(project, change));
  return (
    <section aria-label="How the papers speak">
      <h3>How the papers speak</h3>
      <Choice
        label="The hose shop states a clock as"
        value={told.clockDialect ?? 'near-at-six'}
        options={CLOCK_DIALECTS.map((value) => ({ value, label: DIALECT_WORDS[value] }))}
        onChoose={(value) => set({ clockDialect: value as NonNullable<Paperwork['clockDialect']> })}
      />
      <Choice
        label="Clock tolerance"
        value={told.clockTolerance ?? 'mil-dtl-83796'}
        options={[
          { value: 'mil-dtl-83796', label: '± 3° to 610 mm (24 in), 5° above: MIL-DTL-83796/5' },
          { value: 'army-tm', label: '± 5° to 914 mm (36 in), 10° above: TM 1-1500-204-23-2' },
        ]}
        onChoose={(value) => set({ clockTolerance: value === 'army-tm' ? 'army-tm' : undefined })}
      />
      <Choice
        label="Fractions of an inch"
        value={`${told.finestInch ?? 16}`}
        options={[
          { value: '16', label: 'to 1/16' },
          { value: '32', label: 'to 1/32' },
        ]}
        onChoose={(value) => set({ finestInch: value === '32' ? 32 : undefined })}
      />
      <Choice
        label="Coded length on the cut list"
        value={told.codedLength ?? ''}
        options={[
          { value: '', label: 'none' },
          { value: 'eighths', label: 'inches and eighths, with its words: 0244 = 24-4/8 in' },
          { value: 'hundredths', label: 'hundredths of an inch, with its words: 01250 = 12.50 in' },
        ]}
        onChoose={(value) =>
          set({ codedLength: value === '' ? undefined : (value as NonNullable<Paperwork['codedLength']>) })
        }
      />
      <Choice
        label="Paper"
        value={told.paper ?? 'A4'}
        options={[
          { value: 'A4', label: 'A4' },
          { value: 'Letter', label: 'Letter' },
        ]}
        onChoose={(value) => set({ paper: value === 'Letter' ? 'Letter' : undefined })}
      />
    </section>
  );
}
