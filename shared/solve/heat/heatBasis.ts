import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Bay } from '../../document/project/schema.ts';
import { runningFilm } from './fluidFilm.ts';
import { ASSUMED, holdsFluid } from './heatCase.ts';
import { HOT_SKIN_EMISSIVITY, HOT_SKIN_SOURCE, type Known } from './materials.ts';
import type { HotBay } from './radiationAlong.ts';

/** What the estimate of a run's heat takes, stated and assumed, in lines for a reader. */
export function heatBasis(run: ResolvedRun, bay: Bay, { hot }: HotBay): string[] {
  const film = runningFilm(run).basis;
  const guessed = hot.some(({ skin }) => skin.emissivity === undefined);
  return [
    `bay air ${taken(bay.airTemperatureC, ASSUMED.airC, 'deg C')}, across the hose at ${taken(bay.airSpeedMPerS, ASSUMED.airMPerS, 'm/s')}`,
    `hot skins as stated${guessed ? `; their emissivity ${range(HOT_SKIN_EMISSIVITY)} where not stated, as oxidised metal (${HOT_SKIN_SOURCE})` : ''}`,
    'the fluid keeps its stated temperature all along',
    ...(film === undefined ? [] : [film]),
    `hot soak: engine off, nothing flows, air stands at ${taken(bay.soakAirTemperatureC, ASSUMED.soakAirC, 'deg C')}, hot skins lose two thirds of what they have over it in ${range(minutes(ASSUMED.coolingS))} minutes (assumed)`,
    ...(holdsFluid(run) ? [] : ['in hot soak a drain, a breather or a filler is empty']),
    'no heat runs along the hose; other hoses and the ends neither shade nor radiate; air that rises hot from hot parts is not followed; walls, covers and fluids by figures from memory',
  ];
}

function taken(stated: number | undefined, assumed: Known, unit: string): string {
  return stated === undefined ? `${range(assumed)} ${unit} (assumed)` : `${stated} ${unit} (stated)`;
}

function range({ low, likely, high }: Known): string {
  return `${likely} (${low} to ${high})`;
}

function minutes({ low, likely, high }: Known): Known {
  return { low: low / 60, likely: likely / 60, high: high / 60 };
}
