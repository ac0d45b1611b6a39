import type { Finding } from '../../../shared/document/lay/schema.ts';
import type { Mends, NearMend } from '../../../shared/document/mends/schema.ts';
import { lackOf, nearestWords } from '../../../shared/document/wording/mendsWords.ts';
import { LeftFinding } from './LeftFinding.tsx';
import { curedWords, titleOf } from './mendText.ts';
import { standingOf } from './standingOf.ts';

interface NearMendsProps {
  readonly mends: Pick<Mends, 'aimedAt' | 'answers'>;
  readonly nearest: readonly NearMend[];
  /** the findings that they were tried on */
  readonly before: readonly Finding[];
}

/** What was tried and is no answer, with what it lacks: to be read, not to be made. */
export function NearMends({ mends, nearest, before }: NearMendsProps) {
  return (
    <>
      <p className="teach">{nearestWords(mends)}</p>
      <ul className="mend-rows">
        {nearest.map((near) => (
          <li className="mend-row" key={near.mend.id}>
            <strong>{titleOf(near.mend.words)}</strong>
            {near.cures.map((words) => (
              <span key={words}>{curedWords(words)}</span>
            ))}
            {near.toGet.length > 0 && <span className="mend-line">To get: {near.toGet.join(', ')}</span>}
            <ul className="mend-left" aria-label={`What it lacks: ${titleOf(near.mend.words)}`}>
              {lackOf(near).map((finding) => (
                <LeftFinding
                  key={`${finding.check} ${finding.message}`}
                  finding={finding}
                  standing={standingOf(finding, near.brings, before)}
                />
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </>
  );
}
