import { z } from 'zod';
import { EndTrial } from '../endTrial/schema.ts';
import { LayReport, REPORT_VERSION } from '../lay/schema.ts';
import { Mends } from '../mends/schema.ts';
import { ROW_SCHEMAS } from '../parts/columns.ts';
import { PROJECT_VERSION, Project } from '../project/schema.ts';
import { WaysRound } from '../waysRound/schema.ts';

/** A JSON Schema, draft 2020-12, as plain data. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/**
 * The published shape of the project file. What JSON Schema cannot say (a hot skin's temperature, a clamp's axis, names
 * that must exist) `parseProject` checks on top: it accepts nothing that this refuses.
 */
export function projectJsonSchema(): JsonSchema {
  return published(Project, 'project', PROJECT_VERSION, 'Hosewright project');
}

/** The published shape of the lay report. */
export function layReportJsonSchema(): JsonSchema {
  return published(LayReport, 'lay-report', REPORT_VERSION, 'Hosewright lay report');
}

/** The published shape of an end trial. */
export function endTrialJsonSchema(): JsonSchema {
  return published(EndTrial, 'end-trial', 1, 'Hosewright end trial');
}

/** The published shape of a run's ways round things. */
export function waysRoundJsonSchema(): JsonSchema {
  return published(WaysRound, 'ways-round', 1, 'Hosewright ways round');
}

/** The published shape of what would mend a run's findings. */
export function mendsJsonSchema(): JsonSchema {
  return published(Mends, 'mends', 1, 'Hosewright mends');
}

/** The published shape of the part tables once read: rows by kind. In the CSV files the same keys stand in snake case. */
export function partTableJsonSchema(): JsonSchema {
  const { hoses, ends, sleeves, adapters, clamps, rolls } = ROW_SCHEMAS;
  const tables = z.strictObject({
    hoses: z.array(hoses),
    ends: z.array(ends),
    sleeves: z.array(sleeves),
    adapters: z.array(adapters),
    clamps: z.array(clamps),
    rolls: z.array(rolls),
  });
  return published(tables, 'part-tables', 1, 'Hosewright part tables');
}

function published(schema: z.ZodType, name: string, version: number, title: string): JsonSchema {
  const body = z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' });
  const { $schema, ...rest } = body;
  return { $schema, $id: `urn:hosewright:schema:${name}:${version}`, title, ...rest };
}
