import type { Adapter } from '../../shared/document/parts/schema.ts';

/** An adapter of no maker: straight, settable, from an O-ring boss to a flare. */
export function exampleAdapter(more: Partial<Adapter> = {}): Adapter {
  return {
    id: 'example',
    name: 'Example adapter',
    form: 'straight',
    portSeat: 'o-ring-boss',
    portDash: 8,
    seat: 'flare-37',
    dash: 8,
    bendAngleDeg: 0,
    portToBendMm: 20,
    bendToSeatMm: 25,
    turning: 'settable',
    diameterMm: 24,
    material: 'steel',
    provenance: 'example',
    source: 'invented for tests',
    ...more,
  };
}
