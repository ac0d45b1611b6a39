import type { TurnRange } from '../../base/turnRange.ts';
import { degreesToRadians, GRAVITY_M_PER_S2 } from '../../base/units.ts';
import { bendingStiffness } from '../../document/parts/bendingStiffness.ts';
import { centrelineMinRadiusMm } from '../../document/parts/centrelineMinRadius.ts';
import { hoseWeight } from '../../document/parts/hoseWeight.ts';
import { outsideDiameterMm } from '../../document/parts/outsideDiameter.ts';
import type { End } from '../../document/parts/schema.ts';
import type { ResolvedEnd, ResolvedRun } from '../../document/project/resolve.ts';
import type { Project } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { requiredRunClearance, requiredSkinClearance } from '../../document/rules/requiredClearance.ts';
import type { RunKeeps } from '../bay/runField.ts';
import { characterOf } from '../character/characterOf.ts';
import type { PortFrame } from '../ends/endPose.ts';
import type { LayContext } from './layContext.ts';
import { type EndSetting, heldPlaces, type RunSetting } from './runSetting.ts';

/** m/s^2, standard gravity (CGPM 1901); over 1000 it turns kg/m into N/mm. */

/** A run in numbers: the parts' figures and the project's rules brought to what laying needs. */
export function runSetting(project: Project, resolved: ResolvedRun): RunSetting {
  const { run, hose, sleeve } = resolved;
  const outsideRadiusMm = outsideDiameterMm(hose, sleeve) / 2;
  const ends = {
    a: endSetting(resolved.a),
    b: endSetting(resolved.b),
    minRadiusMm: centrelineMinRadiusMm(hose) * ruleValue(project, 'bend-radius', run.id).value,
    tailMm: ruleValue(project, 'straight-tail', run.id).value * hose.outsideDiameterMm,
  };
  return {
    ...ends,
    run: run.id,
    supports: run.supports,
    ...(run.locks === undefined ? {} : { locks: run.locks }),
    outsideRadiusMm,
    ...(sleeve === undefined
      ? {}
      : { sleeve: { hoseDiameterMm: hose.outsideDiameterMm, insideDiameterMm: sleeve.insideDiameterMm } }),
    slack: run.slack,
    ...(run.cutLengthMm === undefined ? {} : { cutLengthMm: run.cutLengthMm }),
    stiffnessNmm2: bendingStiffness(hose).valueNmm2,
    weightNPerMm: (hoseWeight(hose, run.service.fluid, sleeve).totalKgPerM * GRAVITY_M_PER_S2) / 1000,
    seed: project.seed,
    character: characterOf(project, resolved, ends),
    characterAsked: true,
  };
}

/**
 * An end as laying has it. A swivel turns to where the hose lies best unless its clock is stated; one with a range within
 * that; a fixed one (or a banjo told to be fixed) stands at its stated clock, else at 0, and never turns.
 */
function endSetting({ port, stack, end, clockDeg }: ResolvedEnd): EndSetting {
  const frame: PortFrame = { seatPoint: port.seatPoint, axis: port.axis, up: port.up };
  const stands = clockDeg !== undefined || end.bendAngleDeg === 0 || end.turning === 'fixed';
  const clocks = turnOf(end);
  return {
    port: frame,
    ...(stack === undefined ? {} : { adapters: stack.fitted }),
    end,
    clockRad: degreesToRadians(
      clockDeg ?? (clocks === undefined ? 0 : ((end.turnFromDeg ?? 0) + (end.turnToDeg ?? 0)) / 2),
    ),
    turns: !stands,
    ...(clocks === undefined ? {} : { clocks }),
  };
}

function turnOf({ turning, turnFromDeg: from, turnToDeg: to }: End): TurnRange | undefined {
  if (turning !== 'range' || from === undefined || to === undefined || to - from >= 360) return undefined;
  return { fromRad: degreesToRadians(from), toRad: degreesToRadians(to) };
}

/**
 * What the run keeps from each skin of the bay and from other runs, centreline to surface, mm. share: part of each clearance that
 * is asked, 1 = all; below 1 to find the way that breaks least when all of it cannot be had. The hose itself and the
 * scan's uncertainty are never given up.
 */
export function runKeeps(
  { project, bay }: Pick<LayContext, 'project' | 'bay'>,
  setting: RunSetting,
  share: number,
): RunKeeps {
  const uncertainMm = project.bay.scanUncertaintyMm;
  const part = (requiredMm: number): number => (requiredMm - uncertainMm) * share + uncertainMm;
  return {
    skinMm: new Map(
      bay.skins.map(({ skin }) => [
        skin.id,
        setting.outsideRadiusMm + part(requiredSkinClearance(project, setting.run, skin).requiredMm),
      ]),
    ),
    tubeMm: setting.outsideRadiusMm + part(requiredRunClearance(project, setting.run, setting.run).requiredMm),
    ...matesOf(project, setting),
    held: heldPlaces(setting),
  };
}

/** mm. Nearer than this to a thing a hose may be said to lie against it. */
const TOUCH_MM = 0.5;

/** Whether there is anything that a run is asked so little clearance from that it may lie against it. */
export function mayTouchAnything(context: Pick<LayContext, 'project' | 'bay'>, setting: RunSetting): boolean {
  const { skinMm, tubeMm, mateMm } = runKeeps(context, setting, 1);
  const least = Math.min(tubeMm, ...skinMm.values(), ...(mateMm?.values() ?? []));
  return least - setting.outsideRadiusMm < TOUCH_MM;
}

/** What is kept from the hoses of the same bundle: its gap, all of it in every attempt, since they are tied at that. */
function matesOf(project: Project, { run, outsideRadiusMm }: RunSetting): Pick<RunKeeps, 'mateMm'> {
  const mates = (project.bundles ?? []).filter((b) => b.runs.includes(run)).flatMap((b) => b.runs);
  const others = mates.filter((id) => id !== run);
  if (others.length === 0) return {};
  return {
    mateMm: new Map(others.map((id) => [id, outsideRadiusMm + requiredRunClearance(project, run, id).requiredMm])),
  };
}
