import path from 'node:path';
import type { LayReport } from '../../shared/document/lay/schema.ts';
import { writeFilesInto } from '../node/writeFilesInto.ts';
import { type CommandHost, reportProblems } from './commandHost.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { reportTable } from './reportTable.ts';

export const REPORT_FILE = 'lay-report.json';

/** Prints a report, writes it where asked, and answers the exit code it stands for. */
export async function tellReport(
  report: LayReport,
  options: { readonly json: boolean; readonly out?: string },
  host: CommandHost,
): Promise<ExitCode> {
  const json = `${JSON.stringify(report, null, 2)}\n`;
  host.out(options.json ? json : reportTable(report));
  if (options.out !== undefined) {
    const file = { path: REPORT_FILE, bytes: new TextEncoder().encode(json) };
    const written = await writeFilesInto(options.out, [file]);
    if (!written.ok) return reportProblems(host, written.problems);
    if (!options.json) host.out(`\nwritten: ${path.join(options.out, REPORT_FILE)}\n`);
  }
  return exitForReport(report);
}

/** A hose is cut only when every run has a lay and no finding forbids it. */
export function exitForReport(report: LayReport): ExitCode {
  const forbids = report.findings.some(
    (finding) => finding.severity === 'stop' && finding.overrideReason === undefined,
  );
  return forbids || report.lays.some((lay) => lay.outcome !== 'laid') ? EXIT.doNotCut : EXIT.clean;
}
