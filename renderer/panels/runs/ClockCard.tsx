import type { Lay } from '../../../shared/document/lay/schema.ts';
import { hasNoSwivel, NO_SWIVEL_SENTENCE, NO_SWIVEL_STEPS } from '../../../shared/document/wording/noSwivelWords.ts';
import { DIALECT_WORDS, dialectSentence, formatDegrees } from '../../../shared/sheets/format/index.ts';
import { useDocument } from '../../state/useBench.ts';
import { ClockFace } from '../../widgets/ClockFace.tsx';
import { BackwardsClock } from './BackwardsClock.tsx';
import { ClockNote } from './ClockNote.tsx';
import { clockView, type EndLetter } from './clockView.ts';
import { clockSentence } from './words.ts';

/** The clock of a run: the angle, a face from either end, and the sentence. */
export function ClockCard({ lay }: { lay: Lay }) {
  const { clock } = lay;
  const fixed = useNoSwivel(lay.run);
  const dialect = useDocument((state) => state.open?.history.present.paperwork?.clockDialect) ?? 'near-at-six';
  if (clock.kind === 'free')
    return (
      <section className="clock-card" aria-label="Clock">
        <h3>Clock</h3>
        <p>{clockSentence(lay)}</p>
      </section>
    );
  const face = (from: EndLetter) => {
    const { hands, words } = clockView(from, clock.deg);
    return <ClockFace caption={`seen from END ${from}`} words={words} hands={hands} />;
  };
  return (
    <section className="clock-card" aria-label="Clock">
      <h3>
        Clock <span className="figure">{formatDegrees(clock.deg)}</span>
      </h3>
      <div className="clock-faces">
        {face('A')}
        {face('B')}
      </div>
      <p>{clockSentence(lay)}</p>
      <p className="shop-words">
        For the hose shop ({DIALECT_WORDS[dialect]}): {dialectSentence(clock.deg, dialect)}
      </p>
      {fixed && (
        <>
          <p className="reason">{NO_SWIVEL_SENTENCE}</p>
          <ol className="no-swivel-steps">
            {NO_SWIVEL_STEPS.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </>
      )}
      <BackwardsClock lay={lay} />
      <ClockNote clock={clock} />
    </section>
  );
}

/** Whether the ends of a run are two angled ones without a swivel. */
function useNoSwivel(runId: string): boolean {
  const run = useDocument((state) => state.open?.history.present.runs.find(({ id }) => id === runId));
  const ends = useDocument((state) => state.open?.tables.ends);
  const a = ends?.find(({ id }) => id === run?.a.end);
  const b = ends?.find(({ id }) => id === run?.b.end);
  return a !== undefined && b !== undefined && hasNoSwivel(a, b);
}
