import { addScaled, distance, lengthOf, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { ArcLinePath, Pose } from '../../geometry/arcLinePath.ts';
import { BandedLeastSquares } from './bandedLeastSquares.ts';
import { type Asked, ChainCentre, sharpestBend, sharpStretch } from './chainCentre.ts';
import { type ClearSpace, isPathClear } from './clearSpace.ts';
import { type EvenChain, edgeMm, evenChainAlong, evenedChain, pathOfEvenChain } from './evenChain.ts';

/** Spacing of the corners over the least radius: their rounding then leaves the line by R / 800. */
const SPACING_RADII = 0.1;
/** The corners are set evenly again when their edges have changed by this share, and their number by that. */
const UNEVEN_EDGES = 0.02;
const OTHER_NUMBER = 0.15;
/** Relative. How much below the limit the bends are aimed: spacing is not quite even. */
const BEND_IN_HAND = 0.003;
/** mm. The margin aimed at; more where the proof then still fails between the places looked at. */
const AIMED_MARGINS_MM = [0.25, 0.4, 0.6] as const;
const MOST_STEPS = 120;
/** Given up when so many steps have not brought the worst down by a tenth. */
const STEPS_WITHOUT_GAIN = 25;
const GAIN = 0.9;
/** How many mm of margin a bend as sharp as twice the limit counts for, in that. */
const BEND_MM = 30;
/** A chain counts as in the middle of what is allowed when a step brings the barriers down by less than this. */
const CENTRED = 0.3;
/**
 * What is still allowed beyond the worst, as shares of the worst: always, and when centred; then also a share of what was allowed.
 * And what is always left, for margins in mm and for bends.
 */
const ALLOWED = { always: 0.6, centred: 0.1, kept: 0.4 };
const MARGIN_LEFT_MM = { always: 0.1, centred: 0.03, met: 0.05 };
const BEND_LEFT = { always: 0.004, centred: 0.001, met: 0.002 };
/** No corner moves further in one step, as a share of the spacing. */
const LONGEST_STEP = 1;
const FIRST_DAMPING = 1e-4;
const LEAST_DAMPING = 1e-6;
const DAMPING = { down: 0.2, up: 10 };
const TRIES_A_STEP = 12;
const HALVINGS = 8;
/** Share of the sharpest bend allowed at which a bend counts as about as sharp as it may be. */
const SHARP = 0.97;
/** When no step can be made, what was learnt is forgotten and this much more is allowed. */
const LOOSENED = 1.5;

export interface Pushed {
  readonly path?: ArcLinePath;
  /** where it still fails worst, when it does */
  readonly worst: Vec3;
  /** and where the bend round that place begins and ends along which it is about as sharp as it may be: what holds it there */
  readonly heldAt: readonly Vec3[];
}

/**
 * Pushes a line of places between two poses into a clear way with bends of at least `radiusMm`: for places so narrow that no lattice
 * has a node in them. Method: the line as a chain of short, even edges; the method of centres (Huard 1967) with Newton
 * steps: what margins and bends may be short of is lowered together, the chain kept in the middle of what is allowed by
 * logarithmic barriers, over half spaces met so far where a margin has creases (cutting planes). What comes out is a
 * chain of rounded corners and proven like any other way; it is local: a line on the wrong side of things stays there.
 */
export function pushClear(
  space: ClearSpace,
  start: Pose,
  goal: Pose,
  line: readonly Vec3[],
  radiusMm: number,
  watch: Watch,
): Pushed {
  return new Push(space, start, goal, [start.point, ...line.slice(1, -1), goal.point], radiusMm).run(watch);
}

class Push {
  private readonly space: ClearSpace;
  private readonly start: Pose;
  private readonly goal: Pose;
  private readonly radiusMm: number;
  private readonly mostBend: number;
  private chain: EvenChain;
  private centre: ChainCentre;
  private system: BandedLeastSquares;
  private margins: readonly number[];
  private aim = 0;
  /** what margins, mm, and bends, as a share, may be short of for now */
  private marginSlackMm: number;
  private bendSlack: number;
  private damping = FIRST_DAMPING;
  private gain = Number.POSITIVE_INFINITY;

  constructor(space: ClearSpace, start: Pose, goal: Pose, line: readonly Vec3[], radiusMm: number) {
    this.space = space;
    this.start = start;
    this.goal = goal;
    this.radiusMm = radiusMm;
    this.mostBend = (1 - BEND_IN_HAND) / radiusMm;
    this.chain = evenChainAlong(start, goal, line, SPACING_RADII * radiusMm);
    this.centre = new ChainCentre(space, this.chain);
    this.system = new BandedLeastSquares(3 * (this.chain.length - 4), 8);
    this.margins = this.centre.margins(this.chain);
    this.marginSlackMm = (1 + ALLOWED.always) * Math.max(0, this.shortMm()) + MARGIN_LEFT_MM.always;
    this.bendSlack = (1 + ALLOWED.always) * Math.max(0, this.overBent()) + BEND_LEFT.always;
    this.centre.learn(this.chain, this.margins, ChainCentre.reachMm(this.aimedMm));
  }

  run(watch: Watch): Pushed {
    let best = Number.POSITIVE_INFINITY;
    let bestAt = 0;
    for (let step = 0; step < MOST_STEPS && step - bestAt <= STEPS_WITHOUT_GAIN; step++) {
      stopIfCancelled(watch);
      if (this.shortMm() <= 0 && this.overBent() <= 0) {
        const path = pathOfEvenChain(this.chain, this.start, this.radiusMm);
        if (path !== undefined && isPathClear(this.space, path)) return { path, worst: this.start.point, heldAt: [] };
        if (++this.aim >= AIMED_MARGINS_MM.length) break;
        this.marginSlackMm = Math.max(this.marginSlackMm, this.shortMm() + MARGIN_LEFT_MM.always);
      }
      this.tighten();
      const score = Math.max(0, this.shortMm()) + BEND_MM * Math.max(0, this.overBent());
      if (score < GAIN * best) [best, bestAt] = [score, step];
      if (!this.step()) this.loosen();
      this.setEvenly();
    }
    const worst = this.worst();
    return { worst, heldAt: this.heldAt(worst) };
  }

  private get aimedMm(): number {
    return AIMED_MARGINS_MM[Math.min(this.aim, AIMED_MARGINS_MM.length - 1)] as number;
  }

  /** How much the worst margin is short of what is aimed at, mm; negative when none is. */
  private shortMm(): number {
    return this.aimedMm - Math.min(...this.margins);
  }

  /** Share by which the sharpest bend is too sharp; negative when none is. */
  private overBent(): number {
    return sharpestBend(this.chain).size / this.mostBend - 1;
  }

  private worst(): Vec3 {
    const { corner } = sharpestBend(this.chain);
    const byMargin = this.shortMm() > BEND_MM * this.overBent();
    return byMargin ? this.centre.worstPlace(this.chain, this.margins) : (this.chain[corner] as Vec3);
  }

  private heldAt(worst: Vec3): Vec3[] {
    let nearest = 1;
    for (let i = 1; i < this.chain.length - 1; i++)
      if (distance(this.chain[i] as Vec3, worst) < distance(this.chain[nearest] as Vec3, worst)) nearest = i;
    return sharpStretch(this.chain, nearest, SHARP * this.mostBend).map((corner) => this.chain[corner] as Vec3);
  }

  private tighten(): void {
    this.marginSlackMm = this.tightened(this.marginSlackMm, this.shortMm(), MARGIN_LEFT_MM);
    this.bendSlack = this.tightened(this.bendSlack, this.overBent(), BEND_LEFT);
  }

  private tightened(slack: number, short: number, left: { always: number; centred: number; met: number }): number {
    if (short <= -left.met) return 0;
    const worst = Math.max(short, 0);
    const beyond =
      this.gain < CENTRED
        ? Math.max(left.centred, ALLOWED.centred * worst, ALLOWED.kept * (slack - worst))
        : ALLOWED.always * worst + left.always;
    return Math.min(slack, worst + beyond);
  }

  /** Allows more again, with what was learnt away from the chain forgotten. */
  private loosen(): void {
    this.centre.forget();
    this.centre.learn(this.chain, this.margins, ChainCentre.reachMm(this.aimedMm));
    this.damping = FIRST_DAMPING;
    this.marginSlackMm *= LOOSENED;
    this.bendSlack *= LOOSENED;
  }

  /** One Newton step down the barriers; where it would cross a margin not known before, that is learnt and the step made anew. */
  private step(): boolean {
    const asked: Asked = {
      mostBend: this.mostBend,
      bendSlack: this.bendSlack,
      aimedMm: this.aimedMm,
      marginSlackMm: this.marginSlackMm,
    };
    for (let tries = 0; tries < TRIES_A_STEP; tries++) {
      const from = this.centre.merit(this.chain, asked, this.system);
      const move = this.system.solve(this.damping);
      const trial = move && this.lower(move, from, asked);
      if (trial === undefined) {
        this.damping *= DAMPING.up;
        continue;
      }
      const margins = this.centre.margins(trial.chain);
      const mostShort = asked.aimedMm - asked.marginSlackMm;
      if (Math.min(...margins) > mostShort) {
        this.chain = trial.chain;
        this.margins = margins;
        this.gain = from - trial.merit;
        if (trial.whole) this.damping = Math.max(LEAST_DAMPING, DAMPING.down * this.damping);
        this.centre.learn(this.chain, margins, ChainCentre.reachMm(asked.aimedMm));
        return true;
      }
      this.centre.learn(trial.chain, margins, mostShort + MARGIN_LEFT_MM.always);
    }
    return false;
  }

  /** The first of ever shorter steps that lowers the barriers. */
  private lower(
    move: Float64Array,
    from: number,
    asked: Asked,
  ): { chain: Vec3[]; merit: number; whole: boolean } | undefined {
    let share = this.longestShare(move);
    for (let halving = 0; halving < HALVINGS; halving++, share /= 2) {
      const chain = this.moved(move, share);
      const merit = this.centre.merit(chain, asked);
      if (merit < from) return { chain, merit, whole: halving <= 1 };
    }
    return undefined;
  }

  private longestShare(move: Float64Array): number {
    let longest = Number.MIN_VALUE;
    for (let i = 0; i < move.length; i += 3)
      longest = Math.max(longest, lengthOf(move[i] as number, move[i + 1] as number, move[i + 2] as number));
    return Math.min(1, (LONGEST_STEP * edgeMm(this.chain)) / longest);
  }

  private moved(move: Float64Array, share: number): Vec3[] {
    const chain = [...this.chain];
    for (let at = 0; at < move.length; at += 3) {
      const step: Vec3 = [move[at] as number, move[at + 1] as number, move[at + 2] as number];
      chain[at / 3 + 2] = addScaled(chain[at / 3 + 2] as Vec3, step, share);
    }
    return chain;
  }

  /** Sets the corners evenly again where the chain has grown or shrunk: the half edges at the ends do not follow by themselves. */
  private setEvenly(): void {
    const now = edgeMm(this.chain);
    const half = distance(this.chain[0] as Vec3, this.chain[1] as Vec3);
    if (Math.abs(now / (2 * half) - 1) <= UNEVEN_EDGES) return;
    const wanted = SPACING_RADII * this.radiusMm;
    this.chain = evenedChain(
      this.start,
      this.goal,
      this.chain,
      Math.abs(now / wanted - 1) > OTHER_NUMBER ? wanted : now,
    );
    this.centre = new ChainCentre(this.space, this.chain);
    this.system = new BandedLeastSquares(3 * (this.chain.length - 4), 8);
    this.margins = this.centre.margins(this.chain);
    this.centre.learn(this.chain, this.margins, ChainCentre.reachMm(this.aimedMm));
    this.marginSlackMm = Math.max(this.marginSlackMm, this.shortMm() + MARGIN_LEFT_MM.always);
    this.bendSlack = Math.max(this.bendSlack, this.overBent() + BEND_LEFT.always);
  }
}
