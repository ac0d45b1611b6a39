import { CLEARANCE_PROOF_MM, LIMIT_RELATIVE } from '../../base/tolerances.ts';
import type { Watch } from '../../base/watch.ts';
import type { Breath, Lay } from '../../document/lay/schema.ts';
import { bundleOf } from '../../document/project/bundleOf.ts';
import type { Project } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { leastRadius } from '../../geometry/curveLimits.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { type TubeField, tubesOfRuns } from '../bay/tubeField.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import type { Candidate } from './candidate.ts';
import { centrelineOf, drawnLine } from './centreline.ts';
import { tightestClearance } from './measureClearances.ts';
import { relaxRoute } from './relaxRoute.ts';
import { FINE } from './relaxSpan.ts';
import type { RunSetting } from './runSetting.ts';

/** Relative. How far below the found least radius its proof may lie. */
const RADIUS_PROOF = 0.0002;
const CHANGES = ['breathing-longer', 'breathing-shorter'] as const;

/**
 * The laid hose under pressure: the same hose, its ends at the clocks they were tightened at and its clamps where they
 * are, grown and shortened by the rules' shares (FAA AC 43.13-1B Fig. 9-9: +2 % to -4 %), relaxed and measured again.
 * Twist that the change brings is not counted: the clocks stand still and the turning of the frame between them changes by
 * less than the clock's own tolerance at such lengths (seen, not proven).
 */
export function breathe(
  project: Project,
  setting: RunSetting,
  candidate: Candidate,
  contact: ContactField,
  bay: BayIndex,
  others: TubeField,
  watch: Watch,
): Breath[] {
  const { shape, route, clamps, tautLiveMm } = candidate;
  const fixed = { ...route, clockARad: shape.clockARad, clockBRad: shape.clockBRad };
  // Hoses tied together breathe together.
  const isApart = (run: string): boolean => bundleOf(project, setting.run, run) === undefined;
  const apart = tubesOfRuns(others, new Set(others.tubes.map(({ run }) => run).filter(isApart)));
  return CHANGES.map((id) => {
    const change = ruleValue(project, id, setting.run).value;
    const liveLengthMm = shape.liveLengthMm * (1 + change);
    const taut = liveLengthMm < tautLiveMm * (1 - LIMIT_RELATIVE);
    // It breathes from where it lies: its own shape is what it starts from.
    const lain = taut
      ? undefined
      : relaxRoute(setting, fixed, liveLengthMm, clamps, false, contact, watch, FINE, shape);
    if (lain === undefined) return { change, liveLengthMm, taut: true };
    const radius = leastRadius(lain.curve, RADIUS_PROOF);
    const tightest = tightestClearance(project, setting, lain, bay, apart, CLEARANCE_PROOF_MM);
    const breath: Breath = {
      change,
      liveLengthMm,
      taut,
      minRadius: {
        provenAtLeastMm: radius.provenAtLeast,
        at: { arcLengthMm: radius.arcLengthMm, point: [...radius.point] as [number, number, number] },
      },
      ...(tightest === undefined ? {} : { tightest }),
      line: drawnLine(lain.curve),
    };
    lines.set(breath, centrelineOf(lain.curve));
    return breath;
  });
}

const lines = new WeakMap<Breath, Lay['centreline']>();

/** The line that a breath was measured on, shoulder to shoulder; none where it goes taut, or was not measured by this worker. */
export function lineOfBreath(breath: Breath): Lay['centreline'] | undefined {
  return lines.get(breath);
}
