import type { ClearanceField } from './problem.ts';

/** What of a field is another's. */
type Changes = Partial<Pick<ClearanceField, 'bounds' | 'coarseMarginMm' | 'marginMm'>>;

/** A field with other bounds or margins, which change no more per mm than its own. */
export function fieldWith(field: ClearanceField, changes: Changes): ClearanceField {
  return new ChangedField(field, changes);
}

class ChangedField implements ClearanceField {
  readonly bounds: ClearanceField['bounds'];
  readonly lipschitz: number;
  private readonly field: ClearanceField;
  private readonly coarse: ClearanceField['coarseMarginMm'] | undefined;
  private readonly exact: ClearanceField['marginMm'] | undefined;

  constructor(field: ClearanceField, changes: Changes) {
    this.bounds = changes.bounds ?? field.bounds;
    this.lipschitz = field.lipschitz;
    this.field = field;
    this.coarse = changes.coarseMarginMm;
    this.exact = changes.marginMm;
  }

  steepest(x: number, y: number, z: number, withinMm: number): number {
    return this.field.steepest(x, y, z, withinMm);
  }

  coarseMarginMm(x: number, y: number, z: number): number {
    return this.coarse === undefined ? this.field.coarseMarginMm(x, y, z) : this.coarse(x, y, z);
  }

  marginMm(x: number, y: number, z: number, upToMm: number): number {
    return this.exact === undefined ? this.field.marginMm(x, y, z, upToMm) : this.exact(x, y, z, upToMm);
  }
}
