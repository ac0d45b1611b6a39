import type { Hose } from './schema.ts';

/**
 * mm. The hose's least bend radius brought to its centreline. A radius quoted to the inside of the bend (rubber, PTFE)
 * grows by half the hose's own outside diameter, a sleeve not counted since the figure is the bare hose's; one quoted
 * to the centreline (metal) stays. Datum by construction: Rubber Fab "Bend radius"; SAE J343 (2016-05), whose free
 * length pi (r + d/2) + 2 d shows r to be inside. Exact.
 */
export function centrelineMinRadiusMm(
  hose: Pick<Hose, 'minBendRadiusMm' | 'minBendRadiusDatum' | 'outsideDiameterMm'>,
): number {
  return hose.minBendRadiusDatum === 'inside'
    ? hose.minBendRadiusMm + hose.outsideDiameterMm / 2
    : hose.minBendRadiusMm;
}
