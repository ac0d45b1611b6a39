import { radiansToDegrees } from '../../base/units.ts';
import type { Lay, Place } from '../lay/schema.ts';
import { turnedAngleRad } from '../lay/turnedAngle.ts';
import { monthsOn } from '../life/months.ts';
import type { Inspection, Run } from '../project/schema.ts';

/** One place to look at, and with what. */
export interface LookAt {
  readonly at: Place;
  readonly why: string;
  readonly by: 'hand' | 'mirror';
}

/** What the list of looking over again has of one hose. */
export interface InspectionOf {
  readonly run: string;
  readonly name: string;
  readonly fittedOn?: string;
  /** the last look, or the day it was fitted */
  readonly lastOn?: string;
  /** `YYYY-MM-DD`; absent = it is not said when it was fitted */
  readonly dueOn?: string;
  /** true = that day has come; false also where today is not said */
  readonly isDue: boolean;
  /** in order from END A; none where the report says nothing of hands */
  readonly places: readonly LookAt[];
  /** why it has to come off to be seen, and what comes off before it, in sentences; none = it may stay on */
  readonly removal: readonly string[];
  /** what was found and is not put right */
  readonly open: readonly Inspection[];
}

/** deg. Wear inside a bend of 150 degrees was seen only with the hose off and straightened (ctflier.com, topic 1594). */
const WORN_INSIDE_DEG = 150;

interface Looked {
  readonly run: Run;
  readonly sleeve?: { readonly name: string } | undefined;
}

/**
 * When a hose in use is looked over again, where, and with what: a hand, a mirror, or the hose off. Places are the report's own
 * (`hands`). A sleeve hides what is under it, and a great bend its own inside, until the hose is off (ctflier.com, topics 547 and 1594). lay: absent = no
 * places. months: between two looks. today: `YYYY-MM-DD`, absent = not said.
 */
export function inspectionOf(
  { run, sleeve }: Looked,
  lay: Lay | undefined,
  months: number,
  today?: string,
): InspectionOf {
  const { fittedOn, inspections = [] } = run.asBuilt ?? {};
  const lastOn = inspections.map(({ on }) => on).reduce<string | undefined>(later, fittedOn);
  const dueOn = fittedOn === undefined || lastOn === undefined ? undefined : monthsOn(lastOn, months);
  const places = lay?.hands?.places ?? [];
  return {
    run: run.id,
    name: run.name,
    ...(fittedOn === undefined ? {} : { fittedOn }),
    ...(lastOn === undefined ? {} : { lastOn }),
    ...(dueOn === undefined ? {} : { dueOn }),
    isDue: dueOn !== undefined && today !== undefined && today >= dueOn,
    places: places.map(({ at, why, by }) => ({ at, why, by })),
    removal: removalOf(sleeve, lay),
    open: inspections.filter(({ found, closedOn }) => found !== undefined && closedOn === undefined),
  };
}

function later(day: string | undefined, other: string): string {
  return day === undefined || other > day ? other : day;
}

function removalOf(sleeve: Looked['sleeve'], lay: Lay | undefined): string[] {
  const turnedDeg = lay === undefined ? 0 : radiansToDegrees(turnedAngleRad(lay.centreline.points));
  const reasons = [
    ...(sleeve === undefined
      ? []
      : [`The sleeve ${sleeve.name} hides the hose: slide it back where it slides, else take the hose off.`]),
    ...(turnedDeg < WORN_INSIDE_DEG
      ? []
      : [
          `It turns through ${turnedDeg.toFixed(0)} degrees: wear inside its bends shows only with the hose off and straight; hose that has taken a set is not straightened.`,
        ]),
  ];
  const first = lay?.hands?.before ?? [];
  return reasons.length === 0 || first.length === 0
    ? reasons
    : [...reasons, `Before it these come off: ${first.join(', ')}.`];
}

/** A place in words, as far as it is told without a drawing: `by hand: under the clamp`. */
export function lookText({ by, why }: LookAt): string {
  return by === 'hand' ? `by hand: ${why}` : `with a mirror: ${why}`;
}
