import type { ClearanceField } from './problem.ts';

type Margins = Pick<ClearanceField, 'coarseMarginMm' | 'mostMarginMm' | 'marginMm'>;

/** A field with other bounds. */
export function withBounds(field: ClearanceField, bounds: ClearanceField['bounds']): ClearanceField {
  return new ChangedField(field, bounds, field);
}

/** A field with other margins, which change no more per mm than its own. */
export function withMargins(field: ClearanceField, margins: Margins): ClearanceField {
  return new ChangedField(field, field.bounds, margins);
}

class ChangedField implements ClearanceField {
  readonly bounds: ClearanceField['bounds'];
  readonly lipschitz: number;
  private readonly field: ClearanceField;
  private readonly margins: Margins;

  constructor(field: ClearanceField, bounds: ClearanceField['bounds'], margins: Margins) {
    this.bounds = bounds;
    this.lipschitz = field.lipschitz;
    this.field = field;
    this.margins = margins;
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
