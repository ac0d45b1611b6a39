import { LIMIT_RELATIVE } from '../../base/tolerances.ts';
import type { MendContext, Proposal } from './proposal.ts';

/** Ratio. A wanted slack is told in steps of this. */
const SLACK_STEP = 0.005;
/** Ratio. Beyond what a finding lacks, for what laying the hose anew changes of its taut length. */
const SLACK_SPARE = 0.005;
/** Ratio. The second and third try, over the first. */
const FURTHER = [0.015, 0.03];
/** Ratio. The project takes no more. */
const MOST_SLACK = 0.5;
/** Ratio. A tight hose under the usual band is not proposed. */
const LEAST_SLACK = 0.05;

/** More slack: as much as the finding says is missing, where it says so in mm or as a ratio, and a little more than that. */
export function moreSlack({ run, lay, finding }: MendContext): Proposal[] {
  if (run.run.cutLengthMm !== undefined || finding.margin >= 0) return [];
  const now = Math.max(run.run.slack, lay.slack);
  const missing = missingSlack(finding.unit, -finding.margin, lay.tautLengthMm);
  const first = stepped(now + missing + SLACK_SPARE);
  return [first, ...FURTHER.map((more) => stepped(first + more))]
    .filter((slack) => slack > run.run.slack && slack <= MOST_SLACK)
    .map((slack) => withSlack(slack, 'More'));
}

/** Less slack, for a hose that is longer than it has to be. */
export function lessSlack({ run }: MendContext): Proposal[] {
  if (run.run.cutLengthMm !== undefined || run.run.slack <= LEAST_SLACK) return [];
  return [withSlack(LEAST_SLACK, 'Less')];
}

/** A hose cut anew to the plan, where one is cut already. */
export function newHose({ run }: MendContext): Proposal[] {
  if (run.run.cutLengthMm === undefined && run.run.asBuilt === undefined) return [];
  return [
    {
      edit: { kind: 'new-hose' },
      words: 'A new hose cut to the plan instead of the one that is cut',
      how: 'anew',
      change: 5,
      toGet: ['hose of the new cut length'],
    },
  ];
}

function withSlack(slack: number, word: string): Proposal {
  return {
    edit: { kind: 'slack', slack },
    words: `${word} slack, ${Number((slack * 100).toFixed(1))} %,`,
    how: 'anew',
    change: 1,
    toGet: [],
  };
}

/** Ratio of the taut length; 0 where the unit tells no length. */
function missingSlack(unit: string, missing: number, tautMm: number): number {
  if (unit === 'ratio') return missing;
  return unit === 'mm' && tautMm > 0 ? missing / tautMm : 0;
}

function stepped(slack: number): number {
  // A slack that is on a step, to rounding, stays there.
  const steps = Math.ceil((slack / SLACK_STEP) * (1 - LIMIT_RELATIVE));
  return Number((steps * SLACK_STEP).toFixed(3));
}
