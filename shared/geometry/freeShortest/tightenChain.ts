import { ChainStep } from './chainStep.ts';
import { type ChainGoal, COLUMN, endColumns, endMiss, JOINT, layChain, type TurnChain } from './turnChain.ts';

export interface TightChain {
  readonly chain: TurnChain;
  /** what is left between its end and the goal: radii and rad, root of the sum of squares */
  readonly miss: number;
}

/** What a unit of miss counts, in lengths: more than it costs to close it, so that closing it pays. */
const PRICE_OF_MISS = 20;
/** Of a miss only so much is tackled at once. */
const MOST_MISS_AT_ONCE = 1;
/** Inertia of the first step, and the least by how far the end still is from its goal: far off, the model is not to be trusted. */
const FIRST_INERTIA = 1;
const LEAST_INERTIA: readonly (readonly [number, number])[] = [
  [0.5, 0.3],
  [1e-2, 0.05],
  [1e-4, 0.005],
];
const LEAST_INERTIA_AT_GOAL = 1e-5;
const INERTIA_FALL = 0.5;
const INERTIA_RISE = 4;
const MOST_REFUSALS = 6;
const NO_SLACK = 1e-14;
const LEAST_SLACK = 1e-3;
const SLACK_RISE = 10;
const MOST_SLACKENINGS = 8;
/** Share of the miss the model may leave open. */
const LEFT_OPEN = 0.02;
/** Radii; no chain gets shorter than this. */
const SHORTEST = 0.05;
/** Radii and rad; shortening may end with the end of the chain this near its goal, closing goes on to the second. */
const AT_GOAL = 1e-6;
const CLOSED = 1e-13;
/** An inertia so high that the step is the least one that closes the miss. */
const CLOSING_INERTIA = 1e5;
const LEFT_OPEN_CLOSING = 1e-5;
const MOST_CLOSING_STEPS = 12;

/** Tightens chains of a given number of arcs; keeps its working arrays from one to the next. */
export class ChainTightener {
  private readonly step: ChainStep;
  private joints: Float64Array;
  private trialJoints: Float64Array;
  private readonly columns: Float64Array;
  private readonly byLength = new Float64Array(5);
  private miss = new Float64Array(5);
  private trialMiss = new Float64Array(5);
  /** what the last step was to close */
  private readonly wanted = new Float64Array(5);
  private slack = NO_SLACK;

  constructor(arcs: number) {
    this.step = new ChainStep(arcs);
    this.joints = new Float64Array(JOINT * (arcs + 1));
    this.trialJoints = new Float64Array(JOINT * (arcs + 1));
    this.columns = new Float64Array(COLUMN * arcs);
  }

  /**
   * Moves a chain to its goal and shortens it, all curvatures at most 1 all the time: steps of the linear model (`ChainStep`), taken
   * when length + PRICE_OF_MISS x miss falls; the inertia is halved then, and raised when the model promised too much. Ends
   * after `mostSteps`, or when a step gains less than `leastGain` with the end at its goal. A local minimum, or a chain that does
   * not reach its goal: `miss` tells.
   */
  tighten(start: TurnChain, goal: ChainGoal, mostSteps: number, leastGain: number): TightChain {
    let { chain, miss } = this.begin(start, goal);
    let inertia = FIRST_INERTIA;
    let refusals = 0;
    for (let steps = 0; steps < mostSteps && refusals <= MOST_REFUSALS; steps++) {
      const gainOf = (to: TightChain): number => chain.length - to.chain.length + PRICE_OF_MISS * (miss - to.miss);
      let next = this.tryStep(chain, goal, miss, inertia, LEFT_OPEN);
      if (!(gainOf(next) > 0)) next = this.correctStep(chain, goal, inertia, LEFT_OPEN * next.miss);
      const gain = gainOf(next);
      if (!(gain > 0)) {
        inertia *= INERTIA_RISE;
        refusals++;
        continue;
      }
      ({ chain, miss } = this.take(next));
      inertia = Math.max(leastInertia(miss), inertia * INERTIA_FALL);
      refusals = 0;
      if (gain < leastGain && miss < AT_GOAL) break;
    }
    return { chain, miss };
  }

  /** Brings the end of a chain that nearly reaches its goal there, to rounding, by least changes: Newton's iteration, quadratic. */
  close(start: TurnChain, goal: ChainGoal): TightChain {
    let { chain, miss } = this.begin(start, goal);
    for (let steps = 0; steps < MOST_CLOSING_STEPS && miss > CLOSED; steps++) {
      const next = this.tryStep(chain, goal, miss, CLOSING_INERTIA, LEFT_OPEN_CLOSING);
      if (next.miss >= miss) break;
      ({ chain, miss } = this.take(next));
    }
    return { chain, miss };
  }

  private begin(chain: TurnChain, goal: ChainGoal): TightChain {
    this.step.forget();
    this.slack = NO_SLACK;
    layChain(chain, this.joints);
    return { chain, miss: endMiss(this.joints, goal, this.miss) };
  }

  private tryStep(chain: TurnChain, goal: ChainGoal, miss: number, inertia: number, leftOpen: number): TightChain {
    this.solveStep(chain, miss, inertia, leftOpen);
    return this.layStep(chain, goal);
  }

  /**
   * The last step again, aimed further by what it missed. Else curved constraints keep steps short: a step along them
   * misses by its square, which the merit takes for a loss (Maratos 1978; second-order correction, Fletcher 1982).
   */
  private correctStep(chain: TurnChain, goal: ChainGoal, inertia: number, closeEnough: number): TightChain {
    for (let r = 0; r < 5; r++) this.wanted[r] = (this.wanted[r] as number) + (this.trialMiss[r] as number);
    this.step.solve(chain, this.columns, this.byLength, this.wanted, { inertia, slack: this.slack, closeEnough });
    return this.layStep(chain, goal);
  }

  private layStep(chain: TurnChain, goal: ChainGoal): TightChain {
    const { bends, lengthChange } = this.step;
    const length = Math.max(SHORTEST, chain.length + lengthChange);
    const next = { bends: bends.slice(), shares: chain.shares, length };
    layChain(next, this.trialJoints);
    return { chain: next, miss: endMiss(this.trialJoints, goal, this.trialMiss) };
  }

  private take(next: TightChain): TightChain {
    [this.joints, this.trialJoints] = [this.trialJoints, this.joints];
    [this.miss, this.trialMiss] = [this.trialMiss, this.miss];
    return next;
  }

  /** The model's step; with slack where closing the miss would cost more than PRICE_OF_MISS. */
  private solveStep(chain: TurnChain, miss: number, inertia: number, leftOpen: number): void {
    endColumns(chain, this.joints, this.columns, this.byLength);
    const part = Math.min(1, MOST_MISS_AT_ONCE / miss);
    for (let r = 0; r < 5; r++) this.wanted[r] = part * (this.miss[r] as number);
    const closeEnough = Math.max(leftOpen * miss * part, CLOSED / 10);
    for (let tries = 0; tries < MOST_SLACKENINGS; tries++) {
      this.step.solve(chain, this.columns, this.byLength, this.wanted, { inertia, slack: this.slack, closeEnough });
      if (this.step.price <= PRICE_OF_MISS) break;
      this.slack = Math.max(LEAST_SLACK, this.slack * SLACK_RISE);
      this.step.multipliers.forEach((m, r, all) => {
        all[r] = m / SLACK_RISE;
      });
    }
    this.slack = this.slack < 2 * LEAST_SLACK ? NO_SLACK : this.slack / SLACK_RISE;
  }
}

function leastInertia(miss: number): number {
  for (const [above, least] of LEAST_INERTIA) if (miss > above) return least;
  return LEAST_INERTIA_AT_GOAL;
}
