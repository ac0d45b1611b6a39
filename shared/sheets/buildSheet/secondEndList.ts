import { SLEEVE_REACH_MM, sleeveCutLengthMm } from '../bench/sleeveCutLength.ts';
import { formatCutLength, formatInches, formatLengthBoth } from '../format/index.ts';
import { type Block, stack } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { heading, tickBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

/**
 * What must be on the hose before its second end goes on, in order, each with a square to tick. Order of work: a kit
 * builder's and an aerospace shop's notes (sleeve before the second end); the rest is common practice, no source.
 */
export function secondEndList(subject: LaidSubject): Block {
  const { paper, widthMm } = subject;
  const half = (widthMm - 6) / 2;
  const ticks = steps(subject).map((text) => tickBlock(paper, text, half, TYPE.small));
  const split = Math.ceil(ticks.length / 2);
  const columns = [stack(ticks.slice(0, split)), stack(ticks.slice(split))] as const;
  return stack([
    heading('Before the second end goes on', widthMm),
    {
      heightMm: Math.max(columns[0].heightMm, columns[1].heightMm),
      draw: (page, x, y) => {
        columns[0].draw(page, x, y);
        columns[1].draw(page, x + half + 6, y);
      },
    },
  ]);
}

function steps(subject: LaidSubject): string[] {
  const { run, lay } = subject;
  return [
    'Hose taped round the cut line and cut square; bore blown clean; no flap of liner, no loose wire.',
    `Insertion depth marked from the cut: ${formatLengthBoth(run.a.end.shoulderToMouthMm)} at END A, ${formatLengthBoth(run.b.end.shoulderToMouthMm)} at END B.`,
    'END A fitted and its push-out mark still at the mouth.',
    ...threadOn(subject),
    'Tag and flags A and B on the hose.',
    lay.clock.kind === 'angle'
      ? 'Only now END B; set the clock (see the clock card) before it is finally tight.'
      : 'Only now END B; the clock is free.',
  ];
}

function threadOn({ run, lay }: LaidSubject): string[] {
  const list: string[] = [];
  if (run.sleeve)
    list.push(
      `Sleeve ${run.sleeve.name}, cut at least ${formatCutLength(sleeveCutLengthMm(lay.cutLengthMm))}: slid on, to reach ${formatInches(SLEEVE_REACH_MM)} past each socket with the nuts free; both its ends to be sealed.`,
    );
  for (const s of lay.supports) {
    if (s.kind === 'clamp') list.push(`Clamp ${s.id} slid on, if it does not open.`);
    if (s.kind === 'pass-through') list.push(`Grommet or ferrule of pass-through ${s.id} slid on.`);
  }
  return list;
}
