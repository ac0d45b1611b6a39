import { TAG_SOURCE } from '../../document/tag/hoseTag.ts';
import { type CutVerdict, cutVerdict, layOf } from '../bench/cutVerdict.ts';
import { lengthWriter } from '../format/index.ts';
import type { SheetInput, SheetRun } from '../input.ts';
import { drawExampleMark } from '../layout/exampleMark.ts';
import { Flow, type Frame } from '../layout/flow.ts';
import { openPaper, PAPER_MM, type Paper } from '../layout/paper.ts';
import { drawPaperFoot } from '../layout/paperFoot.ts';
import { GREY, lineHeightMm, MARGIN_MM, TYPE } from '../layout/style.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import { tagBlock } from './tagBlock.ts';

const GAP_MM = 4.5;
const HOW_TO =
  'Cut along the dashed lines. The large tag goes on the middle of the hose, the small ones each to its end, before the hose leaves the bench. ' +
  'What nobody wrote down yet is an open line: fill it in with a pen that stands oil, and put clear shrink tube or tape over it. ' +
  `What stands on a tag: ${TAG_SOURCE}.`;

/**
 * The tags of the given runs to cut out, as one PDF at true scale, in the order of `input.runs`; `only` picks runs by id. Of each hose that may be
 * cut, one tag for the hose and one for each end; of the others, why they have none. The same input gives the same bytes.
 */
export async function tagSheetPdf(input: SheetInput, only?: readonly string[]): Promise<Uint8Array> {
  const size = input.paper ?? input.project.paperwork?.paper ?? 'A4';
  const { fonts, printedOn } = input;
  const paper = await openPaper({ size, fonts, printedOn, title: `${input.project.name}: tags` });
  const widthMm = PAPER_MM[size][0] - 2 * MARGIN_MM;
  const flow = new Flow(paper, tagFrame(input, paper, widthMm));
  const write = lengthWriter(input.project.paperwork?.finestInch);
  const asked = input.runs.filter(({ run }) => only === undefined || only.includes(run.id));
  const judged = asked.map((run) => ({ run, verdict: cutVerdict(input, run.run.id) }));
  flow.newPage();
  for (const { run, verdict } of judged) {
    const lay = layOf(input.report, run.run.id);
    if (verdict.mayCut && lay !== undefined)
      flow.add(tagBlock({ run, lay, write, widthMm, isExample: input.project.exampleData }), GAP_MM);
  }
  addUntagged(
    flow,
    paper,
    judged.filter(({ verdict }) => !verdict.mayCut),
    widthMm,
  );
  paper.pages.forEach((page, i) => {
    drawPaperFoot(page, input, `tags  ·  page ${i + 1} of ${paper.pages.length}`);
  });
  return paper.bytes();
}

function tagFrame(input: SheetInput, paper: Paper, widthMm: number): Frame {
  const look = { sizePt: TYPE.small, colour: GREY };
  const howToMm = paper.regular.wrap(HOW_TO, TYPE.small, widthMm).length * lineHeightMm(TYPE.small);
  return {
    footMm: 17,
    drawHead: (page, first) => {
      page.text(`TAGS  ·  ${input.project.name}`, MARGIN_MM, 15.6, { sizePt: TYPE.strong + 2, bold: true });
      let y = 19;
      if (first) {
        page.paragraph(HOW_TO, MARGIN_MM, y, widthMm, look);
        y += howToMm + 2;
      }
      if (input.project.exampleData) {
        drawExampleMark(page, y, widthMm, 'Do not tag a hose from this sheet.');
        y += 7;
      }
      return y + 1;
    },
  };
}

interface Untagged {
  readonly run: SheetRun;
  readonly verdict: CutVerdict;
}

function addUntagged(flow: Flow, paper: Paper, untagged: readonly Untagged[], widthMm: number): void {
  const rows = untagged.map(({ run, verdict }) => {
    const [reason = ''] = verdict.reasons;
    return textBlock(paper, `${run.run.name} (${run.run.id}): ${reason}`, widthMm, { sizePt: TYPE.small });
  });
  if (rows.length > 0) flow.addTable(heading('No tags: these hoses may not be cut', widthMm), rows);
}
