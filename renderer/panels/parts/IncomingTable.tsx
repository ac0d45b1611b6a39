import { describeProblem } from '../../../shared/base/result.ts';
import { PART_KIND_WORDS } from '../../../shared/document/wording/partWords.ts';
import type { Incoming } from '../../state/parts/drawerStore.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Shape } from '../../widgets/Shape.tsx';

/** A table that was brought in, with what it would do; nothing is changed until it is said. */
export function IncomingTable({ incoming }: { incoming: Incoming }) {
  const { onParts } = useBench();
  const { kind, name, rows, plan, problems } = incoming;
  const { one, many } = PART_KIND_WORDS[kind];
  const readable = rows.length > 0;
  return (
    <article className="slip part-card" aria-labelledby="incoming-title">
      <h2 id="incoming-title">{name}</h2>
      {problems.length > 0 && (
        <section className="incoming-problems" role="alert">
          <p className="state-line">
            <Shape kind="octagon" />
            {readable
              ? 'It cannot go in that way:'
              : `Read as ${many}, it has ${problems.length} ${problems.length === 1 ? 'problem' : 'problems'}. Nothing was changed.`}
          </p>
          <ul>
            {problems.map((problem) => (
              <li key={describeProblem(problem)}>{describeProblem(problem)}</li>
            ))}
          </ul>
        </section>
      )}
      {readable && (
        <>
          <p>
            {rows.length} {rows.length === 1 ? one : many} in it.
          </p>
          <dl className="values">
            <Ids words="New" ids={plan.fresh} />
            <Ids words="Changed" ids={plan.changed} />
            <Ids words="As they are here" ids={plan.same} />
            <Ids words="Only here" ids={plan.others} />
          </dl>
          <p className="teach">
            Beside what is here: new ones are added, changed ones take the place of yours, the rest stays. In place of
            all: those that are only here go, if no run uses them. Either is one step back.
          </p>
        </>
      )}
      <div className="support-buttons">
        {readable && (
          <>
            <Button look="main" onPress={() => onParts.takeIn('merge')}>
              Put them beside what is here
            </Button>
            <Button onPress={() => onParts.takeIn('replace')}>In place of all {many}</Button>
          </>
        )}
        <Button onPress={onParts.leaveIn}>Leave it</Button>
      </div>
    </article>
  );
}

function Ids({ words, ids }: { words: string; ids: readonly string[] }) {
  return (
    <div>
      <dt>{words}</dt>
      <dd>
        <span className="figure">{ids.length}</span>
        {ids.length > 0 && <span className="value-note">{ids.join(', ')}</span>}
      </dd>
    </div>
  );
}
