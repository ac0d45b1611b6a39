import type { Hose, Sleeve } from '../../document/parts/schema.ts';
import { airState } from './airFilm.ts';
import { KELVIN, STEFAN_BOLTZMANN } from './exitance.ts';
import {
  CORE_CONDUCTIVITY,
  CORE_SHARE,
  COVER_CONDUCTIVITY,
  COVER_EMISSIVITY,
  COVER_ROUND_CONDUCTIVITY,
  SLEEVE_CONDUCTIVITY,
  SLEEVE_EMISSIVITY,
} from './materials.ts';

/** m K / W. What a round shell a metre long lets through: ln(outer / inner) / (2 pi k), exact (Fourier). Diameters in one unit. */
export function shellResistance(inner: number, outer: number, conductivityWPerMK: number): number {
  return Math.log(outer / inner) / (2 * Math.PI * conductivityWPerMK);
}

/** A hose's wall, with its sleeve, a metre long. */
export interface HoseLayers {
  /** W/(m K), from the liner's surface to the outside of hose or sleeve, all round */
  readonly wallWPerMK: number;
  /** share of that wall's resistance that lies outside the hose's own cover: 0 without a sleeve */
  readonly overCover: number;
  /** W m/(m K): conductivity times thickness, round the hose, of the outer layer and of the rest */
  readonly aroundOuterWPerK: number;
  readonly aroundInnerWPerK: number;
}

/** deg C. About what the gap under a sleeve is at: what crosses it is reckoned there. */
const GAP_C = 120;

/**
 * The layers between fluid and bay: core, cover, and with a sleeve the air gap (still air and radiation across it) and the
 * sleeve's wall. factor: what the conductance of hose and sleeve is taken times.
 */
export function hoseLayers(hose: Hose, sleeve: Sleeve | undefined, factor = 1): HoseLayers {
  const { insideDiameterMm, outsideDiameterMm, core, cover } = hose;
  const coreMm = insideDiameterMm + (outsideDiameterMm - insideDiameterMm) * CORE_SHARE;
  const coreM = (coreMm - insideDiameterMm) / 2000;
  const coverM = (outsideDiameterMm - coreMm) / 2000;
  const hoseR =
    (shellResistance(insideDiameterMm, coreMm, CORE_CONDUCTIVITY[core]) +
      shellResistance(coreMm, outsideDiameterMm, COVER_CONDUCTIVITY[cover])) /
    factor;
  const roundCore = CORE_CONDUCTIVITY[core] * coreM;
  const roundCover = COVER_ROUND_CONDUCTIVITY[cover] * coverM;
  if (sleeve === undefined)
    return { wallWPerMK: 1 / hoseR, overCover: 0, aroundOuterWPerK: roundCover, aroundInnerWPerK: roundCore };
  const wallMm = (sleeve.outsideDiameterMm - sleeve.insideDiameterMm) / 2;
  const innerMm = Math.max(sleeve.insideDiameterMm, outsideDiameterMm);
  const sleeveR = shellResistance(innerMm, innerMm + 2 * wallMm, SLEEVE_CONDUCTIVITY) / factor;
  const overR = sleeveR + gapResistance(hose, innerMm);
  return {
    wallWPerMK: 1 / (hoseR + overR),
    overCover: overR / (hoseR + overR),
    aroundOuterWPerK: (SLEEVE_CONDUCTIVITY * wallMm) / 1000,
    aroundInnerWPerK: roundCore + roundCover,
  };
}

/** m K / W of the air between hose and sleeve, evenly round it; none where the sleeve sits tight. */
function gapResistance(hose: Hose, sleeveInsideMm: number): number {
  const gapMm = (sleeveInsideMm - hose.outsideDiameterMm) / 2;
  if (gapMm <= 0) return 0;
  const still = 1 / shellResistance(hose.outsideDiameterMm, sleeveInsideMm, airState(GAP_C).conductivityWPerMK);
  const grey = 1 / (1 / COVER_EMISSIVITY[hose.cover].likely + 1 / SLEEVE_EMISSIVITY.likely - 1);
  const shone = 4 * grey * STEFAN_BOLTZMANN * (GAP_C + KELVIN) ** 3 * Math.PI * (hose.outsideDiameterMm / 1000);
  return 1 / (still + shone);
}
