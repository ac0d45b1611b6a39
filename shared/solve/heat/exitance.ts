/** W/(m2 K4). Stefan and Boltzmann's constant, exact in the SI of 2019 (CODATA 2018). */
export const STEFAN_BOLTZMANN = 5.670374419e-8;

/** K at 0 deg C. */
export const KELVIN = 273.15;

/** W/m2 that a black surface radiates: sigma T^4. temperatureC: deg C, above -273.15. */
export function blackExitanceWPerM2(temperatureC: number): number {
  return STEFAN_BOLTZMANN * (temperatureC + KELVIN) ** 4;
}
