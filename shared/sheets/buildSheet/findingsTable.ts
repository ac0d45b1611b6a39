import type { Finding } from '../../document/lay/schema.ts';
import { SEVERITY_WORDS } from '../../document/wording/findingWords.ts';
import { findingNumbers, isYesOrNo, type LengthWriter } from '../format/index.ts';
import type { Block } from '../layout/block.ts';
import { onTwoLines } from '../layout/onTwoLines.ts';
import type { Page } from '../layout/page.ts';
import { FORBID, INK, TYPE, WHITE } from '../layout/style.ts';
import { tableRows } from '../layout/table.ts';
import type { Subject } from './subject.ts';

const SHARES = [0.085, 0.335, 0.13, 0.13, 0.12, 0.2] as const;
const TITLES = ['', 'finding', 'limit', 'measured', 'margin', 'source'] as const;

/** The findings of one hose, a row each; severity as word and shape, an override with its reason. */
export function findingsTable({ paper, findings, write, widthMm }: Subject): { titles: Block; rows: Block[] } {
  const columns = TITLES.map((title, i) => ({ title, widthMm: widthMm * SHARES[i]! }));
  const rows = findings.map((finding) => {
    const { limit, measured, margin } = findingNumbers(finding);
    const figures = isYesOrNo(finding) ? ['', '', ''] : [limit, measured, margin];
    return [severityCell(finding), what(finding, write), ...figures.map(onTwoLines), source(finding)];
  });
  return tableRows(paper, columns, rows, TYPE.tiny + 0.4);
}

function what(finding: Finding, write: LengthWriter): string {
  const parts = [finding.message];
  if (finding.at) parts.push(`At ${write.both(finding.at.arcLengthMm)} from shoulder A.`);
  if (finding.mend) parts.push(`Mend: ${finding.mend}`);
  if (finding.overrideReason) parts.push(`OVERRIDDEN: ${finding.overrideReason}`);
  return parts.join('\n');
}

function source(finding: Finding): string {
  return finding.dissent ? `${finding.source}\nOthers: ${finding.dissent}` : finding.source;
}

function severityCell({ severity }: Finding): { heightMm: number; draw(page: Page, x: number, y: number): void } {
  return {
    heightMm: 3.4,
    draw: (page, x, y) => {
      drawSeverity(page, severity, x + 1.7, y + 1.6);
      page.text(SEVERITY_WORDS[severity].word.toUpperCase(), x + 4.4, y + 2.6, { sizePt: TYPE.tiny, bold: true });
    },
  };
}

/** Stop: a filled octagon with a bar. Look: a triangle with a stroke. Note: a ring. */
function drawSeverity(page: Page, severity: Finding['severity'], x: number, y: number): void {
  if (severity === 'note') {
    page.circle(x, y, 1.2, { widthMm: 0.3 });
    return;
  }
  if (severity === 'look') {
    const points: [number, number][] = [
      [x, y - 1.5],
      [x + 1.6, y + 1.3],
      [x - 1.6, y + 1.3],
    ];
    page.path(points, { widthMm: 0.35 }, true);
    page.line(x, y - 0.5, x, y + 0.6, { widthMm: 0.35, line: INK });
    return;
  }
  const corners = Array.from({ length: 8 }, (_, i): [number, number] => {
    const angle = ((i + 0.5) * Math.PI) / 4;
    return [x + 1.6 * Math.cos(angle), y + 1.6 * Math.sin(angle)];
  });
  page.path(corners, { line: null, fill: FORBID }, true);
  page.rectangle(x - 0.95, y - 0.28, 1.9, 0.56, { line: null, fill: WHITE });
}
