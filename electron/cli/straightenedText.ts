import type { Straightened } from '../../shared/document/straightened/schema.ts';
import { wrongWayRound } from '../../shared/sheets/clock/clockFace.ts';
import { clockDefinition, clockSentence, freeClockSentence } from '../../shared/sheets/clock/clockWords.ts';
import {
  formatCutLength,
  formatDegrees,
  formatLengthBoth,
  formatRadius,
  formatTurn,
} from '../../shared/sheets/format/index.ts';

/** A straightened rod for a person at a terminal: the two numbers, how good they are, and what to do with them. */
export function straightenedText(rod: Straightened): string {
  const { cutOffMm, clock } = rod;
  const measured =
    cutOffMm.a + cutOffMm.b === 0 ? 'shoulder to shoulder' : `seat to seat, less C ${cutOffMm.a} and ${cutOffMm.b} mm`;
  return [
    `CUT    ${formatCutLength(rod.cutLengthMm)}   +/- ${formatLengthBoth(rod.lengthErrorMm, 'up')} for the points' scatter; ${measured}`,
    `ROD    ${formatLengthBoth(rod.pathLengthMm)} along its axis, ${rod.points} points, scatter ${formatLengthBoth(rod.scatterMm, 'up')}`,
    `BEND   tightest ${formatRadius(rod.tightest.radiusMm)} at the centreline, ${formatLengthBoth(rod.tightest.arcLengthMm)} from END A`,
    ...(clock.kind === 'free'
      ? [freeClockSentence(clock)]
      : [
          `CLOCK  ${formatDegrees(clock.deg)}   tolerance +/- ${formatTurn(clock.toleranceDeg)}; +/- ${formatTurn(rod.clockErrorDeg ?? 0)} for the points' scatter. Read the wrong way round it is ${formatDegrees(wrongWayRound(clock.deg))}`,
          clockSentence(clock.deg, 'A'),
          clockSentence(clock.deg, 'B'),
          clockDefinition(clock.deg),
        ]),
    ...rod.notes.map((note) => `LOOK   ${note}`),
    "Look up the hose's least bend radius and its datum before you cut: a rod bends where a hose will not.",
    '',
  ].join('\n');
}
