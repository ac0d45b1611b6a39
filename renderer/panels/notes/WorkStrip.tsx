import { useEffect } from 'react';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Glyph } from '../../widgets/Glyph.tsx';
import { Shape } from '../../widgets/Shape.tsx';
import { ToolStrip } from '../byHand/ToolStrip.tsx';
import { GuideCard } from '../guide/GuideCard.tsx';
import { LeavingSlip } from './LeavingSlip.tsx';
import { SweepSlip } from './SweepSlip.tsx';

/** ms. What only says that something went well leaves by itself; what went wrong stays until it is closed. */
const WELL_SAID_MS = 8_000;

/** Work under way with its way out, and what is to be said about work that has ended. */
export function WorkStrip() {
  const bench = useBench();
  const current = useJobs((jobs) => jobs.current);
  const notice = useJobs((jobs) => jobs.notice);
  useEffect(() => {
    if (notice?.kind !== 'done') return;
    const leaving = setTimeout(() => {
      if (bench.jobs.getState().notice === notice) bench.jobs.dismiss();
    }, WELL_SAID_MS);
    return () => clearTimeout(leaving);
  }, [bench, notice]);
  return (
    <div className="work" aria-live="polite">
      <GuideCard />
      <ToolStrip />
      {current !== null && (
        <section className="slip work-now" aria-label="Work under way">
          <div className="work-words">
            <b>{current.title}</b>
            <span>{current.cancelling ? 'stopping' : current.progress.doing.replace(/,$/, '')}</span>
          </div>
          <progress max={1} value={current.progress.fraction} aria-label={current.title} />
          <Button onPress={bench.jobs.cancel} hint="Escape">
            {current.cancelling ? 'Stop at once' : 'Cancel'}
          </Button>
        </section>
      )}
      <SweepSlip />
      <LeavingSlip />
      {notice !== null && (
        <section className={`slip notice notice-${notice.kind}`} role={notice.kind === 'problem' ? 'alert' : 'status'}>
          <Shape kind={notice.kind === 'problem' ? 'octagon' : 'tick'} />
          <div>
            <b>{notice.title}</b>
            <ul>
              {notice.lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </div>
          <Button look="quiet" name="Close this note" onPress={bench.jobs.dismiss}>
            <Glyph kind="close" />
          </Button>
        </section>
      )}
    </div>
  );
}
