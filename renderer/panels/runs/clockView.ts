import { formatDegrees } from '../../../shared/sheets/format/index.ts';
import type { ClockHand } from '../../widgets/ClockDial.tsx';
import { farHandDeg } from './words.ts';

export type EndLetter = 'A' | 'B';

/** The clock face as it is seen along the straight hose from one of its ends. */
export interface ClockView {
  readonly from: EndLetter;
  readonly hands: readonly ClockHand[];
  readonly words: string;
}

/** The face seen from END A or END B at a clock in degrees: the near outlet at 6 o'clock, the far one where it stands. */
export function clockView(from: EndLetter, clockDeg: number): ClockView {
  const other = from === 'A' ? 'B' : 'A';
  const far = farHandDeg(clockDeg);
  return {
    from,
    hands: [
      { atDeg: far, name: other, look: 'far' },
      { atDeg: 180, name: from, look: 'near' },
    ],
    words: `Seen from END ${from}: ${from} at 6 o'clock, ${other} ${formatDegrees(far)} clockwise from 12`,
  };
}
