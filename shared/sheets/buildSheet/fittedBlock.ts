import { inTheBaySteps } from '../../document/assembly/inTheBaySteps.ts';
import { type Block, stack } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { heading, textBlock, tickBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

/** What is looked at and tested once the hose is in the bay, each with a square to tick; undefined for most hoses, of which nothing is asked there. */
export function fittedBlock({ paper, run, input, write, widthMm }: LaidSubject): Block | undefined {
  const steps = inTheBaySteps(run, input.project.vehicle, write);
  if (steps.length === 0) return undefined;
  const sources = [...new Set(steps.map(({ source }) => source))].join('; ');
  return stack([
    heading('Once it is in the bay', widthMm),
    ...steps.map(({ words, caution }) =>
      tickBlock(paper, caution === undefined ? words : `${words} ${caution}`, widthMm, TYPE.small),
    ),
    textBlock(paper, `Sources, ${sources}.`, widthMm, { sizePt: TYPE.tiny + 0.4 }),
  ]);
}
