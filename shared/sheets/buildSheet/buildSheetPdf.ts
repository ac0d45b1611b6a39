import { cutVerdict, findingsOf, layOf } from '../bench/cutVerdict.ts';
import { lengthWriter } from '../format/index.ts';
import type { SheetInput, SheetRun } from '../input.ts';
import { stack } from '../layout/block.ts';
import { Flow } from '../layout/flow.ts';
import { openPaper, PAPER_MM, type Paper } from '../layout/paper.ts';
import { MARGIN_MM, TYPE } from '../layout/style.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import { askedTable } from './askedTable.ts';
import { cautions } from './cautions.ts';
import { checkBar } from './checkBar.ts';
import { clockCard } from './clockCard.ts';
import { cutBlock } from './cutBlock.ts';
import { endsTable } from './endsTable.ts';
import { findingsTable } from './findingsTable.ts';
import { finishedBlock } from './finishedBlock.ts';
import { fittedBlock } from './fittedBlock.ts';
import { forbidBand } from './forbidBand.ts';
import { lengthsBlock } from './lengthsBlock.ts';
import { lifeBlock } from './lifeBlock.ts';
import { nutsBlock } from './nutsBlock.ts';
import { proofBlock } from './proofBlock.ts';
import { secondEndList } from './secondEndList.ts';
import { drawFoot, sheetFrame } from './sheetFrame.ts';
import { signOff } from './signOff.ts';
import { straightView } from './straightView.ts';
import type { LaidSubject, Subject } from './subject.ts';
import { toleranceBlock } from './toleranceBlock.ts';

const GAP_MM = 4;

/**
 * The build sheets of the given runs as one PDF at true scale, in the order of `input.runs`; `only` picks runs by id.
 * Lengths on the sheet are the report's; a run that may not be cut says so on its first page, one without a lay gets a
 * page that says why. The same input gives the same bytes.
 */
export async function buildSheetPdf(input: SheetInput, only?: readonly string[]): Promise<Uint8Array> {
  const size = input.paper ?? input.project.paperwork?.paper ?? 'A4';
  const { fonts, printedOn } = input;
  const paper = await openPaper({ size, fonts, printedOn, title: `${input.project.name}: build sheets` });
  input.runs.forEach((run, i) => {
    if (only && !only.includes(run.run.id)) return;
    drawRun(subjectOf(paper, input, run, i + 1, PAPER_MM[size][0] - 2 * MARGIN_MM));
  });
  return paper.bytes();
}

function subjectOf(paper: Paper, input: SheetInput, run: SheetRun, number: number, widthMm: number): Subject {
  const verdict = cutVerdict(input, run.run.id);
  const findings = findingsOf(input.report, run.run.id);
  const write = lengthWriter(input.project.paperwork?.finestInch);
  return { paper, input, run, number, verdict, findings, write, widthMm };
}

function drawRun(subject: Subject): void {
  const { paper, input, run } = subject;
  const firstPage = paper.pages.length;
  const flow = new Flow(paper, sheetFrame(subject));
  const lay = layOf(input.report, run.run.id);
  flow.newPage();
  if (!subject.verdict.mayCut) flow.add(forbidBand(subject), GAP_MM);
  if (lay && lay.outcome !== 'no-way') drawLaid(flow, { ...subject, lay });
  else drawUnlaid(flow, subject);
  const pages = paper.pages.slice(firstPage);
  pages.forEach((page, i) => {
    drawFoot(page, subject, i + 1, pages.length);
  });
}

/** What may be cut is drawn in the order of the bench; what may not, with nothing to tick or sign. */
function drawLaid(flow: Flow, subject: LaidSubject): void {
  const { mayCut } = subject.verdict;
  flow.add(cutBlock(subject), GAP_MM);
  flow.add(endsTable(subject), GAP_MM);
  const view = straightView(subject);
  const next = (): void => (mayCut ? flow.add(secondEndList(subject), GAP_MM) : drawFindings(flow, subject));
  // Where the view must go over to the next page, what follows it fills this one.
  const viewFirst = flow.fits(view);
  if (!viewFirst) next();
  flow.add(view, GAP_MM);
  const lengths = lengthsBlock(subject);
  const lengthsFirst = mayCut && !flow.fits(secondEndList(subject)) && flow.fits(lengths);
  if (lengthsFirst) flow.add(lengths, GAP_MM);
  if (viewFirst) next();
  flow.add(stack([clockCard(subject), checkBar(subject.widthMm)], GAP_MM), GAP_MM);
  if (!lengthsFirst) flow.add(lengths, GAP_MM);
  const tolerance = mayCut ? toleranceBlock(subject) : undefined;
  if (tolerance !== undefined) flow.add(tolerance, GAP_MM);
  if (mayCut) {
    drawFindings(flow, subject);
    flow.add(finishedBlock(subject), GAP_MM);
    flow.add(nutsBlock(subject), GAP_MM);
    flow.add(proofBlock(subject));
    const fitted = fittedBlock(subject);
    if (fitted !== undefined) flow.add(fitted);
    flow.add(lifeBlock(subject), GAP_MM);
    flow.add(signOff(subject), GAP_MM);
  }
  flow.add(cautions(subject));
}

function drawUnlaid(flow: Flow, subject: Subject): void {
  const { paper, widthMm } = subject;
  flow.add(
    textBlock(
      paper,
      'There is no hose to cut for this run yet, so this sheet gives no lengths, no clock and no strip. What stands in the way is named above; change it and lay the run again.',
      widthMm,
      { sizePt: TYPE.strong },
    ),
    GAP_MM,
  );
  flow.add(askedTable(subject), GAP_MM);
  if (subject.findings.length > 0) drawFindings(flow, subject);
}

function drawFindings(flow: Flow, subject: Subject): void {
  const { paper, widthMm } = subject;
  const table = findingsTable(subject);
  const first = table.rows[0]?.heightMm ?? 0;
  flow.add(heading('Findings', widthMm), 0, table.titles.heightMm + first);
  if (table.rows.length > 0) flow.addTable(table.titles, table.rows);
  else
    flow.add(textBlock(paper, 'The checks that were run found nothing on this hose.', widthMm, { sizePt: TYPE.small }));
  flow.gap(GAP_MM);
}
