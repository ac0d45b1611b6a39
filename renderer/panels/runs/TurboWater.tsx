import { type Run, TURBO_SIDES } from '../../../shared/document/project/schema.ts';
import { setTurboAt } from '../../state/edits/runEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { FigureField } from './FigureField.tsx';

/** Which end of a water hose is at the turbo: the water goes in low and out high, and uphill from there. */
export function TurboWater({ run }: { run: Run }) {
  const { document } = useBench();
  return (
    <>
      <Choice
        label="At the turbo"
        value={run.service.turboAt ?? ''}
        options={[
          { value: '', label: 'not known' },
          { value: 'a', label: 'END A' },
          { value: 'b', label: 'END B' },
        ]}
        onChoose={(value) =>
          document.edit('which end is at the turbo', (project) =>
            setTurboAt(
              project,
              run.id,
              TURBO_SIDES.find((side) => side === value),
            ),
          )
        }
      />
      <FigureField
        run={run}
        figure="housingTurnDeg"
        label="Centre housing turned about the shaft"
        unit="°"
        low={0}
        high={180}
        step={5}
        decimals={0}
      />
    </>
  );
}
