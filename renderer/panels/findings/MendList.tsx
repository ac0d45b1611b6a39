import { useStore } from 'zustand';
import type { Finding } from '../../../shared/document/lay/schema.ts';
import type { Mends, NearMend } from '../../../shared/document/mends/schema.ts';
import { lackOf, nearestWords, triedWords } from '../../../shared/document/wording/mendsWords.ts';
import { useBench, useDocument, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { LeftFinding } from './LeftFinding.tsx';
import { MendRow } from './MendRow.tsx';
import { curedWords, titleOf } from './mendText.ts';

/** What would mend a run, or one finding of it, once it was tried: the changes that do, each to be seen and to be made. */
export function MendList({ run, of }: { run: string; of?: Finding }) {
  const { onMends } = useBench();
  const found = useStore(onMends, (state) => state.found);
  const project = useDocument((state) => state.open?.history.present);
  const busy = useJobs((jobs) => jobs.current !== null);
  if (found === null || found.mends.run !== run || found.of !== of) return null;
  const { answers, nearest = [] } = found.mends;
  const isOld = found.from !== project;
  return (
    <section className="mends" aria-label="What would mend it">
      <p className="teach" role="status">
        {isOld && 'The project has changed since: try again. '}
        {triedWords(found.mends)}
      </p>
      <ol className="mend-rows">
        {answers.map((answer, i) => (
          <MendRow key={answer.mend.id} answer={answer} number={i} mayMake={!busy && !isOld} />
        ))}
      </ol>
      {answers.length > 0 && <p className="mend-line">Each was laid and checked so, among the other hoses.</p>}
      {nearest.length > 0 && <Nearest mends={found.mends} nearest={nearest} />}
      <Button look="quiet" onPress={() => onMends.clear()}>
        Put these away
      </Button>
    </section>
  );
}

/** What was tried and is no answer, with what it lacks: to be read, not to be made. */
function Nearest({ mends, nearest }: { mends: Mends; nearest: readonly NearMend[] }) {
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
                  isNew={near.brings.includes(finding)}
                />
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </>
  );
}
