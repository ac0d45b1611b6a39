import type { Built, Finding, Lay } from '../../shared/document/lay/schema.ts';
import {
  formatClearance,
  formatDegrees,
  formatLengthBoth,
  formatRadius,
  formatTurn,
} from '../../shared/sheets/format/index.ts';

const OUTCOMES: Readonly<Record<Built['outcome'], string>> = {
  lies: 'it fits and lies at rest',
  tight: 'it is tight',
  'too-short': 'it does not reach',
  unsettled: 'no lay at rest was found',
};

/** A hose as it was made, for a person at a terminal: what was measured, how it lies, what it breaks. */
export function builtText(lay: Lay, built: Built, findings: readonly Finding[]): string {
  const { minRadius, tightest } = built;
  const planned = lay.clock.kind === 'angle' ? `, clock ${formatDegrees(lay.clock.deg)}` : '';
  const clocked = built.clockDeg === undefined ? '' : `, clock ${formatDegrees(built.clockDeg)}`;
  return [
    `MADE   cut ${formatLengthBoth(built.cutLengthMm)}${clocked}; planned ${formatLengthBoth(lay.cutLengthMm)}${planned}`,
    `LIES   ${OUTCOMES[built.outcome]}; ${slackText(built.slackLeftMm)}`,
    ...(minRadius === undefined
      ? []
      : [`BEND   ${formatRadius(minRadius.provenAtLeastMm)} of ${formatRadius(lay.minRadius.limitMm)}`]),
    ...(tightest === undefined
      ? []
      : [
          `NEAR   ${formatClearance(tightest.clearanceMm)} of ${formatLengthBoth(tightest.requiredMm, 'up')} to ${tightest.to.part ?? tightest.to.id}`,
        ]),
    `TWIST  ${formatTurn(Math.abs(built.twistDeg ?? 0))} when both ends are tight`,
    ...findings.map((f) => `${f.severity.toUpperCase()}  ${f.message}${f.mend === undefined ? '' : ` ${f.mend}`}`),
    '',
  ].join('\n');
}

function slackText(mm: number): string {
  return mm < 0
    ? `${formatLengthBoth(-mm, 'up')} too short for its shortest lay`
    : `${formatLengthBoth(mm, 'down')} of slack`;
}
