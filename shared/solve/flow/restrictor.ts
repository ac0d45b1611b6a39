/**
 * What a hole with sharp edges lets through for its pressure: from memory, 0.61 where it is thin, about 0.8 where it is as
 * long as wide; drilled restrictors lie between.
 */
export const DISCHARGE = { low: 0.6, high: 0.8 } as const;

/**
 * The pressure lost in a restrictor, kPa, from the least to the most by its coefficient of discharge: half the density by
 * the square of flow over coefficient and area. flowLPerMin at 0 or above, boreMm above 0. Turbulent, of a hole much narrower than the hose;
 * below a Reynolds number of some thousand the coefficient itself is less certain than the band says.
 */
export function restrictorLossKpa(
  flowLPerMin: number,
  boreMm: number,
  densityKgPerM3: number,
): { low: number; high: number } {
  const areaM2 = (Math.PI / 4) * (boreMm / 1000) ** 2;
  const speedMPerS = flowLPerMin / 6e4 / areaM2;
  const loss = (coefficient: number): number => (densityKgPerM3 * (speedMPerS / coefficient) ** 2) / 2000;
  return { low: loss(DISCHARGE.high), high: loss(DISCHARGE.low) };
}
