import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inchPoundsToNewtonMetres } from '../../../../shared/base/units.ts';
import { nutTorque } from '../../../../shared/document/torque/nutTorque.ts';
import { FLATS, TORQUE_TABLES } from '../../../../shared/document/torque/torqueTables.ts';

const nut = (dash: number, material: 'aluminium' | 'steel' | 'stainless' | 'brass' = 'steel') =>
  ({ seat: 'flare-37', dash, material }) as const;

describe('the torque of a nut', () => {
  it('is told by every table that fits, each with its name: -8 steel', () => {
    const { torques, flats } = nutTorque(nut(8));
    expect(torques.map(({ table, leastNm, mostNm }) => [table.id, leastNm.toFixed(1), mostNm.toFixed(1)])).toEqual([
      // US Army TM 55-1520-240-23-1: 340-420 in-lb; NAVEDTRA 14018: 430-470 in-lb; machinery manual: 57-63 N.m
      ['army-hose-nut', '38.4', '47.5'],
      ['navy-steel', '48.6', '53.1'],
      ['steel-37', '57.0', '63.0'],
    ]);
    // US Army TM 9-2320-364-20-4 Table 2-67: 1 1/4 to 1 3/4 flats
    expect(flats).toMatchObject({ least: 1.25, most: 1.75 });
  });

  it('goes by the softer metal, and says that no rule was found for two', () => {
    const mixed = nutTorque(nut(6, 'steel'), 'aluminium');
    expect(mixed.torques.map(({ table }) => table.id)).toEqual(['army-hose-nut', 'navy-aluminium']);
    expect(mixed.note).toContain('no rule was found');
    expect(nutTorque(nut(6, 'stainless'), 'steel').note).toBeUndefined();
  });

  it('of brass and of other seats is not made up', () => {
    expect(nutTorque(nut(8, 'brass')).note).toContain('halves');
    expect(nutTorque({ seat: 'banjo-m10', dash: 4, material: 'steel' })).toEqual({
      torques: [],
      note: expect.stringContaining('banjo-m10'),
    });
  });

  it("is the end's own figure first, where its table has one; the tables stay beside it", () => {
    const own = { ...nut(8), torqueNm: 45, source: "the maker's sheet 12" };
    expect(nutTorque(own).own).toEqual({ torqueNm: 45, source: "the maker's sheet 12" });
    expect(nutTorque(own).torques).toEqual(nutTorque(nut(8)).torques);
    expect(nutTorque({ ...own, seat: 'orb-8' }).own?.torqueNm).toBe(45);
    expect(nutTorque(nut(8)).own).toBeUndefined();
  });

  it('of a barb is that of the worm-drive clamp, by its band: US Army TM 5-3895-382-24 Table 11', () => {
    const { torques, note } = nutTorque({ ...nut(12), form: 'barb' });
    // 13.5 mm band, new hose: 40 +/- 4 in-lb, printed 4.5 +/- 0.5 N.m
    expect(torques.map(({ leastNm, mostNm }) => [leastNm.toFixed(2), mostNm.toFixed(2)])[1]).toEqual(['4.07', '4.97']);
    expect(note).toContain('worm-drive');
  });

  it('of a nut whose hose is clamped is both: the nut by its tables, then the clamp by its band', () => {
    const bare = nutTorque(nut(12));
    const clamped = nutTorque({ ...nut(12), joint: 'clamped' });
    const clamps = nutTorque({ ...nut(12), form: 'barb' });
    expect(clamped.torques).toEqual([...bare.torques, ...clamps.torques]);
    expect(clamped.note).toContain('worm-drive');
    expect(clamped.flats).toEqual(bare.flats);
  });

  it('converts an inch-pound exactly: 100 in-lb = 11.2985 N.m', () => {
    expect(inchPoundsToNewtonMetres(100)).toBeCloseTo(0.45359237 * 9.80665 * 0.0254 * 100, 8);
  });

  it('grows with size in every table, least never over most', () => {
    for (const { byDash } of TORQUE_TABLES) {
      const rows = Object.entries(byDash).sort(([p], [q]) => Number(p) - Number(q));
      for (const [i, [, [least, most]]] of rows.entries()) {
        expect(least).toBeLessThanOrEqual(most);
        expect(least).toBeGreaterThanOrEqual(rows[i - 1]?.[1][0] ?? 0);
      }
    }
  });
});

const REFERENCE = '../shared/reference/published-values.json';
const there = existsSync(REFERENCE);

interface PublishedTable {
  readonly id: string;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly tag: string; readonly cells: readonly (string | number)[] }[];
}

describe.skipIf(!there)(`cell by cell${there ? '' : ' (skipped: published values not beside the checkout)'}`, () => {
  const tables = there ? (JSON.parse(readFileSync(REFERENCE, 'utf8')) as { tables: PublishedTable[] }).tables : [];
  /** Every row of a published table as its dash size and the numbers of the columns whose titles begin so. */
  const rows = (id: string, ...titles: string[]): [number, number[]][] => {
    const table = tables.find((one) => one.id === id);
    const at = titles.map((title) => table?.columns.findIndex((column) => column.startsWith(title)) ?? -1);
    expect(
      at.every((i) => i > 0),
      id,
    ).toBe(true);
    return (table?.rows ?? []).map(({ cells }) => [-Number(cells[0]), at.flatMap((i) => numbersOf(String(cells[i])))]);
  };
  const shipped = (id: string) => TORQUE_TABLES.find((table) => table.id === id)?.byDash ?? {};

  it.each([
    ['army-hose-nut', '1.4a', ['E: flared fitting HOSE coupling nut in-lb']],
    ['navy-steel', '1.4b', ['STEEL min', 'STEEL max']],
    ['navy-aluminium', '1.4b', ['ALUMINIUM min', 'ALUMINIUM max']],
    ['steel-37', '4.1', ['torque N.m']],
  ] as const)('%s has every row of table %s that has a torque', (id, table, titles) => {
    const published = rows(table, ...titles).filter(([, numbers]) => numbers.length === 2);
    expect(published.length).toBeGreaterThan(5);
    expect(Object.fromEntries(published)).toEqual(shipped(id));
  });

  it('the flats have every row of table 4.2', () => {
    const published = rows('4.2', '37 deg flared hose fitting').map(([dash, numbers]) => [
      dash,
      numbers.length === 1 ? [numbers[0], numbers[0]] : numbers,
    ]);
    expect(Object.fromEntries(published)).toEqual(FLATS.byDash);
  });
});

/** The numbers of a cell such as `100-120`, `1 1/4 - 1 3/4`, `3/4`, `75`; none of `-`. */
function numbersOf(cell: string): number[] {
  return [...cell.matchAll(/(\d+ )?(\d+)\/(\d+)|(\d+(?:\.\d+)?)/g)].map(([, whole, top, bottom, plain]) =>
    plain === undefined ? Number(whole ?? 0) + Number(top) / Number(bottom) : Number(plain),
  );
}
