import type { z } from 'zod';
import { Adapter, Clamp, EndRow, Hose, Roll, Sleeve } from './schema.ts';

/** The kinds of part table, and the row that each holds. */
export const PART_KINDS = ['hoses', 'ends', 'sleeves', 'adapters', 'clamps', 'rolls'] as const;
export type PartKind = (typeof PART_KINDS)[number];
/** A row as its file has it. */
export interface StoredRow {
  readonly hoses: Hose;
  readonly ends: EndRow;
  readonly sleeves: Sleeve;
  readonly adapters: Adapter;
  readonly clamps: Clamp;
  readonly rolls: Roll;
}
export const ROW_SCHEMAS = {
  hoses: Hose,
  ends: EndRow,
  sleeves: Sleeve,
  adapters: Adapter,
  clamps: Clamp,
  rolls: Roll,
} as const;

/** One column of a part table: its key in the program, its heading in the file, how its cells read. */
export interface Column {
  readonly key: string;
  readonly heading: string;
  readonly cell: 'number' | 'yes-no' | 'text' | 'words' | 'pairs';
  readonly optional: boolean;
  /** The words a cell may hold, where only some are known. */
  readonly choices?: readonly string[];
  /** What the column means, from the schema; for guides and headings on paper. */
  readonly meaning?: string;
}

/** The columns of a kind of table, in the schema's order. */
export function columnsOf(kind: PartKind): Column[] {
  return columnsOfSchema(ROW_SCHEMAS[kind]);
}

/** The columns of a table whose rows are of a schema, in its order. */
export function columnsOfSchema(row: z.ZodObject): Column[] {
  return Object.entries(row.def.shape as Record<string, z.ZodType>).map(([key, schema]) => {
    const optional = schema instanceof Object && (schema.def as { type: string }).type === 'optional';
    const meaning = schema.description;
    const choices = choicesOf(schema);
    return {
      key,
      heading: headingOf(key),
      cell: cellOf(schema),
      optional,
      ...(choices === undefined ? {} : { choices }),
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
  if (def.type === 'array') return cellOf((schema as z.ZodArray<z.ZodType>).element) === 'text' ? 'words' : 'pairs';
  if (def.type === 'tuple') return 'pairs';
  return def.type === 'boolean' ? 'yes-no' : 'text';
}

function choicesOf(schema: z.ZodType): readonly string[] | undefined {
  const def = schema.def as { type: string; innerType?: z.ZodType; entries?: Record<string, string> };
  if (def.innerType !== undefined) return choicesOf(def.innerType);
  if (def.type === 'array') return choicesOf((schema as z.ZodArray<z.ZodType>).element);
  return def.type === 'enum' ? Object.values(def.entries ?? {}) : undefined;
}
