import { assemblySteps } from '../../document/assembly/assemblySteps.ts';
import type { Block } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { tickBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';
import { tickColumns } from './tickColumns.ts';

/** What must be on the hose before its second end goes on, in order, each with a square to tick. */
export function secondEndList(subject: LaidSubject): Block {
  const { paper, run, lay, write, widthMm } = subject;
  const steps = assemblySteps(run, lay, write).filter(({ stage }) => stage === 'before-second-end');
  return tickColumns('Before the second end goes on', widthMm, (columnMm) =>
    steps.map(({ words, caution }) =>
      tickBlock(paper, caution === undefined ? words : `${words} ${caution}`, columnMm, TYPE.small),
    ),
  );
}
