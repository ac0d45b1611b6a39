import { useState } from 'react';
import { findingNumbers, isYesOrNo } from '../../../shared/sheets/format/index.ts';
import type { NumberedFinding } from '../../state/findingOrder.ts';
import { useBench, useDocument, useJobs, useSession } from '../../state/useBench.ts';
import { Shape } from '../../widgets/Shape.tsx';
import { SEVERITY_SHAPES, SEVERITY_WORDS } from '../runStateShape.ts';
import { MendList } from './MendList.tsx';
import { PassFinding } from './PassFinding.tsx';

/** Findings, worst first. Choosing one flies the camera to its place and marks it on the straight view. */
export function FindingList({ findings, named = false }: { findings: readonly NumberedFinding[]; named?: boolean }) {
  return (
    <ul className="findings" aria-label="Findings">
      {findings.map((numbered) => (
        <FindingRow key={numbered.number} numbered={numbered} named={named} />
      ))}
    </ul>
  );
}

function FindingRow({ numbered, named }: { numbered: NumberedFinding; named: boolean }) {
  const bench = useBench();
  const chosen = useSession((session) => session.finding);
  const runs = useDocument((state) => state.open?.history.present.runs);
  const [passing, setPassing] = useState(false);
  const busy = useJobs((jobs) => jobs.current !== null);
  const { number, finding } = numbered;
  const { limit, measured, margin } = findingNumbers(finding);
  return (
    <li>
      <button
        type="button"
        className={`finding severity-${finding.severity}`}
        aria-current={chosen === number ? 'true' : undefined}
        onClick={() => bench.goToFinding(numbered)}
      >
        <span className="finding-flag">
          <Shape kind={SEVERITY_SHAPES[finding.severity]} size={18} />
          <span className="figure">{number}</span>
        </span>
        <span className="finding-word">
          {SEVERITY_WORDS[finding.severity]}
          {named && <span className="finding-run">{runs?.find((run) => run.id === finding.run)?.name}</span>}
        </span>
        <span className="finding-message">{finding.message}</span>
        {!isYesOrNo(finding) && (
          <span className="finding-numbers figure">
            <span>limit {limit}</span>
            <span>measured {measured}</span>
            <span>margin {margin}</span>
          </span>
        )}
        {finding.mend !== undefined && <span className="finding-mend">{finding.mend}</span>}
        {finding.overrideReason !== undefined && (
          <span className="finding-mend">Limit set by hand: {finding.overrideReason}</span>
        )}
        <span className="finding-source">
          {finding.source}
          {finding.dissent !== undefined && <span className="finding-dissent">Others: {finding.dissent}</span>}
        </span>
      </button>
      {finding.severity !== 'note' &&
        (passing ? (
          <PassFinding finding={finding} onDone={() => setPassing(false)} />
        ) : (
          <div className="finding-acts">
            <button
              type="button"
              className="text-button"
              disabled={busy}
              onClick={() => void bench.onMends.look(finding.run, finding)}
            >
              What would mend it
            </button>
            <button type="button" className="text-button" onClick={() => setPassing(true)}>
              Pass it with a reason
            </button>
          </div>
        ))}
      <MendList run={finding.run} of={finding} />
    </li>
  );
}
