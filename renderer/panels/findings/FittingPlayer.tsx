import { useStore } from 'zustand';
import type { OpenDocument } from '../../state/documentStore.ts';
import { fittingSequence } from '../../state/onFitting.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Slider } from '../../widgets/Slider.tsx';
import { useResolvedRun } from '../runs/useResolvedRun.ts';
import { fittingWords } from './fittingWords.ts';

/** The hoses going on in the bay one after the other, with what is done at each. Nothing before a run is laid. */
export function FittingPlayer() {
  const { onFitting } = useBench();
  const open = useDocument((state) => state.open);
  const { on, plays } = useStore(onFitting);
  const runs = fittingSequence(open?.report ?? null);
  if (open === null || runs.length === 0) return null;
  const nameOf = (run: string | undefined): string =>
    open.history.present.runs.find((one) => one.id === run)?.name ?? run ?? 'the empty bay';
  const last = on === null ? undefined : runs[on - 1];
  const where = on === null ? 'all hoses are on' : `${on} of ${runs.length} on: ${nameOf(last)}`;
  return (
    <section className="poses" aria-label="Fitting, hose by hose">
      <h3>Fitting, hose by hose</h3>
      <Slider most={runs.length} at={on ?? runs.length} words={where} onMove={onFitting.to}>
        <b>{on === null ? 'All hoses are on' : last === undefined ? 'None is on yet' : nameOf(last)}</b>
        <span>
          {on !== null && `${on} of ${runs.length}`} <kbd>{'{'}</kbd> <kbd>{'}'}</kbd>
        </span>
      </Slider>
      <div className="support-buttons">
        <Button name="Last hose off" disabled={on === 0} onPress={() => onFitting.step(-1)}>
          One off
        </Button>
        <Button hint="Key Shift P" pressed={plays} onPress={plays ? onFitting.pause : onFitting.play}>
          {plays ? 'Pause' : 'Play'}
        </Button>
        <Button name="Next hose on" disabled={on === runs.length} onPress={() => onFitting.step(1)}>
          One on
        </Button>
        {on !== null && (
          <Button hint="Key Escape" onPress={onFitting.leave}>
            Show all hoses
          </Button>
        )}
      </div>
      <div role="status">{last !== undefined && <FittingSteps open={open} runId={last} />}</div>
    </section>
  );
}

function FittingSteps({ open, runId }: { open: OpenDocument; runId: string }) {
  const project = open.history.present;
  const run = useResolvedRun(project, open.tables, runId);
  if (run === undefined || open.report === null) return null;
  return (
    <ol className="teach" aria-label={`Putting on ${run.run.name}`}>
      {fittingWords(run, open.report, project).map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ol>
  );
}
