import { ClampToEdgeWrapping, DataTexture, LinearFilter, SRGBColorSpace } from 'three';
import type { Heat } from '../../../shared/document/lay/heat.ts';
import { type HeatView, heatColour } from '../../state/heatScale.ts';

/** Places along a hose that the texture tells apart. */
const PLACES = 256;

/** The temperature of a hose's outside from shoulder to shoulder, as a strip of colours along v. Collars have that of their mouth. */
export function heatTexture(heat: Heat, view: HeatView, lengthMm: number): DataTexture {
  const outside = heat[view].sleeve ?? heat[view].cover;
  const data = new Uint8Array(4 * PLACES);
  for (let i = 0; i < PLACES; i++)
    data.set([...heatColour(valueAt(heat.arcLengthMm, outside.likely, (lengthMm * i) / (PLACES - 1))), 255], 4 * i);
  const texture = new DataTexture(data, 1, PLACES);
  texture.colorSpace = SRGBColorSpace;
  texture.wrapT = ClampToEdgeWrapping;
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearFilter;
  texture.needsUpdate = true;
  return texture;
}

/** Between the known places in a straight line; beyond them the last value. */
export function valueAt(places: readonly number[], values: readonly number[], at: number): number {
  const after = places.findIndex((place) => place >= at);
  if (after < 0) return values[values.length - 1] ?? 0;
  if (after === 0) return values[0] ?? 0;
  const [from, to] = [places[after - 1] as number, places[after] as number];
  const [low, high] = [values[after - 1] as number, values[after] as number];
  return to > from ? low + ((high - low) * (at - from)) / (to - from) : high;
}
