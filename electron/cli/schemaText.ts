import { z } from 'zod';
import { LayReport } from '../../shared/document/lay/schema.ts';
import { End, Hose, Sleeve } from '../../shared/document/parts/schema.ts';
import { Project } from '../../shared/document/project/schema.ts';
import type { SchemaName } from './parseCommand.ts';

const SCHEMAS = {
  project: Project,
  'lay-report': LayReport,
  hoses: Hose,
  ends: End,
  sleeves: Sleeve,
} as const satisfies Record<SchemaName, z.ZodType>;

/** A file format as JSON Schema: of the whole file, or of one row of a table of parts. */
export function schemaText(name: SchemaName): string {
  return `${JSON.stringify(z.toJSONSchema(SCHEMAS[name], { io: 'input' }), null, 2)}\n`;
}
