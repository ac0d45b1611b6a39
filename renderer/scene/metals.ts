import type { End } from '../../shared/document/parts/schema.ts';

/** Bare metals: no dyed anodising, which would say something about a maker that we do not know. */
export const METALS: Record<End['material'], { color: string; roughness: number }> = {
  aluminium: { color: '#d5d4cc', roughness: 0.5 },
  steel: { color: '#8f8e89', roughness: 0.55 },
  stainless: { color: '#b9b7ad', roughness: 0.35 },
  brass: { color: '#c2a050', roughness: 0.4 },
};
