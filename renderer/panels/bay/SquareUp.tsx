import { useStore } from 'zustand';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { LengthField } from '../LengthField.tsx';

/** The bay's scale, level and uncertainty, which every clearance, length and fall rests on. */
export function SquareUp() {
  const { document, hand, onMeasure, onSquareUp } = useBench();
  const bay = useDocument(({ open }) => open?.history.present.bay);
  const levelling = useStore(hand, ({ tool }) => tool.kind === 'level');
  if (bay === undefined) return null;
  return (
    <section className="square-up" aria-label="Scale and level">
      <h3>Scale and level</h3>
      <p className="teach">
        {bay.scale === undefined
          ? 'As the file has it. A length that you know, measured in the bay, sets the scale.'
          : `Scaled by ${bay.scale.toFixed(5)} by a length that is known.`}{' '}
        {bay.level === undefined ? 'The file’s own up is taken for level.' : 'Levelled by a face of the bay.'}
      </p>
      <div className="support-buttons">
        <Button onPress={onMeasure.begin} hint="Key Shift M">
          Measure a known length
        </Button>
        <Button pressed={levelling} onPress={onSquareUp.begin}>
          Level the bay
        </Button>
      </div>
      <LengthField
        label="Scan off by at most"
        mm={bay.scanUncertaintyMm}
        lowMm={0}
        highMm={100}
        onSet={(scanUncertaintyMm) =>
          document.edit('scan uncertainty', (project) => ({ ...project, bay: { ...project.bay, scanUncertaintyMm } }))
        }
      />
    </section>
  );
}
