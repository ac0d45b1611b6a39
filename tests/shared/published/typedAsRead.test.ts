import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FIXTURE, type FixtureTable } from './cells.ts';
import { HANDBOOK_GRADES } from './handbookGrades.ts';

const REFERENCE = '../shared/reference/published-values.json';

const there = existsSync(REFERENCE);

interface ReferenceTable {
  readonly id: string;
  readonly source: string;
  readonly rows: readonly { readonly tag: string; readonly cells: readonly (string | number | null)[] }[];
}

describe.skipIf(!there)(
  `the figures typed here${there ? '' : ' (skipped: published values not beside the checkout)'}`,
  () => {
    const tables = there ? (JSON.parse(readFileSync(REFERENCE, 'utf8')) as { tables: ReferenceTable[] }).tables : [];

    it('no table and no row was added or taken away without being looked at', () => {
      expect(Object.fromEntries(tables.map(({ id, rows }) => [id, rows.length]))).toEqual(FIXTURE.rowsOfTables);
    });

    it('grades of cores in fluids, table 9.1, stand so', () => {
      const rows = tables.find(({ id }) => id === '9.1')?.rows ?? [];
      const names = {
        petrol: 'petrol',
        methanol: 'methanol',
        diesel: 'diesel',
        'engine-oil': 'engine oil',
        coolant: 'glycol',
      };
      for (const [fluid, grades] of Object.entries(HANDBOOK_GRADES)) {
        const row = rows.find(({ cells }) => String(cells[0]).startsWith(names[fluid as keyof typeof names]));
        expect(row?.tag).toBe('MEMORY');
        expect([1, 3, 4, 5, 6].map((i) => row?.cells[i])).toEqual([...grades]);
      }
    });

    it.each(FIXTURE.tables.map(({ id }) => [id]))('stand so in table %s, read so, in that document', (id) => {
      const { cells, document } = FIXTURE.tables.find((table) => table.id === id) as FixtureTable;
      const table = tables.find((one) => one.id === id) as ReferenceTable;
      for (const { row, column, printed, read, document: own } of cells) {
        const found = table.rows[row];
        expect(found?.cells[column], `${id} row ${row}`).toBe(printed);
        expect(found?.tag.toLowerCase()).toBe(read);
        if (document !== undefined) expect(table.source).toContain(document);
        if (own !== undefined) expect(sourceOf(table, row)).toContain(own);
      }
    });
  },
);

/** A row's source; "same" is that of the nearest row above that names one. */
function sourceOf(table: ReferenceTable, row: number): string {
  const text = String(table.rows[row]?.cells.at(-1));
  return text.startsWith('same') && row > 0 ? `${text} ${sourceOf(table, row - 1)}` : text;
}
