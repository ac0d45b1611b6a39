import type { End } from '../../../shared/document/parts/schema.ts';
import type { Port, Run } from '../../../shared/document/project/schema.ts';
import type { OpenDocument } from '../../state/documentStore.ts';
import {
  type EndTag,
  setCutLength,
  setEnd,
  setHose,
  setOwnClock,
  setSlack,
  setSleeve,
} from '../../state/edits/runEdits.ts';
import { portSeat } from '../../state/portSeat.ts';
import { useBench } from '../../state/useBench.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { MaybeLengthField } from '../MaybeLengthField.tsx';
import { HoseClampsField } from './HoseClampsField.tsx';
import { EndChoice, HoseChoice } from './PartChoices.tsx';

const NO_SLEEVE = '';

/** What the user states of a run. Every change is one step back, and the lay says that it is older. */
export function RunChanges({ run, open }: { run: Run; open: OpenDocument }) {
  const { document, onParts } = useBench();
  const { hoses, sleeves } = open.tables;
  return (
    <section className="changes" aria-label="What this run is made of">
      <div className="made-head">
        <h3>Made of</h3>
        <button type="button" className="text-button" onClick={() => onParts.open('hoses', run.hose)}>
          Parts drawer
        </button>
      </div>
      <HoseChoice
        hoses={hoses}
        value={run.hose}
        asked={{ ports: [portOf(run, 'a', open), portOf(run, 'b', open)], ...run.service }}
        onChoose={(hose) => document.edit('hose', (project) => setHose(project, run.id, hose))}
      />
      <EndChanges run={run} tag="a" open={open} />
      <EndChanges run={run} tag="b" open={open} />
      <Choice
        label="Sleeve"
        value={run.sleeve ?? NO_SLEEVE}
        options={[{ value: NO_SLEEVE, label: 'none' }, ...sleeves.map((s) => ({ value: s.id, label: s.name }))]}
        onChoose={(sleeve) =>
          document.edit('sleeve', (project) => setSleeve(project, run.id, sleeve === NO_SLEEVE ? undefined : sleeve))
        }
      />
      <NumberField
        label="Slack wanted"
        unit="%"
        value={run.slack * 100}
        low={0}
        high={50}
        step={0.5}
        decimals={1}
        onSet={(percent) => document.edit('slack', (project) => setSlack(project, run.id, percent / 100), true)}
      />
      <MaybeLengthField
        label="Already cut to, shoulder to shoulder"
        hint="still to be cut"
        mm={run.cutLengthMm}
        onSet={(mm) => document.edit('hose already cut', (project) => setCutLength(project, run.id, mm))}
      />
      {run.cutLengthMm !== undefined && (
        <p className="teach">This hose is already cut: its slack is measured, not wanted.</p>
      )}
    </section>
  );
}

/** The port as the end meets it: with the adapters that stand on it. */
function portOf(run: Run, tag: EndTag, { history, tables }: OpenDocument): Port | undefined {
  const port = history.present.ports.find(({ id }) => id === run[tag].port);
  return port && portSeat(port, tables.adapters).port;
}

/** How an end turns on its port, as words after its name. */
function turningWords(end: End | undefined): string {
  if (end?.turning !== 'range') return 'turns freely on its port';
  return `turns on its port from ${end.turnFromDeg ?? 0}° to ${end.turnToDeg ?? 0}°`;
}

/** deg. What a stated clock begins with: 0, or the middle of the end's range. */
function firstClock(end: End | undefined): number {
  return end?.turning === 'range' ? ((end.turnFromDeg ?? 0) + (end.turnToDeg ?? 0)) / 2 : 0;
}

function EndChanges({ run, tag, open }: { run: Run; tag: EndTag; open: OpenDocument }) {
  const { document } = useBench();
  const name = `END ${tag.toUpperCase()}`;
  const { end: endId, clockDeg } = run[tag];
  const { ends, hoses } = open.tables;
  const port = portOf(run, tag, open);
  const own = ends.find((end) => end.id === endId);
  const angled = (own?.bendAngleDeg ?? 0) > 0;
  const isFixed = own?.turning === 'fixed';
  const setClock = (deg: number | undefined, join: boolean): void =>
    document.edit(`own clock of ${name}`, (project) => setOwnClock(project, run.id, tag, deg), join);
  return (
    <div className="end-changes">
      <EndChoice
        label={`${name} at ${port?.name ?? run[tag].port}`}
        ends={ends}
        value={endId}
        hose={hoses.find((hose) => hose.id === run.hose)}
        port={port}
        onChoose={(end) => document.edit(`end at ${name}`, (project) => setEnd(project, run.id, tag, end))}
      />
      {own?.joint === 'clamped' && <HoseClampsField run={run} tag={tag} />}
      {angled && (
        <div className="own-clock">
          {isFixed ? (
            <p className="teach">This end does not turn on its port: it stands at the clock stated here.</p>
          ) : (
            <label className="check">
              <input
                type="checkbox"
                checked={clockDeg === undefined}
                onChange={(event) => setClock(event.target.checked ? undefined : firstClock(own), false)}
              />
              {name} {turningWords(own)}; the program chooses
            </label>
          )}
          {(isFixed || clockDeg !== undefined) && (
            <NumberField
              label={`${name} own clock`}
              unit="°"
              value={clockDeg ?? 0}
              low={own?.turning === 'range' ? (own.turnFromDeg ?? -360) : -360}
              high={own?.turning === 'range' ? (own.turnToDeg ?? 360) : 360}
              step={5}
              decimals={0}
              onSet={(deg) => setClock(deg, true)}
            />
          )}
        </div>
      )}
    </div>
  );
}
