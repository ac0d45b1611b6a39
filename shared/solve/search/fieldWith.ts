import type { ClearanceField } from './problem.ts';

/** What of a field is another's. */
type Changes = Pick<ClearanceField, 'bounds'> | Pick<ClearanceField, 'coarseMarginMm' | 'mostMarginMm' | 'marginMm'>;

/** A field with other bounds or margins, which change no more per mm than its own. */
export function fieldWith(field: ClearanceField, changes: Changes): ClearanceField {
  return new ChangedField(field, changes);
}

class ChangedField implements ClearanceField {
  readonly bounds: ClearanceField['bounds'];
  readonly lipschitz: number;
  private readonly field: ClearanceField;
  private readonly margins: Pick<ClearanceField, 'coarseMarginMm' | 'mostMarginMm' | 'marginMm'>;

  constructor(field: ClearanceField, changes: Changes) {
    this.bounds = 'bounds' in changes ? changes.bounds : field.bounds;
    this.lipschitz = field.lipschitz;
    this.field = field;
    this.margins = 'bounds' in changes ? field : changes;
  }

  steepest(x: number, y: number, z: number, withinMm: number): number {
    return this.field.steepest(x, y, z, withinMm);
  }

  coarseMarginMm(x: number, y: number, z: number): number {
    return this.margins.coarseMarginMm(x, y, z);
  }

  mostMarginMm(x: number, y: number, z: number): number {
    return this.margins.mostMarginMm(x, y, z);
  }

  marginMm(x: number, y: number, z: number, upToMm: number): number {
    return this.margins.marginMm(x, y, z, upToMm);
  }
}
