import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';
import { formatDegrees, formatPressure, formatTemperature } from '../../../shared/sheets/format/index.ts';

/** An id of the project file as words: `turbo-oil-drain` is read `turbo oil drain`. */
export function wordsOf(id: string): string {
  return id.replaceAll('-', ' ');
}

/** What the hose carries, on one line. */
export function serviceLine({ service }: Run): string {
  const { purpose, fluid, pressureKpa, temperatureC } = service;
  return [wordsOf(purpose), wordsOf(fluid), formatPressure(pressureKpa), formatTemperature(temperatureC)].join(' · ');
}

/**
 * Where the far outlet stands on a clock face seen along the hose from the near end, whose own outlet is at 6 o'clock:
 * degrees clockwise from 12. The clock angle runs counter-clockwise from 6 o'clock.
 */
export function farHandDeg(clockDeg: number): number {
  return (((180 - clockDeg) % 360) + 360) % 360;
}

/** The clock in a sentence that can be followed at the bench. */
export function clockSentence(lay: Lay): string {
  const { clock } = lay;
  if (clock.kind === 'free') {
    const which = {
      'a-straight': 'END A is straight',
      'b-straight': 'END B is straight',
      'both-straight': 'Both ends are straight',
    };
    return `${which[clock.reason]}: no clock to set.`;
  }
  return (
    `Hose straight, look along it from END A with END A's outlet at 6 o'clock: ` +
    `END B's outlet is ${formatDegrees(clock.deg)} counter-clockwise from there. ` +
    `The same from END B. Within ${formatDegrees(clock.toleranceDeg)}.`
  );
}
