import { readFileSync } from 'node:fs';

/** A figure as it is printed in the collected tables, and the document it was read in. */
export interface Cell {
  readonly row: number;
  readonly column: number;
  readonly what: string;
  readonly printed: string | number;
  readonly read: 'seen' | 'memory' | 'computed';
  readonly document?: string;
}

export interface FixtureTable {
  readonly id: string;
  readonly document?: string;
  readonly cells: readonly Cell[];
}

interface Fixture {
  readonly rowsOfTables: Readonly<Record<string, number>>;
  readonly tables: readonly FixtureTable[];
}

export const FIXTURE = JSON.parse(readFileSync('tests/fixtures/published/cells.json', 'utf8')) as Fixture;

/** What the product has for a cell: its numbers in the unit of print, and the source it names; none = it names it elsewhere. */
export interface Shipped {
  readonly numbers: readonly number[];
  readonly source?: string;
  /** one step of what is printed, where print rounds */
  readonly step?: number;
}

/** The numbers of a printed cell: `100-120`, `1 1/4 - 1 3/4`, `5/64`, `+7 / -3 mm`, `1e-7`, `-10 / -12`; `8+/-2` are two. */
export function numbersOf(printed: string | number): number[] {
  if (typeof printed === 'number') return [printed];
  const text = printed.replaceAll('+/-', ' ');
  return [
    ...text.matchAll(/(?<![\d.])(-?)(\d+ )?(\d+)\/(\d+)|(?<![\d.])(-?\d+(?:\.\d+)?(?:e-?\d+)?)|(\d+(?:\.\d+)?)/g),
  ].map(([, sign, whole, top, bottom, plain, after]) => {
    if (top === undefined) return Number(plain ?? after);
    const value = Number(whole ?? 0) + Number(top) / Number(bottom);
    return sign === '-' ? -value : value;
  });
}
