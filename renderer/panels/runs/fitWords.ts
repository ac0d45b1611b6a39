import type { End, Hose } from '../../../shared/document/parts/schema.ts';
import type { Port } from '../../../shared/document/project/schema.ts';
import { seatWords } from '../../../shared/document/wording/seatWords.ts';
import { FLUID_WORDS } from '../../../shared/document/wording/serviceWords.ts';
import { formatDash, formatPressure, formatTemperature } from '../../../shared/sheets/format/index.ts';
import type { HoseMisfit } from '../../state/edits/partFit.ts';

/** What is against a hose, as a clause after its name. */
export function misfitWords(misfit: HoseMisfit): string {
  switch (misfit.kind) {
    case 'size':
      return `${formatDash(misfit.dash)}, the port is ${formatDash(misfit.portDash)}`;
    case 'fluid':
      return `not for ${FLUID_WORDS[misfit.fluid].toLowerCase()}: ${misfit.why}`;
    case 'too-hot':
      return `to ${formatTemperature(misfit.mostC)} only`;
    case 'too-cold':
      return `not below ${formatTemperature(misfit.leastC)}`;
    case 'pressure':
      return `to ${formatPressure(misfit.mostKpa)} only`;
  }
}

/** Why an end cannot be made up on a hose of another size. */
export function offHoseWords(end: End, hose: Hose): string {
  return `for ${formatDash(end.dash)} hose, this is ${formatDash(hose.dash)}`;
}

/** Why an end does not seat on a port as it is. */
export function offPortWords(end: End, port: Port): string {
  const seat = (of: End | Port): string => `${formatDash(of.dash)} ${seatWords(of.seat)}`;
  return `needs an adapter: it is ${seat(end)}, the port ${seat(port)}`;
}
