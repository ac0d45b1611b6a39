import type { LayReport } from '../../shared/document/lay/schema.ts';
import type { CommandHost } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { reportTable } from './reportTable.ts';
import { tellAnswer } from './tellAnswer.ts';

export const REPORT_FILE = 'lay-report.json';

/** Prints a report, writes it where asked, and answers the exit code it stands for. */
export async function tellReport(
  report: LayReport,
  options: { readonly json: boolean; readonly out?: string },
  host: CommandHost,
): Promise<ExitCode> {
  const told = { answer: report, words: reportTable(report), file: REPORT_FILE, exit: exitForReport(report) };
  return tellAnswer(told, options, host);
}

/** A hose is cut only when every run has a lay and no finding forbids it. */
export function exitForReport(report: LayReport): ExitCode {
  const forbids = report.findings.some(
    (finding) => finding.severity === 'stop' && finding.overrideReason === undefined,
  );
  return forbids || report.lays.some((lay) => lay.outcome !== 'laid') ? EXIT.doNotCut : EXIT.clean;
}
