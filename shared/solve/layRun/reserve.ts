import type { RunField } from '../bay/runField.ts';
import { fieldWith } from '../search/fieldWith.ts';

/** mm. Routes keep this much more than is asked, so that a clamp put on a route does not stand at the very limit. */
const ROUTE_RESERVE_MM = 0.5;

/** The field as routes are led through it. */
export function withReserve(field: RunField): RunField {
  return fieldWith(field, {
    coarseMarginMm: (x, y, z) => field.coarseMarginMm(x, y, z) - ROUTE_RESERVE_MM,
    marginMm: (x, y, z, upToMm) => field.marginMm(x, y, z, upToMm + ROUTE_RESERVE_MM) - ROUTE_RESERVE_MM,
  });
}
