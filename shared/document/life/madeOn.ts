import type { Roll } from '../parts/schema.ts';
import { cureMonth } from '../stock/cureMonth.ts';

/** What tells when a hose was made. */
export interface Dated {
  readonly run: { readonly madeOn?: string | undefined };
  readonly roll?: Pick<Roll, 'id' | 'cureDate'> | undefined;
}

/** When a hose was made, `YYYY-MM` or `YYYY-MM-DD`, and whose word that is, in words. */
export interface MadeOn {
  readonly day: string;
  readonly by: string;
}

/**
 * When the hose of a run was made: as the run states it from the hose itself, else the cure date of the roll it was cut from. A
 * cure date that is a quarter counts from its first month, the earliest that the hose may be of. undefined: neither is stated.
 */
export function madeOn({ run, roll }: Dated): MadeOn | undefined {
  if (run.madeOn !== undefined) return { day: run.madeOn, by: 'as printed along it' };
  const { id, cureDate } = roll ?? {};
  const month = cureMonth(cureDate);
  if (cureDate === undefined || month === undefined) return undefined;
  const by = `cure date ${cureDate} of the roll ${id}`;
  if (!cureDate.includes('Q')) return { day: cureDate, by };
  return { day: `${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}`, by };
}
