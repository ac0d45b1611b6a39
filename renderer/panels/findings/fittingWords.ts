import { inTheBaySteps } from '../../../shared/document/assembly/inTheBaySteps.ts';
import { fittingOrder } from '../../../shared/document/lay/fittingOrder.ts';
import type { LayReport } from '../../../shared/document/lay/schema.ts';
import type { ResolvedRun } from '../../../shared/document/project/resolve.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { SUPPORT_WORDS } from '../../../shared/document/wording/bayWords.ts';
import { swingWords } from '../../../shared/document/wording/handWords.ts';
import { lengthWriter } from '../../../shared/sheets/format/index.ts';
import { supportName } from '../../state/edits/supportEdits.ts';

/** What is done when a hose goes on in the bay, in order, one sentence each. */
export function fittingWords(hose: ResolvedRun, report: LayReport, project: Project): readonly string[] {
  const { run, a, b } = hose;
  const lay = report.lays.find((one) => one.run === run.id);
  const nameOf = (id: string): string => project.runs.find((one) => one.id === id)?.name ?? id;
  const first = fittingOrder(report).after[run.id] ?? [];
  const through = run.supports.filter(({ kind }) => kind === 'pass-through');
  const clamps = run.supports.filter(({ kind }) => kind === 'clamp');
  const names = (supports: typeof clamps): string =>
    supports.map((support) => supportName(run.supports, support, SUPPORT_WORDS[support.kind])).join(', ');
  const swing = (side: 'a' | 'b'): string => {
    const nut = lay?.hands?.[side];
    return nut === undefined ? 'tightened' : `tightened; free swing of a wrench: ${swingWords(nut)}`;
  };
  return [
    ...(first.length === 0
      ? []
      : [`Goes on after ${first.map(nameOf).join(', ')}: its nuts leave their wrench no room.`]),
    ...(through.length === 0 ? [] : [`Led through ${names(through)}.`]),
    `END A on ${a.port.name} and END B on ${b.port.name}, both by hand first, nothing twisted: the line along the hose stays straight.`,
    ...(clamps.length === 0 ? [] : [`Held by ${names(clamps)}, loose until both ends are tight.`]),
    `END A: ${swing('a')}.`,
    `END B: ${swing('b')}.`,
    ...inTheBaySteps(hose, project.vehicle, lengthWriter(project.paperwork?.finestInch)).map(({ words, caution }) =>
      caution === undefined ? words : `${words} ${caution}`,
    ),
  ];
}
