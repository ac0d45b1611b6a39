import type { EndTrial, TrialEntry } from '../../../shared/document/endTrial/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';
import {
  formatCost,
  formatDegrees,
  formatSlack,
  formatTemperatureDifference,
} from '../../../shared/sheets/format/index.ts';
import type { OpenDocument } from '../../state/documentStore.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Length } from '../Length.tsx';

/** Beyond this many pairs the list says how many more there are. */
const MOST_SHOWN = 10;

/** One run with every pair of ends on the shelf: a button that tries them, and the pairs with which it lies clean. */
export function EndTrialList({ run, open }: { run: Run; open: OpenDocument }) {
  const bench = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  const tried = open.trials[run.id];
  return (
    <section className="end-trial" aria-label="Other ends for this run">
      <h3>Other ends</h3>
      <Button disabled={busy} onPress={() => void bench.tryEnds(run.id)}>
        Try other ends
      </Button>
      {tried === undefined ? (
        <p className="teach">
          Lays this run with every pair of ends in your tables that fits, and puts the best first: by what is found
          wrong, clamps, bends, slack, heat, room and cost.
        </p>
      ) : (
        <Tried run={run} trial={tried.trial} stale={tried.from !== open.history.present} busy={busy} />
      )}
    </section>
  );
}

function Tried({ run, trial, stale, busy }: { run: Run; trial: EndTrial; stale: boolean; busy: boolean }) {
  const { entries, tried } = trial;
  const more = entries.length - MOST_SHOWN;
  return (
    <>
      <p className="teach">
        {entries.length} of {tried} pairs lie clean{stale && '; the project has changed since'}.
      </p>
      <ol className="trials">
        {entries.slice(0, MOST_SHOWN).map((entry) => (
          <TrialRow key={`${entry.ends.a} ${entry.ends.b}`} run={run} entry={entry} busy={busy} />
        ))}
      </ol>
      {more > 0 && <p className="teach">and {more} more, bent more or longer</p>}
    </>
  );
}

function TrialRow({ run, entry, busy }: { run: Run; entry: TrialEntry; busy: boolean }) {
  const bench = useBench();
  const { lay, ends, bendsDeg, findings, heatRoomC, cost } = entry;
  const here = run.a.end === ends.a && run.b.end === ends.b;
  const count = (severity: 'stop' | 'look'): number => findings.filter((f) => f.severity === severity).length;
  const clamps = lay.supports.filter((s) => s.proposed).length;
  const notes = [
    `slack ${formatSlack(lay.slack)}`,
    lay.clock.kind === 'angle' ? `clock ${formatDegrees(lay.clock.deg)}` : 'clock free',
    ...(heatRoomC === undefined ? [] : [heatText(heatRoomC)]),
    ...(cost === undefined ? [] : [`hose and ends cost ${formatCost(cost)}`]),
    ...(clamps > 0 ? [`${clamps} ${clamps === 1 ? 'clamp' : 'clamps'} asked for`] : []),
    ...(count('stop') > 0 ? [`${count('stop')} forbid cutting`] : []),
    ...(count('look') > 0 ? [`${count('look')} to look at`] : []),
  ];
  const name = `END A ${bendName(bendsDeg.a)}, END B ${bendName(bendsDeg.b)}`;
  return (
    <li className="trial">
      <div>
        <strong>{name}</strong>
        <span className="trial-cut">
          <Length mm={lay.cutLengthMm} rounding="up" both />
        </span>
        <span className="value-note">{notes.join(' · ')}</span>
      </div>
      {here ? (
        <span className="value-note">on it now</span>
      ) : (
        <Button disabled={busy} name={`Use ${name}`} onPress={() => void bench.fitEnds(run.id, ends)}>
          Use
        </Button>
      )}
    </li>
  );
}

function heatText(roomC: number): string {
  const by = formatTemperatureDifference(Math.abs(roomC), roomC < 0 ? 'up' : 'down');
  return roomC < 0 ? `about ${by} over its heat limit` : `about ${by} under its heat limit`;
}

function bendName(deg: number): string {
  return deg === 0 ? 'straight' : `${deg}°`;
}
