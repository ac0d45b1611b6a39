import type { z } from 'zod';
import type { Problem } from '../../base/result.ts';
import { formatPath } from './formatPath.ts';
import { shortJson } from './shortJson.ts';

type Issue = z.core.$ZodIssue;

/**
 * Every fault that a schema finds in a value, as problems with a path, a sentence and the value seen.
 * `value` is what was checked; `schema` serves to name the known keys where an unknown one stands.
 */
export function zodProblems(issues: readonly Issue[], schema: z.core.$ZodType, value: unknown): Problem[] {
  return issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys' ? unknownKeys(issue, schema, value) : [problemOf(issue, value)],
  );
}

function problemOf(issue: Issue, value: unknown): Problem {
  const seen = valueAt(value, issue.path);
  const message = seen === undefined ? `missing; ${sentence(issue)}` : sentence(issue);
  return problem(issue.path, message, seen);
}

function unknownKeys(issue: z.core.$ZodIssueUnrecognizedKeys, schema: z.core.$ZodType, value: unknown): Problem[] {
  const known = knownKeysAt(schema, issue.path);
  const advice = known.length === 0 ? '' : `; known here: ${known.join(', ')}`;
  return issue.keys.map((key) => {
    const path = [...issue.path, key];
    return problem(path, `unknown key${advice}`, valueAt(value, path));
  });
}

function problem(path: readonly PropertyKey[], message: string, seen: unknown): Problem {
  const got = shortJson(seen);
  return { path: formatPath(path), message, ...(got === undefined ? {} : { got }) };
}

function sentence(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `expected ${KIND_WORDS[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return issue.values.length === 1
        ? `expected ${JSON.stringify(issue.values[0])}`
        : `expected one of ${issue.values.map((v) => JSON.stringify(v)).join(', ')}`;
    case 'too_small':
      return tooSmall(issue);
    case 'too_big':
      return tooBig(issue);
    case 'invalid_union':
      return issue.discriminator === undefined ? 'matches none of the allowed shapes' : issue.message;
    default:
      return issue.message;
  }
}

const KIND_WORDS: Record<string, string> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text in quotes',
  boolean: 'true or false',
  array: 'a list in [ ]',
  tuple: 'a list in [ ]',
  object: 'an object in { }',
  record: 'an object in { }',
};

function tooSmall(issue: z.core.$ZodIssueTooSmall): string {
  if (issue.origin === 'string') return 'expected some text, not an empty one';
  if (issue.origin === 'array') return `expected at least ${entries(Number(issue.minimum))}`;
  return issue.inclusive ? `expected ${issue.minimum} or more` : `expected a number above ${issue.minimum}`;
}

function tooBig(issue: z.core.$ZodIssueTooBig): string {
  if (issue.origin === 'array') return `expected at most ${entries(Number(issue.maximum))}`;
  if (issue.origin === 'string') return `expected at most ${issue.maximum} letters`;
  return issue.inclusive ? `expected ${issue.maximum} or less` : `expected a number below ${issue.maximum}`;
}

function entries(count: number): string {
  return count === 1 ? '1 entry' : `${count} entries`;
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let here = value;
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[step];
  }
  return here;
}

/** The few parts of a schema's definition that walking down a path needs. */
interface Definition {
  readonly shape?: Record<string, z.core.$ZodType>;
  readonly element?: z.core.$ZodType;
  readonly innerType?: z.core.$ZodType;
}

function knownKeysAt(schema: z.core.$ZodType, path: readonly PropertyKey[]): string[] {
  let here: z.core.$ZodType | undefined = unwrap(schema);
  for (const step of path) {
    const { shape, element } = definitionOf(here);
    here = typeof step === 'number' ? element : shape?.[String(step)];
    if (here === undefined) return [];
    here = unwrap(here);
  }
  return Object.keys(definitionOf(here).shape ?? {});
}

function unwrap(schema: z.core.$ZodType): z.core.$ZodType {
  const { innerType } = definitionOf(schema);
  return innerType === undefined ? schema : unwrap(innerType);
}

function definitionOf(schema: z.core.$ZodType): Definition {
  return schema._zod.def as unknown as Definition;
}
