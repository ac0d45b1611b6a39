import { bad, good } from '../../../shared/base/result.ts';
import {
  endTrialJsonSchema,
  type JsonSchema,
  layReportJsonSchema,
  mendsJsonSchema,
  partTableJsonSchema,
  projectJsonSchema,
  waysRoundJsonSchema,
} from '../../../shared/document/schemas/jsonSchemas.ts';
import { defineCommand } from '../command.ts';
import { EXIT } from '../exitCodes.ts';

const SCHEMAS: Readonly<Record<string, () => JsonSchema>> = {
  project: projectJsonSchema,
  'lay-report': layReportJsonSchema,
  'end-trial': endTrialJsonSchema,
  'ways-round': waysRoundJsonSchema,
  mends: mendsJsonSchema,
  'part-tables': partTableJsonSchema,
};
const NAMES = Object.keys(SCHEMAS);

/** `hosewright schema`: a file format as JSON Schema. */
export const schemaCommand = defineCommand({
  name: 'schema',
  usage: [[`schema [${NAMES.join('|')}]`, 'print a file format as JSON Schema']],
  options: {},
  words: [0, 1],
  read: ([word = 'project']) => {
    const schema = SCHEMAS[word];
    if (schema !== undefined) return good(schema);
    return bad<() => JsonSchema>([
      { path: 'schema', message: `expected one of ${NAMES.join(', ')}`, got: JSON.stringify(word) },
    ]);
  },
  run: (schema, host) => {
    host.out(`${JSON.stringify(schema(), null, 2)}\n`);
    return EXIT.clean;
  },
});
