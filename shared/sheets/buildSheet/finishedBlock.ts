import { assemblySteps } from '../../document/assembly/assemblySteps.ts';
import { NO_SOURCE } from '../../document/rules/rule.ts';
import { type Block, stack } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { textBlock, tickBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';
import { tickColumns } from './tickColumns.ts';

/** What is measured of the hose once both its ends are on, each with a square to tick, and where the figures come from. */
export function finishedBlock({ paper, run, lay, write, widthMm }: LaidSubject): Block {
  const steps = assemblySteps(run, lay, write).filter(({ stage }) => stage === 'both-ends-on');
  const sources = new Set(steps.map(({ source }) => source).filter((source) => source !== NO_SOURCE));
  return stack([
    tickColumns('Once both ends are on', widthMm, (columnMm) =>
      steps.map(({ words }) => tickBlock(paper, words, columnMm, TYPE.small)),
    ),
    textBlock(paper, `Sources, ${[...sources].join('; ')}.`, widthMm, { sizePt: TYPE.tiny + 0.4 }),
  ]);
}
