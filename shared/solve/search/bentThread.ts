import { ROUNDING_MM } from '../../base/tolerances.ts';
import {
  addScaled,
  anySquareTo,
  cross,
  distance,
  dot,
  length,
  lerp,
  rejectFrom,
  sub,
  type Vec3,
} from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { type Pose, reversedPose } from '../../geometry/arcLinePath.ts';
import { type ClearSpace, wayOfFallMm } from './clearSpace.ts';
import { cellFor } from './firstWays.ts';
import { givenWay, ROOMY_MM, roomAt } from './givenWay.ts';
import { cellAt, type GoalDistance, type Grid, gridOver } from './goalDistance.ts';
import { headingBin, headingBins, USUAL_STRIPS } from './headingBin.ts';
import { LeastSeen } from './leastSeen.ts';
import { NodeQueue } from './nodeQueue.ts';

/** Over the least radius, where nothing finer is asked: the length of a step, the cells of which one state is kept for each heading, and those in which two states meet. */
const STEP_RADII = 0.35;
const CELL_RADII = 0.3;
const MEETING_RADII = 0.35;
/** Strips of headings told apart, and where it explores: there a step turns by more than a bin, so that what it leads to is not taken for one. */
const STRIPS = { led: USUAL_STRIPS, exploring: 6 } as const;
/** Over the least radius: the cells in which states are counted where it explores; no more of them than are soon looked at all round. */
const SEEN_RADII = 0.5;
const MOST_SEEN = 7_500;
/** mm. A step is looked at in places no further apart than this. */
const PROBE_MM = 8;
const TURNS = 8;
/** A step gives way by at most this share of its length. */
const GIVING_SHARE = 0.4;
/** Each mm of margin less than roomy makes a step dearer by this share. */
const NARROW_COST = 0.1;
const GREED = 1.5;
/** Over the least radius: how far ahead the guide is looked along to tell whether a state is headed its way. */
const LOOK_RADII = 1.2;
/** mm. Two states meet where what lies between them is short by no more than this. */
const MEETING_SHORT_MM = 4;
const STATES_BETWEEN_CANCEL_CHECKS = 256;

/** Guides towards either end; good for any number of lines between the same ends. */
export interface ThreadGuides {
  readonly toGoals: GoalDistance;
  readonly toStarts: GoalDistance;
}

export interface ThreadLimits {
  /** 1, or how many times shorter steps are: what lies between long ones, short ones find, and take longer over it */
  readonly fineness: number;
  /** over the least radius: that of the bends; below 1 they catch up with what steps to eight sides cannot quite follow */
  readonly radiusShare: number;
  /** for lines that the guides lead past: half of the states are gone on from where that was done least */
  readonly explores: boolean;
  readonly mostStates: number;
}

export interface BentThread {
  readonly line?: readonly Vec3[];
  /** numbers of the start and the goal of the line */
  readonly start: number;
  readonly goal: number;
  readonly expanded: number;
  /** all that can be reached from one end was looked at */
  readonly emptied: boolean;
}

/**
 * A line from any start to any goal that bends about as a hose of this radius may: a guess, to be pushed clear. Method:
 * weighted A* over poses (one state for a cell and a bin of headings, the pose itself exact) from both ends by turns until two
 * states meet, so that neither has to find its way into the other's pocket. Steps are a straight and arcs to eight sides, and
 * where it is narrow they give way sideways: a tube or hole with no room to spare is found from a step that comes near it. States headed
 * against their guide wait for what it takes to turn. Where it explores, a step that gives way also turns with what it gives way to, as far as a
 * bend may: it follows a tube whose bends are as sharp as they may be. `toGoals`, `toStarts`: guides; `price`: how many times dearer than elsewhere a place is.
 */
export function bentThread(
  space: ClearSpace,
  { toGoals, toStarts }: ThreadGuides,
  starts: readonly Pose[],
  goals: readonly Pose[],
  radiusMm: number,
  price: (place: Vec3) => number,
  { fineness, radiusShare, explores, mostStates }: ThreadLimits,
  watch: Watch,
): BentThread {
  const { bounds } = space.field;
  const shared: Shared = {
    space,
    price,
    radiusMm,
    strips: explores ? STRIPS.exploring : STRIPS.led,
    cells: gridOver(bounds, (CELL_RADII * radiusMm) / fineness),
    meetings: gridOver(bounds, (MEETING_RADII * radiusMm) / fineness),
    ...(explores && {
      seen: gridOver(bounds, cellFor(space, SEEN_RADII * radiusMm, MOST_SEEN)),
      mostTurnRad: STEP_RADII / fineness / radiusShare,
    }),
  };
  const ahead = new Side(shared, toGoals, starts);
  const back = new Side(shared, toStarts, goals.map(reversedPose));
  const steps = stepsOf((STEP_RADII * radiusMm) / fineness, radiusShare * radiusMm);
  for (let expanded = 0; expanded < mostStates; expanded++) {
    if (expanded % STATES_BETWEEN_CANCEL_CHECKS === 0) stopIfCancelled(watch);
    const [own, other] = expanded % 2 === 0 ? [ahead, back] : [back, ahead];
    const node = explores && expanded % 4 >= 2 ? own.nextWhereLeastSeen() : own.next();
    if (node < 0) return { start: -1, goal: -1, expanded, emptied: true };
    for (const step of steps) {
      const made = own.take(node, step);
      const met = made < 0 ? undefined : own.meets(other, made);
      if (met === undefined) continue;
      const [a, b] = own === ahead ? [made, met] : [met, made];
      const line = [...ahead.lineTo(a), ...back.lineTo(b).reverse()];
      return { line, start: ahead.rootOf(a), goal: back.rootOf(b), expanded, emptied: false };
    }
  }
  return { start: -1, goal: -1, expanded: mostStates, emptied: false };
}

/** A step seen from its own beginning: places as (ahead, aside), the side's angle about the heading, and the turn. */
interface Step {
  readonly places: readonly (readonly [number, number])[];
  readonly side: readonly [number, number];
  readonly turn: readonly [number, number];
  readonly lengthMm: number;
}

function stepsOf(lengthMm: number, radiusMm: number): Step[] {
  const probes = Math.ceil(lengthMm / PROBE_MM);
  const along = Array.from({ length: probes }, (_, i) => ((i + 1) * lengthMm) / probes);
  const straight: Step = { places: along.map((s) => [s, 0]), side: [1, 0], turn: [1, 0], lengthMm };
  const turn = lengthMm / radiusMm;
  const places = along.map((s): [number, number] => [
    radiusMm * Math.sin(s / radiusMm),
    radiusMm * (1 - Math.cos(s / radiusMm)),
  ]);
  const arcs = Array.from({ length: TURNS }, (_, k): Step => {
    const about = (2 * Math.PI * k) / TURNS;
    return { places, side: [Math.cos(about), Math.sin(about)], turn: [Math.cos(turn), Math.sin(turn)], lengthMm };
  });
  return [straight, ...arcs];
}

interface Shared {
  readonly space: ClearSpace;
  readonly price: (place: Vec3) => number;
  readonly radiusMm: number;
  readonly strips: number;
  readonly cells: Grid;
  readonly meetings: Grid;
  /** where it explores: cells in which states are counted, and what a step turns by at most */
  readonly seen?: Grid;
  readonly mostTurnRad?: number;
}

interface State {
  readonly place: Vec3;
  readonly heading: Vec3;
  readonly cost: number;
  /** number of the state before; -1 at an end */
  readonly parent: number;
  readonly key: number;
  /** mm round the place that are surely clear */
  readonly sureMm: number;
  /** number of the end it comes from */
  readonly root: number;
}

/** The states reached from one end. */
class Side {
  private readonly states: State[] = [];
  private readonly best = new Map<number, number>();
  private readonly meetings = new Map<number, number>();
  private readonly queue = new NodeQueue();
  private readonly leastSeen: LeastSeen | undefined;
  private readonly goneOn: boolean[] = [];
  private readonly shared: Shared;
  private readonly guide: GoalDistance;

  constructor(shared: Shared, guide: GoalDistance, ends: readonly Pose[]) {
    this.shared = shared;
    this.guide = guide;
    this.leastSeen = shared.seen && new LeastSeen(shared.seen);
    for (const [root, { point, direction }] of ends.entries()) this.add(point, direction, 0, -1, 0, root);
  }

  /** The state to go on from; -1 when there is none. */
  next(): number {
    let node = this.queue.pop();
    while (node >= 0 && !this.isOpen(node)) node = this.queue.pop();
    if (node >= 0) this.goneOn[node] = true;
    return node;
  }

  /** The same, from where fewest states were gone on from. */
  nextWhereLeastSeen(): number {
    const node = this.leastSeen?.pop((n) => this.isOpen(n)) ?? -1;
    if (node < 0) return this.next();
    this.goneOn[node] = true;
    return node;
  }

  private isOpen(node: number): boolean {
    return this.goneOn[node] !== true && this.best.get(this.state(node).key) === node;
  }

  /** The state a step leads to; -1 where it is blocked or no better than what is known there. */
  take(node: number, step: Step): number {
    const from = this.state(node);
    const first = anySquareTo(from.heading);
    const aside = combined([0, 0, 0], first, cross(from.heading, first), step.side[0], step.side[1]);
    const heading = combined([0, 0, 0], from.heading, aside, step.turn[0], step.turn[1]);
    const [f, g] = step.places.at(-1) as readonly [number, number];
    const end = combined(from.place, from.heading, aside, f, g);
    if (this.isKnown(this.keyOf(end, heading), from.cost + step.lengthMm)) return -1;
    const walked = this.walked(from, step, aside);
    if (walked === undefined) return -1;
    const times = 1 + NARROW_COST * (ROOMY_MM - walked.leastMm);
    const cost = from.cost + (step.lengthMm + walked.movedMm) * times * this.shared.price(walked.place);
    const { mostTurnRad } = this.shared;
    const isPushed = mostTurnRad !== undefined && walked.movedMm > 0;
    const turned = isPushed ? turnedTowards(from, walked.place, mostTurnRad) : heading;
    return this.add(walked.place, turned, cost, node, walked.sureMm, from.root);
  }

  /** A state of the other side where one of this side lies, headed the other way, and nothing much between. */
  meets(other: Side, node: number): number | undefined {
    const { place, heading } = this.state(node);
    const [x, y, z] = heading;
    const met = other.meetings.get(keyIn(this.shared.meetings, place, [-x, -y, -z]));
    if (met === undefined) return undefined;
    const there = other.state(met).place;
    const probes = Math.ceil(distance(place, there) / (PROBE_MM / 2));
    for (let i = 1; i < probes; i++)
      if (roomAt(this.shared.space, lerp(place, there, i / probes)) < -MEETING_SHORT_MM) return undefined;
    return met;
  }

  rootOf(node: number): number {
    return this.state(node).root;
  }

  lineTo(node: number): Vec3[] {
    const line: Vec3[] = [];
    for (let at = node; at >= 0; at = this.state(at).parent) line.push(this.state(at).place);
    return line.reverse();
  }

  /** Where a step ends that gives way where it has to; what lies within the known room of a place is not looked at. */
  private walked(from: State, { places, lengthMm }: Step, aside: Vec3): Walked | undefined {
    const { space } = this.shared;
    const mostMm = GIVING_SHARE * lengthMm;
    let shift: Vec3 = [0, 0, 0];
    let movedMm = 0;
    let leastMm: number = ROOMY_MM;
    let { sureMm } = from;
    let place = from.place;
    for (const [i, [f, g]] of places.entries()) {
      sureMm -= lengthMm / places.length;
      place = addScaled(combined(from.place, from.heading, aside, f, g), shift, 1);
      if (sureMm >= 0 && i < places.length - 1) continue;
      const given = givenWay(space, place, from.heading, mostMm - movedMm);
      if (given === undefined) return undefined;
      shift = combined(shift, given.place, place, 1, -1);
      place = given.place;
      movedMm += given.movedMm;
      leastMm = Math.min(leastMm, given.marginMm);
      sureMm = given.marginMm <= 0 ? 0 : wayOfFallMm(space, ...place, given.marginMm);
    }
    return { place, movedMm, leastMm, sureMm };
  }

  private keyOf(place: Vec3, heading: Vec3): number {
    return keyIn(this.shared.cells, place, heading, this.shared.strips);
  }

  private isKnown(key: number, cost: number): boolean {
    const rival = this.best.get(key);
    return rival !== undefined && this.state(rival).cost <= cost;
  }

  private state(node: number): State {
    return this.states[node] as State;
  }

  private add(place: Vec3, heading: Vec3, cost: number, parent: number, sureMm: number, root: number): number {
    const key = this.keyOf(place, heading);
    if (this.isKnown(key, cost)) return -1;
    const leftMm = this.guide.at(...place);
    if (leftMm === Number.POSITIVE_INFINITY) return -1;
    const node = this.states.length;
    this.states.push({ place, heading, cost, parent, key, sureMm, root });
    this.best.set(key, node);
    this.meetings.set(keyIn(this.shared.meetings, place, heading), node);
    this.leastSeen?.add(node, place);
    this.queue.push(cost + GREED * (leftMm + this.turnMm(place, heading)), node);
    return node;
  }

  /** What it takes more to turn to where the guide leads by an arc of the least radius, mm. */
  private turnMm(place: Vec3, [x, y, z]: Vec3): number {
    const { radiusMm } = this.shared;
    const leads = this.guide.leads(...place, LOOK_RADII * radiusMm);
    if (leads === undefined) return 0;
    const cosine = leads[0] * x + leads[1] * y + leads[2] * z;
    const turn = Math.acos(Math.max(-1, Math.min(1, cosine)));
    return radiusMm * (turn - Math.sin(turn));
  }
}

interface Walked {
  readonly place: Vec3;
  readonly movedMm: number;
  readonly leastMm: number;
  readonly sureMm: number;
}

function combined(p: Vec3, a: Vec3, b: Vec3, f: number, g: number): Vec3 {
  return [p[0] + f * a[0] + g * b[0], p[1] + f * a[1] + g * b[1], p[2] + f * a[2] + g * b[2]];
}

/** The heading at the end of the circle that leaves a state and comes to a place, or after the most it may turn on the way there. */
function turnedTowards({ place, heading }: State, to: Vec3, mostTurnRad: number): Vec3 {
  const chord = sub(to, place);
  const aside = rejectFrom(chord, heading);
  const asideMm = length(aside);
  if (asideMm < ROUNDING_MM) return heading;
  const turn = Math.min(mostTurnRad, 2 * Math.atan2(asideMm, dot(chord, heading)));
  return combined([0, 0, 0], heading, aside, Math.cos(turn), Math.sin(turn) / asideMm);
}

function keyIn(grid: Grid, [x, y, z]: Vec3, heading: Vec3, strips: number = STRIPS.led): number {
  return cellAt(grid, x, y, z) * headingBins(strips) + headingBin(heading, strips);
}
