import type { Hose } from '../parts/schema.ts';
import type { Fluid, Service, Vehicle } from '../project/schema.ts';

/** How long a hose is usually left in service, and by whom. */
export interface HoseLife {
  /** from the day the hose was made; absent = by its condition, without a term */
  readonly years?: number;
  /** what it is, in a clause */
  readonly kind: string;
  readonly source: string;
  readonly dissent?: string;
}

const KITPLANES = 'kitplanes.com, "Maintenance matters" 39';
const ALCOHOLS: readonly Fluid[] = ['e85', 'methanol'];
const WATERS: readonly Fluid[] = ['coolant', 'raw-water'];

/**
 * The usual life of a hose by its core, its fluid and the vehicle: PTFE by its condition; rubber with alcohol fuels two years;
 * cooling hose on a boat four; other rubber five, as in an aircraft's engine bay, which is the nearest figure found for a hot
 * bay. What the hose's own maker says comes first.
 */
export function hoseLife(core: Hose['core'], { fluid }: Pick<Service, 'fluid'>, vehicle?: Vehicle): HoseLife {
  if (core === 'ptfe-smooth' || core === 'ptfe-convoluted')
    return { kind: 'PTFE hose, by its condition', source: KITPLANES };
  if (ALCOHOLS.includes(fluid))
    return {
      years: 2,
      kind: 'rubber with methanol or race fuel',
      source: 'phenixindustries.com, "What is the useful life of your race car plumbing": every couple of years',
    };
  if (vehicle === 'boat' && WATERS.includes(fluid))
    return {
      years: 4,
      kind: 'cooling hose of a boat',
      source: 'soundingsonline.com, questions and answers: at most 4 years',
      dissent: 'boattest.com, "Check clamps and hoses": look hard at date codes over 7 years',
    };
  return {
    years: 5,
    kind: 'rubber hose in an engine bay, as on aircraft',
    source: KITPLANES,
    dissent: 'machine hydraulics: 6 years with at most 2 on the shelf, 2 where worked hard (DIN 20066, as quoted)',
  };
}

/**
 * The day a hose falls due, `YYYY-MM-DD` or, where only the month of making is known, `YYYY-MM`. Days and months sort as text.
 * madeOn: `YYYY-MM` or `YYYY-MM-DD`; years: whole.
 */
export function dueOn(madeOn: string, years: number): string {
  return `${String(Number(madeOn.slice(0, 4)) + years).padStart(4, '0')}${madeOn.slice(4)}`;
}

/** Whether a due day has gone by on a day, `YYYY-MM-DD`: of a due month when the month is over. */
export function isOverdue(due: string, day: string): boolean {
  return day.slice(0, due.length) > due;
}
