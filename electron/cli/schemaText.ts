import {
  endTrialJsonSchema,
  type JsonSchema,
  layReportJsonSchema,
  partTableJsonSchema,
  projectJsonSchema,
} from '../../shared/document/schemas/jsonSchemas.ts';
import type { SchemaName } from './parseCommand.ts';

const SCHEMAS: Readonly<Record<SchemaName, () => JsonSchema>> = {
  project: projectJsonSchema,
  'lay-report': layReportJsonSchema,
  'end-trial': endTrialJsonSchema,
  'part-tables': partTableJsonSchema,
};

/** A file format as JSON Schema text. */
export function schemaText(name: SchemaName): string {
  return `${JSON.stringify(SCHEMAS[name](), null, 2)}\n`;
}
