import { useStore } from 'zustand';
import type { Finding } from '../../../shared/document/lay/schema.ts';
import { triedWords } from '../../../shared/document/wording/mendsWords.ts';
import { useBench, useDocument, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { MendRow } from './MendRow.tsx';
import { NearMends } from './NearMends.tsx';

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
          <MendRow key={answer.mend.id} answer={answer} before={found.before} number={i} mayMake={!busy && !isOld} />
        ))}
      </ol>
      {answers.length > 0 && <p className="mend-line">Each was laid and checked so, among the other hoses.</p>}
      {nearest.length > 0 && <NearMends mends={found.mends} nearest={nearest} before={found.before} />}
      <Button look="quiet" onPress={() => onMends.clear()}>
        Put these away
      </Button>
    </section>
  );
}
