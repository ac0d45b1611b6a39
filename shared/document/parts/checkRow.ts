import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { zodProblems } from '../problems/zodProblems.ts';
import { type PartKind, ROW_SCHEMAS, type StoredRow } from './columns.ts';
import { partSense } from './partSense.ts';

/**
 * One row of a part table from its values by key: the row, or everything wrong with it, first cell by cell and then, when
 * each is right by itself, what the cells say of each other. Paths of problems are keys of the row, such as `dropMm`.
 */
export function checkRow<K extends PartKind>(kind: K, raw: Readonly<Record<string, unknown>>): Result<StoredRow[K]> {
  const schema = ROW_SCHEMAS[kind];
  const parsed = schema.safeParse(raw);
  const problems: Problem[] = parsed.success
    ? partSense(kind, parsed.data)
    : zodProblems(parsed.error.issues, schema, raw);
  return parsed.success && problems.length === 0 ? good(parsed.data as StoredRow[K]) : bad(problems);
}
