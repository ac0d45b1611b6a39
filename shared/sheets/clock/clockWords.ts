import { clockCode } from '../../document/clock/partCode.ts';
import type { Clock } from '../../document/lay/schema.ts';
import { formatClockHour, formatDegrees, formatTurn } from '../format/index.ts';
import { clockFace, type EndLetter, wrongWayRound } from './clockFace.ts';

/** What to do with the hose in hand, from one end: where to look from, what to turn up, where the near outlet points. */
export function clockSentence(clockDeg: number, viewer: EndLetter): string {
  const { near, far } = clockFace(clockDeg, viewer);
  return (
    `Lay the hose straight. Look from END ${near.end} along the hose to END ${far.end}. ` +
    `Turn it until the outlet of END ${far.end} points to ${formatClockHour(far.clockwiseDeg)}. ` +
    `The outlet of END ${near.end} then points to ${formatClockHour(near.clockwiseDeg)}.`
  );
}

/** The definition with this hose's number, and the number of the hose that is scrap. */
export function clockDefinition(clockDeg: number): string {
  const turn = formatDegrees(clockDeg);
  return (
    `The same in other words: near outlet at 6 o'clock, counter-clockwise ${turn} to the far outlet; or clockwise ${turn} ` +
    `from far to near. Both read the same from either end. Turned the wrong way round it comes out at ` +
    `${formatDegrees(wrongWayRound(clockDeg))}.`
  );
}

/** The clock as the two digits of a part number, with the words without which they say nothing, and what they lose. */
export function partCodeText(clockDeg: number): string {
  const { code, codedDeg, offDeg } = clockCode(clockDeg);
  const loss =
    formatTurn(offDeg) === '0°' ? '' : `, which stands for ${formatDegrees(codedDeg)}: ${formatTurn(offDeg)} off`;
  return `${code} (angle over 5, as in part numbers of MIL-DTL-83796/5)${loss}`;
}

/** Why a clock is free, and what is still to watch. */
export function freeClockSentence(clock: Extract<Clock, { kind: 'free' }>): string {
  const free = 'CLOCK FREE. There is no angle to set between the ends.';
  const watch = 'Tighten without twisting: the lay line of the hose stays straight.';
  if (clock.reason === 'both-straight') return `${free} Both ends are straight. ${watch}`;
  const straight = clock.reason === 'a-straight' ? 'A' : 'B';
  const other = straight === 'A' ? 'B' : 'A';
  return `${free} END ${straight} is straight, so END ${other} may point any way on the bench and finds its place in the bay. ${watch}`;
}

/** The clock in one line, for the cut list: `270°`, or `free`. */
export function clockInBrief(clock: Clock): string {
  return clock.kind === 'angle' ? formatDegrees(clock.deg) : 'free';
}
