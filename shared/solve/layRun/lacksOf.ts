import { SAME_POINT_MM, SLACK_LEFT } from '../../base/tolerances.ts';
import { distance, type Vec3 } from '../../base/vec3.ts';
import type { Breath } from '../../document/lay/schema.ts';
import { type Attempt, asksEveryClearance, EVERYTHING } from './attempts.ts';
import type { Candidate } from './candidate.ts';
import type { RunSetting } from './runSetting.ts';
import { brokenByShape } from './shapeLine.ts';

/**
 * What may keep a hose from being clean, the gravest first: it finds no rest; it is cut too short; it breaks radius or a clearance, or is
 * asked for less of that; a drain does not fall; it has less slack than is wanted; it goes taut under pressure.
 */
export type Lack = 'rest' | 'length' | 'limits' | 'fall' | 'slack' | 'breath';

/** A hose that was found, with what tells whether it is clean. */
export interface Found {
  readonly candidate: Candidate;
  /** absent = it was made to keep everything, whether it does or not */
  readonly attempt?: Attempt;
  /** how it lies under pressure; absent = not known yet, so not asked */
  readonly breathing?: readonly Breath[];
  /** true = led by hand: what slack it has was seen, and is asked only not to go taut under pressure */
  readonly byHand?: boolean;
}

/**
 * All that a hose lacks to be clean, the gravest first; it is `laid` where that is nothing. The one place that says so: every path to a lay
 * asks here, and its reason is told from the answer. What users stated themselves is let be: a hose already cut has the slack that it
 * has, and so has one with a stretch locked as it lies; one that less slack is wanted of than pressure takes goes taut under it. The checks of
 * slack and breathing tell what that comes to. So does the check of straight tails where half of one is given up: the trade takes one to two
 * diameters, and the rest of what is asked for is kept.
 */
export function lacksOf(setting: RunSetting, found: Found): readonly Lack[] {
  const { candidate, attempt = EVERYTHING, breathing = [], byHand = false } = found;
  const { shape, judgement, tautLiveMm } = candidate;
  const lacks: Readonly<Record<Lack, () => boolean>> = {
    rest: () => !shape.settled,
    length: () => shortByMm(setting, tautLiveMm) > SAME_POINT_MM,
    limits: () => judgement.breaksMm > 0 || !asksEveryClearance(attempt),
    fall: () => brokenByShape(setting, shape).some(({ wish }) => wish === 'fall'),
    slack: () => !byHand && missingMm(setting, candidate) > 0,
    breath: () => tautBreathOf(setting, candidate, breathing) !== undefined,
  };
  return (Object.keys(lacks) as Lack[]).filter((lack) => lacks[lack]());
}

/** Whether a hose is clean but for slack that it may still be given. */
export function lacksAtMostSlack(setting: RunSetting, found: Found): boolean {
  return isAtMostSlack(lacksOf(setting, found));
}

export function isAtMostSlack(lacks: readonly Lack[]): boolean {
  return lacks.every((lack) => lack === 'slack');
}

/** Live over taut length, less one. */
export function slackOf({ shape, tautLiveMm }: Pick<Candidate, 'shape' | 'tautLiveMm'>): number {
  return shape.liveLengthMm / tautLiveMm - 1;
}

/** How much longer a hose would be with the wanted slack, mm; 0 where it has that, or users stated how long it is. */
export function missingMm(setting: RunSetting, { shape, tautLiveMm }: Candidate): number {
  if (!choosesSlack(setting)) return 0;
  return Math.max(0, tautLiveMm * (1 + setting.slack - SLACK_LEFT) - shape.liveLengthMm);
}

/** The length that pressure gives a hose at which it goes taut although its slack should take that up; nothing where there is none. */
export function tautBreathOf(
  setting: RunSetting,
  candidate: Pick<Candidate, 'shape' | 'tautLiveMm'>,
  breathing: readonly Breath[],
): Breath | undefined {
  if (!choosesSlack(setting)) return undefined;
  return breathing.find((breath) => isTakenUp(setting, breath) && pullsTaut(candidate, breath));
}

/**
 * Whether a hose is taut at a length that pressure gives it: shorter than the shortest lay found, or than the straight lines from mouth to clamp
 * to mouth as it was fitted, its ends at their clocks. One that found no shape there and is longer may have bent its tails, or slid in
 * its clamps.
 */
function pullsTaut(
  { shape, tautLiveMm }: Pick<Candidate, 'shape' | 'tautLiveMm'>,
  { taut, liveLengthMm }: Breath,
): boolean {
  if (!taut) return false;
  const places = [shape.a.mouthPoint, ...shape.holds.map(({ pose }) => pose.point), shape.b.mouthPoint];
  const straightMm = places.slice(1).reduce((sum, place, i) => sum + distance(place, places[i] as Vec3), 0);
  return liveLengthMm < Math.max(tautLiveMm, straightMm);
}

/** Whether the slack that is wanted takes up what pressure shortens the hose by. */
function isTakenUp({ slack }: RunSetting, { change }: Breath): boolean {
  return (1 + slack) * (1 + change) >= 1;
}

/** Whether how long a hose is over taut is the program's to choose, all along. */
function choosesSlack({ cutLengthMm, locks = [] }: RunSetting): boolean {
  return cutLengthMm === undefined && locks.length === 0;
}

/** How much a hose already cut lacks to the taut lay, mm; 0 or less where it reaches, or where none is cut yet. */
export function shortByMm(setting: RunSetting, tautLiveMm: number): number {
  if (setting.cutLengthMm === undefined) return 0;
  return tautLiveMm + setting.a.end.shoulderToMouthMm + setting.b.end.shoulderToMouthMm - setting.cutLengthMm;
}
