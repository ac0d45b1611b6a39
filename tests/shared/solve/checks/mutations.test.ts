import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import { RULES, ruleById } from '../../../../shared/document/rules/index.ts';
import { CHECK_NAMES } from '../../../../shared/document/wording/findingWords.ts';
import { runChecks } from '../../../../shared/solve/checks/index.ts';
import { MUTATIONS } from './mutations/index.ts';
import type { Mutation, Spoilt } from './mutations/mutation.ts';

const HOW =
  'Add a row to a file in tests/shared/solve/checks/mutations (and the file to its index.ts): check, rule, severity, the limit as published or worked by hand, a figure a little within it (kept) and one a little past it (past), and how a project and its lay have that figure (at).';

function found({ project, lay, today }: Spoilt, { check, rule }: Mutation): Finding[] {
  return runChecks(project, [lay], today).filter((f) => f.check === check && f.rule === rule);
}

function ofGravity(at: Spoilt, row: Mutation): Finding[] {
  return found(at, row).filter((f) => f.severity === row.severity);
}

/** Units of things that are there or not: one more is as little as there is. */
const COUNTED = ['count', 'dash', 'poses', 'clocks', 'lays that break a limit', 'conductive core (1 = marked so)'];

function isLittle({ limit, kept, past, coarse }: Mutation, { unit }: Finding): boolean {
  if (COUNTED.includes(unit) || coarse !== undefined) return true;
  return Math.abs(past - kept) <= (limit === 0 ? 0.5 : 0.06 * Math.abs(limit));
}

const named = MUTATIONS.map((row) => [`${row.check} ${row.rule} ${row.severity} at ${row.limit}`, row] as const);

describe('a little past its limit the finding appears, and back it goes', () => {
  it.each(named)('%s', (_, row) => {
    const { at, kept, past, limit, told = limit } = row;
    expect(ofGravity(at(kept), row), 'within').toEqual([]);
    const [finding] = ofGravity(at(past), row);
    expect(finding, 'past').toBeDefined();
    if (finding === undefined) return;
    expect(finding.limit).toBeCloseTo(told, 6);
    expect(Math.min(kept, past) <= limit && limit <= Math.max(kept, past), 'the limit lies between').toBe(true);
    expect(Math.abs(finding.measured - past), 'measures what was moved').toBeLessThanOrEqual(
      Math.abs(past - limit) / 2 + 1e-9,
    );
    expect(isLittle(row, finding), 'by a little').toBe(true);
    expect(ofGravity(at(kept), row), 'back').toEqual([]);
  });
});

/** A project that goes by another value of a rule. */
function withValue({ project, ...rest }: Spoilt, rule: string, value: number): Spoilt {
  const others = project.project.overrides.filter((o) => o.rule !== rule);
  const overrides = [...others, { rule, value, reason: 'tried' }];
  return { ...rest, project: { ...project, project: { ...project.project, overrides } } };
}

const movable = named.filter(([, { rule, limitStands, coarse }]) => {
  const { overridable, unit } = ruleById(rule) ?? { overridable: false, unit: 'count' };
  return overridable && limitStands === undefined && coarse === undefined && !COUNTED.includes(unit);
});

describe('the limit moves with the rule: stricter it finds what was kept, laxer it notes what was past with the reason', () => {
  it.each(movable)('%s', (_, row) => {
    const { rule, at, kept, past } = row;
    const { value, unit } = ruleById(rule) ?? { value: Number.NaN, unit: 'count' };
    const share = unit === 'ratio' || unit === 'hose diameters';
    const by = share ? 0.1 * Math.abs(value) : 3 * Math.abs(past - kept);
    const way = [1, -1].find((sign) =>
      found(withValue(at(kept), rule, value + sign * by), row).some(
        (f) => f.overrideReason === undefined || f.margin < 0,
      ),
    );
    expect(way, 'stricter').toBeDefined();
    const laxer = found(withValue(at(past), rule, value - (way ?? 0) * by), row);
    expect(laxer.map((f) => f.severity)).toEqual(laxer.map(() => 'note'));
    expect(laxer.map((f) => f.overrideReason)).toContain('tried');
  });
});

interface Source {
  readonly file: string;
  readonly text: string;
  readonly checks: readonly string[];
}

const FOLDER = `${import.meta.dirname}/../../../../shared/solve/checks`;

/** The file of every check, by the lines that bring them in. */
function checkSources(): Source[] {
  const index = readFileSync(`${FOLDER}/index.ts`, 'utf8');
  const lines = [...index.matchAll(/import \{ ([\w, ]+) \} from '\.\/(\w+)\.ts';/g)];
  return lines.map(([, names = '', file = '']) => ({
    file,
    text: readFileSync(`${FOLDER}/${file}.ts`, 'utf8'),
    checks: names.split(', ').filter((name) => (CHECK_NAMES as readonly string[]).includes(name)),
  }));
}

const rowsOf = ({ checks }: Source): Mutation[] => MUTATIONS.filter((row) => checks.includes(row.check));

/** Rules that a check reads for a word in a message or for another limit, without a finding of their own. */
const ONLY_READ: readonly (readonly [file: string, rule: string])[] = [
  ['chafe', 'heat-cover-polyester'],
  ['drainLean', 'drain-outlet-limit'],
  ['hoseClamps', 'hose-clamps-apart'],
  ['rock', 'bend-radius'],
  ['slack', 'breathing-shorter'],
];

/** Rules that no finding names: how long a calm stretch is, how far bands stand apart, and what the papers print. */
const NO_FINDING = [
  'suction-calm-length',
  'hose-clamps-apart',
  'clock-tolerance-short',
  'clock-tolerance-long',
  'clock-tolerance-army-short',
  'clock-tolerance-army-long',
];

describe('no finding without its mutation', () => {
  const sources = checkSources();

  it('every check has one', () => {
    expect(sources.flatMap((s) => s.checks).toSorted()).toEqual([...CHECK_NAMES].toSorted());
    const without = CHECK_NAMES.filter((name) => MUTATIONS.every((row) => row.check !== name));
    expect(without, HOW).toEqual([]);
  });

  it('every rule that a check names has one of that check', () => {
    const without = sources.flatMap((source) => {
      const literals = [...source.text.matchAll(/'([\w-]+)'/g)].map(([, word = '']) => word);
      const rules = new Set(
        literals.filter((word) => ruleById(word) !== undefined && !CHECK_NAMES.includes(word as never)),
      );
      for (const row of rowsOf(source)) rules.delete(row.rule);
      for (const [file, rule] of ONLY_READ) if (file === source.file) rules.delete(rule);
      return [...rules].map((rule) => `${source.file}: ${rule}`);
    });
    expect(without, HOW).toEqual([]);
  });

  it('every rule of the pack has one', () => {
    const without = RULES.map((rule) => rule.id).filter(
      (id) => !NO_FINDING.includes(id) && MUTATIONS.every((row) => row.rule !== id),
    );
    expect(without, HOW).toEqual([]);
    expect(NO_FINDING.filter((id) => MUTATIONS.some((row) => row.rule === id))).toEqual([]);
  });

  it('every comparison in a check has one: no fewer rows than judgements in its file', () => {
    const short = sources.flatMap((source) => {
      const judgements = source.text.match(/\b(judge|against|notStated)\(/g)?.length ?? 0;
      const definitions = source.text.match(/function (judge|against|notStated)\(/g)?.length ?? 0;
      const inDefinitions = source.text.match(/function against\([\s\S]*?\n\}/)?.[0].match(/\bjudge\(/g)?.length ?? 0;
      const asked = judgements - definitions - inDefinitions;
      const rows = rowsOf(source).length;
      return rows < asked ? [`${source.file}: ${rows} rows for ${asked} judgements`] : [];
    });
    expect(short, HOW).toEqual([]);
  });

  it('every gravity that a check speaks of has one', () => {
    const without = sources.flatMap((source) => {
      const words = new Set([...source.text.matchAll(/'(stop|look|note)'/g)].map(([, word]) => word as string));
      for (const row of rowsOf(source)) words.delete(row.severity);
      return [...words].map((word) => `${source.file}: ${word}`);
    });
    expect(without, HOW).toEqual([]);
  });
});
