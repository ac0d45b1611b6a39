/** m/s, the mean over the bore, of so many L/min in a round bore in mm. Exact. */
export function meanSpeedMPerS(flowLPerMin: number, boreMm: number): number {
  return flowLPerMin / 6e4 / ((Math.PI / 4) * (boreMm / 1000) ** 2);
}
