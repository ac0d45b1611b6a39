import { clampedEnds, NO_PROOF_WORDS } from '../../document/assembly/hoseClampSteps.ts';
import { proofTest } from '../../document/proof/proofTest.ts';
import { formatNumber, formatPressure } from '../format/index.ts';
import { type Block, stack } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { heading, textBlock, tickBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

/** How this hose is usually proof-tested once both ends are on, and what is not done to it any more after that. */
export function proofBlock({ paper, run, widthMm }: LaidSubject): Block {
  if (clampedEnds(run).length > 0)
    return stack([heading('Proof test', widthMm), textBlock(paper, NO_PROOF_WORDS, widthMm, { sizePt: TYPE.small })]);
  const test = proofTest(run);
  const { weakest, unrated } = test;
  const hold = test.holdFromS === test.holdToS ? `${test.holdFromS} s` : `${test.holdFromS} to ${test.holdToS} s`;
  const by = test.byMaker ? "the hose maker's own test pressure, over" : `${formatNumber(test.multiple, 1)} times`;
  const ticks = [
    `Liquid, all air bled; hose restrained or boxed in, nobody in line with its ends.`,
    `${formatPressure(test.pressureKpa)} held ${hold}: ${by} the ${formatPressure(weakest.maxPressureKpa, 'down')} of ${weakest.part}, the weakest part known${weakest.note === undefined ? '' : ` (${weakest.note})`}.`,
    'No leak, no end moved at its mark. Then flushed, dried, both ends capped, tagged. Gap and clock are not touched again.',
  ];
  const said = [
    `${test.source}. Others: ${test.dissent}.`,
    ...(test.burstKpa === undefined
      ? []
      : [
          `The hose bursts at no less than ${formatPressure(test.burstKpa, 'down')}, by its maker; of the ends it is not known.`,
        ]),
    ...(unrated.length === 0
      ? []
      : [`No rating is stated for ${unrated.join(' and ')}: ask before the pressure goes on.`]),
  ];
  return stack([
    heading('Proof test', widthMm),
    ...ticks.map((text) => tickBlock(paper, text, widthMm, TYPE.small)),
    ...said.map((text) => textBlock(paper, text, widthMm, { sizePt: TYPE.tiny + 0.4 })),
  ]);
}
