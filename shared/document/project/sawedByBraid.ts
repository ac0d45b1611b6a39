import type { ResolvedRun } from './resolve.ts';
import type { Skin, SkinMaterial } from './schema.ts';

const SOFTER: readonly SkinMaterial[] = ['aluminium', 'composite', 'plastic', 'rubber'];

/** Whether bare steel braid cuts into the parts of a skin: composite, wiring, and what is stated to be softer than it. */
export function isSawedByBraid({ kind, material }: Skin): boolean {
  return kind === 'composite' || kind === 'wiring' || (material !== undefined && SOFTER.includes(material));
}

/** Whether the outside of a run is bare steel braid. */
export function isBareBraid({ hose, run }: Pick<ResolvedRun, 'hose' | 'run'>): boolean {
  return hose.cover === 'steel-braid' && run.sleeve === undefined;
}
