import type { BuiltPose } from '../../document/lay/schema.ts';
import { formatMm, formatTurn, isStraight } from '../format/index.ts';
import { type Block, stack } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { tableRows } from '../layout/table.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

/** What an error within the tolerances of cut and clock does to this hose, each laid anew, and the hose as measured where it is made; undefined where nothing of that is known. */
export function toleranceBlock({ paper, lay, widthMm }: LaidSubject): Block | undefined {
  const poses = [...(lay.tolerance?.poses ?? []), ...(lay.built === undefined ? [] : [lay.built])];
  if (poses.length === 0) return undefined;
  const share = (part: number): number => widthMm * part;
  const columns = [
    { title: 'made', widthMm: share(0.36), bold: true },
    { title: 'slack left', widthMm: share(0.14) },
    { title: 'tightest bend', widthMm: share(0.14) },
    { title: 'nearest', widthMm: share(0.26) },
    { title: 'twist', widthMm: share(0.1) },
  ];
  const table = tableRows(paper, columns, poses.map(row));
  const said = textBlock(paper, 'Each laid again so, ends on their ports, clamps where they are.', widthMm, {
    sizePt: TYPE.small,
  });
  return stack([heading('What an error does', widthMm), table.titles, ...table.rows, said]);
}

function row(pose: BuiltPose): string[] {
  const { name, slackLeftMm, minRadius, tightest, twistDeg = 0 } = pose;
  const bend = minRadius?.provenAtLeastMm;
  return [
    name.charAt(0).toUpperCase() + name.slice(1),
    slackLeftMm < 0 ? `${formatMm(-slackLeftMm, 'up')} short` : formatMm(slackLeftMm, 'down'),
    bend === undefined ? 'no hose' : isStraight(bend) ? 'straight' : formatMm(bend, 'down'),
    tightest === undefined ? '-' : `${formatMm(tightest.clearanceMm, 'down')} to ${tightest.to.part ?? tightest.to.id}`,
    formatTurn(Math.abs(twistDeg), 'up'),
  ];
}
