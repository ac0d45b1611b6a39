import type { End } from '../../document/parts/schema.ts';
import { hasNoSwivel, NO_SWIVEL_STEPS } from '../../document/wording/noSwivelWords.ts';
import { insertionDepthMm } from '../bench/insertionDepth.ts';
import { sleeveOf } from '../bench/sleeveOf.ts';
import { formatNumber } from '../format/index.ts';
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
  const columns = evenColumns(ticks);
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

/** Blocks in two columns, in their order, as even as they come. */
function evenColumns(blocks: readonly Block[]): readonly [Block, Block] {
  const splits = blocks.map((_, i) => [stack(blocks.slice(0, i + 1)), stack(blocks.slice(i + 1))] as const);
  const tall = ([left, right]: readonly [Block, Block]): number => Math.max(left.heightMm, right.heightMm);
  return splits.reduce((best, split) => (tall(split) < tall(best) ? split : best));
}

function steps(subject: LaidSubject): string[] {
  const { run, lay, write } = subject;
  return [
    ...(hasNoSwivel(run.a.end, run.b.end) ? NO_SWIVEL_STEPS.map((step, i) => `No swivel, ${i + 1}: ${step}`) : []),
    'Hose taped round the cut line and cut square; bore blown clean; no flap of liner, no loose wire.',
    `Insertion depth marked from the cut: ${write.both(insertionDepthMm(run.a.end))} at END A, ${write.both(insertionDepthMm(run.b.end))} at END B.`,
    ...expandText(subject),
    'END A fitted and its push-out mark still at the mouth.',
    ...threadOn(subject),
    'Tag and flags A and B on the hose.',
    lay.clock.kind === 'angle'
      ? 'Only now END B; set the clock (see the clock card) before it is finally tight.'
      : 'Only now END B; the clock is free.',
  ];
}

/** Above -8 with an olive the hose is usually widened first: common practice, no source. */
const WIDENED_ABOVE_DASH = 8;

function isWidened({ expander, innerOlive, dash }: End): boolean {
  return expander ?? (innerOlive === true && dash > WIDENED_ABOVE_DASH);
}

function expandText({ run }: LaidSubject): string[] {
  const ends = (['a', 'b'] as const).filter((side) => isWidened(run[side].end)).map((side) => side.toUpperCase());
  if (ends.length === 0) return [];
  return [`Hose widened with the expander for END ${ends.join(' and END ')} before the end goes in.`];
}

function threadOn({ run, lay, write }: LaidSubject): string[] {
  const list: string[] = [];
  const sleeve = sleeveOf(run, lay);
  if (run.sleeve && sleeve)
    list.push(
      `Sleeve ${run.sleeve.name}, cut at least ${write.cut(sleeve.cutLengthMm)} (estimate with ${formatNumber(sleeve.turnedDeg, 0)}° of bends): slid on, to reach ${write.inches(sleeve.reachMm)} past each socket with the nuts free; both its ends to be sealed.`,
    );
  for (const s of lay.supports) {
    if (s.kind === 'clamp') list.push(`Clamp ${s.id} slid on, if it does not open.`);
    if (s.kind === 'pass-through') list.push(`Grommet or ferrule of pass-through ${s.id} slid on.`);
  }
  return list;
}
