import { clocksInTurn, isInTurn, nearestInTurn, type TurnRange } from '../../base/turnRange.ts';
import { addScaled, scale, type Vec3 } from '../../base/vec3.ts';
import type { End } from '../../document/parts/schema.ts';
import type { FittedAdapter } from '../../document/project/fitAdapters.ts';
import type { Lock, Support } from '../../document/project/schema.ts';
import type { Pose } from '../../geometry/arcLinePath.ts';
import type { RunField } from '../bay/runField.ts';
import type { Character } from '../character/character.ts';
import { type FittedEnd, fitEnd, type PortFrame } from '../ends/endPose.ts';
import { placesAlong } from '../ends/placesAlong.ts';
import type { RodEnd } from '../rod/rodProblem.ts';
import type { EndChoice } from '../search/problem.ts';

/** One end of the run as laying needs it. */
export interface EndSetting {
  /** what the end seats on: the port, or the last adapter on it */
  readonly port: PortFrame;
  /** what stands between the port and the end, from the part outwards */
  readonly adapters?: readonly FittedAdapter[];
  readonly end: End;
  /** the clock where the end stands, or the first guess where it turns */
  readonly clockRad: number;
  /** true = an angled end whose clock the program chooses */
  readonly turns: boolean;
  /** the clocks an end that turns may be turned to; absent = all */
  readonly clocks?: TurnRange;
}

/** Everything laying one run needs, in numbers. mm, rad, N; bay frame. */
export interface RunSetting {
  readonly run: string;
  readonly a: EndSetting;
  readonly b: EndSetting;
  readonly supports: readonly Support[];
  /** stretches that stay as they lie */
  readonly locks?: readonly Lock[];
  /** of hose or sleeve */
  readonly outsideRadiusMm: number;
  /** outside of the hose itself, and the bore of the sleeve on it */
  readonly sleeve?: { readonly hoseDiameterMm: number; readonly insideDiameterMm: number };
  /** the hose's limit at the centreline */
  readonly minRadiusMm: number;
  /** straight hose wanted beyond each mouth */
  readonly tailMm: number;
  readonly slack: number;
  /** shoulder to shoulder, for a hose already cut */
  readonly cutLengthMm?: number;
  readonly stiffnessNmm2: number;
  readonly weightNPerMm: number;
  readonly seed: number;
  /** what the service and the project ask of the shape */
  readonly character: Character;
  /** false = it is given up: still preferred, but no fault */
  readonly characterAsked: boolean;
}

/** The fitted end at a clock; a straight end has but one. */
export function fittedAt(setting: EndSetting, clockRad: number): FittedEnd {
  return fitEnd(setting.port, setting.end, clockRad);
}

/** Where the straight tail of an end stops, and which way the hose goes there (A to B). side: which end of the run it is. */
export function tailPose(setting: EndSetting, side: 'a' | 'b', tailMm: number, clockRad: number): Pose {
  const fitted = fittedAt(setting, clockRad);
  return {
    point: addScaled(fitted.mouthPoint, fitted.hoseAxis, tailMm),
    direction: side === 'a' ? fitted.hoseAxis : scale(fitted.hoseAxis, -1),
  };
}

/** mm. Spacing of the places along an end at which its own clearance is asked. */
const END_STEP_MM = 4;

/**
 * Least margin of the field along an angled end from its bend to its mouth, mm; negative = it stands too near something at
 * this clock. The rule of held places applies to it as to the hose: its own port is let be.
 */
export function endMarginMm(setting: EndSetting, clockRad: number, field: RunField): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [x, y, z] of placesAlong(fittedAt(setting, clockRad).body.slice(1), END_STEP_MM))
    least = Math.min(least, field.marginMm(x, y, z, least));
  return least;
}

/** Clocks evenly over all those at which an end may stand, rad: one where it does not turn, else so many to a turn. */
export function clocksOf({ turns, clocks, clockRad }: EndSetting, toTheTurn: number): number[] {
  if (!turns) return [clockRad];
  const turn = 2 * Math.PI;
  if (clocks === undefined) return Array.from({ length: toTheTurn }, (_, i) => (turn * i) / toTheTurn);
  return clocksInTurn(clocks, Math.max(2, Math.ceil((toTheTurn * (clocks.toRad - clocks.fromRad)) / turn) + 1));
}

/** The clock that an end may stand at which is nearest to one, rad; as it came where that is one it may stand at. */
export function nearestClockOf({ clocks }: EndSetting, clockRad: number): number {
  return clocks === undefined || isInTurn(clocks, clockRad) ? clockRad : nearestInTurn(clocks, clockRad);
}

/** An end as the search sees it: held, or turning about its port to where it stands clear. */
export function searchEnd(setting: EndSetting, side: 'a' | 'b', tailMm: number, field: RunField): EndChoice {
  if (!setting.turns) return { kind: 'held', pose: tailPose(setting, side, tailMm, setting.clockRad) };
  return {
    kind: 'turning',
    poseAt: (clockRad) => tailPose(setting, side, tailMm, clockRad),
    standsClear: (clockRad) => endMarginMm(setting, clockRad, field) >= 0,
    ...(setting.clocks === undefined ? {} : { clocks: setting.clocks }),
  };
}

/** An end as the rod sees it. clockRad: where it stands, or where it starts turning from. */
export function rodEnd(setting: EndSetting, side: 'a' | 'b', tailMm: number, clockRad: number, free: boolean): RodEnd {
  if (!(setting.turns && free)) return { kind: 'held', ...tailPose(setting, side, tailMm, clockRad) };
  const atZero = tailPose(setting, side, tailMm, 0);
  return {
    kind: 'turning',
    axisPoint: setting.port.seatPoint,
    axis: setting.port.axis,
    point: atZero.point,
    direction: atZero.direction,
    clockRad,
  };
}

/** Where the run is held to the bay: seats of both ports, clamps and pass-throughs. */
export function heldPlaces(setting: RunSetting): readonly Vec3[] {
  const holding = setting.supports.filter((s) => s.kind !== 'waypoint');
  return [setting.a.port.seatPoint, setting.b.port.seatPoint, ...holding.map((s) => s.point)];
}
