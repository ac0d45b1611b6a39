import { describeProblem } from '../../shared/base/result.ts';
import type { HandChange, HandShape, JobEnd, JobInput, JobName } from '../../shared/jobs/contract.ts';
import type { BenchPorts } from './ports.ts';

/** How a hose in the hand answers: its new shape, or why there is none. */
export interface HandAnswers {
  shape(shape: HandShape): void;
  trouble(words: string): void;
}

/** A run in the worker's hand. */
export interface HandMoves {
  /** Asks for the shape after a change. While one is being worked out only the latest of those asked meanwhile is kept. */
  move(change: HandChange): void;
  /** Settles when nothing is asked any more. */
  settled(): Promise<void>;
  /** Answers that still come are thrown away. */
  drop(): void;
}

/** Takes a run in the hand: it is made ready in the worker at once, and follows `move` as fast as it can. */
export function handMoves(host: BenchPorts['jobs'], take: JobInput<'takeRun'>, answers: HandAnswers): HandMoves {
  let next: HandChange | null = null;
  let dropped = false;
  const told = (end: JobEnd<JobName>): void => {
    if (!dropped) answers.trouble(troubleOf(end));
  };
  const taking = host.start('takeRun', take).end.then((end) => {
    if (end.kind === 'done') return end.output.hand;
    told(end);
    return null;
  });
  const follow = async (): Promise<void> => {
    const hand = await taking;
    while (next !== null && hand !== null && !dropped) {
      const change = next;
      next = null;
      const end = await host.start('moveRun', { hand, change }).end;
      if (dropped) return;
      if (end.kind === 'done') answers.shape(end.output);
      else told(end);
    }
    next = null;
  };
  let following: Promise<void> | null = null;
  return {
    move: (change) => {
      next = change;
      following ??= follow().finally(() => {
        following = null;
      });
    },
    settled: async () => {
      await taking;
      await following;
    },
    drop: () => {
      dropped = true;
      next = null;
    },
  };
}

function troubleOf(end: JobEnd<JobName>): string {
  if (end.kind === 'bad-input') return end.problems.map(describeProblem).join(' ');
  return end.kind === 'failed' ? `Broke off by our own mistake: ${end.message}` : 'Stopped.';
}
