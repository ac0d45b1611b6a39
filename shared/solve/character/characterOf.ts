import { degreesToRadians } from '../../base/units.ts';
import { DOWN, UP } from '../../base/vec3.ts';
import { centrelineMinRadiusMm } from '../../document/parts/centrelineMinRadius.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Project, Service } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { clocksOf, type EndSetting, fittedAt, tailPose } from '../layRun/runSetting.ts';
import type { CalmLimit, Character, CrestLimit, PlaneLimit } from './character.ts';

/** What laying has brought to numbers already: both ends, the least radius of the search, the straight tails. */
export interface CharacterInput {
  readonly a: EndSetting;
  readonly b: EndSetting;
  readonly minRadiusMm: number;
  readonly tailMm: number;
}

/** What a run's service and the project ask of its shape, by the rules of the project. mm, rad, bay frame, +Z up. */
export function characterOf(project: Project, resolved: ResolvedRun, input: CharacterInput): Character {
  return {
    ...fallOf(project, resolved),
    ...crestOf(project, resolved, input),
    ...calmOf(project, resolved),
    planes: planesOf(project, resolved),
  };
}

/** Whether air that stays in a hose of this service stops it: coolant, in whatever circuit. */
export function holdsNoAir({ purpose, fluid }: Service): boolean {
  return fluid === 'coolant' || purpose === 'coolant' || purpose === 'turbo-water';
}

/** The end at the pump of a suction hose, where the fluid goes to; undefined for other hoses. */
export function pumpSide({ run }: Pick<ResolvedRun, 'run'>): 'a' | 'b' | undefined {
  if (run.service.purpose !== 'oil-suction' && run.service.pressureKpa >= 0) return undefined;
  return run.flow === 'b-to-a' ? 'a' : 'b';
}

/** A drain runs downhill from its higher port to its lower one, by at least the rule's slope. */
function fallOf(project: Project, { run, a, b }: ResolvedRun): Pick<Character, 'fall'> {
  if (run.service.purpose !== 'turbo-oil-drain') return {};
  const slopeDeg = ruleValue(project, 'drain-least-fall', run.id).value;
  const down = a.port.seatPoint[2] >= b.port.seatPoint[2] ? DOWN : UP;
  return { fall: { down, leastSin: Math.sin(degreesToRadians(slopeDeg)) } };
}

function crestOf(project: Project, { run }: ResolvedRun, input: CharacterInput): { crest?: CrestLimit } {
  if (!holdsNoAir(run.service) || run.bledAtCrest === true) return {};
  const mostMm = ruleValue(project, 'coolant-high-point', run.id).value;
  const heights = { a: input.a.port.seatPoint[2], b: input.b.port.seatPoint[2] };
  const fromHigher = heights.a >= heights.b;
  const topMm = Math.max(heights.a, heights.b);
  const lowMm = Math.min(heights.a, heights.b) + mostMm;
  const crestMm = Math.max(leastTopMm(input, 'a'), leastTopMm(input, 'b'));
  return {
    crest: {
      mostMm,
      lowMm,
      highMm: crestMm > topMm ? topMm : Number.POSITIVE_INFINITY,
      ceilingMm: Math.max(topMm, crestMm) + mostMm,
      fromHigher,
      forced: crestMm > topMm + mostMm,
    },
  };
}

const CLOCKS = 24;

/**
 * The least height, mm, over the clocks of an end, to which end and hose must rise before the hose can go level: an end
 * that faces upwards needs its tail and a bend of the least radius above it.
 */
function leastTopMm({ minRadiusMm, tailMm, ...ends }: CharacterInput, side: 'a' | 'b'): number {
  const end = ends[side];
  const clocks = clocksOf(end, CLOCKS);
  return Math.min(
    ...clocks.map((clockRad) => {
      const { point } = tailPose(end, side, tailMm, clockRad);
      const { body, hoseAxis } = fittedAt(end, clockRad);
      const climb = Math.max(0, Math.min(1, hoseAxis[2]));
      const crest = climb > 0 ? point[2] + minRadiusMm * (1 - Math.sqrt(1 - climb * climb)) : point[2];
      return Math.max(crest, ...body.slice(0, -1).map((p) => p[2]));
    }),
  );
}

function calmOf(project: Project, resolved: ResolvedRun): { calm?: CalmLimit } {
  const side = pumpSide(resolved);
  if (side === undefined) return {};
  return { calm: { side, ...calmLimits(project, resolved) } };
}

/** How much hose before a pump has no tight bend, mm from the mouth, and the least radius there, mm. */
export function calmLimits(project: Project, { run, hose }: ResolvedRun): Omit<CalmLimit, 'side'> {
  return {
    lengthMm: ruleValue(project, 'suction-calm-length', run.id).value * hose.insideDiameterMm,
    radiusMm: ruleValue(project, 'suction-calm-radius', run.id).value * centrelineMinRadiusMm(hose),
  };
}

function planesOf(project: Project, { run }: ResolvedRun): PlaneLimit[] {
  const mostMm = ruleValue(project, 'one-plane', run.id).value;
  return (run.onePlane ?? []).map((from) => ({ from, mostMm }));
}
