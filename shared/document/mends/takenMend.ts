import type { LayReport } from '../lay/schema.ts';
import type { MendAnswer } from './schema.ts';

/**
 * The report with the lay that a mend was tried with in the place of the run's own, and what the other runs then have to
 * say of it. Made from a report that the mend was tried on; checks and hashes are those that the answer has.
 */
export function takenMend(report: LayReport, { mend, lay, towards, findings }: MendAnswer): LayReport {
  const told = new Map(towards.map((one) => [one.run, one.clearances]));
  return {
    ...report,
    lays: report.lays.map((other) => {
      const clearances = told.get(other.run);
      if (other.run === mend.run) return lay;
      return clearances === undefined ? other : { ...other, clearances };
    }),
    findings,
  };
}
