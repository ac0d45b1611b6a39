import { useState } from 'react';
import { degreesApart } from '../../../shared/base/units.ts';
import type { Clock } from '../../../shared/document/lay/schema.ts';
import { formatDegrees, formatTurn } from '../../../shared/sheets/format/index.ts';
import { ClockField } from '../ClockField.tsx';

/** Holds a clock that somebody else wrote down against this hose's own. */
export function ClockNote({ clock }: { clock: Extract<Clock, { kind: 'angle' }> }) {
  const [noted, setNoted] = useState<number | null>(null);
  const off = noted === null ? 0 : degreesApart(noted, clock.deg);
  return (
    <details className="clock-note">
      <summary>Check a clock as somebody wrote it</summary>
      <ClockField label="As written, such as V225 or 225 far to near clockwise" clockDeg={noted} onSet={setNoted} />
      {noted !== null && (
        <p role="status">
          {off <= clock.toleranceDeg
            ? `${formatDegrees(noted)} is this hose, within ${formatTurn(clock.toleranceDeg)}.`
            : `${formatDegrees(noted)} is another hose: ${formatTurn(off)} off.`}
        </p>
      )}
    </details>
  );
}
