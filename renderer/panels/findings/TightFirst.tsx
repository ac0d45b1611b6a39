import type { LayReport } from '../../../shared/document/lay/schema.ts';
import { leastSlackMm, tightOrder } from '../../../shared/document/lay/tightOrder.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Length } from '../Length.tsx';
import { tightText } from '../runs/RunRock.tsx';

/** Which hose goes tight first when bodies move on their mounts; nothing where none moves. */
export function TightFirst({ report }: { report: LayReport }) {
  const { session } = useBench();
  const runs = useDocument((state) => state.open?.history.present.runs);
  const worked = tightOrder(report.lays);
  if (worked.length === 0) return null;
  return (
    <section aria-label="Goes tight first">
      <h3>Goes tight first</h3>
      <ol className="nearest">
        {worked.map(({ lay, rock }) => (
          <li key={lay.run}>
            <button
              type="button"
              className={leastSlackMm(rock) < 0 ? 'near-row near-short' : 'near-row'}
              onClick={() => {
                session.choose(lay.run);
                session.goTo('runs');
              }}
            >
              <span className="near-name">{runs?.find((r) => r.id === lay.run)?.name ?? lay.run}</span>
              <span className="near-figure">
                <Length mm={leastSlackMm(rock)} rounding="down" denominator={32} />
              </span>
              <span className="near-limit">slack left, {tightText(rock)}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
