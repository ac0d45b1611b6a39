import { describe, expect, it } from 'vitest';
import { BALL_INCH } from '../../../shared/document/assembly/ballTest.ts';
import { galvanicPair } from '../../../shared/document/materials/galvanic.ts';
import type { EndMaterial } from '../../../shared/document/parts/schema.ts';
import { FLATS, TORQUE_TABLES } from '../../../shared/document/torque/torqueTables.ts';
import { SAE_J300 } from '../../../shared/solve/flow/fluidState.ts';
import { COVER_EMISSIVITY, HOT_SKIN_EMISSIVITY } from '../../../shared/solve/heat/materials.ts';
import { type Cell, FIXTURE } from './cells.ts';
import { flowing, METALS, torque } from './figureRows.ts';

describe('what is not one cell but a whole table', () => {
  it('oil of SAE 40 is taken, and what is not known of its grade lies in the band: 30 to 50', () => {
    const at100 = flowing('engine-oil', 100)?.viscosityMm2PerS ?? { low: 99, likely: 0, high: 0 };
    const [from, to] = SAE_J300[40];
    expect(at100.likely).toBeGreaterThan(from);
    expect(at100.likely).toBeLessThan(to);
    expect(at100.low).toBeLessThanOrEqual(SAE_J300[30][0]);
    expect(at100.high).toBeGreaterThanOrEqual(SAE_J300[50][1]);
  });

  it('emissivities that were read lie in the bands that are taken: turbine 0.92, cast iron 0.64 to 0.78, stainless 0.36 to 0.44', () => {
    for (const read of [0.92, 0.64, 0.78]) {
      expect(read).toBeGreaterThanOrEqual(HOT_SKIN_EMISSIVITY.low);
      expect(read).toBeLessThanOrEqual(HOT_SKIN_EMISSIVITY.high);
    }
    const braid = COVER_EMISSIVITY['steel-braid'];
    for (const read of [0.36, 0.44]) {
      expect(read).toBeGreaterThanOrEqual(braid.low);
      expect(read).toBeLessThanOrEqual(braid.high);
    }
  });

  it('torque and flats have no size that is not printed', () => {
    const printed = (id: string) => FIXTURE.tables.find((table) => table.id === id)?.cells ?? [];
    const sizes = (id: string, columns: (cell: Cell) => boolean = () => true) =>
      printed(id)
        .filter(columns)
        .map(({ what }) => what.slice(1))
        .toSorted();
    const of = (byDash: object | undefined) => Object.keys(byDash ?? {}).toSorted();
    expect(of(torque('army-hose-nut')?.byDash)).toEqual(sizes('1.4a'));
    expect(of(torque('navy-steel')?.byDash)).toEqual(sizes('1.4b', ({ column }) => column === 1));
    expect(of(torque('navy-aluminium')?.byDash)).toEqual(sizes('1.4b', ({ column }) => column === 4));
    expect(of(torque('steel-37')?.byDash)).toEqual(sizes('4.1'));
    expect(of(FLATS.byDash)).toEqual(sizes('4.2'));
    expect(of(BALL_INCH)).toEqual(sizes('1.5'));
    expect(TORQUE_TABLES).toHaveLength(4);
  });

  it('the potentials of the four metals stand as far apart as their table has them', () => {
    const cells = FIXTURE.tables.find(({ id }) => id === '8.3')?.cells ?? [];
    const mv = (metal: EndMaterial) => Number(cells.find(({ what }) => what === metal)?.printed);
    for (const one of METALS)
      for (const other of METALS) {
        const { apartMv, eaten } = galvanicPair(one, other);
        expect(apartMv).toBe(Math.abs(mv(one) - mv(other)));
        expect(mv(eaten)).toBe(Math.min(mv(one), mv(other)));
      }
  });
});
