import { useMemo } from 'react';
import { orderFindings } from '../../state/findingOrder.ts';
import { useDocument } from '../../state/useBench.ts';
import { FindingList } from './FindingList.tsx';
import { FittingOrderList } from './FittingOrderList.tsx';
import { FittingPlayer } from './FittingPlayer.tsx';
import { OwnLimits } from './OwnLimits.tsx';
import { TightFirst } from './TightFirst.tsx';

/** All findings of all runs. */
export function ChecksCard() {
  const report = useDocument((state) => state.open?.report ?? null);
  const project = useDocument((state) => state.open?.history.present);
  const findings = useMemo(() => orderFindings(report?.findings ?? []), [report]);
  return (
    <article className="slip card" aria-labelledby="checks-title">
      <h2 id="checks-title">Checks</h2>
      {report === null && <p className="teach">Lay the runs first; every lay is checked as soon as it is made.</p>}
      {report !== null && findings.length === 0 && (
        <p className="teach">
          Nothing found. That says the laid hoses meet the rules checked here, and no more than that.
        </p>
      )}
      {findings.length > 0 && <FindingList findings={findings} named />}
      {project !== undefined && <OwnLimits project={project} />}
      {report !== null && project !== undefined && <FittingOrderList report={report} project={project} />}
      <FittingPlayer />
      {report !== null && <TightFirst report={report} />}
    </article>
  );
}
