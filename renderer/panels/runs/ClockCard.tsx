import type { Lay } from '../../../shared/document/lay/schema.ts';
import { formatDegrees } from '../../../shared/sheets/format/index.ts';
import { ClockFace } from '../../widgets/ClockFace.tsx';
import { clockSentence, farHandDeg } from './words.ts';

/** The clock of a run: the angle, a face from either end, and the sentence. */
export function ClockCard({ lay }: { lay: Lay }) {
  const { clock } = lay;
  if (clock.kind === 'free')
    return (
      <section className="clock-card" aria-label="Clock">
        <h3>Clock</h3>
        <p>{clockSentence(lay)}</p>
      </section>
    );
  const far = farHandDeg(clock.deg);
  const face = (near: string, other: string) => (
    <ClockFace
      caption={`seen from END ${near}`}
      words={`Seen from END ${near}: ${near} at 6 o'clock, ${other} ${formatDegrees(far)} clockwise from 12`}
      hands={[
        { atDeg: far, name: other, look: 'far' },
        { atDeg: 180, name: near, look: 'near' },
      ]}
    />
  );
  return (
    <section className="clock-card" aria-label="Clock">
      <h3>
        Clock <span className="figure">{formatDegrees(clock.deg)}</span>
      </h3>
      <div className="clock-faces">
        {face('A', 'B')}
        {face('B', 'A')}
      </div>
      <p>{clockSentence(lay)}</p>
    </section>
  );
}
