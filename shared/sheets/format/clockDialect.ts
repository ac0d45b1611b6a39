import type { ClockDialect } from '../../document/project/schema.ts';
import { formatClockHour, formatDegrees } from './angle.ts';

/** The ways a hose shop states a clock, by name. */
export const DIALECT_WORDS: Record<ClockDialect, string> = {
  'near-at-six': "near end at 6 o'clock, counter-clockwise to the far end",
  'far-to-near': 'far end to near end, clockwise',
  'far-at-twelve': "far end at 12 o'clock, near end as a clock position",
};

/**
 * The clock in the words of one dialect, degrees in the program's convention. All dialects give the same hose, and the same number
 * or position from whichever end the hose is looked along; `readClock` reads each back. MIL-DTL-83796/5 Fig. 3 note
 * 1 (near at six); hydraulic and motorsport hose makers (far to near; far at twelve).
 */
export function dialectSentence(clockDeg: number, dialect: ClockDialect): string {
  const look = 'Hose straight, looked along from the near end (either end may be the near one):';
  const turn = formatDegrees(clockDeg);
  if (dialect === 'near-at-six')
    return `${look} near outlet at 6 o'clock, ${turn} counter-clockwise to the far outlet.`;
  if (dialect === 'far-to-near') return `${look} ${turn} clockwise from the far outlet to the near outlet.`;
  return `${look} far outlet at 12 o'clock, near outlet at ${formatClockHour(clockDeg)}.`;
}
