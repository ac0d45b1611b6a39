import papa from 'papaparse';
import type { Lay } from '../../document/lay/schema.ts';
import { sleeveOf } from '../../document/lay/sleeveOf.ts';
import { codedLength } from '../../document/length/codedLength.ts';
import type { Paperwork, Project } from '../../document/project/schema.ts';
import { ruleById } from '../../document/rules/index.ts';
import { lengthTolerance } from '../../document/rules/lengthTolerance.ts';
import { hasNoSwivel } from '../../document/wording/noSwivelWords.ts';
import { cutVerdict, layOf } from '../bench/cutVerdict.ts';
import { overallConvention } from '../bench/lengthConvention.ts';
import { lengthsOfRun } from '../bench/lengthsOfRun.ts';
import { clockInBrief, clockSentence, partCodeText } from '../clock/clockWords.ts';
import { dialectSentence, formatNumber, type LengthWriter, lengthWriter } from '../format/index.ts';
import type { CutListInput, SheetRun } from '../input.ts';
import { disarmed } from './disarmed.ts';

/** The cut list's columns, in order. Every row has them all; what is not known is empty. */
export const CUT_LIST_COLUMNS = [
  'number',
  'state',
  'run',
  'name',
  'from_port',
  'to_port',
  'hose',
  'hose_name',
  'dash',
  'cut_length_mm',
  'cut_length_in',
  'cut_tolerance_mm',
  'cut_tolerance_in',
  'overall_mm',
  'overall_in',
  'overall_convention',
  'overall_coded',
  'end_of_nut_mm',
  'end_of_nut_in',
  'end_of_nut_convention',
  'c_a_mm',
  'c_b_mm',
  'slack_percent',
  'end_a',
  'end_a_name',
  'end_b',
  'end_b_name',
  'clock_deg',
  'clock_tolerance_deg',
  'clock_from_end_a',
  'clock_for_the_shop',
  'clock_part_code',
  'no_swivel',
  'sleeve',
  'sleeve_name',
  'sleeve_cut_at_least_mm',
  'sleeve_cut_at_least_in',
  'sleeve_if_stiff_mm',
  'sleeve_if_stiff_in',
  'outcome',
  'reasons_not_to_cut',
  'limits_set_by_hand',
  'example_data',
  'input_hash',
] as const;
type CutListRow = Partial<Record<(typeof CUT_LIST_COLUMNS)[number], string | number>>;

/**
 * The cut list as CSV text: a row per run in the given order (`only` picks runs by id), lengths of hose and sleeve rounded up. A run that may not
 * be cut says so in the second column; one without a lay has no lengths at all. Text that a spreadsheet would take for
 * a formula is disarmed. Lines end in CR LF (RFC 4180).
 */
export function cutListCsv(input: CutListInput, only?: readonly string[]): string {
  const data = input.runs.flatMap((run, i) => {
    if (only && !only.includes(run.run.id)) return [];
    const row = cutListRow(input, run, i + 1);
    return [CUT_LIST_COLUMNS.map((column) => disarmed(`${row[column] ?? ''}`))];
  });
  return `${papa.unparse({ fields: [...CUT_LIST_COLUMNS], data }, { newline: '\r\n' })}\r\n`;
}

function cutListRow(input: CutListInput, run: SheetRun, number: number): CutListRow {
  const verdict = cutVerdict(input, run.run.id);
  const lay = layOf(input.report, run.run.id);
  return {
    number,
    state: verdict.mayCut ? 'cut' : 'DO NOT CUT',
    ...partColumns(run),
    ...(lay && lay.outcome !== 'no-way' ? lengthColumns(run, lay, input.project.paperwork) : {}),
    outcome: lay?.outcome ?? 'not-laid',
    reasons_not_to_cut: verdict.reasons.join(' | '),
    limits_set_by_hand: ownLimits(input.project, run.run.id).join(' | '),
    example_data: input.project.exampleData ? 'EXAMPLE DATA' : '',
    input_hash: input.report.project.inputHash,
  };
}

/** The limits that the project sets for a run, each with its reason: they stand on every paper. */
function ownLimits({ overrides = [] }: Partial<Pick<Project, 'overrides'>>, runId: string): string[] {
  return overrides
    .filter(({ run }) => run === undefined || run === runId)
    .map(({ rule: id, value, reason }) => {
      const rule = ruleById(id);
      const unit = rule === undefined || rule.unit === 'count' ? '' : ` ${rule.unit}`;
      return `${rule?.title ?? id}: ${value}${unit} instead of ${rule?.value ?? 'none'}${unit}: ${reason}`;
    });
}

function partColumns(run: SheetRun): CutListRow {
  return {
    run: run.run.id,
    name: run.run.name,
    from_port: run.a.port.name,
    to_port: run.b.port.name,
    hose: run.hose.id,
    hose_name: run.hose.name,
    dash: run.hose.dash,
    end_a: run.a.end.id,
    end_a_name: run.a.end.name,
    end_b: run.b.end.id,
    end_b_name: run.b.end.name,
    sleeve: run.sleeve?.id ?? '',
    sleeve_name: run.sleeve?.name ?? '',
  };
}

function lengthColumns(run: SheetRun, lay: Lay, paperwork: Paperwork = {}): CutListRow {
  const write = lengthWriter(paperwork.finestInch);
  const { applies, toleranceMm } = lengthTolerance(lay.cutLengthMm, run.hose.core);
  return {
    cut_length_mm: formatNumber(lay.cutLengthMm, 1, 'up'),
    cut_length_in: write.inches(lay.cutLengthMm, 'up'),
    cut_tolerance_mm: applies ? formatNumber(toleranceMm, 1, 'down') : '',
    cut_tolerance_in: applies ? write.inches(toleranceMm, 'down') : '',
    overall_mm: formatNumber(lay.overallLengthMm, 1),
    overall_in: write.inches(lay.overallLengthMm),
    overall_convention: overallConvention(run),
    overall_coded:
      paperwork.codedLength === undefined ? '' : (codedLength(lay.overallLengthMm, paperwork.codedLength)?.words ?? ''),
    ...nutColumns(run, lay, write),
    c_a_mm: formatNumber(lay.cutOffMm.a, 1),
    c_b_mm: formatNumber(lay.cutOffMm.b, 1),
    slack_percent: formatNumber(lay.slack * 100, 1, 'down'),
    ...clockColumns(lay, paperwork),
    no_swivel: hasNoSwivel(run.a.end, run.b.end) ? 'NO SWIVEL: mark at the ports before making it up' : '',
    ...sleeveColumns(run, lay, write),
  };
}

/** Where an end is a straight nut: to its farthest reach, or which figure that takes. */
function nutColumns(run: SheetRun, lay: Lay, write: LengthWriter): CutListRow {
  const length = lengthsOfRun(run, lay).find(({ convention }) => convention === 'end-of-nut');
  if (length === undefined) return {};
  const { lengthMm, missing, from, to } = length;
  if (lengthMm === undefined)
    return { end_of_nut_convention: `not known: the table of ends lacks ${(missing ?? []).join(', and ')}` };
  return {
    end_of_nut_mm: formatNumber(lengthMm, 1),
    end_of_nut_in: write.inches(lengthMm),
    end_of_nut_convention: `from ${from} to ${to}`,
  };
}

function clockColumns({ clock }: Lay, { clockDialect = 'near-at-six' }: Paperwork): CutListRow {
  if (clock.kind === 'free') return { clock_deg: 'free' };
  return {
    clock_deg: clockInBrief(clock).replace('°', ''),
    clock_tolerance_deg: formatNumber(clock.toleranceDeg, 0, 'down'),
    clock_from_end_a: clockSentence(clock.deg, 'A'),
    clock_for_the_shop: dialectSentence(clock.deg, clockDialect),
    clock_part_code: partCodeText(clock.deg),
  };
}

function sleeveColumns(run: SheetRun, lay: Lay, write: LengthWriter): CutListRow {
  const sleeve = sleeveOf(run, lay);
  if (sleeve === undefined) return {};
  return {
    sleeve_cut_at_least_mm: formatNumber(sleeve.cutLengthMm, 1, 'up'),
    sleeve_cut_at_least_in: write.inches(sleeve.cutLengthMm, 'up'),
    sleeve_if_stiff_mm: formatNumber(sleeve.stiffMm, 1, 'up'),
    sleeve_if_stiff_in: write.inches(sleeve.stiffMm, 'up'),
  };
}
