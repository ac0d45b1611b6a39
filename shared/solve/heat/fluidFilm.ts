import type { ResolvedRun } from '../../document/project/resolve.ts';
import { darcyFactor, LAMINAR_TO, TURBULENT_FROM } from '../flow/darcyFactor.ts';
import { fluidState } from '../flow/fluidState.ts';
import { FLUID_HEAT, type Known } from './materials.ts';

/** Nusselt's number of laminar flow that has come to rest in its shape, wall of one temperature: 3.657 (Graetz). */
export const LAMINAR_NUSSELT = 3.657;

/**
 * Nusselt's number in a smooth pipe that is long: laminar below 2300, Gnielinski (Int. Chem. Eng. 16 (1976) 359) above
 * 4000, between them in proportion. prandtl: 0.5 to 2000. Within about 15 %.
 */
export function pipeNusselt(reynolds: number, prandtl: number): number {
  if (reynolds <= LAMINAR_TO) return LAMINAR_NUSSELT;
  if (reynolds >= TURBULENT_FROM) return gnielinski(reynolds, prandtl);
  const share = (reynolds - LAMINAR_TO) / (TURBULENT_FROM - LAMINAR_TO);
  return LAMINAR_NUSSELT + share * (gnielinski(TURBULENT_FROM, prandtl) - LAMINAR_NUSSELT);
}

function gnielinski(reynolds: number, prandtl: number): number {
  const f = darcyFactor(reynolds, 0) / 8;
  return (f * (reynolds - 1000) * prandtl) / (1 + 12.7 * Math.sqrt(f) * (prandtl ** (2 / 3) - 1));
}

/** Factors between which the film of a known flow is held, and of one that is not stated. */
const STATED = { low: 0.7, high: 1.5 } as const;
const NOT_STATED = { low: 0.5, high: 4 } as const;

/** From fluid to liner: W/(m2 K) as well as it is known, with what was taken for it. */
export interface FluidFilm {
  readonly wPerM2K: Known;
  readonly basis?: string;
}

/** The film inside a run's hose, running. Where no flow is stated the fluid is taken to creep: laminar. Convolutions are not counted: they only cool. */
export function runningFilm({ run, hose }: ResolvedRun): FluidFilm {
  const { service } = run;
  const { conductivityWPerMK, heatJPerKgK } = FLUID_HEAT[service.fluid];
  const boreM = hose.insideDiameterMm / 1000;
  const fluid = fluidState(service);
  const known = service.flowLPerMin !== undefined && service.flowLPerMin > 0 && fluid !== undefined;
  if (!known) {
    const basis = 'flow not stated: the fluid is taken to creep through the hose';
    return { wPerM2K: banded((LAMINAR_NUSSELT * conductivityWPerMK) / boreM, NOT_STATED), basis };
  }
  const m2PerS = fluid.viscosityMm2PerS.likely * 1e-6;
  const speed = (service.flowLPerMin ?? 0) / 6e4 / ((Math.PI / 4) * boreM ** 2);
  const prandtl = (m2PerS * fluid.densityKgPerM3 * heatJPerKgK) / conductivityWPerMK;
  const nusselt = pipeNusselt((speed * boreM) / m2PerS, prandtl);
  return { wPerM2K: banded((nusselt * conductivityWPerMK) / boreM, STATED) };
}

/** The film when nothing flows: as a creeping fluid's. */
export function standingFilm({ run, hose }: ResolvedRun): Known {
  const { conductivityWPerMK } = FLUID_HEAT[run.service.fluid];
  return banded((LAMINAR_NUSSELT * conductivityWPerMK * 1000) / hose.insideDiameterMm, STATED);
}

function banded(likely: number, { low, high }: { readonly low: number; readonly high: number }): Known {
  return { low: likely * low, likely, high: likely * high };
}
