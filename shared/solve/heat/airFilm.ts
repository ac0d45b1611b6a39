import { GRAVITY_M_PER_S2 } from '../../base/units.ts';
import { KELVIN } from './exitance.ts';

/** Air at one atmosphere: W/(m K), m2/s, and Prandtl's number. */
export interface AirState {
  readonly conductivityWPerMK: number;
  readonly viscosityM2PerS: number;
  readonly prandtl: number;
}

const PRESSURE_PA = 101325;
const GAS_J_PER_KG_K = 287.05;
const HEAT_J_PER_KG_K = 1007;

/** Dry air at one atmosphere, -50 to 800 deg C: viscosity and conductivity after the US Standard Atmosphere 1976 (Sutherland's form), within 2 %. */
export function airState(temperatureC: number): AirState {
  const t = temperatureC + KELVIN;
  const viscosityPaS = (1.458e-6 * t ** 1.5) / (t + 110.4);
  const conductivityWPerMK = (2.64638e-3 * t ** 1.5) / (t + 245.4 * 10 ** (-12 / t));
  return {
    conductivityWPerMK,
    viscosityM2PerS: (viscosityPaS * GAS_J_PER_KG_K * t) / PRESSURE_PA,
    prandtl: (HEAT_J_PER_KG_K * viscosityPaS) / conductivityWPerMK,
  };
}

/**
 * Nusselt's number of a cylinder in air that blows across it: Churchill and Bernstein, J. Heat Transfer 99 (1977) 300.
 * reynolds: on the diameter, Re Pr above 0.2. Within about 20 %.
 */
export function crossFlowNusselt(reynolds: number, prandtl: number): number {
  const rest = (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25;
  return 0.3 + ((0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / rest) * (1 + (reynolds / 282000) ** 0.625) ** 0.8;
}

/**
 * Nusselt's number of a level cylinder in still air: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049.
 * rayleigh: on the diameter, up to 1e12. Within about 20 %; a steep hose is taken as a level one.
 */
export function stillAirNusselt(rayleigh: number, prandtl: number): number {
  const rest = (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27);
  return (0.6 + (0.387 * rayleigh ** (1 / 6)) / rest) ** 2;
}

/** What the air round a hose does. */
export interface BayAir {
  readonly temperatureC: number;
  /** across the hose; 0 = still */
  readonly speedMPerS: number;
}

/**
 * W/(m2 K) from a hose's surface to the air, at the film's mean temperature, on average round the hose. Blown and still air
 * are joined as the cube root of the sum of cubes (usual for crossed flows, from memory).
 */
export function airFilmWPerM2K(diameterMm: number, surfaceC: number, { temperatureC, speedMPerS }: BayAir): number {
  const filmC = (surfaceC + temperatureC) / 2;
  const { conductivityWPerMK, viscosityM2PerS, prandtl } = airState(filmC);
  const diameterM = diameterMm / 1000;
  const rayleigh =
    ((GRAVITY_M_PER_S2 * Math.abs(surfaceC - temperatureC) * diameterM ** 3) /
      ((filmC + KELVIN) * viscosityM2PerS ** 2)) *
    prandtl;
  const still = stillAirNusselt(rayleigh, prandtl);
  const blown = speedMPerS > 0 ? crossFlowNusselt((speedMPerS * diameterM) / viscosityM2PerS, prandtl) : 0;
  return (Math.cbrt(still ** 3 + blown ** 3) * conductivityWPerMK) / diameterM;
}
