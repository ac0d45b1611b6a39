import { newDoubles, newIntegers, SparseNumbers } from '../../base/sparseNumbers.ts';
import { ROUNDING_RAD } from '../../base/tolerances.ts';
import { addScaled, angleBetween, length, rejectFrom, unit, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { type Connection, connectionPath, connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import { type ArcLinePath, joinPaths, type PathSegment, type Pose } from '../../geometry/arcLinePath.ts';
import { type ClearSpace, isPathClear, isSegmentClear, isWalkClear } from './clearSpace.ts';
import type { CornerLattice } from './cornerLattice.ts';
import { HEADINGS } from './cornerMoves.ts';
import type { Guide } from './goalDistance.ts';
import type { LatticeResult } from './latticeSearch.ts';
import { NodeQueue } from './nodeQueue.ts';

export interface CornerSearchSetting {
  readonly lattice: CornerLattice;
  readonly guide: Guide;
  /** how much the estimate of what is left counts against what is done */
  readonly greed: number;
  /** how dear a millimetre is at a place, 1 or more; absent = 1 everywhere */
  readonly dearness?: (x: number, y: number, z: number) => number;
}

/** Straight pieces in radii tried before the first turn and kept before a goal: a mouth deep in a hole is left along its axis. */
const LEAD_STEP_RADII = 0.75;
const MOST_LEAD_RADII = 4;
const GOAL_LEADS_RADII = [0, 1, 2.5];
/** Straights in radii after the first turn, where the lattice is entered. */
const ENTRY_RADII = [0.6, 1.1, 1.8];
const MOST_ENTRY_TURN_RAD = 2.7;
/** An entry may be so much longer, in radii, than the turn and the straight it stands for. */
const ENTRY_DETOUR_RADII = 0.4;
/** Of many clocks of a turning goal about so many are shot at from one state. */
const GOALS_SHOT_AT = 6;
const STATES_BETWEEN_CANCEL_CHECKS = 512;

/** What an entry of the queue stands for. */
const LEAD = -1;
const ENTRY = -2;
const SHOT = -3;
/** In place of an entry: the state is reached. */
const REACHED = -1;

interface Lead {
  readonly start: number;
  readonly pose: Pose;
  readonly leadMm: number;
}

interface Goal {
  readonly goal: number;
  /** the pose shot at, and how far it lies before the goal */
  readonly pose: Pose;
  readonly leadMm: number;
}

/**
 * Looks for a way of bounded curvature from any start to any goal over a lattice of corners: grid nodes with 26 headings, joined
 * by straights and rounded corners that end exactly on nodes. Method: weighted A* with lazy proof: a move is proven
 * clear when its turn comes, and if it is not, the next best move to the same state takes its place. Ends, which lie
 * on no node, are joined by arc-straight-arc connections. The answer is clear and bounded in curvature, shortest but for the
 * coarseness of the lattice and the greed; to be shortened.
 */
export class CornerSearch {
  private readonly queue = new NodeQueue();
  /** entries of the queue; parallel arrays */
  private readonly kinds: number[] = [];
  private readonly parents: number[] = [];
  private readonly states: number[] = [];
  private readonly costs: number[] = [];
  /** what was taken to be left from there when it was queued, mm */
  private readonly lefts: number[] = [];
  /** by entry: the next + 1 of those that wait behind the cheapest one to the same state, which has the first of them; 0 = none */
  private readonly waiting: number[] = [];
  private readonly connections = new Map<number, Connection>();
  private readonly shotGoals = new Map<number, Goal>();
  private readonly leads: Lead[] = [];
  /** by state: the cheapest entry in the queue + 1, 0 = none, or that it is reached */
  private readonly queued = new SparseNumbers(newIntegers, 5);
  /** by node: how dear a millimetre is there; 0 = not yet asked */
  private readonly dear = new SparseNumbers(newDoubles, 5);
  private readonly goalPoses: readonly Goal[];
  private readonly space: ClearSpace;
  private readonly starts: readonly Pose[];
  private readonly goals: readonly Pose[];
  private readonly setting: CornerSearchSetting;
  private expanded = 0;

  constructor(space: ClearSpace, starts: readonly Pose[], goals: readonly Pose[], setting: CornerSearchSetting) {
    this.space = space;
    this.starts = starts;
    this.goals = goals;
    this.setting = setting;
    this.goalPoses = this.posesBefore(goals);
    starts.forEach((pose, start) => {
      this.pushLead({ start, pose, leadMm: 0 });
    });
  }

  /** Searches on from where it stopped before, until so many states were expanded in all. */
  run(mostStates: number, watch: Watch): LatticeResult {
    while (this.expanded < mostStates) {
      const entry = this.queue.pop();
      if (entry < 0) return this.nothing(true);
      const kind = this.kinds[entry] as number;
      if (kind === LEAD) this.enter(entry);
      else if (kind === SHOT) {
        const path = this.shotPath(entry);
        if (path) return this.finish(entry, path);
      } else if (!this.isRatedAnew(entry) && this.arrive(entry)) {
        if (this.expanded % STATES_BETWEEN_CANCEL_CHECKS === 0) stopIfCancelled(watch);
        this.expanded++;
        this.expand(entry);
      }
    }
    return this.nothing(false);
  }

  private push(kind: number, parent: number, state: number, cost: number, leftMm: number): number {
    const entry = this.add(kind, parent, state, cost);
    this.enqueue(entry, leftMm);
    return entry;
  }

  private enqueue(entry: number, leftMm: number): void {
    this.lefts[entry] = leftMm;
    this.queue.push((this.costs[entry] as number) + this.setting.greed * leftMm, entry);
  }

  /** Whether more is left from a state than was known when it was queued: then it goes back into the queue, or out where no goal is reached. */
  private isRatedAnew(entry: number): boolean {
    const { lattice, guide } = this.setting;
    const leftMm = lattice.exactGuideMm(nodeOf(this.states[entry] as number), guide);
    if (leftMm === this.lefts[entry]) return false;
    if (leftMm < Number.POSITIVE_INFINITY) this.enqueue(entry, leftMm);
    return true;
  }

  private add(kind: number, parent: number, state: number, cost: number): number {
    this.kinds.push(kind);
    this.parents.push(parent);
    this.states.push(state);
    this.costs.push(cost);
    this.waiting.push(0);
    this.lefts.push(0);
    return this.kinds.length - 1;
  }

  private pushLead(lead: Lead): void {
    const [x, y, z] = lead.pose.point;
    this.leads.push(lead);
    this.push(LEAD, -1, this.leads.length - 1, lead.leadMm, this.setting.guide.at(x, y, z));
  }

  /** From a lead: every heading is turned to, and the lattice entered a little further on; and the lead is made longer. */
  private enter(entry: number): void {
    const lead = this.leads[this.states[entry] as number] as Lead;
    const { radiusMm } = this.setting.lattice;
    for (let h = 0; h < HEADINGS.length; h++) {
      const heading = HEADINGS[h] as Vec3;
      const turn = angleBetween(lead.pose.direction, heading);
      if (turn > MOST_ENTRY_TURN_RAD) continue;
      const turned = turnedPoint(lead.pose, heading, turn, radiusMm);
      for (const radii of ENTRY_RADII) {
        const straightMm = radii * radiusMm;
        const wantedMm = turn * radiusMm + straightMm + ENTRY_DETOUR_RADII * radiusMm;
        this.enterNear(entry, lead, addScaled(turned, heading, straightMm), h, wantedMm);
      }
    }
    const longer = LEAD_STEP_RADII * radiusMm;
    if (lead.leadMm + longer > MOST_LEAD_RADII * radiusMm) return;
    if (!isSegmentClear(this.space, lead.pose, { kind: 'line', lengthMm: longer })) return;
    const point = addScaled(lead.pose.point, lead.pose.direction, longer);
    this.pushLead({ ...lead, pose: { point, direction: lead.pose.direction }, leadMm: lead.leadMm + longer });
  }

  /** Tries the node nearest to a point as an entry to the lattice. */
  private enterNear(parent: number, lead: Lead, [x, y, z]: Vec3, heading: number, mostMm: number): void {
    const { lattice, guide } = this.setting;
    const { origin, cellMm } = lattice.grid;
    const at = [
      (x - origin[0]) / cellMm - 0.5,
      (y - origin[1]) / cellMm - 0.5,
      (z - origin[2]) / cellMm - 0.5,
    ] as const;
    const node = lattice.nodeAt(Math.round(at[0]), Math.round(at[1]), Math.round(at[2]), guide);
    if (node < 0) return;
    const connection = connectWithShortTurns(lead.pose, lattice.poseOf(node, heading), lattice.radiusMm);
    if (!connection || connection.lengthMm > mostMm) return;
    const cost = lead.leadMm + connection.lengthMm * this.dearnessOf(node);
    const entry = this.offer(ENTRY, parent, node, heading, cost);
    if (entry >= 0) this.connections.set(entry, connection);
  }

  private dearnessOf(node: number): number {
    const { dearness, lattice } = this.setting;
    if (dearness === undefined) return 1;
    const at = this.dear.placeFor(node);
    const { numbers } = this.dear;
    if (numbers[at] === 0) numbers[at] = dearness(...lattice.poseOf(node, 0).point);
    return numbers[at] as number;
  }

  /** A move to a state: into the queue if it is the cheapest known, else behind the one that is. */
  private offer(kind: number, parent: number, node: number, heading: number, cost: number): number {
    const state = node * HEADINGS.length + heading;
    const at = this.queued.placeFor(state);
    const { numbers } = this.queued;
    const first = numbers[at] as number;
    if (first === REACHED) return -1;
    if (first > 0 && (this.costs[first - 1] as number) <= cost) {
      const entry = this.add(kind, parent, state, cost);
      this.waiting[entry] = this.waiting[first - 1] as number;
      this.waiting[first - 1] = entry + 1;
      return entry;
    }
    // A cheaper one takes over what waited behind the one before.
    const entry = this.push(kind, parent, state, cost, this.setting.lattice.guideMm(node));
    if (first > 0) this.waiting[entry] = this.waiting[first - 1] as number;
    numbers[at] = entry + 1;
    return entry;
  }

  /** Whether an entry reaches a state that was not reached before; if its move is not clear the next one in wait is queued. */
  private arrive(entry: number): boolean {
    const state = this.states[entry] as number;
    const at = this.queued.placeFor(state);
    const { numbers } = this.queued;
    if (numbers[at] === REACHED) return false;
    if (this.isClear(entry)) {
      numbers[at] = REACHED;
      return true;
    }
    this.queueNext(state);
    return false;
  }

  private queueNext(state: number): void {
    const place = this.queued.placeFor(state);
    const { numbers } = this.queued;
    const first = numbers[place] as number;
    let waits = first > 0 ? (this.waiting[first - 1] as number) : 0;
    let best = 0;
    let before = 0;
    for (let last = 0, at = waits; at !== 0; last = at, at = this.waiting[at - 1] as number) {
      if (best !== 0 && (this.costs[at - 1] as number) >= (this.costs[best - 1] as number)) continue;
      best = at;
      before = last;
    }
    numbers[place] = best;
    if (best === 0) return;
    const rest = this.waiting[best - 1] as number;
    if (before === 0) waits = rest;
    else this.waiting[before - 1] = rest;
    this.waiting[best - 1] = waits;
    this.enqueue(best - 1, this.setting.lattice.guideMm(nodeOf(state)));
  }

  private isClear(entry: number): boolean {
    const kind = this.kinds[entry] as number;
    if (kind === ENTRY) return isPathClear(this.space, this.entryPath(entry));
    const { lattice } = this.setting;
    const from = this.states[this.parents[entry] as number] as number;
    const [start, end] = [nodeOf(from), nodeOf(this.states[entry] as number)];
    const segments = this.segmentsOf(entry);
    return isWalkClear(this.space, this.poseOf(from), segments, lattice.marginMm(start), lattice.marginMm(end));
  }

  private poseOf(state: number): Pose {
    return this.setting.lattice.poseOf(nodeOf(state), state % HEADINGS.length);
  }

  private segmentsOf(entry: number): readonly PathSegment[] {
    const heading = (this.states[this.parents[entry] as number] as number) % HEADINGS.length;
    return this.setting.lattice.moves[heading]?.[this.kinds[entry] as number]?.segments ?? [];
  }

  private entryPath(entry: number): ArcLinePath {
    const lead = this.leads[this.states[this.parents[entry] as number] as number] as Lead;
    return connectionPath(
      lead.pose,
      this.poseOf(this.states[entry] as number),
      this.connections.get(entry) as Connection,
    );
  }

  private expand(entry: number): void {
    const { lattice, guide } = this.setting;
    const state = this.states[entry] as number;
    const heading = state % HEADINGS.length;
    const node = nodeOf(state);
    const cost = this.costs[entry] as number;
    const [i, j, k] = lattice.stepsOf(node);
    const moves = lattice.moves[heading] ?? [];
    for (let m = 0; m < moves.length; m++) {
      const { step, toHeading, lengthMm } = moves[m] as (typeof moves)[number];
      const to = lattice.nodeAt(i + step[0], j + step[1], k + step[2], guide);
      if (to < 0) continue;
      this.offer(m, entry, to, toHeading, cost + lengthMm * this.dearnessOf(to));
    }
    if (this.expanded % (1 + Math.floor(lattice.guideMm(node) / (2 * lattice.radiusMm))) === 0) this.shoot(entry);
  }

  /** Queues the shortest connection to a goal: it is proven when its turn comes. */
  private shoot(entry: number): void {
    const pose = this.poseOf(this.states[entry] as number);
    const cost = this.costs[entry] as number;
    let best: { goal: Goal; connection: Connection } | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const goal of this.goalPoses) {
      const connection = connectWithShortTurns(pose, goal.pose, this.setting.lattice.radiusMm);
      if (connection === undefined) continue;
      const total = cost + connection.lengthMm + goal.leadMm;
      if (total >= least) continue;
      least = total;
      best = { goal, connection };
    }
    if (best === undefined) return;
    const shot = this.push(SHOT, entry, -1, least, 0);
    this.connections.set(shot, best.connection);
    this.shotGoals.set(shot, best.goal);
  }

  private shotPath(shot: number): ArcLinePath | undefined {
    const { pose, leadMm, goal } = this.shotGoals.get(shot) as Goal;
    const from = this.poseOf(this.states[this.parents[shot] as number] as number);
    const path = connectionPath(from, pose, this.connections.get(shot) as Connection);
    if (!isPathClear(this.space, path)) return undefined;
    if (leadMm === 0) return path;
    const start = { point: pose.point, direction: (this.goals[goal] as Pose).direction };
    return joinPaths(path, { start, segments: [{ kind: 'line', lengthMm: leadMm }] });
  }

  /** The goals, and clear places on the straights that lead to them. */
  private posesBefore(goals: readonly Pose[]): Goal[] {
    const stride = Math.max(1, Math.round(goals.length / GOALS_SHOT_AT));
    return goals.flatMap((pose, goal) =>
      goal % stride !== 0
        ? []
        : GOAL_LEADS_RADII.flatMap((radii): Goal[] => {
            const leadMm = radii * this.setting.lattice.radiusMm;
            const before = { point: addScaled(pose.point, pose.direction, -leadMm), direction: pose.direction };
            const clear = leadMm === 0 || isSegmentClear(this.space, before, { kind: 'line', lengthMm: leadMm });
            return clear ? [{ goal, pose: before, leadMm }] : [];
          }),
    );
  }

  private finish(shot: number, last: ArcLinePath): LatticeResult {
    const moves: PathSegment[][] = [];
    let entry = this.parents[shot] as number;
    for (; this.kinds[entry] !== ENTRY; entry = this.parents[entry] as number) moves.push([...this.segmentsOf(entry)]);
    const lead = this.leads[this.states[this.parents[entry] as number] as number] as Lead;
    const leading: PathSegment[] = lead.leadMm > 0 ? [{ kind: 'line', lengthMm: lead.leadMm }] : [];
    const first = { start: this.starts[lead.start] as Pose, segments: leading };
    const entered = joinPaths(first, this.entryPath(entry));
    const middle = { ...entered, segments: [...entered.segments, ...moves.reverse().flat()] };
    const { goal } = this.shotGoals.get(shot) as Goal;
    return { path: joinPaths(middle, last), start: lead.start, goal, expanded: this.expanded, emptied: false };
  }

  private nothing(emptied: boolean): LatticeResult {
    return { start: -1, goal: -1, expanded: this.expanded, emptied };
  }
}

function nodeOf(state: number): number {
  return Math.floor(state / HEADINGS.length);
}

/** Where an arc of `radiusMm` that starts at a pose has turned to `heading`. */
function turnedPoint({ point, direction }: Pose, heading: Vec3, turnRad: number, radiusMm: number): Vec3 {
  const aside = rejectFrom(heading, direction);
  if (length(aside) < ROUNDING_RAD) return point;
  const along = addScaled(point, direction, radiusMm * Math.sin(turnRad));
  return addScaled(along, unit(aside), radiusMm * (1 - Math.cos(turnRad)));
}
