import type { Built, Lay } from '../../../shared/document/lay/schema.ts';
import type { AsBuilt, Run } from '../../../shared/document/project/schema.ts';
import { CHECK_WORDS } from '../../../shared/document/wording/findingWords.ts';
import { formatTurn, isStraight } from '../../../shared/sheets/format/index.ts';
import { useBench, useJobs, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { ClockField } from '../ClockField.tsx';
import { Length } from '../Length.tsx';
import { LengthField } from '../LengthField.tsx';
import { Value } from '../runs/Value.tsx';
import { SystemTestField } from './SystemTestField.tsx';

/** mm. The saw is asked for no hose longer than this. */
const LONGEST_MM = 10_000;

/** The hose that was made: its measures as typed, and whether it still fits, laid again so. */
export function BuiltSection({ run, lay }: { run: Run; lay: Lay }) {
  const { onBuilt } = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  const measured = run.asBuilt;
  const set = (change: Partial<AsBuilt>): void => {
    if (!busy) void onBuilt.write(run.id, change);
  };
  return (
    <section className="rod" aria-label={CHECK_WORDS.asBuilt}>
      <h3>{CHECK_WORDS.asBuilt}</h3>
      <p className="teach">
        Measure the hose when it is made, and type what you find: it is laid again so, with its own length and clock.
      </p>
      <LengthField
        label="Cut as measured, shoulder to shoulder"
        mm={measured?.cutLengthMm ?? lay.cutLengthMm}
        lowMm={1}
        highMm={LONGEST_MM}
        onSet={(mm) => set({ cutLengthMm: Math.round(mm * 10) / 10 })}
      />
      {lay.clock.kind === 'angle' && (
        <ClockField
          label="Clock as measured"
          clockDeg={measured?.clockDeg ?? null}
          hint="such as 268"
          onSet={(clockDeg) => set({ clockDeg })}
        />
      )}
      {(measured?.cutLengthMm !== undefined || measured?.clockDeg !== undefined) && (
        <Button disabled={busy} onPress={() => void onBuilt.takeBack(run.id, 'cutLengthMm', 'clockDeg')}>
          Forget these measures
        </Button>
      )}
      {measured?.note !== undefined && <p className="teach">{measured.note}</p>}
      {lay.built !== undefined && <BuiltFigures built={lay.built} />}
      <SystemTestField run={run} />
    </section>
  );
}

const OUTCOMES: Readonly<Record<Built['outcome'], string>> = {
  lies: 'lies at rest',
  tight: 'is tight',
  'too-short': 'does not reach',
  unsettled: 'no lay at rest found',
};

function BuiltFigures({ built }: { built: Built }) {
  const { session } = useBench();
  const shown = useSession(({ ghost }) => ghost === 'built');
  const { minRadius, tightest } = built;
  return (
    <div className="rod-answer" role="status">
      <dl className="values">
        <Value name="As made it">
          <span className="figure">{OUTCOMES[built.outcome]}</span>
        </Value>
        <Value name={built.slackLeftMm < 0 ? 'Too short by' : 'Slack left'} note="against its shortest lay">
          <Length mm={Math.abs(built.slackLeftMm)} rounding={built.slackLeftMm < 0 ? 'up' : 'down'} />
        </Value>
        {minRadius !== undefined && !isStraight(minRadius.provenAtLeastMm) && (
          <Value name="Tightest bend" note="centreline">
            <Length mm={minRadius.provenAtLeastMm} rounding="down" />
          </Value>
        )}
        {tightest !== undefined && (
          <Value name="Nearest" note={tightest.to.part ?? tightest.to.id}>
            <Length mm={tightest.clearanceMm} rounding="down" /> <span className="against">asked for</span>{' '}
            <Length mm={tightest.requiredMm} rounding="up" />
          </Value>
        )}
        <Value name="Twist" note="when both ends are tight">
          <span className="figure">{formatTurn(Math.abs(built.twistDeg ?? 0), 'up')}</span>
        </Value>
      </dl>
      {built.centreline !== undefined && (
        <Button pressed={shown} onPress={() => session.set({ ghost: shown ? null : 'built' })}>
          {shown ? 'Hide it in the bay' : 'Show it in the bay'}
        </Button>
      )}
    </div>
  );
}
