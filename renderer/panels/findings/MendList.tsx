import { useStore } from 'zustand';
import type { Finding } from '../../../shared/document/lay/schema.ts';
import type { MendAnswer, Mends, NearMend } from '../../../shared/document/mends/schema.ts';
import { lackOf, nearestWords, triedWords } from '../../../shared/document/wording/mendsWords.ts';
import { useBench, useDocument, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { SEVERITY_WORDS } from '../runStateShape.ts';

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
        {triedWords(found.mends)}
        {answers.length > 0 &&
          ` Each was laid and checked, and brings ${BROUGHT[Number(answers.some(({ brings }) => brings !== undefined))]}.`}
        {isOld && ' The project has changed since: try again.'}
      </p>
      <ol className="trials">
        {answers.map((answer, i) => (
          <MendRow key={answer.mend.id} answer={answer} number={i} mayMake={!busy && !isOld} />
        ))}
      </ol>
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
      <ul className="trials">
        {nearest.map((near) => (
          <li className="trial" key={near.mend.id}>
            <div>
              <strong>{near.words}</strong>
              {near.toGet.length > 0 && <span className="mend-line">Takes {near.toGet.join(', ')}</span>}
              {lackOf(near).map((finding) => (
                <span className="mend-line" key={`${finding.check} ${finding.message}`}>
                  {SEVERITY_WORDS[finding.severity]} {near.brings.includes(finding) ? 'then' : 'still'}:{' '}
                  {finding.message}
                </span>
              ))}
            </div>
          </li>
        ))}
      </ul>
    </>
  );
}

/** What a mend may bring: nothing, or what is told with it. */
const BROUGHT = ['no worse finding', 'nothing that forbids cutting; what it brings to be looked at is told'] as const;

interface MendRowProps {
  readonly answer: MendAnswer;
  readonly number: number;
  readonly mayMake: boolean;
}

function MendRow({ answer, number, mayMake }: MendRowProps) {
  const { onMends } = useBench();
  const shown = useStore(onMends, (state) => state.shown === number);
  const { words, mend, toGet, left, brings = [] } = answer;
  const isBrought = ({ message }: Finding): boolean => brings.some((one) => one.message === message);
  return (
    <li className="trial">
      <div>
        <strong>{words}</strong>
        {toGet.length > 0 && <span className="mend-line">Takes {toGet.join(', ')}</span>}
        {left.map((finding) => (
          <span className="mend-line" key={`${finding.check} ${finding.message}`}>
            {SEVERITY_WORDS[finding.severity]} {isBrought(finding) ? 'then' : 'still'}: {finding.message}
          </span>
        ))}
      </div>
      <div className="mend-acts">
        <Button
          pressed={shown}
          name={`Show in the bay: ${mend.words}`}
          onPress={() => onMends.show(shown ? null : number)}
        >
          Show
        </Button>
        <Button disabled={!mayMake} name={`Make it so: ${mend.words}`} onPress={() => void onMends.make(number)}>
          Make it so
        </Button>
      </div>
    </li>
  );
}
