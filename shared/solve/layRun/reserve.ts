import type { RunField } from '../bay/runField.ts';
import { withMargins } from '../search/changedField.ts';

/** mm. Routes keep this much more than is asked, so that a clamp put on a route does not stand at the very limit. */
const ROUTE_RESERVE_MM = 0.5;

/** The field as routes are led through it. */
export function withReserve(field: RunField): RunField {
  return withMargins(field, new LessReserve(field));
}

class LessReserve implements Pick<RunField, 'coarseMarginMm' | 'mostMarginMm' | 'marginMm'> {
  private readonly field: RunField;

  constructor(field: RunField) {
    this.field = field;
  }

  coarseMarginMm(x: number, y: number, z: number): number {
    return this.field.coarseMarginMm(x, y, z) - ROUTE_RESERVE_MM;
  }

  mostMarginMm(x: number, y: number, z: number): number {
    return this.field.mostMarginMm(x, y, z) - ROUTE_RESERVE_MM;
  }

  marginMm(x: number, y: number, z: number, upToMm: number): number {
    return this.field.marginMm(x, y, z, upToMm + ROUTE_RESERVE_MM) - ROUTE_RESERVE_MM;
  }
}
