import { dueOn, hoseLife, isOverdue } from '../../document/life/hoseLife.ts';
import { type MadeOn, madeOn } from '../../document/life/madeOn.ts';
import type { Block } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { textBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

/** How long this hose is usually left in service, and when it falls due where the project states when it was made. */
export function lifeBlock({ paper, run, input, widthMm }: LaidSubject): Block {
  const life = hoseLife(run.hose.core, run.run.service, input.project.vehicle);
  const term = termText(life.kind, life.years, madeOn(run), input.printedOn);
  const others = life.dissent === undefined ? '' : ` Others: ${life.dissent}.`;
  const text = `Life: ${term} The hose maker's word comes first. ${life.source}.${others}`;
  return textBlock(paper, text, widthMm, { sizePt: TYPE.tiny + 0.4 });
}

function termText(kind: string, years: number | undefined, made: MadeOn | undefined, today: string): string {
  const when = made === undefined ? 'Made ________ (date printed along it)' : `Made ${made.day}, ${made.by}`;
  if (years === undefined) return `${kind}, without a term. ${when}.`;
  const usual = `${kind}, usually ${years} years from the day it was made.`;
  if (made === undefined) return `${usual} ${when}.`;
  const due = dueOn(made.day, years);
  return `${usual} ${when}; due ${due}${isOverdue(due, today) ? ', which is past' : ''}.`;
}
