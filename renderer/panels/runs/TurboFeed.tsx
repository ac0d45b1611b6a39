import { BEARINGS, type Run } from '../../../shared/document/project/schema.ts';
import { BEARING_WORDS } from '../../../shared/document/wording/serviceWords.ts';
import { setFigure, setTurboFeed } from '../../state/edits/runEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { MaybeLengthField } from '../MaybeLengthField.tsx';
import { PressureField } from '../ServiceField.tsx';

/** The turbo at the far end of an oil feed: how much pressure it bears, and whether a restrictor belongs, go by its bearing. */
export function TurboFeed({ run }: { run: Run }) {
  const { document } = useBench();
  const { bearing, restrictorMm } = run.service;
  return (
    <>
      <Choice
        label="The turbo turns on"
        value={bearing ?? ''}
        options={[
          { value: '', label: 'not known' },
          ...BEARINGS.map((kind) => ({ value: kind, label: BEARING_WORDS[kind] })),
        ]}
        onChoose={(value) => {
          const chosen = BEARINGS.find((kind) => kind === value);
          document.edit('bearing of the turbo', (project) =>
            setTurboFeed(project, run.id, {
              ...(chosen === undefined ? {} : { bearing: chosen }),
              ...(restrictorMm === undefined ? {} : { restrictorMm }),
            }),
          );
        }}
      />
      <MaybeLengthField
        label="Restrictor in the feed"
        hint="not said; 0 mm = none is fitted"
        mayBeZero
        mm={restrictorMm}
        onSet={(mm) =>
          document.edit('restrictor', (project) =>
            setTurboFeed(project, run.id, {
              ...(bearing === undefined ? {} : { bearing }),
              ...(mm === undefined ? {} : { restrictorMm: mm }),
            }),
          )
        }
      />
      <PressureField
        label="Measured at the turbo, oil hot, at maximum rpm"
        value={run.service.turboPressureKpa ?? null}
        onSet={(kpa) =>
          document.edit('pressure at the turbo', (project) => setFigure(project, run.id, 'turboPressureKpa', kpa), true)
        }
        onClear={() =>
          document.edit('pressure at the turbo', (project) => setFigure(project, run.id, 'turboPressureKpa', undefined))
        }
      />
    </>
  );
}
