import type { Finding } from '../../document/lay/schema.ts';
import { insertionDepthMm } from '../../document/parts/insertionDepth.ts';
import type { HoseClamps, Purpose } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { LIFELINES } from './lifelines.ts';
import { notStated } from './notStated.ts';
import { endPlace, SIDES, type Side, sideText } from './places.ts';

/**
 * Hose clamps over the barbs of clamped ends: whether such a joint may be there at all, how many hold it and by what, how much hose shows
 * before the first, and whether the barb reaches under the last. How they sit is the user's to state; what is not stated is only told.
 */
export function hoseClamps(context: CheckContext): Finding[] {
  return SIDES.filter((side) => context.run[side].end.joint === 'clamped').flatMap((side) => [
    ...onPtfe(context, side),
    ...onLifeline(context, side),
    ...asStated(context, side, context.run.run[side].hoseClamps),
  ]);
}

function comparisonOf({ project, run, lay }: CheckContext, side: Side, rule: string) {
  const at = endPlace(lay, side, lay.ends[side].shoulderPoint);
  return { check: 'hoseClamps', run: run.run.id, use: ruleValue(project, rule, run.run.id), at } as const;
}

function onPtfe(context: CheckContext, side: Side): Finding[] {
  const { core } = context.run.hose;
  return judge({
    ...comparisonOf(context, side, 'hose-clamps-on-ptfe'),
    sense: 'at-most',
    measured: core === 'ptfe-smooth' || core === 'ptfe-convoluted' ? 1 : 0,
    unit: 'count',
    severity: 'stop',
    message: `Hose clamps at ${sideText(side)} on PTFE hose, which is not made for them and does not grip a barb.`,
    mend: 'A crimped or a screw-together end, or hose that is made for clamps.',
  });
}

/** Hoses that carry fuel on a boat, whichever way. */
const FUEL_HOSES: readonly Purpose[] = ['fuel', 'fuel-fill', 'fuel-vent'];

/** On boats hose clamps are a usual way to hold fuel hose, by the code itself. */
function onLifeline(context: CheckContext, side: Side): Finding[] {
  const { purpose } = context.run.run.service;
  const isAllowed = purpose === 'fuel' && context.project.vehicle === 'boat';
  return judge({
    ...comparisonOf(context, side, 'hose-clamps-lifeline'),
    sense: 'at-most',
    measured: LIFELINES.includes(purpose) && !isAllowed ? 1 : 0,
    unit: 'count',
    severity: 'look',
    message: `Hose clamps at ${sideText(side)}, on a hose that may not be lost.`,
    mend: 'A crimped or a screw-together end.',
  });
}

function asStated(context: CheckContext, side: Side, clamps: HoseClamps | undefined): Finding[] {
  const count =
    clamps === undefined
      ? []
      : [...enough(context, side, clamps), ...sprung(context, side, clamps), ...narrow(context, side, clamps)];
  if (clamps?.fromHoseEndMm === undefined) return [...count, ...unknown(context, side, clamps)];
  return [...count, ...fromEnd(context, side, clamps.fromHoseEndMm), ...onBarb(context, side, clamps)];
}

function unknown(context: CheckContext, side: Side, clamps: HoseClamps | undefined): Finding[] {
  const what = clamps === undefined ? 'how many there are and how far' : 'how far';
  return notStated(context, 'hose-clamps-known', {
    check: 'hoseClamps',
    message: `Hose clamps hold ${sideText(side)}; it is not stated ${what} from the end of the hose they sit.`,
    mend: 'State the hose clamps at this end.',
  });
}

/** Hoses of a boat that two hose clamps hold at each end, and what a leak there is. */
function twoClamps({ project, run }: CheckContext): { readonly rule: string; readonly words: string } | undefined {
  const { purpose } = run.run.service;
  if (purpose === 'wet-exhaust')
    return { rule: 'exhaust-hose-clamps', words: 'of an exhaust hose; what leaks there is exhaust gas in the boat' };
  return purpose === 'fuel-fill' && project.vehicle === 'boat'
    ? { rule: 'filler-hose-clamps', words: 'of the fuel filler; what leaks there is fuel in the bilge' }
    : undefined;
}

function enough(context: CheckContext, side: Side, { count }: HoseClamps): Finding[] {
  const two = twoClamps(context);
  if (two === undefined) return [];
  return judge({
    ...comparisonOf(context, side, two.rule),
    sense: 'at-least',
    measured: count,
    unit: 'count',
    severity: 'look',
    message: `${count === 1 ? 'One hose clamp' : `${count} hose clamps`} at ${sideText(side)} ${two.words}.`,
    mend: 'Two that do not overlap, both over the barb; a longer barb where it has no room for them.',
  });
}

function sprung(context: CheckContext, side: Side, { count, spring = false }: HoseClamps): Finding[] {
  if (!FUEL_HOSES.includes(context.run.run.service.purpose) || context.project.vehicle !== 'boat') return [];
  return judge({
    ...comparisonOf(context, side, 'hose-clamps-spring'),
    sense: 'at-most',
    measured: spring ? count : 0,
    unit: 'count',
    severity: 'look',
    message: `Fuel hose of a boat is held at ${sideText(side)} by the tension of a spring alone.`,
    mend: 'Hose clamps with a screw.',
  });
}

/** Of the filler alone a width is asked. */
function narrow(context: CheckContext, side: Side, { bandMm }: HoseClamps): Finding[] {
  const asked = context.run.run.service.purpose === 'fuel-fill' && context.project.vehicle === 'boat';
  if (!asked || bandMm === undefined) return [];
  return judge({
    ...comparisonOf(context, side, 'filler-clamp-band'),
    sense: 'at-least',
    measured: bandMm,
    unit: 'mm',
    severity: 'look',
    message: `Bands of ${lengthText(bandMm)} hold ${sideText(side)} of the fuel filler.`,
    mend: 'Wider bands.',
  });
}

function fromEnd(context: CheckContext, side: Side, fromHoseEndMm: number): Finding[] {
  return judge({
    ...comparisonOf(context, side, 'hose-clamp-from-end'),
    sense: 'at-least',
    measured: fromHoseEndMm,
    unit: 'mm',
    severity: 'look',
    message: `The nearest hose clamp at ${sideText(side)} sits ${lengthText(fromHoseEndMm)} from the end of the hose and may slide off it.`,
    mend: 'Further along the hose, past the bead or over the serrations.',
  });
}

/** All bands with the hose between them need barb under them, from the cut of the hose on. */
function onBarb(context: CheckContext, side: Side, { count, fromHoseEndMm = 0, bandMm }: HoseClamps): Finding[] {
  if (bandMm === undefined) return [];
  const { project, run } = context;
  const barbMm = insertionDepthMm(run[side].end);
  const apartMm = ruleValue(project, 'hose-clamps-apart', run.run.id).value;
  const neededMm = fromHoseEndMm + count * bandMm + (count - 1) * apartMm;
  return judge({
    ...comparisonOf(context, side, 'hose-clamps-on-barb'),
    sense: 'at-least',
    measured: barbMm - neededMm,
    unit: 'mm',
    severity: 'look',
    message: `${count === 1 ? 'The hose clamp' : `${count} hose clamps`} at ${sideText(side)} reach to ${lengthText(neededMm)} from the end of the hose; the barb under it is ${lengthText(barbMm)} long.`,
    mend: 'A longer barb, or narrower bands: one past the barb squeezes the hose off it.',
  });
}
