import { CLEARANCE_PROOF_MM, RADIUS_RELATIVE } from '../../base/tolerances.ts';
import { curveLengthMm } from '../../geometry/cubicCurve.ts';
import { leastAlong, leastRadius } from '../../geometry/curveLimits.ts';
import { MarginOf, type RunField } from '../bay/runField.ts';
import type { Broken } from '../character/brokenBy.ts';
import type { Shape } from './relaxRoute.ts';
import { type EndSetting, endMarginMm, type RunSetting } from './runSetting.ts';
import { brokenByShape, isForced } from './shapeLine.ts';

/** How a relaxed hose stands against its radius and everything it must keep from. */
export interface Judgement {
  readonly radiusMm: number;
  readonly radiusAtMm: number;
  /** least margin of the field along the live hose, mm; negative = too near, Infinity = nowhere near to that */
  readonly marginMm: number;
  /** where a clamp would mend the worst of it, mm from shoulder A */
  readonly worstAtMm: number;
  /** 0 = keeps radius and every margin; else by how much they are missed, mm */
  readonly breaksMm: number;
  /** 0 = meets everything; else how badly it fails, comparable between shapes of one run */
  readonly fault: number;
  /** as fault, of what the service asks of the shape and a hose may be cut without: of shapes alike in fault the one with less is better */
  readonly regret: number;
  /** whether there is nothing left to look for: no fault, and no regret that another shape could be without */
  readonly content: boolean;
}

/** Relative. How finely radii are compared; a small part of what counts as meeting a limit. */
const JUDGE_RADIUS_GAP = 0.0002;

/** Measures a shape well enough to choose between shapes. Radius by its proven bound, margin by its proof to CLEARANCE_PROOF_MM. */
export function judgeShape(setting: RunSetting, shape: Shape, field: RunField): Judgement {
  const radius = leastRadius(shape.curve, JUDGE_RADIUS_GAP);
  const margin = leastAlong(
    shape.curve,
    setting.a.end.shoulderToMouthMm,
    curveLengthMm(shape.curve) - setting.b.end.shoulderToMouthMm,
    new MarginOf(field),
    field.lipschitz,
    CLEARANCE_PROOF_MM,
    CLEARANCE_PROOF_MM,
  );
  const short = Math.max(0, 1 - radius.provenAtLeast / (setting.minRadiusMm * (1 - RADIUS_RELATIVE)));
  const ends = Math.min(
    turnedEndMargin(setting.a, shape.clockARad, field),
    turnedEndMargin(setting.b, shape.clockBRad, field),
  );
  const near = Math.max(0, -margin.provenAtLeast, -ends);
  const character = judgeCharacter(setting, brokenByShape(setting, shape));
  const breaksMm = near + short * setting.minRadiusMm;
  const fault = breaksMm + character.fault + (shape.settled ? 0 : UNSETTLED_FAULT);
  return {
    radiusMm: radius.found,
    radiusAtMm: radius.arcLengthMm,
    marginMm: margin.found,
    worstAtMm:
      margin.found < 0
        ? margin.arcLengthMm
        : short > 0
          ? radius.arcLengthMm
          : (character.clampAtMm ?? radius.arcLengthMm),
    breaksMm,
    fault,
    regret: character.regret,
    content: fault === 0 && character.isKept,
  };
}

/** An end that the program turns must stand clear where it turned to; where the user put it is the user's to answer for. */
function turnedEndMargin(end: EndSetting, clockRad: number, field: RunField): number {
  return end.turns ? endMarginMm(end, clockRad, field) : Number.POSITIVE_INFINITY;
}

/** A drain that does not fall is a fault while it is asked for; the rest of its character is regretted. */
function judgeCharacter(
  setting: RunSetting,
  broken: readonly Broken[],
): { fault: number; regret: number; isKept: boolean; clampAtMm: number | undefined } {
  const isFault = (b: Broken): boolean => setting.characterAsked && b.wish === 'fall';
  const sum = (list: readonly Broken[]): number => list.reduce((mm, b) => mm + b.missingMm, 0);
  const mendable = setting.characterAsked ? broken.filter((b) => !isForced(setting, b)) : [];
  const worst = [...mendable].sort((p, q) => q.missingMm - p.missingMm)[0];
  return {
    fault: sum(broken.filter(isFault)),
    regret: sum(broken.filter((b) => !isFault(b))),
    isKept: mendable.length === 0,
    clampAtMm: worst?.clampAtMm,
  };
}

/** A shape that did not come to rest is worse than any that did. */
const UNSETTLED_FAULT = 1000;
