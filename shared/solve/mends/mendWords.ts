import type { Finding, Lay } from '../../document/lay/schema.ts';
import type { CuredFinding, Mend } from '../../document/mends/schema.ts';
import type { Project } from '../../document/project/schema.ts';
import { CHECK_WORDS, type CheckName } from '../../document/wording/findingWords.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import { thingText } from '../checks/skins.ts';
import { mendedMargin } from './mendedMargin.ts';

/** A finding that is cured, with what is then kept: `keeps 85.0 mm (3.35 in) from the manifold, 8.8 mm (0.35 in) more than asked`. */
export function curedFinding(project: Project, finding: Finding, lay: Lay, left: Finding | undefined): CuredFinding {
  if (left !== undefined) return { finding, left, words: `makes less grave: ${headOf(finding)}` };
  const margin = mendedMargin(finding, lay);
  if (margin === undefined) return { finding, words: `cures: ${headOf(finding)}` };
  const { marginMm, clearance } = margin;
  const more = `${lengthText(marginMm)} more than asked`;
  const words =
    clearance === undefined
      ? `cures: ${headOf(finding)}, ${more}`
      : `keeps ${lengthText(clearance.provenAtLeastMm)} from ${thingText(project, clearance)}, ${more}`;
  return { finding, marginMm, words };
}

/** The whole of an answer in one sentence, with what it comes to at the saw. */
export function answerWords(mend: Mend, cured: readonly CuredFinding[], lay: Lay, longerMm: number): string {
  const does = [...new Set(cured.map(({ words }) => words))].join('; ');
  const change =
    Math.abs(longerMm) < SAME_CUT_MM
      ? 'as long as now'
      : `${lengthText(Math.abs(longerMm))} ${longerMm > 0 ? 'longer' : 'shorter'}`;
  return `${mend.words} ${does} (cut ${lengthText(lay.cutLengthMm)}, ${change}).`;
}

/** mm. Two cut lengths nearer than this are told alike: lengths on papers go to a tenth. */
const SAME_CUT_MM = 0.05;

function headOf({ check }: Finding): string {
  return (CHECK_WORDS[check as CheckName] ?? check).toLowerCase();
}
