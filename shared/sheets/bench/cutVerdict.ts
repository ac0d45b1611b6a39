import type { Finding, Lay, LayReport } from '../../document/lay/schema.ts';
import type { CutListInput } from '../input.ts';

/** Whether a hose may be cut from this report, and if not, every reason. */
export interface CutVerdict {
  readonly mayCut: boolean;
  readonly reasons: readonly string[];
}

/** The lay of a run in a report, if it has one. */
export function layOf(report: LayReport, run: string): Lay | undefined {
  return report.lays.find((lay) => lay.run === run);
}

/** The findings of a run, what forbids first, then what to look at, then notes; in the report's order within each. */
export function findingsOf(report: LayReport, run: string): Finding[] {
  const order = { stop: 0, look: 1, note: 2 };
  return report.findings.filter((f) => f.run === run).sort((x, y) => order[x.severity] - order[y.severity]);
}

type VerdictInput = Pick<CutListInput, 'report' | 'currentInputHash' | 'currentRunHashes'>;

/**
 * May this hose be cut? Not when the project has changed since, when it is not laid, when its lay breaks radius or clearance, or when any finding on it is a
 * stop. A stop forbids even where its rule was overridden: then it breaks the value the user himself allowed.
 */
export function cutVerdict(input: VerdictInput, run: string): CutVerdict {
  const { report } = input;
  const lay = layOf(report, run);
  const reasons: string[] = [];
  if (isStale(input, lay))
    reasons.push('Stale: the project has changed since this run was laid. Lay it again before cutting.');
  if (!lay) reasons.push('This run is not in the lay report: it has not been laid.');
  else if (lay.outcome === 'no-way') reasons.push(lay.reason ?? 'No way was found for this hose.');
  else if (lay.outcome === 'near-miss') reasons.push(lay.reason ?? 'The best lay found breaks a limit.');
  for (const f of findingsOf(report, run)) if (f.severity === 'stop') reasons.push(f.message);
  return { mayCut: reasons.length === 0, reasons: withoutRepeats(reasons) };
}

/** Whether what the run was laid from has changed: by the lay's own hash where it has one, else by the whole project's. */
function isStale({ report, currentInputHash, currentRunHashes }: VerdictInput, lay: Lay | undefined): boolean {
  if (lay?.inputHash !== undefined && currentRunHashes !== undefined)
    return currentRunHashes[lay.run] !== lay.inputHash;
  return currentInputHash !== undefined && currentInputHash !== report.project.inputHash;
}

/** The reasons less those that another one says as well. */
function withoutRepeats(reasons: readonly string[]): string[] {
  return reasons.filter((r, i) => !reasons.some((other, j) => j !== i && other.includes(r) && (other !== r || j < i)));
}
