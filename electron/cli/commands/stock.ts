import { bad, good, type Result } from '../../../shared/base/result.ts';
import { readLength } from '../../../shared/document/parts/readLength.ts';
import { USUAL_KERF_MM } from '../../../shared/document/stock/cutPlan.ts';
import { readProject } from '../../../shared/jobs/readProject.ts';
import { stockRows } from '../../../shared/sheets/csv/stockCutsCsv.ts';
import { type StockCuts, stockCuts, stockWords } from '../../../shared/sheets/index.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { readReport } from '../../node/readReport.ts';
import { defineCommand, type Values } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { inColumns } from '../inColumns.ts';
import { isoDay } from '../isoDay.ts';
import { watchedJob } from '../watchedJob.ts';

interface StockOptions {
  readonly project: string;
  readonly report?: string;
  readonly kerfMm: number;
  readonly json: boolean;
}

const OPTIONS = { lay: { type: 'string' }, kerf: { type: 'string' }, json: { type: 'boolean' } } as const;

/** `hosewright stock`: from which roll or offcut each hose is cut. */
export const stockCommand = defineCommand({
  name: 'stock',
  usage: [
    [
      'stock  PROJECT [--lay REPORT.json] [--kerf LENGTH] [--json]',
      'from which roll or offcut of the table each hose is cut, and what is left; lays the runs first without --lay',
    ],
  ],
  options: OPTIONS,
  words: [1, 1],
  read: ([project = ''], values) => readOptions(project, values),
  run: runStock,
});

function readOptions(project: string, { lay, kerf, json }: Values<typeof OPTIONS>): Result<StockOptions> {
  const read = kerf === undefined ? undefined : readLength(kerf, 'mm');
  const kerfMm = read === undefined ? USUAL_KERF_MM : read.ok ? read.mm : Number.NaN;
  if (!(kerfMm >= 0))
    return bad([
      { path: '--kerf', message: 'expected what the blade takes, 0 or more, such as --kerf 3mm', got: `${kerf}` },
    ]);
  return good({ project, kerfMm, json: json === true, ...(lay === undefined ? {} : { report: lay }) });
}

async function runStock(options: StockOptions, host: CommandHost): Promise<ExitCode> {
  const files = await readProjectFiles(options.project);
  if (!files.ok) return reportProblems(host, files.problems);
  const given = options.report === undefined ? undefined : await readReport(options.report);
  if (given?.ok === false) return reportProblems(host, given.problems);
  const input = { projectText: files.value.projectText, files: files.value.files, today: isoDay(host.today()) };
  const read = readProject(input);
  if (!read.ok) return reportProblems(host, read.problems);
  const laid =
    given === undefined ? await watchedJob(host, 'layRuns', input) : { ok: true as const, output: given.value };
  if (!laid.ok) return laid.exit;
  const { resolved, tables, inputHash, runHashes } = read.value;
  const sheet = {
    report: laid.output,
    runs: resolved.runs,
    currentInputHash: inputHash,
    currentRunHashes: runHashes,
  };
  const cuts = stockCuts(sheet, tables.rolls, undefined, options.kerfMm);
  host.out(options.json ? `${JSON.stringify(cuts, null, 2)}\n` : stockText(cuts));
  return cuts.leftOut.length > 0 ? EXIT.doNotCut : EXIT.clean;
}

function stockText(cuts: StockCuts): string {
  const rows = stockRows(cuts)
    .filter(({ what }) => what === 'cut' || what === 'left')
    .map((row) => [row.hose ?? '', row.piece ?? '', row.cure_date ?? '', row.run ?? '(left)', row.length_mm ?? '']);
  return `${[...inColumns([['HOSE', 'PIECE', 'CURED', 'RUN', 'MM'], ...rows]), '', ...stockWords(cuts)].join('\n')}\n`;
}
