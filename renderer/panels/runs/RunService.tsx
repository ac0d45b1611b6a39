import { FLUIDS } from '../../../shared/document/parts/fluids.ts';
import { MADE_ON, PURPOSES, type Run, type Service } from '../../../shared/document/project/schema.ts';
import { FLUID_WORDS, PURPOSE_WORDS } from '../../../shared/document/wording/serviceWords.ts';
import { setMadeOn, setRunName, setService } from '../../state/edits/runEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { PressureField, TemperatureField } from '../ServiceField.tsx';
import { FigureField } from './FigureField.tsx';
import { RunFlowFields } from './RunFlowFields.tsx';
import { TurboFeed } from './TurboFeed.tsx';
import { TurboWater } from './TurboWater.tsx';

/** What the run is called, what it carries, and its way out of the project. */
export function RunService({ run }: { run: Run }) {
  const { document, onRuns } = useBench();
  const change = (what: string, to: Partial<Service>, join = false): void =>
    document.edit(what, (project) => setService(project, run.id, to), join);
  return (
    <section className="changes" aria-label="What this run carries">
      <h3>Carries</h3>
      <TextField
        label="Name"
        value={run.name}
        onSet={(name) => document.edit('name of the run', (project) => setRunName(project, run.id, name))}
      />
      <Choice
        label="What it is for"
        value={run.service.purpose}
        options={PURPOSES.map((purpose) => ({ value: purpose, label: PURPOSE_WORDS[purpose] }))}
        onChoose={(purpose) => change('purpose', { purpose: purpose as Service['purpose'] })}
      />
      <Choice
        label="Carries"
        value={run.service.fluid}
        options={FLUIDS.map((fluid) => ({ value: fluid, label: FLUID_WORDS[fluid] }))}
        onChoose={(fluid) => change('fluid', { fluid: fluid as Service['fluid'] })}
      />
      <PressureField
        value={run.service.pressureKpa}
        onSet={(pressureKpa) => change('working pressure', { pressureKpa }, true)}
      />
      <TemperatureField
        value={run.service.temperatureC}
        onSet={(temperatureC) => change('temperature', { temperatureC }, true)}
      />
      {run.service.purpose === 'turbo-oil-feed' && <TurboFeed run={run} />}
      {run.service.purpose === 'turbo-water' && <TurboWater run={run} />}
      {run.service.purpose === 'turbo-oil-drain' && (
        <FigureField
          run={run}
          figure="shaftTiltDeg"
          label="Turbo shaft off level, car level"
          unit="°"
          low={0}
          high={90}
          step={1}
          decimals={0}
        />
      )}
      <RunFlowFields run={run} />
      <TextField
        label="Hose made (printed along it)"
        value={run.madeOn ?? ''}
        hint="not known; such as 2026-05"
        mayBeEmpty
        takes={(madeOn) => MADE_ON.test(madeOn)}
        wrongWords="Expected a year and a month, such as 2026-05."
        onSet={(madeOn) => document.edit('when the hose was made', (project) => setMadeOn(project, run.id, madeOn))}
      />
      <div className="support-buttons">
        <Button hint="Its ports stay; undo brings it back" onPress={() => onRuns.remove(run.id)}>
          Remove this run
        </Button>
      </div>
    </section>
  );
}
