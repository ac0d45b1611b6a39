import { angleBetween, distance } from '../../base/vec3.ts';
import { connectPoses, connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import { movePoint, turnDirection } from '../../geometry/rigidMotion.ts';
import { type HeldHose, type HeldSpan, type Hold, isWorked } from './heldHose.ts';
import type { Motions } from './movedBay.ts';

/** Where a hold stands then. */
export function poseThen({ body, pose }: Hold, motions: Motions): Pose {
  const motion = motions(body);
  return { point: movePoint(motion, pose.point), direction: turnDirection(motion, pose.direction) };
}

/**
 * How much slack a hose has left when bodies stand as `motions` has them, mm: of the stretch between two holds that move
 * against each other which has least. At rest a stretch has its length less its shortest lay; that changes by what
 * the shortest arc-straight-arc line between its two holds, at the hose's least radius, gains or loses. Exact where that line
 * is the shortest lay; where something stands in between, right to the first order in the movement. A hose none of
 * whose stretches is worked keeps all of its slack.
 */
export function slackLeftIn(hose: HeldHose): (motions: Motions) => number {
  const { lay } = hose.taken;
  const wholeMm = lay.liveLengthMm - lay.tautLengthMm;
  const lines = hose.spans.map((span) => connectionOf(hose, span));
  const overs = hose.spans.map((span, i) => Math.max(0, span.lengthMm - (lines[i]?.restMm ?? 0)));
  const over = overs.reduce((a, b) => a + b, 0);
  // Of several stretches each has its part of the whole, and never more than it is longer than its own shortest line.
  const part = over > 0 ? Math.min(1, wholeMm / over) : 0;
  const slackMm = hose.spans.length === 1 ? [wholeMm] : overs.map((mm) => mm * part);
  return (motions) =>
    hose.spans.reduce(
      (least, span, i) => {
        if (!isWorked(span)) return least;
        const gained = gainMm(hose, span, lines[i] as Connector, motions);
        return Math.min(least, (slackMm[i] as number) - gained);
      },
      leastWhenUnworked(hose, wholeMm),
    );
}

function leastWhenUnworked({ spans }: HeldHose, wholeMm: number): number {
  return spans.some(isWorked) ? Number.POSITIVE_INFINITY : wholeMm;
}

interface Ends {
  readonly from: Pose;
  readonly to: Pose;
}

interface Connector {
  /** of the shortest arc-straight-arc line, mm; the chord where there is none */
  lengthMm(ends: Ends): number;
  /** of the line at rest */
  readonly restMm: number;
}

function restOf({ from, to }: HeldSpan): Ends {
  return { from: from.pose, to: to.pose };
}

/** Beyond this many radii the line with short turns is the shortest (and costs a hundredth of the search for all of them). */
const SHORT_TURNS_BEYOND_RADII = 3;

function connectionOf({ setting }: HeldHose, span: HeldSpan): Connector {
  const radiusMm = setting.minRadiusMm;
  const far = distance(span.from.pose.point, span.to.pose.point) > SHORT_TURNS_BEYOND_RADII * radiusMm;
  const quick = far && connectWithShortTurns(span.from.pose, span.to.pose, radiusMm) !== undefined;
  const connect = quick ? connectWithShortTurns : connectPoses;
  const lengthMm = ({ from, to }: Ends): number =>
    connect(from, to, radiusMm)?.lengthMm ?? distance(from.point, to.point);
  return { lengthMm, restMm: lengthMm(restOf(span)) };
}

/**
 * Held to what the ends moved and turned against each other: close ends can jump from one shortest line to another of quite
 * another length, which no hose does.
 */
function gainMm({ setting }: HeldHose, span: HeldSpan, line: Connector, motions: Motions): number {
  const rest = restOf(span);
  const then = { from: poseThen(span.from, motions), to: poseThen(span.to, motions) };
  const moved = distance(rest.from.point, then.from.point) + distance(rest.to.point, then.to.point);
  const turned =
    angleBetween(rest.from.direction, then.from.direction) + angleBetween(rest.to.direction, then.to.direction);
  const most = moved + setting.minRadiusMm * turned;
  const gain = line.lengthMm(then) - line.restMm;
  return Math.max(-most, Math.min(most, gain));
}
