import { hoseWeight } from '../../document/parts/hoseWeight.ts';
import { outsideDiameterMm } from '../../document/parts/outsideDiameter.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Bay, Purpose, Skin } from '../../document/project/schema.ts';
import type { BayAir } from './airFilm.ts';
import { runningFilm, standingFilm } from './fluidFilm.ts';
import { hoseLayers } from './hoseLayers.ts';
import type { Ring } from './hoseRing.ts';
import {
  COVER_EMISSIVITY,
  FLUID_HEAT,
  HOT_SKIN_EMISSIVITY,
  type Known,
  SLEEVE_EMISSIVITY,
  WALL_BAND,
  WALL_HEAT_J_PER_KG_K,
} from './materials.ts';
import { SECTORS } from './radiationAlong.ts';

/** What is taken where the project does not state it: no source, a builder's guess with a wide band. */
export const ASSUMED = {
  /** deg C of the bay's air, running, and once it stands */
  airC: { low: 40, likely: 60, high: 80 },
  soakAirC: { low: 60, likely: 80, high: 110 },
  /** m/s across the hose */
  airMPerS: { low: 0.3, likely: 1, high: 3 },
  /** s. In which a hot skin loses all but 1/e of what it has over the standing air */
  coolingS: { low: 360, likely: 720, high: 1500 },
} as const satisfies Record<string, Known>;

/** Standard errors of the rays that the band holds either way. */
const BAND_ERRORS = 2;

/** One set of inputs: the likely ones, or all at the edge that makes the hose hot or keeps it cool. */
export interface HeatCase {
  readonly ring: Ring;
  /** the same when nothing flows */
  readonly soakRing: Ring;
  /** share of the wall's resistance outside the hose's cover */
  readonly overCover: number;
  readonly air: BayAir;
  readonly soakAir: BayAir;
  readonly fluidC: number;
  readonly coolingS: number;
  readonly emissivityOf: (skin: Skin) => number;
  /** standard errors added to what the rays saw */
  readonly errors: number;
}

type Edge = 'cool' | 'likely' | 'hot';

/**
 * The cases of a run: the likely one first, then it with the error of the rays either way, then all assumed inputs at their
 * hot edges and at their cool ones, each with
 * the wall letting through least and most, since that warms one side of it and cools the other.
 */
export function heatCases(run: ResolvedRun, bay: Bay): HeatCase[] {
  const likely = heatCase(run, bay, 'likely', 1);
  return [
    likely,
    { ...likely, errors: -BAND_ERRORS },
    { ...likely, errors: BAND_ERRORS },
    ...(['hot', 'cool'] as const).flatMap((edge) =>
      [WALL_BAND.low, WALL_BAND.high].map((factor) => heatCase(run, bay, edge, factor)),
    ),
  ];
}

function heatCase(run: ResolvedRun, bay: Bay, edge: Edge, wallFactor: number): HeatCase {
  const up = ({ low, likely, high }: Known): number => ({ cool: low, likely, hot: high })[edge];
  const down = ({ low, likely, high }: Known): number => ({ cool: high, likely, hot: low })[edge];
  const { hose, sleeve } = run;
  const layers = hoseLayers(hose, sleeve, wallFactor);
  const emissivity = up(sleeve === undefined ? COVER_EMISSIVITY[hose.cover] : SLEEVE_EMISSIVITY);
  const ring = ringOf(run, emissivity, layers, down(runningFilm(run).wPerM2K));
  return {
    ring,
    soakRing: { ...ring, filmWPerMK: filmWPerMK(run, down(standingFilm(run))) },
    overCover: layers.overCover,
    air: {
      temperatureC: bay.airTemperatureC ?? up(ASSUMED.airC),
      speedMPerS: bay.airSpeedMPerS ?? down(ASSUMED.airMPerS),
    },
    soakAir: { temperatureC: bay.soakAirTemperatureC ?? up(ASSUMED.soakAirC), speedMPerS: 0 },
    fluidC: run.run.service.temperatureC,
    coolingS: up(ASSUMED.coolingS),
    emissivityOf: (skin) => skin.emissivity ?? up(HOT_SKIN_EMISSIVITY),
    errors: { cool: -BAND_ERRORS, likely: 0, hot: BAND_ERRORS }[edge],
  };
}

function ringOf(run: ResolvedRun, emissivity: number, layers: ReturnType<typeof hoseLayers>, film: number): Ring {
  const { hose, sleeve } = run;
  const outsideMm = outsideDiameterMm(hose, sleeve);
  const { dryKgPerM, sleeveKgPerM, fluidKgPerM } = hoseWeight(hose, run.run.service.fluid, sleeve);
  const hoseJ = dryKgPerM * WALL_HEAT_J_PER_KG_K;
  const drained = !holdsFluid(run);
  const meanMm = (hose.insideDiameterMm + hose.outsideDiameterMm) / 2;
  return {
    sectors: SECTORS,
    outsideDiameterMm: outsideMm,
    emissivity,
    wallWPerMK: layers.wallWPerMK,
    filmWPerMK: filmWPerMK(run, film),
    besideOuterWPerMK: layers.aroundOuterWPerK / sectorM(outsideMm),
    besideInnerWPerMK: layers.aroundInnerWPerK / sectorM(meanMm),
    storedJPerMK: {
      outer: sleeve === undefined ? hoseJ / 2 : sleeveKgPerM * WALL_HEAT_J_PER_KG_K,
      inner: sleeve === undefined ? hoseJ / 2 : hoseJ,
      fluid: drained ? 0 : fluidKgPerM * FLUID_HEAT[run.run.service.fluid].heatJPerKgK,
    },
  };
}

/** Hoses that run empty by themselves. */
const EMPTIES: readonly Purpose[] = ['turbo-oil-drain', 'breather', 'fuel-fill', 'fuel-vent'];

/** Whether a hose is still full once nothing flows. */
export function holdsFluid({ run: { service } }: ResolvedRun): boolean {
  return !EMPTIES.includes(service.purpose) && service.fluid !== 'air';
}

function filmWPerMK({ hose }: ResolvedRun, wPerM2K: number): number {
  return (wPerM2K * Math.PI * hose.insideDiameterMm) / 1000;
}

/** m of one sector round a diameter. */
function sectorM(diameterMm: number): number {
  return (Math.PI * diameterMm) / 1000 / SECTORS;
}
