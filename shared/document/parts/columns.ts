import type { z } from 'zod';
import { End, Hose, Sleeve } from './schema.ts';

/** The kinds of part table, and the row that each holds. */
export const PART_KINDS = ['hoses', 'ends', 'sleeves'] as const;
export type PartKind = (typeof PART_KINDS)[number];
export interface RowOf {
  readonly hoses: Hose;
  readonly ends: End;
  readonly sleeves: Sleeve;
}
export const ROW_SCHEMAS = { hoses: Hose, ends: End, sleeves: Sleeve } as const;

/** One column of a part table: its key in the program, its heading in the file, how its cells read. */
export interface Column {
  readonly key: string;
  readonly heading: string;
  readonly cell: 'number' | 'yes-no' | 'text';
  readonly optional: boolean;
  /** What the column means, from the schema; for guides and headings on paper. */
  readonly meaning?: string;
}

/** The columns of a kind of table, in the schema's order. */
export function columnsOf(kind: PartKind): Column[] {
  return Object.entries(ROW_SCHEMAS[kind].def.shape as Record<string, z.ZodType>).map(([key, schema]) => {
    const optional = schema instanceof Object && (schema.def as { type: string }).type === 'optional';
    const meaning = schema.description;
    return {
      key,
      heading: headingOf(key),
      cell: cellOf(schema),
      optional,
      ...(meaning === undefined ? {} : { meaning }),
    };
  });
}

/** The heading of a key: the same words in snake case, such as outside_diameter_mm for outsideDiameterMm. */
export function headingOf(key: string): string {
  return key.replace(/([a-z])([A-Z])/g, '$1_$2').toLowerCase();
}

function cellOf(schema: z.ZodType): Column['cell'] {
  const def = schema.def as { type: string; innerType?: z.ZodType };
  if (def.innerType !== undefined) return cellOf(def.innerType);
  if (def.type === 'number') return 'number';
  return def.type === 'boolean' ? 'yes-no' : 'text';
}
