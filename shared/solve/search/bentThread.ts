import { anySquareTo, cross, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import type { ClearSpace } from './clearSpace.ts';
import type { FineGrid } from './fineGrid.ts';
import { guideGridFor } from './firstWays.ts';
import { cellAt, GoalDistance, type Grid, gridOver } from './goalDistance.ts';
import { HEADING_BINS, headingBin } from './headingBin.ts';
import { NodeQueue } from './nodeQueue.ts';

/** Length of a step over the least radius, and its limits in mm; margins are asked at places no further apart than this. */
const STEP_RADII = 0.25;
const STEP_LIMITS_MM = [8, 40] as const;
const PROBE_MM = 8;
/** Bends are this much sharper than allowed: they catch up with what steps of one length cannot follow. */
const RADIUS_SHARE = 0.9;
const TURNS = 8;
/** Cells of which one state is kept for each heading, and in which two states meet, over the step. */
const CELL_STEPS = 0.55;
const MEETING_STEPS = 1;
/** mm. Places with margins below this are dearer, by so much for each mm. */
const ROOMY_MM = 4;
const NARROW_COST = 0.25;
const GREED = 1.5;
const STATES_BETWEEN_CANCEL_CHECKS = 1024;

export interface BentThread {
  readonly line?: readonly Vec3[];
  readonly expanded: number;
}

/**
 * A line from start to goal that bends about as a hose of this radius may, through places of which the margins are short by at most
 * `shortMm`: a guess, to be pushed clear. Method: weighted A* over poses (one state for a cell and a bin of headings, the
 * pose itself exact) from both ends by turns until two states meet, so that neither has to find its way into the other's
 * pocket; steps are a straight and arcs to eight sides. `price` as for a line through the grid.
 */
export function bentThread(
  space: ClearSpace,
  fine: FineGrid,
  start: Pose,
  goal: Pose,
  radiusMm: number,
  shortMm: number,
  price: (x: number, y: number, z: number) => number,
  mostStates: number,
  watch: Watch,
): BentThread {
  const relaxed: ClearSpace = { ...space, offsetMm: space.offsetMm + shortMm };
  const { grid, states } = guideGridFor(relaxed, radiusMm);
  const stepMm = Math.min(STEP_LIMITS_MM[1], Math.max(STEP_LIMITS_MM[0], STEP_RADII * radiusMm));
  const shared = {
    cells: gridOver(space.field.bounds, CELL_STEPS * stepMm),
    meetings: gridOver(space.field.bounds, MEETING_STEPS * stepMm),
  };
  const side = ({ point, direction }: Pose, to: Pose): Side =>
    new Side(shared, new GoalDistance(relaxed, grid, states, [to.point]), point, direction);
  const [goalX, goalY, goalZ] = goal.direction;
  const ahead = side(start, goal);
  const back = side({ point: goal.point, direction: [-goalX, -goalY, -goalZ] }, start);
  const steps = stepsOf(stepMm, RADIUS_SHARE * radiusMm);
  for (let expanded = 0; expanded < mostStates; expanded++) {
    if (expanded % STATES_BETWEEN_CANCEL_CHECKS === 0) stopIfCancelled(watch);
    const [own, other] = expanded % 2 === 0 ? [ahead, back] : [back, ahead];
    const node = own.next();
    if (node < 0) return { expanded };
    for (const step of steps) {
      const made = own.take(node, step, fine, shortMm, price);
      const met = made < 0 ? undefined : other.metBy(own, made);
      if (met === undefined) continue;
      const [a, b] = own === ahead ? [made, met] : [met, made];
      return { line: [...ahead.lineTo(a), ...back.lineTo(b).reverse().slice(1)], expanded };
    }
  }
  return { expanded: mostStates };
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
  const straight: Step = { places: along.map((s) => [s, 0] as const), side: [1, 0], turn: [1, 0], lengthMm };
  const turn = lengthMm / radiusMm;
  const places = along.map((s) => {
    const angle = s / radiusMm;
    return [radiusMm * Math.sin(angle), radiusMm * (1 - Math.cos(angle))] as const;
  });
  const arcs = Array.from({ length: TURNS }, (_, k): Step => {
    const about = (2 * Math.PI * k) / TURNS;
    return { places, side: [Math.cos(about), Math.sin(about)], turn: [Math.cos(turn), Math.sin(turn)], lengthMm };
  });
  return [straight, ...arcs];
}

interface Shared {
  readonly cells: Grid;
  readonly meetings: Grid;
}

/** The states reached from one end. */
class Side {
  private readonly points: Vec3[] = [];
  private readonly headings: Vec3[] = [];
  private readonly costs: number[] = [];
  private readonly parents: number[] = [];
  private readonly keys: number[] = [];
  private readonly best = new Map<number, number>();
  private readonly meetings = new Map<number, number>();
  private readonly queue = new NodeQueue();
  private readonly shared: Shared;
  private readonly guide: GoalDistance;

  constructor(shared: Shared, guide: GoalDistance, point: Vec3, heading: Vec3) {
    this.shared = shared;
    this.guide = guide;
    this.add(point, heading, 0, -1);
  }

  /** The state to go on from; -1 when there is none. */
  next(): number {
    let node = this.queue.pop();
    while (node >= 0 && this.best.get(this.keys[node] as number) !== node) node = this.queue.pop();
    return node;
  }

  /** The state a step leads to; -1 where it is blocked or no better than what is known there. */
  take(
    node: number,
    { places, side, turn, lengthMm }: Step,
    fine: FineGrid,
    shortMm: number,
    price: (x: number, y: number, z: number) => number,
  ): number {
    const point = this.points[node] as Vec3;
    const heading = this.headings[node] as Vec3;
    const first = anySquareTo(heading);
    const second = cross(heading, first);
    const aside = combined([0, 0, 0], first, second, side[0], side[1]);
    let least = Number.POSITIVE_INFINITY;
    let place = point;
    for (const [f, g] of places) {
      place = combined(point, heading, aside, f, g);
      least = Math.min(least, marginNear(fine, place));
      if (least < -shortMm) return -1;
    }
    const times = 1 + NARROW_COST * Math.max(0, ROOMY_MM - least);
    const cost = (this.costs[node] as number) + lengthMm * times * price(place[0], place[1], place[2]);
    return this.add(place, combined([0, 0, 0], heading, aside, turn[0], turn[1]), cost, node);
  }

  /** A state of this side where one of the other side's lies, headed the other way. */
  metBy(other: Side, node: number): number | undefined {
    const [x, y, z] = other.headings[node] as Vec3;
    return this.meetings.get(keyIn(this.shared.meetings, other.points[node] as Vec3, [-x, -y, -z]));
  }

  lineTo(node: number): Vec3[] {
    const line: Vec3[] = [];
    for (let at = node; at >= 0; at = this.parents[at] as number) line.push(this.points[at] as Vec3);
    return line.reverse();
  }

  private add(point: Vec3, heading: Vec3, cost: number, parent: number): number {
    const key = keyIn(this.shared.cells, point, heading);
    const rival = this.best.get(key);
    if (rival !== undefined && (this.costs[rival] as number) <= cost) return -1;
    const left = this.guide.at(point[0], point[1], point[2]);
    if (left === Number.POSITIVE_INFINITY) return -1;
    const node = this.points.length;
    this.points.push(point);
    this.headings.push(heading);
    this.costs.push(cost);
    this.parents.push(parent);
    this.keys.push(key);
    this.best.set(key, node);
    this.meetings.set(keyIn(this.shared.meetings, point, heading), node);
    this.queue.push(cost + GREED * left, node);
    return node;
  }
}

function combined(p: Vec3, a: Vec3, b: Vec3, f: number, g: number): Vec3 {
  return [p[0] + f * a[0] + g * b[0], p[1] + f * a[1] + g * b[1], p[2] + f * a[2] + g * b[2]];
}

function keyIn(grid: Grid, [x, y, z]: Vec3, heading: Vec3): number {
  return cellAt(grid, x, y, z) * HEADING_BINS + headingBin(heading);
}

/** Margin at the middle of the cell of a place, mm; outside the grid there is none. */
function marginNear(fine: FineGrid, [x, y, z]: Vec3): number {
  const { origin, cellMm, counts } = fine.grid;
  const i = Math.floor((x - origin[0]) / cellMm);
  const j = Math.floor((y - origin[1]) / cellMm);
  const k = Math.floor((z - origin[2]) / cellMm);
  if (i < 0 || j < 0 || k < 0 || i >= counts[0] || j >= counts[1] || k >= counts[2]) return Number.NEGATIVE_INFINITY;
  return fine.marginMm(i + counts[0] * (j + counts[1] * k), fine.middle(0, i), fine.middle(1, j), fine.middle(2, k));
}
