import type { EndMaterial } from '../parts/schema.ts';

/** mV against Ag/AgCl in sea water at 25 C, +/- 40. */
const POTENTIAL_MV: Record<EndMaterial, number> = {
  // marine alloys 5086, 5083, 6061
  aluminium: -820,
  // mild steel A36
  steel: -790,
  // 302 to 347 active, as where the sea water is starved of air: in a joint
  stainless: -550,
  // naval and yellow brass, manganese bronze
  brass: -450,
};

export const GALVANIC_SOURCE =
  'galvanic series in sea water (docslib.org/doc/8174925): metals more than 200 mV apart corrode, the more negative one; +/- 40 mV';

/** How far two metals of a joint stand apart in sea water, mV, and which of them is eaten. */
export function galvanicPair(
  p: EndMaterial,
  q: EndMaterial,
): { readonly apartMv: number; readonly eaten: EndMaterial } {
  const [a, b] = [POTENTIAL_MV[p], POTENTIAL_MV[q]];
  return { apartMv: Math.abs(a - b), eaten: a < b ? p : q };
}
