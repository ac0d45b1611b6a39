import { dueOn, hoseLife, isOverdue } from '../../document/life/hoseLife.ts';
import type { Block } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { textBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

/** How long this hose is usually left in service, and when it falls due where the project states when it was made. */
export function lifeBlock({ paper, run, input, widthMm }: LaidSubject): Block {
  const life = hoseLife(run.hose.core, run.run.service, input.project.vehicle);
  const term = termText(life.kind, life.years, run.run.madeOn, input.printedOn);
  const others = life.dissent === undefined ? '' : ` Others: ${life.dissent}.`;
  const text = `Life: ${term} The hose maker's word comes first. ${life.source}.${others}`;
  return textBlock(paper, text, widthMm, { sizePt: TYPE.tiny + 0.4 });
}

function termText(kind: string, years: number | undefined, madeOn: string | undefined, day: string): string {
  const made = madeOn === undefined ? 'Made ________ (date printed along it)' : `Made ${madeOn}`;
  if (years === undefined) return `${kind}, without a term. ${made}.`;
  const usual = `${kind}, usually ${years} years from the day it was made.`;
  if (madeOn === undefined) return `${usual} ${made}.`;
  const due = dueOn(madeOn, years);
  return `${usual} ${made}; due ${due}${isOverdue(due, day) ? ', which is past' : ''}.`;
}
