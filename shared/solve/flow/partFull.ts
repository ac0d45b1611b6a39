/** A round pipe filled to a share of its bore, against the same pipe full: exact geometry. */
export interface PartFull {
  /** of the full section */
  readonly areaShare: number;
  /** hydraulic radius over that of the full pipe */
  readonly hydraulicShare: number;
}

/** filled: depth over bore, above 0 to 1. */
export function partFull(filled: number): PartFull {
  const half = Math.acos(1 - 2 * Math.min(1, filled));
  const area = half - Math.sin(half) * Math.cos(half);
  return { areaShare: area / Math.PI, hydraulicShare: area / half };
}

/**
 * Flow over that of the full pipe at the same fall, by Manning's formula with one roughness: area times hydraulic radius
 * to two thirds. For turbulent flow; half full it is one half for laminar flow too, by symmetry.
 */
export function manningShare(filled: number): number {
  const { areaShare, hydraulicShare } = partFull(filled);
  return areaShare * hydraulicShare ** (2 / 3);
}
