import type { Hose, Sleeve } from './schema.ts';

/**
 * mm. Outside diameter of what lies in the bay: the sleeve's where there is one, else the hose's. A sleeve smaller than
 * the hose it is drawn over stretches to it, keeping its wall: then hose + twice the sleeve's wall.
 */
export function outsideDiameterMm(hose: Hose, sleeve?: Sleeve): number {
  if (sleeve === undefined) return hose.outsideDiameterMm;
  const wallMm = (sleeve.outsideDiameterMm - sleeve.insideDiameterMm) / 2;
  return Math.max(sleeve.outsideDiameterMm, hose.outsideDiameterMm + 2 * wallMm);
}
