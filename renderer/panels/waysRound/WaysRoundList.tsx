import { useStore } from 'zustand';
import type { Project, Run } from '../../../shared/document/project/schema.ts';
import type { WayRound } from '../../../shared/document/waysRound/schema.ts';
import { formatSlack } from '../../../shared/sheets/format/index.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Length } from '../Length.tsx';
import { thingName } from '../runs/Nearest.tsx';

/** One run led on other sides of things: a button that looks for them, and what each way comes to. */
export function WaysRoundList({ run, project }: { run: Run; project: Project }) {
  const { onWays } = useBench();
  const found = useStore(onWays, (state) => state.found);
  const busy = useJobs((jobs) => jobs.current !== null);
  const ways = found?.ways.run === run.id ? found.ways.ways : null;
  const held = run.supports.some(({ kind }) => kind !== 'waypoint');
  return (
    <section className="end-trial" aria-label="Other ways round">
      <h3>Other ways round</h3>
      <Button disabled={busy} onPress={() => void onWays.look(run.id)}>
        Look for other ways
      </Button>
      {ways === null && (
        <p className="teach">
          Lays this run on other sides of things, and says what each way costs.
          {held && ' What holds it now stays, so only what lies between can go another way.'}
        </p>
      )}
      {ways !== null && (
        <>
          <p className="teach">
            {ways.length === 0
              ? 'No way was found.'
              : ways.length === 1
                ? 'There is this one.'
                : `${ways.length} ways.`}
            {found?.from !== project && ' The project has changed since.'}
          </p>
          <ol className="trials">
            {ways.map((way, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: ways have no name but their number
              <WayRow key={i} way={way} number={i} project={project} busy={busy} />
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

interface WayRowProps {
  readonly way: WayRound;
  readonly number: number;
  readonly project: Project;
  readonly busy: boolean;
}

function WayRow({ way: { lay, findings }, number, project, busy }: WayRowProps) {
  const { onWays } = useBench();
  const shown = useStore(onWays, (state) => state.shown === number);
  const count = (severity: 'stop' | 'look'): number => findings.filter((f) => f.severity === severity).length;
  const clamps = lay.supports.filter((s) => s.proposed).length;
  const near = [...lay.clearances].sort((p, q) => p.clearanceMm - p.requiredMm - (q.clearanceMm - q.requiredMm))[0];
  const notes = [
    `slack ${formatSlack(lay.slack)}`,
    ...(near === undefined ? [] : [`by ${near.to.part ?? thingName(project, near.to)}`]),
    ...(clamps > 0 ? [`${clamps} ${clamps === 1 ? 'clamp' : 'clamps'} asked for`] : []),
    ...(count('stop') > 0 ? [`${count('stop')} forbid cutting`] : []),
    ...(count('look') > 0 ? [`${count('look')} to look at`] : []),
  ];
  const name = `Way ${number + 1}`;
  return (
    <li className="trial">
      <div>
        <strong>{lay.outcome === 'laid' ? name : `${name}, a near miss`}</strong>
        <span className="trial-cut">
          <Length mm={lay.cutLengthMm} rounding="up" both />
        </span>
        <span className="value-note">{notes.join(' · ')}</span>
      </div>
      <Button pressed={shown} name={`Show ${name} in the bay`} onPress={() => onWays.show(shown ? null : number)}>
        Show
      </Button>
      <Button disabled={busy} name={`Take ${name}`} onPress={() => void onWays.take(number)}>
        Take
      </Button>
    </li>
  );
}
